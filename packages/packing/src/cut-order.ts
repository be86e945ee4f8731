import { chooseSides } from "./cut-order/choose-sides.js";
import { exactOrder } from "./cut-order/exact-order.js";
import { findShapes, type Shape } from "./cut-order/find-shapes.js";
import { foresightedOrder, greedyOrder } from "./cut-order/greedy-order.js";
import { makeCuts, whatOf } from "./cut-order/make-cuts.js";
import type { Setup, Step } from "./cut-order/order.js";
import { readLevels } from "./cut-order/read-levels.js";
import { axisOf, type Becomes, cutAt, loadTrimmer, type Trimmer } from "./cut-order/trimmer.js";
import type { CutOrder, CutOrderOptions, Edge } from "./cutting.js";
import type { Layout, Sheet } from "./model.js";
import { usablePart } from "./placements.js";

/** The exact search is tried up to this many different cuts (equal strips count once), */
const mostCutsExact = 25;
/** at first with this many states, which is enough up to about twelve cuts and takes a millisecond or two, */
const fewStates = 2_000;
/** and once more with this many, after a few hundredths of a second the best order so far stands. */
const mostStates = 10_000;
/** Up to this many different cuts the heuristic looks ahead, */
const mostCutsForesighted = 60;
/** and up to this many it compares several rules. */
const mostCutsCompared = 600;

function planSteps(shapes: readonly Shape[], setup: Setup): readonly Step[] {
  const cuts = shapes.reduce((sum, { sizes, remainder }) => sum + sizes.length - (remainder > 0 ? 0 : 1), 0);
  if (cuts > mostCutsCompared) return greedyOrder(shapes, setup, 1).steps;
  const quick = greedyOrder(shapes, setup);
  if (cuts > mostCutsForesighted) return quick.steps;
  if (cuts <= mostCutsExact) {
    const { order, proven } = exactOrder(shapes, setup, quick, fewStates);
    if (proven) return (order ?? quick).steps;
  }
  const careful = foresightedOrder(shapes, setup);
  if (cuts > mostCutsExact) return careful.steps;
  return (exactOrder(shapes, setup, careful, mostStates).order ?? careful).steps;
}

/** Squares the sheet up, one side after the other, with the opposite side against the fence. */
function cutTrims(trimmer: Trimmer, sheet: Sheet, usable: Becomes, kerf: number): void {
  const { left = 0, right = 0, top = 0, bottom = 0 } = sheet.trim ?? {};
  const sides: readonly { readonly fence: Edge; readonly trim: number }[] = [
    { fence: "right", trim: left },
    { fence: "left", trim: right },
    { fence: "bottom", trim: top },
    { fence: "top", trim: bottom },
  ];
  const trims = sides.filter(({ trim }) => trim > 0);
  let part = trimmer.parts[0]!;
  for (const [i, { fence, trim }] of trims.entries()) {
    const extent = axisOf(fence) === "x" ? part.width : part.height;
    // The trim includes the kerf of its cut, so the cut's near side is where the part that stays begins.
    const { held, off } = cutAt(part, fence, extent - trim, kerf);
    const cut = trimmer.cut({
      part: part.id,
      edge: fence,
      held: i === trims.length - 1 ? usable : { ...held, what: "part" },
      off: off === undefined ? undefined : { ...off, what: "trim" },
      purpose: "trim",
    });
    part = trimmer.parts[cut.held]!;
  }
}

function requireLength(name: string, value: number): void {
  if (!Number.isSafeInteger(value) || value < 0) {
    throw new RangeError(`${name} is ${value}; a whole number from 0 is needed`);
  }
}

/**
 * Numbers the cuts of a layout in working order, each with the side that lies against the fence and the distance from
 * there. Parts are cut free before they are cut themselves. Trims come first (left, right, top, bottom, against the
 * opposite side). In a level of parallel cuts each cut takes the first or the last part off; either that part is held
 * between fence and blade, or the rest is, so that equal parts repeat at one setting and narrow ones come off while
 * the rest is still wide.
 *
 * In this order of importance: as few holds narrower than `narrowestHold` as these cuts allow (such cuts are marked);
 * few settings of the fence over the whole layout, equal distances in different parts being cut one after the other;
 * few quarter turns; larger parts first. Where a setting serves one cut only, what is held is rather a piece than a
 * leftover, as it gets the measured width.
 *
 * The narrow holds are always the fewest. Settings and turns are the fewest possible for layouts with up to a dozen
 * different cuts (equal strips count once) and mostly up to 25, by an exact search that gives up after 10,000 states;
 * beyond that a heuristic decides, which looks ahead up to 60 different cuts. Work grows with the number of different
 * strips and their cuts, not with the number of copies: usually milliseconds, some hundredths of a second at worst up
 * to 60 different cuts, and about a second for a sheet of 3,000 pieces that are all different.
 *
 * Windows are opened by their own tools, not at the trimmer: their cuts are not listed.
 *
 * @throws CutOrderError `not-yet` for stopped cuts, `does-not-add-up` where a split does not fit its part.
 * @throws RangeError for an option that is no length.
 *
 * @example
 * const mat = { type: "piece", shares: [{ kind: "mat", form: 0, turned: false, count: 1 }] };
 * const sizes = [[2, { type: "waste" }], [5, mat], [5, mat]];
 * const tree = { type: "split", axis: "x", parts: sizes.map(([size, node]) => ({ size, node })) };
 * const order = cutOrder({ id: "cream", width: 12, height: 7 }, { sheet: "cream", run: 1, tree });
 * order.cuts.map(({ edge, distance }) => [edge, distance]) // => [["right", 5], ["right", 5]]
 * order.settings // => 1
 */
export function cutOrder(sheet: Sheet, layout: Layout, options: CutOrderOptions = {}): CutOrder {
  const { kerf = 0, narrowestHold = 0 } = options;
  requireLength("kerf", kerf);
  requireLength("narrowestHold", narrowestHold);
  const usable = usablePart(sheet);
  const { root, levels } = readLevels(layout.tree, usable, kerf);
  const rootPart: Becomes = { ...usable, what: whatOf(root.node), path: root.path };
  const whole = { x: 0, y: 0, width: sheet.width, height: sheet.height };
  const untrimmed = usable.width === sheet.width && usable.height === sheet.height;
  const trimmer = loadTrimmer(
    !untrimmed
      ? { ...whole, what: "sheet" }
      : root.level === undefined
        ? rootPart
        : { ...rootPart, what: "sheet" },
    narrowestHold,
  );
  cutTrims(trimmer, sheet, rootPart, kerf);
  if (root.level !== undefined) {
    const shapes = findShapes(levels, kerf, narrowestHold);
    const setup = { distance: trimmer.distance(), axis: trimmer.axis() };
    const steps = chooseSides(shapes, planSteps(shapes, setup), setup.distance);
    // Without trims this is the sheet itself, else what the last trim leaves.
    const start = trimmer.parts.findIndex(({ path }) => path !== undefined);
    makeCuts(trimmer, root.level, start, shapes, steps);
  }
  return trimmer.order();
}
