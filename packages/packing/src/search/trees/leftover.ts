import type { CutTree } from "./cut-tree.js";
import { ACROSS, DOWN, longerExtents } from "./node-list.js";

/** Steps in which the measure is tabulated, for areas from none to the largest sheet. */
const STEPS = 4096;

/**
 * The cut that frees the root from the sheet before its own cuts: none (0), {@link ACROSS} or {@link DOWN}. It is made
 * where the root may not be cut at the sheet's full extent, and where it leaves more than cuts that cross the whole sheet.
 */
export function firstCut(tree: CutTree): number {
  const { sheet, mayDivideWidth, mayDivideHeight } = tree;
  const what = tree.item[0] as number;
  const right = sheet.width - (tree.width[0] as number);
  const below = sheet.height - (tree.height[0] as number);
  const rightArea = right * sheet.height;
  const belowArea = below * sheet.width;
  if (what === ACROSS) {
    if (!mayDivideWidth) return DOWN;
    if (below === 0 || !mayDivideHeight || !tree.hasStagesAbove(1)) return 0;
    return belowArea > rightArea ? DOWN : 0;
  }
  if (what === DOWN) {
    if (!mayDivideHeight) return ACROSS;
    if (right === 0 || !mayDivideWidth || !tree.hasStagesAbove(1)) return 0;
    return rightArea > belowArea ? ACROSS : 0;
  }
  if (right === 0 || below === 0) return 0;
  if (!mayDivideWidth) return DOWN;
  if (!mayDivideHeight) return ACROSS;
  return rightArea > belowArea ? ACROSS : DOWN;
}

/**
 * Measures what is left over on a sheet: the sum over its leftovers of area^1.1875, each in sheets, so that one large
 * leftover counts for more than two small ones. All slack goes to the outermost level that can have it.
 */
export class LeftoverMeasure {
  private readonly table = new Float64Array(STEPS + 2);
  private readonly scale: number;
  private givenWidth = new Float64Array(16);
  private givenHeight = new Float64Array(16);

  /** @param largest area of the largest sheet. */
  constructor(largest: number) {
    this.scale = STEPS / largest;
    for (let i = 0; i < this.table.length; i++) this.table[i] = convex(i / STEPS);
  }

  /** One leftover of the given area. */
  ofArea(area: number): number {
    return this.table[Math.floor(area * this.scale)] as number;
  }

  /** All leftovers of a tree. */
  of(tree: CutTree): number {
    const { item, parent, width, height, count, sheet } = tree;
    const { kerf } = tree.rules;
    if (count === 0) return this.ofArea(sheet.width * sheet.height);
    if (count > this.givenWidth.length) {
      this.givenWidth = longerExtents(this.givenWidth, 2 * count);
      this.givenHeight = longerExtents(this.givenHeight, 2 * count);
    }
    const { givenWidth, givenHeight } = this;
    let sum = 0;
    givenWidth[0] = sheet.width;
    givenHeight[0] = sheet.height;
    const first = firstCut(tree);
    if (first === ACROSS) {
      const rest = sheet.width - (width[0] as number) - kerf;
      if (rest > 0) sum += this.ofArea(rest * sheet.height);
      givenWidth[0] = width[0] as number;
    } else if (first === DOWN) {
      const rest = sheet.height - (height[0] as number) - kerf;
      if (rest > 0) sum += this.ofArea(rest * sheet.width);
      givenHeight[0] = height[0] as number;
    }
    for (let i = 0; i < count; i++) {
      if (i > 0) {
        const above = parent[i] as number;
        const isColumn = item[above] === ACROSS;
        givenWidth[i] = (isColumn ? width[i] : givenWidth[above]) as number;
        givenHeight[i] = (isColumn ? givenHeight[above] : height[i]) as number;
      }
      const what = item[i] as number;
      const across = givenWidth[i] as number;
      const down = givenHeight[i] as number;
      const right = across - (width[i] as number) - kerf;
      const below = down - (height[i] as number) - kerf;
      if (right > 0 && what !== DOWN) sum += this.ofArea(right * down);
      if (below > 0 && what !== ACROSS) sum += this.ofArea(below * across);
    }
    return sum;
  }
}

/** x to the power 1.1875, by square roots. */
function convex(x: number): number {
  const eighth = Math.sqrt(Math.sqrt(Math.sqrt(x)));
  return x * eighth * Math.sqrt(eighth);
}
