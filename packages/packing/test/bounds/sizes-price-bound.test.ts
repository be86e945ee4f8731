import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lowerBounds } from "../../src/bounds/lower-bound.js";
import { type Bound, type Packing, type Problem, pack, verify } from "../../src/index.js";
import { compileProblem } from "../../src/search/compiled-problem.js";

const severalSizes: fc.Arbitrary<Problem> = fc
  .record({
    pieces: fc.array(
      fc.tuple(
        fc.integer({ min: 9, max: 40 }),
        fc.integer({ min: 9, max: 40 }),
        fc.integer({ min: 1, max: 5 }),
        fc.boolean(),
      ),
      { minLength: 3, maxLength: 7 },
    ),
    sheets: fc.array(
      fc.record({
        width: fc.integer({ min: 40, max: 70 }),
        height: fc.integer({ min: 40, max: 70 }),
        stock: fc.constantFrom(null, null, 2, 6),
        cost: fc.integer({ min: 1, max: 30 }),
      }),
      { minLength: 2, maxLength: 3 },
    ),
    mode: fc.constantFrom("guillotine" as const, "shelf" as const),
    kerf: fc.constantFrom(0, 1),
  })
  .map(({ pieces, sheets, mode, kerf }) => ({
    kinds: pieces.map(([width, height, quantity, mayTurn], i) => ({
      id: `k${i}`,
      quantity,
      forms: [{ width, height, turns: mayTurn ? "both" : "upright" }],
    })),
    sheets: sheets.map((sheet, i) => ({ id: `s${i}`, ...sheet })),
    mode,
    aim: "all" as const,
    kerf,
  }));

/** A packing with another bound, which says of itself whether it reaches that. */
function withBound(packing: Packing, bound: Bound): Packing {
  const cost = bound.aim === "all" ? bound.cost : null;
  const isComplete = packing.missing.length === 0;
  const outcome = isComplete ? "complete" : cost === null ? "short" : "not-found";
  return { ...packing, bound, outcome, proven: outcome === "short" || (isComplete && cost === packing.cost) };
}

describe("bounds by prices for several sizes of sheets", () => {
  test("hold by the verifier, pass the other bounds now and then, and never what a plan costs", () => {
    let raised = 0;
    fc.assert(
      fc.property(severalSizes, (problem) => {
        const [first, second] = [...lowerBounds(compileProblem(problem), "standard")];
        if (second === undefined) return;
        expect(second.certificate.type).toBe("prices");
        raised++;
        const packing = pack(problem, { effort: "quick" });
        expect(verify(problem, withBound(packing, second))).toEqual([]);
        if (first?.aim !== "all" || second.aim !== "all") throw new Error("The aim is all.");
        if (second.cost === null) expect(packing.missing).not.toEqual([]);
        else {
          expect(BigInt(second.cost)).toBeGreaterThanOrEqual(BigInt(first.cost ?? 0));
          if (packing.missing.length === 0) {
            expect(BigInt(packing.cost)).toBeGreaterThanOrEqual(BigInt(second.cost));
          }
        }
      }),
    );
    expect(raised).toBeGreaterThan(5);
  });

  test("prove a plan that others leave open", () => {
    // By hand: at prices of 8, 16 and 5 a small sheet carries 20 at most (four squares) and a large one 32 (two tall and
    // nothing else, or two wide and one tall), both 4 for each unit of cost. All pieces are worth 145, so they cost 37.
    const problem: Problem = {
      kinds: [
        { id: "wide", quantity: 5, forms: [{ width: 36, height: 22, turns: "upright" }] },
        { id: "tall", quantity: 5, forms: [{ width: 22, height: 30, turns: "upright" }] },
        { id: "square", quantity: 5, forms: [{ width: 20, height: 20 }] },
      ],
      sheets: [
        { id: "small", width: 40, height: 40, cost: 5 },
        { id: "large", width: 60, height: 45, cost: 8 },
      ],
      mode: "guillotine",
      aim: "all",
    };
    const packing = pack(problem, { effort: "standard" });
    expect(verify(problem, packing)).toEqual([]);
    const [byArea] = [...lowerBounds(compileProblem(problem), "standard")];
    expect(byArea?.aim === "all" && byArea.cost).toBe("34");
    expect(packing).toMatchObject({ cost: "37", proven: true, bound: { cost: "37" } });
  });
});
