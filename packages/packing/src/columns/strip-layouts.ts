/**
 * The most valuable layout of one sheet in strips, copies without limit, by dynamic programming: strips across the sheet, and
 * in each strip pieces side by side (two stages, with a last trim), or stacks of pieces side by side (three stages, with a
 * last trim).
 *
 *     two stages           three stages
 *     +---+----+---+       +---+----+---+
 *     |   |    |   |       |   +----+---+
 *     +---+----+---+       +---+----+---+
 *     |     |      |       |     |      |
 *     +-----+------+       +-----+------+
 *
 * Source: P. Gilmore, R. Gomory, Multistage cutting stock problems of two and more dimensions, Operations Research 13 (1965);
 * stacks as in three-stage patterns there, strips of any height that one piece or two need.
 *
 * Sums of extents are looked at, or where there are too many an even grid, which may miss layouts but makes none that does
 * not fit. Work of one evaluation: extents x sums (two stages), strips x extents x sums (three stages). The best two-stage
 * layout is found where all sums are looked at.
 */
import type { CutNode, SplitPart } from "../model.js";
import type { CompiledProblem, CompiledSheet, Lay } from "../search/compiled-problem.js";
import { cutLevel } from "./cut-level.js";
import type { PatternRows } from "./pattern.js";

/** A layout by its copies, by row. */
interface StripLayout {
  readonly counts: Float64Array;
  readonly tree: CutNode;
}

/** A sheet, ready to be filled again and again by other prices. */
export interface StripFiller {
  /** Steps of one evaluation, about. */
  readonly work: number;
  /**
   * The best layout by prices by row; undefined where nothing has a price. With `left`, one of no more copies than there
   * are by row, which is good but need not be the best.
   */
  readonly best: (prices: Float64Array, left?: Float64Array) => StripLayout | undefined;
}

/** Sums along one axis at most, before an even grid takes their place. */
const MOST_SUMS = 2_500;
/** Strip heights of three stages at most. */
const MOST_STRIPS = 96;

/** One way in which a kind may lie; extents with a kerf. */
interface Item {
  readonly row: number;
  readonly lay: Lay;
  readonly long: number;
  readonly high: number;
}

/**
 * Prepares a sheet. The first cuts run along `axis`: `y` for strips one below the other, `x` for strips side by side.
 * @param stacks True for three stages.
 */
