/**
 * The front of a closed card whose front is more than one panel of its flat: the edges of paper that show on it, which
 * surfaces lie on it, and what of it may be glued together.
 *
 *     gate         z            easel        shutter
 *     +---+---+    +---+---+    +-------+    +-------+
 *     |   |   |    | f |   |    | flap  |    |-------|
 *     |   |   |    | l |   |    |-------|    |   |   |
 *     |   |   |    | a |   |    |       |    |-------|
 *     +---+---+    +-p-+---+    +-------+    +-------+
 */

import { formatLength, type Ticks, type Unit } from "@sheetwright/measure";
import type { Card, SurfaceName } from "@sheetwright/planner";
import { unbroken } from "../text/break-lines.js";
import type { Surface } from "./visible-part.js";

/** An edge of paper that shows on the front: an upright or level line, so far from the left or the top. */
export interface FrontLine {
  readonly upright: boolean;
  readonly at: Ticks;
  /** Where it begins and ends, from the top or the left. */
  readonly from: Ticks;
  readonly to: Ticks;
}

/** What is to be told of such a front. */
export interface ClosedFront {
  readonly lines: readonly FrontLine[];
  /** What the lines are, in a sentence; `null` where there is none. */
  readonly note: string | null;
}

/** What shows on the closed front. */
export function closedFront(
  { flats, front, layers = [] }: Pick<Card, "flats" | "front"> & Partial<Pick<Card, "layers">>,
  unit: Unit,
): ClosedFront {
  const [flat] = flats;
  const cover = layers.find(
    ({ surface, on, x, y, width, height }) =>
      surface === "front" &&
      on === null &&
      x <= 0 &&
      y <= 0 &&
      x + width >= front.width &&
      y + height >= front.height,
  );
  const beside = (half: string, rest: string): string =>
    cover === undefined
      ? rest
      : `${cover.piece} covers all of the front; what it is glued to, the ${half} half, is the flap.`;
  const nothing: ClosedFront = { lines: [], note: null };
  if (flat === undefined) return nothing;
  const { fold, along, panels, slits } = flat;
  const upright = along === "width";
  const first = panels.at(-1) ?? 0;
  const whole = front[along];
  const across = upright ? front.height : front.width;
  const line = (at: Ticks): FrontLine => ({ upright, at, from: 0, to: across });
  switch (fold) {
    case "gate": {
      const gap = whole - first - (panels[0] ?? 0);
      return gap > 0
        ? {
            lines: [line(first), line(whole - (panels[0] ?? 0))],
            note: `Two doors, ${unbroken(formatLength(gap, { unit }))} apart.`,
          }
        : { lines: [line(first)], note: "Two doors that meet in the middle." };
    }
    case "double-gate": {
      const wide = panels[2] ?? 0;
      return {
        lines: wide > 0 && wide < whole ? [line(wide)] : [],
        note: `Two doors; the wide one, at the ${upright ? "left" : "top"}, lies over the narrow one.`,
      };
    }
    case "z":
      return {
        lines: [line(first)],
        note: beside(
          upright ? "left" : "upper",
          `The ${upright ? "left" : "upper"} half is the flap; beside it half of the inside shows.`,
        ),
      };
    case "easel":
      return {
        lines: [line(first)],
        note: beside(
          "upper",
          "The upper half is the flap, folded up in front; below it half of the inside shows.",
        ),
      };
    case "shutter":
      return {
        // Between the slits the outermost panels lie on top, beside them the strips of the middle panel.
        lines: [
          { ...line(first), from: slits[0]?.at ?? 0, to: slits.at(-1)?.at ?? across },
          ...slits.map(({ at }): FrontLine => ({ upright: !upright, at, from: 0, to: whole })),
        ],
        note: `Between the slits two halves meet in the middle; the strips ${upright ? "above and below" : "beside them"} go from edge to edge.`,
      };
    default:
      return nothing;
  }
}

/** A surface whose layers are drawn with its corner at a place of another one. */
export interface ShownSurface {
  readonly name: SurfaceName;
  readonly x: Ticks;
  readonly y: Ticks;
}

const SEVERAL_PARTS = "It lies over several parts of the front, which must be free to open: glue it to one";

/** The surfaces that are seen on the front of the closed card, and where their top left corners lie on it. */
export function surfacesOnFront({
  flats,
  front,
  surfaces,
}: Pick<Card, "flats" | "front" | "surfaces">): readonly ShownSurface[] {
  const isZ = flats.some(({ fold }) => fold === "z");
  return surfaces.flatMap(({ name, width, height }): readonly ShownSurface[] => {
    if (name === "left-door" || name === "upper-door" || (name === "flap" && isZ))
      return [{ name, x: 0, y: 0 }];
    if (name === "right-door") return [{ name, x: front.width - width, y: 0 }];
    if (name === "lower-door") return [{ name, x: 0, y: front.height - height }];
    return [];
  });
}

/**
 * What to mind when something is glued straight to the front: `null` where it lies on one panel alone. That a front of
 * several panels is glued to one of them is common practice, no source.
 */
export function glueCaution({ flats, front }: Pick<Card, "flats" | "front">, box: Surface): string | null {
  const [flat] = flats;
  if (flat === undefined) return null;
  const { fold, along, panels, slits } = flat;
  const [from, to] = along === "width" ? [box.x, box.x + box.width] : [box.y, box.y + box.height];
  const whole = front[along];
  const first = panels.at(-1) ?? 0;
  const [one, other] = along === "width" ? ["left", "right"] : ["upper", "lower"];
  switch (fold) {
    case "gate":
      if (to <= first || from >= whole - (panels[0] ?? 0)) return null;
      return `Glue it to one door only, the ${one} or the ${other} one: glued to both, the card would not open.`;
    case "double-gate":
      return `${SEVERAL_PARTS} panel only.`;
    case "shutter": {
      const [start, end] = along === "width" ? [box.y, box.y + box.height] : [box.x, box.x + box.width];
      const isOver = slits.some(({ at }) => start < at && at < end);
      const isBetween = slits.some(({ at }) => at <= start) && slits.some(({ at }) => at >= end);
      if (!isOver && !(isBetween && from < first && to > first)) return null;
      return `${SEVERAL_PARTS} strip or half only.`;
    }
    case "z":
    case "easel":
      if (to <= first) return null;
      return from >= first
        ? `It lies beside the flap, on the ${other} half, where the inside shows: glue it there.`
        : `Glue it to the flap only, the ${one} half, so that the card opens.`;
    default:
      return null;
  }
}

/**
 * What is seen of layers on the inside of a closed card beside its flap, cut off at the flap. Empty but for a z and an
 * easel.
 */
export function seenBesideFlap<T extends Surface>(
  { flats, front }: Pick<Card, "flats" | "front">,
  inside: readonly T[],
): readonly T[] {
  const [flat] = flats;
  if (flat === undefined || (flat.fold !== "z" && flat.fold !== "easel")) return [];
  const edge = flat.panels.at(-1) ?? 0;
  return inside.flatMap((layer): readonly T[] => {
    const [x, y] =
      flat.along === "width" ? [Math.max(layer.x, edge), layer.y] : [layer.x, Math.max(layer.y, edge)];
    const right = Math.min(layer.x + layer.width, front.width);
    const bottom = Math.min(layer.y + layer.height, front.height);
    return x < right && y < bottom ? [{ ...layer, x, y, width: right - x, height: bottom - y }] : [];
  });
}
