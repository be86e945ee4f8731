// What cuts to a shape must keep to. A project that was read from a file mostly does; one that another tool made may not.

import { formatLength, millimetres, type Size, TICKS_PER_INCH, type Ticks } from "@sheetwright/measure";
import { boxOf, outlineOf, type Shape, ShapeError } from "@sheetwright/shapes";
import type { DieCut, DieMachine, DieMat, DieSize, Stitched } from "../project.js";
import type { ProjectFault } from "../project-fault.js";
import { checkCount, checkLength, checkSize } from "./check-values.js";
import { fault } from "./fault.js";

/** Most sizes of one die, and most mats beneath one layer. */
const MOST_SIZES = 100;
const MOST_MATS = 100;

/** Shorter stitches and gaps are no more than a knife's width. */
const FINEST: Ticks = millimetres(0.1);
/** A stitch and the gap to the next one where nothing is said; from memory. */
const USUAL: Readonly<Record<"dash" | "gap", Ticks>> = { dash: millimetres(2), gap: millimetres(1) };
/** The widest hole that is pricked where nothing is said: a coarse needle; from memory. */
const NEEDLE: Ticks = millimetres(1);

/**
 * Finds numbers out of their range in the machine that presses dies.
 *
 * @internal
 */
export function checkDieMachine(machine: DieMachine | undefined): readonly ProjectFault[] {
  if (machine === undefined) return [];
  const { platform, margin, narrowestBridge } = machine;
  return [
    ...checkSize("die-machine.platform", platform),
    ...checkLength("die-machine.margin", margin, 0),
    ...checkLength("die-machine.narrowest-bridge", narrowestBridge, 0),
  ];
}

/**
 * Finds numbers out of their range in a layer that is cut to a shape, and shapes that are not what their size says.
 *
 * @internal
 */
export function checkDieCut(layer: DieCut): readonly ProjectFault[] {
  const { path, die, trim, mats = [], shadow, stitched, shape } = layer;
  const key = `${path}.${die === null ? "size" : "die"}`;
  const words = die === null ? "This layer is cut to" : `The die ${die} cuts`;
  const faults = [...checkDieSize(layer, key, words, `${path}.stitched`)];
  if (trim !== undefined) {
    const { left, right, top, bottom } = trim;
    faults.push(
      ...[left, right, top, bottom].flatMap((side) => checkLength(`${path}.trim`, side, 0)).slice(0, 1),
    );
  }
  if (shape === undefined) {
    const given = { stitched, trim, mats: layer.mats, shadow };
    for (const [what, value] of Object.entries(given)) {
      if (value === undefined) continue;
      const message = `${words} a shape of which only the size is known, and ${what} depends on the shape. Give it one, or leave ${what} out.`;
      faults.push(contradiction(`${path}.${what}`, what, "a layer with a shape", message));
    }
  }
  if (mats.length > MOST_MATS) {
    const message = `Expected at most ${MOST_MATS} mats, found ${mats.length}.`;
    const [found, expected] = [String(mats.length), `at most ${MOST_MATS} mats`];
    faults.push(fault({ code: "too-many", path: `${path}.mats`, found, expected, message }));
  }
  faults.push(...mats.flatMap((mat, index) => checkMat(mat, `${path}.mats[${index}]`)));
  if (shadow !== undefined) {
    faults.push(
      ...checkLength(`${path}.shadow.border`, shadow.border, 1),
      ...checkLength(`${path}.shadow.fill-gaps`, shadow.fillGaps, 0),
      ...checkLength(`${path}.shadow.margin`, shadow.margin, 0),
    );
  }
  return faults;
}

function checkMat({ die, border, sizes }: DieMat, path: string): readonly ProjectFault[] {
  const faults = [
    ...checkLength(`${path}.border`, border, 1),
    ...checkCount(`${path}.die`, sizes.length, 1, MOST_SIZES),
  ];
  for (const size of sizes) {
    // Of a set one is as right as another.
    if (faults.length > 0) break;
    faults.push(...checkDieSize(size, `${path}.die`, `The die ${die} cuts`, `${path}.die`));
    if (size.shape !== undefined) continue;
    const message = `Only sizes of the die ${die} are known, and the border that it gives depends on its shape.`;
    faults.push(contradiction(`${path}.die`, die, "a die with a shape", message));
  }
  return faults;
}

