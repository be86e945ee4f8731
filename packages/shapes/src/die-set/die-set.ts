import {
  formatLength,
  formatSize,
  inches,
  LONGEST_LENGTH,
  type Ticks,
  type Unit,
} from "@sheetwright/measure";
import type { Shape } from "../catalogue/shape.js";
import { resized } from "../catalogue/shape-of-size.js";
import { type NominalSize, sizeOf } from "../catalogue/size-of.js";
import type { ShapeDie } from "./die.js";

/** What neighbours of a set differ by across where nothing else is said: 1/4 in, so 1/8 in a side. Common practice, no source. */
export const DIE_STEP: Ticks = inches(1 / 4);

/** More is a typing error. */
const MOST_DIES = 1000;

/** The sizes of a die set. */
export interface DieSetSizes {
  /** Across the smallest die: its diameter, or its width. */
  readonly from: Ticks;
  /** No die is larger across. */
  readonly to: Ticks;
  /** How much larger each is than the one before, in width and height alike. Default: 1/4 in. */
  readonly step?: Ticks | undefined;
  /** The unit of the names. Default: inches. */
  readonly unit?: Unit | undefined;
}

/**
 * A nesting set of dies: a shape in sizes that grow by a step, the smallest first. What is wider than high stays so by as
 * much, and other lengths of the shape stay as they are: as dies that lie in each other do.
 *
 * Throws a RangeError for sizes that are no whole ticks, that end before they start or are over a thousand, and a
 * ShapeError where the shape cannot be that small or large.
 *
 * @example
 * const set = dieSet({ shape: "circle", diameter: 40640 }, { from: 40640, to: 61000 });
 * set.map(({ name }) => name) // => ["circle 1 in", "circle 1 1/4 in", "circle 1 1/2 in"]
 * const tall = dieSet({ shape: "rectangle", width: 81280, height: 121920 }, { from: 40640, to: 40640 });
 * tall[0].name // => "rectangle 1 x 2 in"
 * dieSet({ shape: "circle", diameter: 9 }, { from: 40640, to: 61000, step: 0 }) // throws RangeError
 */
export function dieSet(shape: Shape, sizes: DieSetSizes): readonly ShapeDie[] {
  const { from, to, step = DIE_STEP, unit = "in" } = sizes;
  for (const [key, value] of Object.entries({ from, to, step })) {
    if (!(Number.isInteger(value) && value > 0 && value <= LONGEST_LENGTH)) {
      throw new RangeError(
        `Die set, ${key}: expected a whole number of ticks above 0 up to 10 m, found ${String(value)}.`,
      );
    }
  }
  if (to < from) {
    const between = `from ${formatLength(from, { unit })} to ${formatLength(to, { unit })}`;
    throw new RangeError(`Die set: expected sizes that grow, found ${between}. Exchange them.`);
  }
  const count = Math.floor((to - from) / step) + 1;
  if (count > MOST_DIES) {
    throw new RangeError(`Die set: expected up to ${MOST_DIES} dies, found ${count}. Use a larger step.`);
  }
  return Array.from({ length: count }, (_, index): ShapeDie => {
    const size = sizeAcross(sizeOf(shape), from + index * step);
    return { name: `${shape.shape} ${nameOf(size, unit)}`, shape: resized(shape, size) };
  });
}

/** The size with another width, its height as much more or less. */
function sizeAcross(size: NominalSize, across: Ticks): NominalSize {
  if ("diameter" in size) return { diameter: across };
  return { width: across, height: size.height + across - size.width };
}

function nameOf(size: NominalSize, unit: Unit): string {
  if ("diameter" in size || size.width === size.height) {
    return formatLength("diameter" in size ? size.diameter : size.width, { unit });
  }
  return formatSize(size.width, size.height, { unit });
}