export function stripFiller(
  problem: CompiledProblem,
  rows: PatternRows,
  sheet: CompiledSheet,
  axis: "x" | "y",
  stacks: boolean,
): StripFiller | undefined {
  const { kerf } = problem;
  const [alongSide, acrossSide] = sidesOf(axis);
  const length = sheet[alongSide] + kerf;
  const height = sheet[acrossSide] + kerf;
  const items = itemsOn(problem, rows, sheet, axis);
  if (items.length === 0) return undefined;
  const along = sumsUpTo(
    items.map((item) => item.long),
    length,
  );
  const across = sumsUpTo(
    items.map((item) => item.high),
    height,
  );
  const [columns, lines] = [along.length, across.length];
  const alongBelow = items.map((item) => belowBy(along, item.long));
  const acrossBelow = items.map((item) => belowBy(across, item.high));
  // Strips by the line of their height; two stages need those of pieces alone.
  const highs = distinct(items.map((item) => firstAtLeast(across, item.high)));
  const strips = stacks ? stripLines(across, highs) : highs;
  const stripBelow = strips.map((line) => belowBy(across, across[line] as number));
  // Widths of stacks: the items of a width and all narrower ones may lie in it.
  const widths = distinct(items.map((item) => item.long));
  const widthBelow = widths.map((width) => belowBy(along, width));
  const lastOfWidth = widths.map((width) => items.findLastIndex((item) => item.long <= width));
  const stackBest = stacks ? new Float64Array(widths.length * lines) : new Float64Array(0);
  const stackChoice = stacks ? new Int16Array(widths.length * lines) : new Int16Array(0);
  const rowBest = new Float64Array(columns);
  const rowChoice = new Int16Array(strips.length * columns);
  const stripValue = new Float64Array(strips.length);
  const used = new Int32Array(columns);
  const sheetBest = new Float64Array(lines);
  const sheetChoice = new Int16Array(lines);
  const byHeight = items
    .map((_, i) => i)
    .sort((a, b) => (items[a] as Item).high - (items[b] as Item).high || a - b);

  const fillStacks = (prices: Float64Array): void => {
    let item = 0;
    for (let w = 0; w < widths.length; w++) {
      const base = w * lines;
      if (w === 0) {
        stackBest.fill(0, 0, lines);
        stackChoice.fill(-1, 0, lines);
      } else {
        stackBest.copyWithin(base, base - lines, base);
        stackChoice.copyWithin(base, base - lines, base);
      }
      for (; item <= (lastOfWidth[w] as number); item++) {
        const price = prices[(items[item] as Item).row] as number;
        if (price > 0)
          extend(stackBest, stackChoice, base, acrossBelow[item] as Int16Array, lines, price, item);
      }
    }
  };
  const fillStrips = (prices: Float64Array, left: Float64Array | undefined): void => {
    let next = 0;
    rowBest.fill(0);
    for (let s = 0; s < strips.length; s++) {
      const line = strips[s] as number;
      const base = s * columns;
      if (stacks) {
        rowBest.fill(0);
        rowChoice.fill(-1, base, base + columns);
        let narrower = 0;
        for (let w = 0; w < widths.length; w++) {
          const value = stackBest[w * lines + line] as number;
          if (value <= narrower) continue;
          narrower = value;
          extend(rowBest, rowChoice, base, widthBelow[w] as Int16Array, columns, value, w, 0);
        }
      } else {
        if (s === 0) rowChoice.fill(-1, 0, columns);
        else rowChoice.copyWithin(base, base - columns, base);
        for (; next < items.length; next++) {
          const item = byHeight[next] as number;
          if ((items[item] as Item).high > (across[line] as number)) break;
          const price = prices[(items[item] as Item).row] as number;
          if (price <= 0) continue;
          const below = alongBelow[item] as Int16Array;
          const most = left === undefined ? length : (left[(items[item] as Item).row] as number);
          if (most * (items[item] as Item).long > length - (items[item] as Item).long) {
            extend(rowBest, rowChoice, base, below, columns, price, item, 0);
          } else extendUpTo(most, rowBest, rowChoice, base, below, columns, price, item, used);
        }
      }
      stripValue[s] = rowBest[columns - 1] as number;
    }
  };
  /** Strips of the best layout of the lower lines, the first one at the end. */
  const bestStrips = (
    prices: Float64Array,
    left: Float64Array | undefined,
    line: number,
  ): readonly number[] => {
    if (stacks) fillStacks(prices);
    fillStrips(prices, left);
    sheetBest.fill(0);
    sheetChoice.fill(-1);
    let lower = 0;
    for (let s = 0; s < strips.length; s++) {
      const value = stripValue[s] as number;
      if (value <= lower) continue;
      lower = value;
      extend(sheetBest, sheetChoice, 0, stripBelow[s] as Int16Array, lines, value, s);
    }
    const chosen: number[] = [];
    for (let at = line; at >= 0; ) {
      const s = sheetChoice[at] as number;
      if (s < 0) break;
      chosen.push(s);
      at = (stripBelow[s] as Int16Array)[at] as number;
    }
    return chosen;
  };
  const best = (prices: Float64Array, left?: Float64Array): StripLayout | undefined => {
    const counts = new Float64Array(rows.kinds.length);
    const parts: SplitPart[] = [];
    if (left === undefined) {
      for (const s of bestStrips(prices, undefined, lines - 1)) parts.push(layStrip(s, counts, undefined));
    } else {
      // Strip by strip, since the copies in one are not there for the next.
      const rest = left.slice();
      const own = prices.slice(0, rows.kinds.length);
      let room = height;
      for (;;) {
        for (let row = 0; row < own.length; row++) if ((rest[row] as number) <= 0) own[row] = 0;
        const line = across.findLastIndex((sum) => sum <= room);
        const chosen = bestStrips(own, rest, line);
        let highest = -1;
        for (const s of chosen) if (highest < 0 || s > highest) highest = s;
        if (highest < 0) break;
        const part = layStrip(highest, counts, rest);
        parts.push(part);
        room -= part.size + kerf;
      }
    }
    if (parts.length === 0) return undefined;
    return { counts, tree: cutLevel(axis, sheet[acrossSide], kerf, parts) };
  };
  const layStrip = (s: number, counts: Float64Array, left: Float64Array | undefined): SplitPart => {
    const stacked: number[][] = [];
    for (let at = columns - 1; at >= 0; ) {
      const choice = rowChoice[s * columns + at] as number;
      if (choice < 0) break;
      const stack = (stacks ? stackOf(choice, strips[s] as number) : [choice]).filter((item) => {
        if (left === undefined) return true;
        const { row } = items[item] as Item;
        const isThere = (left[row] as number) > 0;
        if (isThere) left[row] = (left[row] as number) - 1;
        return isThere;
      });
      if (stack.length > 0) stacked.push(stack);
      at = ((stacks ? widthBelow : alongBelow)[choice] as Int16Array)[at] as number;
    }
    // Only as high and as wide as the pieces need.
    const sizes = stacked.map((stack) => ({
      stack,
      long: Math.max(...stack.map((item) => (items[item] as Item).long)),
      high: stack.reduce((sum, item) => sum + (items[item] as Item).high, 0),
    }));
    const high = Math.max(...sizes.map((size) => size.high)) - kerf;
    const parts = sizes.map(({ stack, long }): SplitPart => {
      const pieces = stack.map((index): SplitPart => {
        const { row, lay } = items[index] as Item;
        counts[row] = (counts[row] as number) + 1;
        const piece: CutNode = {
          type: "piece",
          shares: [{ kind: rows.kinds[row]?.id ?? "", form: lay.form, turned: lay.turned, count: 1 }],
        };
        const trimmed = cutLevel(axis === "y" ? "x" : "y", long - kerf, kerf, [
          { size: lay[alongSide], node: piece },
        ]);
        return { size: lay[acrossSide], node: trimmed };
      });
      return { size: long - kerf, node: cutLevel(axis, high, kerf, pieces) };
    });
    return { size: high, node: cutLevel(axis === "y" ? "x" : "y", sheet[alongSide], kerf, parts) };
  };
  const stackOf = (width: number, line: number): number[] => {
    const stack: number[] = [];
    for (let at = line; at >= 0; ) {
      const item = stackChoice[width * lines + at] as number;
      if (item < 0) break;
      stack.push(item);
      at = (acrossBelow[item] as Int16Array)[at] as number;
    }
    return stack;
  };
  const work = stacks
    ? strips.length * widths.length * columns * 0.5 + items.length * lines
    : items.length * columns + strips.length * (columns + lines);
  return { work: Math.ceil(work), best };
}

