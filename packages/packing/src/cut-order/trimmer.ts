import type { Cut, CutOrder, CutPart, Edge } from "../cutting.js";
import type { Rectangle } from "../model.js";

/** What a rectangle becomes: the fields of a {@link CutPart} that do not follow from the cut. */
export interface Becomes extends Rectangle {
  readonly what: CutPart["what"];
  readonly path?: readonly number[];
}

/** A pass of the blade to be written down; the held part borders on the fence. */
interface Pass {
  readonly part: number;
  readonly edge: Edge;
  readonly held: Becomes;
  readonly off: Becomes | undefined;
  readonly purpose: Cut["purpose"];
}

/** The direction of the blade: an `x` cut divides the width, so the blade runs down the sheet. */
export function axisOf(edge: Edge): "x" | "y" {
  return edge === "left" || edge === "right" ? "x" : "y";
}

/** A part cut at a distance from its edge at the fence; the kerf lies beyond, and may take all that comes off. */
export function cutAt(
  part: Rectangle,
  edge: Edge,
  distance: number,
  kerf: number,
): { readonly held: Rectangle; readonly off: Rectangle | undefined } {
  const { x, y, width, height } = part;
  const extent = axisOf(edge) === "x" ? width : height;
  const over = extent - distance - kerf;
  const [heldAt, offAt] = edge === "left" || edge === "top" ? [0, distance + kerf] : [extent - distance, 0];
  const slice = (at: number, size: number): Rectangle =>
    axisOf(edge) === "x" ? { x: x + at, y, width: size, height } : { x, y: y + at, width, height: size };
  return { held: slice(heldAt, distance), off: over > 0 ? slice(offAt, over) : undefined };
}

function lineBeside(held: Rectangle, edge: Edge): Cut["line"] {
  const right = held.x + held.width;
  const bottom = held.y + held.height;
  switch (edge) {
    case "left":
      return { x1: right, y1: held.y, x2: right, y2: bottom };
    case "right":
      return { x1: held.x, y1: held.y, x2: held.x, y2: bottom };
    case "top":
      return { x1: held.x, y1: bottom, x2: right, y2: bottom };
    case "bottom":
      return { x1: held.x, y1: held.y, x2: right, y2: held.y };
  }
}

/** Writes down cuts in the order they are made, and numbers cuts and parts. */
export interface Trimmer {
  readonly parts: readonly CutPart[];
  distance(): number | undefined;
  axis(): "x" | "y" | undefined;
  cut(pass: Pass): Cut;
  order(): CutOrder;
}

/** A trimmer with a sheet on it, its fence not set yet. */
export function loadTrimmer(sheet: Becomes, narrowestHold: number): Trimmer {
  const parts: CutPart[] = [{ id: 0, ...sheet }];
  const cuts: Cut[] = [];
  let distance: number | undefined;
  let axis: "x" | "y" | undefined;
  let settings = 0;
  const add = (part: Becomes): number => parts.push({ id: parts.length, ...part }) - 1;
  return {
    parts,
    distance: () => distance,
    axis: () => axis,
    cut({ part, edge, held, off, purpose }) {
      const nextAxis = axisOf(edge);
      const width = nextAxis === "x" ? held.width : held.height;
      const newSetting = width !== distance;
      if (newSetting) settings += 1;
      distance = width;
      axis = nextAxis;
      const cut: Cut = {
        number: cuts.length + 1,
        part,
        edge,
        distance: width,
        held: add(held),
        off: off === undefined ? null : add(off),
        line: lineBeside(held, edge),
        purpose,
        newSetting,
        tooNarrow: width < narrowestHold,
      };
      cuts.push(cut);
      return cut;
    },
    order: () => ({ parts, cuts, settings }),
  };
}