/** What a die cuts comes out of its blank, and is as large as its shape. */
function checkDieSize(
  { shape, cut, blank, stitched }: DieSize,
  path: string,
  words: string,
  stitchedPath: string,
): readonly ProjectFault[] {
  const sizes = [...checkSize(path, cut), ...checkSize(path, blank)];
  if (sizes.length > 0) return sizes.slice(0, 1);
  if (cut.width > blank.width || cut.height > blank.height) {
    const message = `${words} a shape that is larger than its die blank. Make the die blank larger.`;
    return [contradiction(path, words, "a die blank that holds the shape", message)];
  }
  const stitches = stitched === undefined ? [] : checkStitched(stitched, stitchedPath);
  return [...(shape === undefined ? [] : checkShape(shape, cut, path)), ...stitches];
}

function checkShape(shape: Shape, cut: Size, path: string): readonly ProjectFault[] {
  let box: Size;
  try {
    box = boxOf(outlineOf(shape));
  } catch (error) {
    if (!(error instanceof ShapeError || error instanceof TypeError)) throw error;
    // A frame without its shapes, say, is not even that.
    const { key, found, expected, help } =
      error instanceof ShapeError
        ? error.problem
        : {
            key: "shape",
            found: "not whole",
            expected: "all its parameters",
            help: "Give all that it needs.",
          };
    const message = `There is no such ${shape.shape}: its ${key} is ${String(found)}, expected ${expected}. ${help}`;
    return [contradiction(path, String(found), expected, message)];
  }
  if (box.width === cut.width && box.height === cut.height) return [];
  const found = `${cut.width} x ${cut.height} ticks`;
  const expected = `${box.width} x ${box.height} ticks, the box of its outline`;
  const message = `The size that is cut is ${found}, and the ${shape.shape} is ${expected}.`;
  return [contradiction(path, found, expected, message)];
}

/** Stitches and gaps that can be made, and holes that neither run together nor through the edge. */
function checkStitched(
  { inset, marks, dash, gap, perInch }: Stitched,
  path: string,
): readonly ProjectFault[] {
  const faults = [
    ...checkLength(`${path}.inset`, inset, FINEST),
    ...(dash === undefined ? [] : checkLength(`${path}.dash`, dash, FINEST)),
    ...(gap === undefined ? [] : checkLength(`${path}.gap`, gap, FINEST)),
  ];
  if (faults.length > 0) return faults.slice(0, 1);
  if (perInch !== undefined && dash !== undefined && gap !== undefined) {
    const message =
      "A stitch, its gap and the stitches to the inch say the same twice. Leave one of them out.";
    return [contradiction(`${path}.per-inch`, String(perInch), "two of dash, gap and per-inch", message)];
  }
  const pitch = perInch === undefined ? (dash ?? USUAL.dash) + (gap ?? USUAL.gap) : TICKS_PER_INCH / perInch;
  const length = dash ?? (gap === undefined ? (2 * pitch) / 3 : pitch - gap);
  const space = gap ?? pitch - length;
  if (perInch !== undefined && !(perInch > 0 && length >= FINEST && space >= FINEST)) {
    const expected = "a number that leaves 0.1 mm for each stitch and each gap";
    const message = `Stitches to the inch: expected ${expected}, found ${perInch}. Write fewer.`;
    return [contradiction(`${path}.per-inch`, String(perInch), expected, message)];
  }
  if (marks === "dashes") return [];
  const hole = 2 * Math.round(Math.min(NEEDLE, pitch / 3) / 2);
  if (hole >= FINEST && hole < pitch && hole < 2 * inset) return [];
  const said = formatLength(inset, { unit: "mm" });
  const message = `Holes of ${formatLength(hole, { unit: "mm" })} do not lie within the edge at ${said} from it. Bring the line further in, or make the stitches longer.`;
  return [contradiction(`${path}.inset`, said, "a line further in than half a hole", message)];
}

function contradiction(path: string, found: string, expected: string, message: string): ProjectFault {
  return fault({ code: "contradiction", path, found, expected, message });
}