/**
 * Steps that one evaluation of a {@link stripFiller} takes at most, about, without preparing it.
 * @param axis see there, like `stacks`.
 */
export function mostStripWork(
  problem: CompiledProblem,
  rows: PatternRows,
  sheet: CompiledSheet,
  axis: "x" | "y",
  stacks: boolean,
): number {
  const items = itemsOn(problem, rows, sheet, axis);
  const widths = new Set(items.map((item) => item.long)).size;
  const strips = new Set(items.map((item) => item.high)).size;
  return stacks
    ? Math.max(strips, MOST_STRIPS) * widths * MOST_SUMS * 0.5 + items.length * MOST_SUMS
    : (items.length + 2 * strips) * MOST_SUMS;
}

function sidesOf(axis: "x" | "y"): readonly ["width" | "height", "width" | "height"] {
  return axis === "y" ? ["width", "height"] : ["height", "width"];
}

/** All ways to lie on a sheet, by length and then height. */
function itemsOn(
  { kerf }: CompiledProblem,
  rows: PatternRows,
  sheet: CompiledSheet,
  axis: "x" | "y",
): readonly Item[] {
  const [alongSide, acrossSide] = sidesOf(axis);
  return rows.kinds
    .flatMap((kind, row) =>
      (kind.lays[sheet.index] ?? []).map(
        (lay): Item => ({ row, lay, long: lay[alongSide] + kerf, high: lay[acrossSide] + kerf }),
      ),
    )
    .sort((a, b) => a.long - b.long || a.high - b.high || a.row - b.row);
}

