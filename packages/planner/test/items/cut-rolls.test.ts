import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutInBlocks } from "../../src/items/cut-in-blocks.js";
import { cutRolls, type LengthCount } from "../../src/items/cut-rolls.js";
import { largestFill } from "../../src/items/largest-fill.js";
import { leastRolls } from "../../src/items/least-rolls.js";

/** The fewest rolls by trying every roll for every single length, the longest first; a roll of its own is tried last. */
function bruteForce(lengths: readonly LengthCount[], roll: number): number {
  const singles = lengths
    .flatMap(({ length, count }) => Array.from({ length: count }, () => length))
    .sort((a, b) => b - a);
  let best = singles.length;
  const place = (i: number, free: readonly number[]): void => {
    if (free.length >= best) return;
    const length = singles[i];
    if (length === undefined) {
      best = free.length;
      return;
    }
    free.forEach((one, r) => {
      if (one >= length && free.indexOf(one) === r)
        place(
          i + 1,
          free.map((other, at) => (at === r ? one - length : other)),
        );
    });
    place(i + 1, [...free, roll - length]);
  };
  place(0, []);
  return best;
}

/** Lengths no longer than a roll, each once. */
const cases = (most: number, count: number) =>
  fc.integer({ min: 1, max: 60 }).chain((roll) =>
    fc.record({
      roll: fc.constant(roll),
      lengths: fc.uniqueArray(
        fc.record({ length: fc.integer({ min: 1, max: roll }), count: fc.integer({ min: 0, max: count }) }),
        { selector: ({ length }) => length, maxLength: most },
      ),
    }),
  );

/** What all rolls of some cuts give of each length, and whether each holds what is cut of it. */
function totals({ cuts, rolls }: ReturnType<typeof cutRolls>, roll: number) {
  const given = new Map<number, number>();
  for (const { rolls: alike, lengths } of cuts) {
    expect(alike).toBeGreaterThan(0);
    expect(lengths.reduce((sum, { length, count }) => sum + length * count, 0)).toBeLessThanOrEqual(roll);
    for (const { length, count } of lengths) given.set(length, (given.get(length) ?? 0) + alike * count);
  }
  expect(cuts.reduce((sum, one) => sum + one.rolls, 0)).toBe(rolls);
  return given;
}

