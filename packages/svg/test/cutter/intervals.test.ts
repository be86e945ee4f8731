import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Interval, mergeIntervals, overlapsAny, subtractIntervals } from "../../src/cutter/intervals.js";

const interval: fc.Arbitrary<Interval> = fc
  .tuple(fc.nat(40), fc.integer({ min: 1, max: 15 }))
  .map(([from, length]) => [from, from + length]);
const intervals = fc.array(interval, { maxLength: 8 });
/** Unit steps that intervals with whole ends are made of. */
const stepsOf = (all: readonly Interval[]) =>
  new Set(all.flatMap(([from, to]) => Array.from({ length: to - from }, (_, i) => from + i)));

describe("intervals", () => {
  test("that overlap or touch are merged", () => {
    expect(
      mergeIntervals([
        [5, 7],
        [0, 2],
        [2, 4],
        [6, 9],
      ]),
    ).toEqual([
      [0, 4],
      [5, 9],
    ]);
  });

  test("lose what is taken from them", () => {
    expect(
      subtractIntervals(
        [[0, 10]],
        [
          [2, 3],
          [8, 12],
        ],
      ),
    ).toEqual([
      [0, 2],
      [3, 8],
    ]);
    expect(subtractIntervals([[0, 10]], [[0, 10]])).toEqual([]);
  });

  test("overlap where they share some length, not where they touch", () => {
    expect(overlapsAny([0, 5], [[5, 9]])).toBe(false);
    expect(overlapsAny([0, 5], [[4, 9]])).toBe(true);
  });

  test("cover after merging and subtracting just what they should, in order and apart", () => {
    fc.assert(
      fc.property(intervals, intervals, (all, without) => {
        const merged = mergeIntervals(all);
        expect(stepsOf(merged)).toEqual(new Set([...stepsOf(all)].sort((a, b) => a - b)));
        const left = subtractIntervals(all, without);
        const holes = stepsOf(without);
        expect(stepsOf(left)).toEqual(new Set([...stepsOf(merged)].filter((step) => !holes.has(step))));
        for (const list of [merged, left]) {
          list.slice(1).forEach(([from], i) => {
            expect(from).toBeGreaterThan((list[i] as Interval)[1]);
          });
        }
      }),
    );
  });
});