/** Lets an option with its extent be taken any number of times; `below` says what it leaves of each sum. */
function extend(
  best: Float64Array,
  choice: Int16Array,
  base: number,
  below: Int16Array,
  size: number,
  value: number,
  option: number,
  bestBase = base,
): void {
  for (let at = 0; at < size; at++) {
    const rest = below[at] as number;
    if (rest < 0) continue;
    const other = (best[bestBase + rest] as number) + value;
    if (other > (best[bestBase + at] as number)) {
      best[bestBase + at] = other;
      choice[base + at] = option;
    }
  }
}

/** Like {@link extend}, at most so many times; `used` is room to count in. */
function extendUpTo(
  most: number,
  best: Float64Array,
  choice: Int16Array,
  base: number,
  below: Int16Array,
  size: number,
  value: number,
  option: number,
  used: Int32Array,
): void {
  used.fill(0);
  for (let at = 0; at < size; at++) {
    const rest = below[at] as number;
    if (rest < 0 || (used[rest] as number) >= most) continue;
    const other = (best[rest] as number) + value;
    if (other > (best[at] as number)) {
      best[at] = other;
      choice[base + at] = option;
      used[at] = (used[rest] as number) + 1;
    }
  }
}

/** All sums of extents up to a room, with the room itself; an even grid where there are too many. */
function sumsUpTo(extents: readonly number[], room: number): Float64Array {
  const known = new Set([0]);
  const list = [0];
  for (const extent of [...new Set(extents)].sort((a, b) => b - a)) {
    const before = list.length;
    for (let k = 0; k < before; k++) {
      for (let sum = (list[k] as number) + extent; sum <= room && !known.has(sum); sum += extent) {
        known.add(sum);
        list.push(sum);
        if (list.length > MOST_SUMS) {
          return Float64Array.from({ length: MOST_SUMS }, (_, i) => Math.floor((i * room) / (MOST_SUMS - 1)));
        }
      }
    }
  }
  known.add(room);
  return Float64Array.from(known).sort();
}

/** By sum: the index of the largest sum that an extent leaves of it, or -1 where it has no room. */
function belowBy(sums: Float64Array, extent: number): Int16Array {
  const below = new Int16Array(sums.length).fill(-1);
  let at = -1;
  for (let s = 0; s < sums.length; s++) {
    while (at + 1 < sums.length && (sums[at + 1] as number) + extent <= (sums[s] as number)) at++;
    below[s] = at;
  }
  return below;
}

/** Index of the first sum that is at least an extent; the number of sums where none is. */
function firstAtLeast(sums: Float64Array, extent: number): number {
  let [low, high] = [0, sums.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sums[middle] as number) < extent) low = middle + 1;
    else high = middle;
  }
  return low;
}

function distinct(values: readonly number[]): readonly number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

/** Lines of strips with stacks: those of single pieces, then of two above each other, as many as are looked at. */
function stripLines(across: Float64Array, highs: readonly number[]): readonly number[] {
  const left = MOST_STRIPS - highs.length;
  if (left <= 0) return highs;
  const room = across[across.length - 1] as number;
  const pairs = distinct(
    highs
      .flatMap((a) => highs.map((b) => (across[a] as number) + (across[b] as number)))
      .filter((sum) => sum <= room),
  ).map((sum) => firstAtLeast(across, sum));
  const others = distinct(pairs.filter((line) => !highs.includes(line)));
  const some =
    others.length <= left
      ? others
      : Array.from({ length: left }, (_, i) => others[Math.floor((i * others.length) / left)] as number);
  return distinct([...highs, ...some]);
}
