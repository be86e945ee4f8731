import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutRolls } from "../../src/items/cut-rolls.js";
import { leastRolls } from "../../src/items/least-rolls.js";
import { takesAtLeast } from "../../src/verify/prove-rolls.js";

const cases = (most: number, count: number) =>
  fc.integer({ min: 1, max: 60 }).chain((roll) =>
    fc.record({
      roll: fc.constant(roll),
      lengths: fc.uniqueArray(
        fc.record({ length: fc.integer({ min: 1, max: roll }), count: fc.integer({ min: 1, max: count }) }),
        { selector: ({ length }) => length, maxLength: most },
      ),
    }),
  );

describe("the proof of fewest rolls", () => {
  it("goes through all ways where no bound shows it", () => {
    // A 12 leaves 8 of 20, room for one 5: three of 12 take three of 5 with them, and the fourth 5 has a roll of its own,
    // though all come to 56 and three rolls are 60.
    const lengths = [
      { length: 12, count: 3 },
      { length: 5, count: 4 },
    ];
    const wanted = new Map(lengths.map(({ length, count }) => [length, count]));
    expect(leastRolls(lengths, 20)).toBe(3);
    expect(cutRolls(lengths, 20)).toMatchObject({ rolls: 4, atLeast: 4 });
    expect(takesAtLeast(4, wanted, 20)).toBe(true);
    expect(takesAtLeast(5, wanted, 20)).toBe(false);
  });

  it("proves whatever is said of small cases, and no roll more", () => {
    fc.assert(
      fc.property(cases(5, 3), ({ roll, lengths }) => {
        const wanted = new Map(lengths.map(({ length, count }) => [length, count]));
        const { atLeast, rolls } = cutRolls(lengths, roll);
        expect(takesAtLeast(atLeast, wanted, roll)).toBe(true);
        expect(takesAtLeast(rolls + 1, wanted, roll)).toBe(false);
      }),
    );
  });

  it("proves whatever is said of large cases, and nothing that was found to be wrong", () => {
    fc.assert(
      fc.property(cases(8, 2000), ({ roll, lengths }) => {
        const wanted = new Map(lengths.map(({ length, count }) => [length, count]));
        const { atLeast, rolls } = cutRolls(lengths, roll);
        expect(takesAtLeast(atLeast, wanted, roll)).toBe(true);
        expect(takesAtLeast(rolls + 1, wanted, roll)).toBe(false);
      }),
    );
  });

  it("takes lengths in ticks of a long roll, of which no two share a step", () => {
    // 100 m by 7 in and a tick: 562 of them, so that 1000 take two rolls.
    const [roll, length] = [160_000_000, 284_481];
    expect(takesAtLeast(2, new Map([[length, 1000]]), roll)).toBe(true);
    expect(cutRolls([{ length, count: 1000 }], roll)).toMatchObject({ rolls: 2, atLeast: 2 });
  });
});