describe("lengths from rolls", () => {
  it("take a roll each where two do not go on one, whatever they come to in all", () => {
    // Two of 20 from rolls of 30: 40 of 60, but 10 is left of each.
    expect(cutRolls([{ length: 20, count: 2 }], 30)).toEqual({
      cuts: [{ rolls: 2, lengths: [{ length: 20, count: 1 }] }],
      rolls: 2,
      atLeast: 2,
    });
  });

  it("fill rolls with several lengths, alike where that goes", () => {
    // 6 + 4, twice; longest first does the same.
    expect(
      cutRolls(
        [
          { length: 4, count: 2 },
          { length: 6, count: 2 },
        ],
        10,
      ).cuts,
    ).toEqual([
      {
        rolls: 2,
        lengths: [
          { length: 6, count: 1 },
          { length: 4, count: 1 },
        ],
      },
    ]);
  });

  it("find two rolls where longest first takes three", () => {
    // 7, 7, 5, 5, 3, 3 by rolls of 15: 7 + 5 + 3 twice. Longest first takes 7 + 7, 5 + 5 + 3 and 3.
    const lengths = [7, 5, 3].map((length) => ({ length, count: 2 }));
    expect(cutRolls(lengths, 15)).toEqual({
      cuts: [{ rolls: 2, lengths: [7, 5, 3].map((length) => ({ length, count: 1 })) }],
      rolls: 2,
      atLeast: 2,
    });
  });

  it("say at least so many where more is not proven", () => {
    // Forty each are more cases than are gone through.
    const lengths = [34, 33, 51, 49].map((length) => ({ length, count: 40 }));
    const { rolls, atLeast } = cutRolls(lengths, 100);
    // They come to 6680. By hand: 40 of 51 + 49, 20 of 34 + 33 + 33, and the other 20 of 34 by twos on 10.
    expect(atLeast).toBeGreaterThanOrEqual(67);
    expect(rolls).toBeLessThanOrEqual(70);
    expect(rolls).toBeGreaterThanOrEqual(atLeast);
  });

  it("are nearly as few as can be for thousands of copies, by what is best for some of them", () => {
    const lengths = [27, 20].map((length) => ({ length, count: 9997 }));
    const { rolls, atLeast, cuts } = cutRolls(lengths, 432);
    // By hand: 466 rolls of 16 of 27, 624 of 4 of 27 and 16 of 20, and 4 of 13 of 27 and 4 of 20, some not full; the longest
    // first and rolls as full as can be both take 1101.
    expect(rolls).toBe(466 + 624 + 4);
    // 9997 * 47 is 1087.6 rolls.
    expect(atLeast).toBeGreaterThanOrEqual(1088);
    expect(atLeast).toBeLessThanOrEqual(rolls);
    expect([...totals({ cuts, rolls, atLeast }, 432)]).toEqual(
      expect.arrayContaining([
        [27, 9997],
        [20, 9997],
      ]),
    );
  });

  it("are still cut together where they are too many to be gone through though each is wanted once", () => {
    // Sixteen lengths are 65,536 cases. Four of the shortest are 406, so a roll holds three at most: six rolls for sixteen.
    const lengths = Array.from({ length: 16 }, (_, i) => ({ length: 100 + i, count: 1 }));
    const { rolls, atLeast } = cutRolls(lengths, 330);
    expect([rolls, atLeast]).toEqual([6, 6]);
    // By parts that are repeated there is no help: a roll for each.
    expect(cutInBlocks(lengths, 330).map((one) => one.rolls)).toEqual(lengths.map(() => 1));
  });

  it("are as few as brute force finds, and proven, in small cases", () => {
    fc.assert(
      fc.property(cases(4, 3), ({ roll, lengths }) => {
        const found = cutRolls(lengths, roll);
        const least = bruteForce(lengths, roll);
        expect([found.rolls, found.atLeast]).toEqual([least, least]);
        const given = totals(found, roll);
        for (const { length, count } of lengths) expect(given.get(length) ?? 0).toBe(count);
        expect(leastRolls(lengths, roll)).toBeLessThanOrEqual(least);
      }),
    );
  });

  it("are all cut in large cases, from no fewer rolls than is proven", () => {
    fc.assert(
      fc.property(cases(8, 2000), ({ roll, lengths }) => {
        const found = cutRolls(lengths, roll);
        const given = totals(found, roll);
        for (const { length, count } of lengths) expect(given.get(length) ?? 0).toBe(count);
        expect(found.atLeast).toBeLessThanOrEqual(found.rolls);
      }),
    );
  });

  it("are refused where one is longer than a roll, and none take none", () => {
    expect(() => cutRolls([{ length: 31, count: 1 }], 30)).toThrow(RangeError);
    expect(cutRolls([{ length: 31, count: 0 }], 30)).toEqual({ cuts: [], rolls: 0, atLeast: 0 });
  });

  it("fill a roll as far as they can, each as often as it is there", () => {
    fc.assert(
      fc.property(cases(4, 4), ({ roll, lengths }) => {
        const sums = lengths.reduce<readonly number[]>(
          (before, { length, count }) =>
            before.flatMap((sum) => Array.from({ length: count + 1 }, (_, n) => sum + n * length)),
          [0],
        );
        const best = Math.max(...sums.filter((sum) => sum <= roll));
        const fill = largestFill(lengths, roll);
        expect(fill?.filled).toBe(best);
        expect(fill?.counts.reduce((sum, n, i) => sum + n * (lengths[i]?.length ?? 0), 0)).toBe(best);
        for (const [i, n] of (fill?.counts ?? []).entries())
          expect(n).toBeLessThanOrEqual(lengths[i]?.count ?? 0);
      }),
    );
  });
});
