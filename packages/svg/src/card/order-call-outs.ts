/**
 * Stacks the call-outs of one margin. Leaders run level over the picture and bend only beside it; as long as they leave the
 * picture in the order of their labels, none crosses another. For one order both the heights of the labels and those of the
 * leaders are found by dynamic programming; the order is improved by moving and swapping labels.
 *
 *     picture |      margin
 *     ---o----|---.
 *             |    `-- 3b mat
 *     o-------|------- 3c band
 *
 * Work: for one order the labels times the heights tried; at most TRIES orders and two, fewer for many labels.
 */

import type { Ticks } from "@sheetwright/measure";
import type { Candidate } from "./call-out-candidates.js";

/** A label that is to stand in the margin. */
export interface Stacked {
  /** Its place in stacking order, which the margin follows where it can. */
  readonly rank: number;
  /** What it takes of the margin, white space included. */
  readonly height: Ticks;
  /** From the top down. */
  readonly candidates: readonly Candidate[];
}

/** The room that labels may stand in, and how near leaders may come. */
export interface Margin {
  readonly top: Ticks;
  readonly bottom: Ticks;
  /** Labels stand at multiples of this from the top. */
  readonly step: Ticks;
  /** The least distance between the heights of two leaders. */
  readonly apart: Ticks;
}

/** Where a label stands, by its middle, and the end of its leader. */
export interface StackedPlace {
  readonly rank: number;
  readonly middle: Ticks;
  readonly end: Candidate;
}

const TRIES = 1500;
/** Fewer orders are tried of many labels: so many label heights are looked at, all in all. */
const WORK = 8_000_000;
/** What a pair of labels against the order of the letters is worth, in steps. */
const DISORDER = 6;

/** Places for all labels, or `null` where leaders cannot keep their distance. */
export function orderCallOuts(stacked: readonly Stacked[], margin: Margin): readonly StackedPlace[] | null {
  if (stacked.length === 0) return [];
  const wishes = stacked.map((label) => {
    const costs = labelCosts(label, margin);
    return {
      label,
      costs,
      least: costs.reduce((least, cost) => Math.min(least, cost), Number.POSITIVE_INFINITY),
    };
  });
  const best = [
    [...wishes].sort((a, b) => a.label.rank - b.label.rank),
    // By the last possible height: for leaders that may come close enough, this order always works.
    [...wishes].sort(
      (a, b) =>
        (a.label.candidates.at(-1)?.y ?? 0) - (b.label.candidates.at(-1)?.y ?? 0) ||
        (a.label.candidates[0]?.y ?? 0) - (b.label.candidates[0]?.y ?? 0) ||
        a.label.rank - b.label.rank,
    ),
  ].reduce<Solved | null>((found, order) => solve(order, margin, found) ?? found, null);
  return best === null ? null : improved(best, margin).places;
}

/** Moves a label to another place in the order, or swaps two, as long as that makes the whole better. */
function improved(start: Solved, margin: Margin): Solved {
  let best = start;
  let tries = 0;
  const most = Math.min(TRIES, Math.floor(WORK / (start.order.length * heightsOf(margin).length)));
  for (let better = true; better && tries < most; ) {
    better = false;
    for (let a = 0; a < best.order.length; a += 1) {
      for (let b = 0; b < best.order.length; b += 1) {
        if (a === b) continue;
        for (const move of a < b ? [moved, swapped] : [moved]) {
          if (tries >= most) return best;
          tries += 1;
          const found = solve(move(best.order, a, b), margin, best);
          if (found === null) continue;
          best = found;
          better = true;
        }
      }
    }
  }
  return best;
}

function moved(order: readonly Wish[], from: number, to: number): readonly Wish[] {
  const rest = order.filter((_, i) => i !== from);
  rest.splice(to, 0, order[from] as Wish);
  return rest;
}

function swapped(order: readonly Wish[], a: number, b: number): readonly Wish[] {
  return order.map((wish, i) => (i === a ? (order[b] ?? wish) : i === b ? (order[a] ?? wish) : wish));
}

interface Wish {
  readonly label: Stacked;
  /** For each step of the margin: the detour of the label's leader when the label stands there. */
  readonly costs: readonly number[];
  /** The least of them. */
  readonly least: number;
}

/** An order with the places of its labels. */
interface Solved {
  readonly order: readonly Wish[];
  readonly cost: number;
  readonly places: readonly StackedPlace[];
}

/** For each height the least of a candidate's own cost and its distance: those above first, then those below. */
function labelCosts({ candidates }: Stacked, margin: Margin): readonly number[] {
  const heights = heightsOf(margin);
  const costs: number[] = [];
  let next = 0;
  let above = Number.POSITIVE_INFINITY;
  for (const height of heights) {
    for (let end = candidates[next]; end !== undefined && end.y <= height; end = candidates[next]) {
      above = Math.min(above, end.cost - end.y);
      next += 1;
    }
    costs.push(above + height);
  }
  next = candidates.length - 1;
  let below = Number.POSITIVE_INFINITY;
  for (let i = heights.length - 1; i >= 0; i -= 1) {
    const height = heights[i] ?? 0;
    for (let end = candidates[next]; end !== undefined && end.y >= height; end = candidates[next]) {
      below = Math.min(below, end.cost + end.y);
      next -= 1;
    }
    costs[i] = Math.min(costs[i] ?? 0, below - height);
  }
  return costs;
}

function heightsOf({ top, bottom, step }: Margin): readonly Ticks[] {
  return Array.from({ length: Math.floor((bottom - top) / step) + 1 }, (_, i) => top + i * step);
}

/** The places of one order; `null` where there are none, or none better than `best`. */
function solve(order: readonly Wish[], margin: Margin, best: Solved | null): Solved | null {
  let disorder = 0;
  order.forEach(({ label }, i) => {
    for (let after = i + 1; after < order.length; after += 1) {
      if ((order[after]?.label.rank ?? 0) < label.rank) disorder += 1;
    }
  });
  // What the order alone costs, then with the places of the labels: most orders are known to be worse early.
  const atLeast = (places: number) => disorder * DISORDER * margin.step + places;
  const isWorse = (cost: number) => best !== null && cost >= best.cost;
  if (isWorse(atLeast(order.reduce((sum, { least }) => sum + least, 0)))) return null;
  const heights = heightsOf(margin);
  const labels = leastIncreasing(
    order.map(({ label, costs }, i) => {
      const before = order[i - 1]?.label.height ?? 0;
      return {
        heights,
        costs,
        apart: i === 0 ? 0 : Math.ceil((before + label.height) / 2),
        from: margin.top + Math.ceil(label.height / 2),
        to: margin.bottom - Math.ceil(label.height / 2),
      };
    }),
  );
  if (labels === null || isWorse(atLeast(labels.cost))) return null;
  const middles = labels.chosen.map((index) => heights[index] ?? 0);
  const leaders = leastIncreasing(
    order.map(({ label: { candidates } }, i) => ({
      heights: candidates.map(({ y }) => y),
      costs: candidates.map(({ y, cost }) => Math.abs(y - (middles[i] ?? 0)) + cost),
      apart: i === 0 ? 0 : margin.apart,
      from: Number.NEGATIVE_INFINITY,
      to: Number.POSITIVE_INFINITY,
    })),
  );
  if (leaders === null || isWorse(atLeast(leaders.cost))) return null;
  return {
    order,
    cost: atLeast(leaders.cost),
    places: order.map(({ label }, i) => ({
      rank: label.rank,
      middle: middles[i] ?? 0,
      end: label.candidates[leaders.chosen[i] ?? 0] as Candidate,
    })),
  };
}

/** Something that takes one of several heights. */
interface Placed {
  /** In rising order. */
  readonly heights: readonly Ticks[];
  readonly costs: readonly number[];
  /** The least distance from the one before. */
  readonly apart: Ticks;
  readonly from: Ticks;
  readonly to: Ticks;
}

/** Chooses a height for each so that they rise by the distances asked for and cost least; the uppermost of equals. */
function leastIncreasing(
  all: readonly Placed[],
): { readonly cost: number; readonly chosen: readonly number[] } | null {
  /** For each of `all` and each of its heights: the place in the heights before that it follows. */
  const follows: number[][] = [];
  let before: { readonly heights: readonly Ticks[]; readonly costs: readonly number[] } = {
    heights: [Number.NEGATIVE_INFINITY],
    costs: [0],
  };
  for (const { heights, costs, apart, from, to } of all) {
    const sums: number[] = [];
    const links: number[] = [];
    let next = 0;
    let least = Number.POSITIVE_INFINITY;
    let leastAt = -1;
    heights.forEach((height, i) => {
      while (next < before.heights.length && (before.heights[next] ?? 0) + apart <= height) {
        const cost = before.costs[next] ?? Number.POSITIVE_INFINITY;
        if (cost < least) {
          least = cost;
          leastAt = next;
        }
        next += 1;
      }
      const open = leastAt >= 0 && height >= from && height <= to;
      sums.push(open ? least + (costs[i] ?? 0) : Number.POSITIVE_INFINITY);
      links.push(leastAt);
    });
    follows.push(links);
    before = { heights, costs: sums };
  }
  let at = -1;
  let cost = Number.POSITIVE_INFINITY;
  before.costs.forEach((sum, i) => {
    if (sum < cost) {
      cost = sum;
      at = i;
    }
  });
  if (at < 0) return null;
  const chosen: number[] = [];
  for (let i = all.length - 1; i >= 0; i -= 1) {
    chosen.unshift(at);
    at = follows[i]?.[at] ?? -1;
  }
  return { cost, chosen };
}
