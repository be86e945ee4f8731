import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Packing, type Problem, pack, verify } from "../src/index.js";
import { type SmallStock, smallStock } from "./small-stock.js";
import { smallStockProblem } from "./small-stock-problems.js";

interface Case {
  readonly problem: Problem;
  readonly stock: SmallStock;
}

/** Three hundred problems, always the same ones. */
function casesOf(aim: "all" | "fill"): readonly Case[] {
  const problems = fc.sample(smallStockProblem(aim), { seed: 20260101, numRuns: 300 });
  return problems.map((problem) => ({ problem, stock: smallStock(problem) }));
}

/** The plan at `quick`, or at `standard` where that one is not what it should be. */
function packUntil(problem: Problem, isBest: (packing: Packing) => boolean): Packing {
  const quick = pack(problem, { effort: "quick" });
  return isBest(quick) ? quick : pack(problem, { effort: "standard" });
}

const placedIn = (packing: Packing): readonly number[] => packing.placed.map(({ count }) => count);

const hasGroup = ({ problem }: Case): boolean => problem.kinds.some((kind) => kind.together !== undefined);

describe("300 small problems on two sizes of sheets with limited stock", () => {
  const all = casesOf("all");
  const possible = all.filter(({ stock }) => stock.leastCost() !== undefined);
  const short = all.filter(({ stock }) => stock.leastCost() === undefined);

  test("cost what looking at everything finds, where the stock gives every piece", () => {
    let atQuick = 0;
    let proven = 0;
    for (const { problem, stock } of possible) {
      const least = String(stock.leastCost());
      const packing = packUntil(problem, ({ outcome, cost }) => outcome === "complete" && cost === least);
      expect(packing, JSON.stringify(problem)).toMatchObject({ outcome: "complete", cost: least });
      expect(verify(problem, packing)).toEqual([]);
      if (packing.search.effort === "quick") atQuick++;
      if (packing.proven) proven++;
    }
    expect([possible.length, possible.filter(hasGroup).length]).toEqual([177, 49]);
    expect(atQuick).toBeGreaterThanOrEqual(174);
    expect(proven).toBeGreaterThanOrEqual(160);
  });

  test("are bounded by no more than that, and called short only where they are", () => {
    for (const { problem, stock } of possible) {
      const { bound, outcome } = pack(problem, { effort: "quick" });
      expect(outcome).not.toBe("short");
      expect(Number((bound.aim === "all" && bound.cost) ?? "none")).toBeLessThanOrEqual(
        stock.leastCost() as number,
      );
    }
  });

  test("give the complete sets of the rule where the stock is short, and of such plans one of the most value", () => {
    let provenShort = 0;
    let withSets = 0;
    for (const { problem, stock } of short) {
      const least = stock.forSets();
      const { value } = stock.mostValue(least);
      const packing = packUntil(
        problem,
        (found) => found.value === String(value) && placedIn(found).every((n, k) => n >= (least[k] ?? 0)),
      );
      expect(packing.outcome).not.toBe("complete");
      expect(packing.value, JSON.stringify(problem)).toBe(String(value));
      placedIn(packing).forEach((count, k) => {
        expect(count).toBeGreaterThanOrEqual(least[k] as number);
      });
      expect(verify(problem, packing)).toEqual([]);
      if (packing.outcome === "short") provenShort++;
      if (stock.sets().size > 0) withSets++;
    }
    expect([short.length, withSets, short.filter(hasGroup).length]).toEqual([123, 116, 52]);
    expect(provenShort).toBeGreaterThanOrEqual(110);
  });

  test("are filled with the least numbers and then the most value, none below its bound", () => {
    let least = 0;
    let proven = 0;
    for (const { problem, stock } of casesOf("fill")) {
      const asked = problem.kinds.map((kind) => kind.least ?? 0);
      if (!stock.gives(asked)) {
        expect(pack(problem, { effort: "quick" }).outcome).not.toBe("complete");
        continue;
      }
      const { value } = stock.mostValue(asked);
      const packing = packUntil(
        problem,
        (found) => found.outcome === "complete" && found.value === String(value),
      );
      expect(packing, JSON.stringify(problem)).toMatchObject({ outcome: "complete", value: String(value) });
      expect(verify(problem, packing)).toEqual([]);
      expect(Number(packing.bound.aim === "fill" && packing.bound.value)).toBeGreaterThanOrEqual(value);
      if (asked.some((count) => count > 0)) least++;
      if (packing.proven) proven++;
    }
    expect(least).toBeGreaterThanOrEqual(90);
    expect(proven).toBeGreaterThanOrEqual(250);
  });
});

describe("one sheet that is filled", () => {
  const kind = fc.record({
    width: fc.integer({ min: 4, max: 14 }),
    height: fc.integer({ min: 4, max: 14 }),
    quantity: fc.integer({ min: 1, max: 3 }),
    least: fc.nat(2),
    value: fc.nat(99),
    together: fc.constantFrom(undefined, "seam"),
  });

  test("holds the least numbers and then the most value, at the first effort", () => {
    let exact = 0;
    fc.assert(
      fc.property(fc.array(kind, { minLength: 1, maxLength: 3 }), fc.nat(2), (kinds, kerf) => {
        const problem: Problem = {
          kinds: kinds.map(({ width, height, least, ...entry }, i) => {
            return {
              id: `k${i}`,
              ...entry,
              least: Math.min(least, entry.quantity),
              forms: [{ width, height }],
            };
          }),
          sheets: [{ id: "sheet", width: 24, height: 20, stock: 1 }],
          mode: "guillotine",
          aim: "fill",
          kerf,
        };
        const stock = smallStock(problem);
        const least = problem.kinds.map((entry) => entry.least ?? 0);
        const packing = pack(problem, { effort: "quick" });
        expect(verify(problem, packing)).toEqual([]);
        expect(packing.outcome === "complete").toBe(stock.gives(least));
        if (packing.outcome !== "complete") return;
        expect(packing.value).toBe(String(stock.mostValue(least).value));
        if (!packing.proven && packing.search.steps === 0) exact++;
      }),
    );
    // Where no bound is reached, a look at all layouts still ends the search.
    expect(exact).toBeGreaterThan(5);
  });
});

describe("a stock that is short", () => {
  const sheets = [{ id: "sheet", width: 100, height: 100, stock: 2 }];
  const kind = (id: string, quantity: number, of: string | undefined, each = 1, width = 50) => ({
    id,
    quantity,
    forms: [{ width, height: 50 }],
    ...(of === undefined ? {} : { set: { of, each } }),
  });
  const setsIn = (kinds: Problem["kinds"], stock = 2): readonly number[] => {
    const problem: Problem = {
      kinds,
      sheets: [{ ...(sheets[0] as (typeof sheets)[0]), stock }],
      mode: "guillotine",
      aim: "all",
    };
    const packing = pack(problem, { effort: "quick" });
    expect(verify(problem, packing)).toEqual([]);
    return placedIn(packing);
  };

  test("gives every set the same share before any gets more", () => {
    // Eight places: halves are three, one (of one and a half) and three; the eighth place is the first set's.
    expect(setsIn([kind("a", 6, "a"), kind("b", 3, "b"), kind("c", 6, "c")])).toEqual([4, 1, 3]);
  });

  test("goes on with the sets that can grow once the others cannot", () => {
    // Nothing of the large set fits; the small one still gets all it can.
    expect(setsIn([kind("large", 2, "a", 1, 120), kind("small", 9, "b")])).toEqual([0, 8]);
  });

  test("puts one complete set before a larger piece that belongs to none", () => {
    expect(
      setsIn([kind("loose", 2, undefined, 1, 100), kind("front", 1, "card"), kind("back", 1, "card")], 1),
    ).toEqual([1, 1, 1]);
    expect(
      setsIn([kind("loose", 2, undefined, 1, 90), kind("front", 2, "card"), kind("back", 2, "card")], 1),
    ).toEqual([0, 2, 2]);
  });

  test("counts the copies that one set takes", () => {
    // Three flaps a set: two sets take eight places.
    expect(setsIn([kind("base", 3, "card"), kind("flap", 9, "card", 3)])).toEqual([2, 6]);
  });
});

describe("kinds that belong together, on sheets of several sizes", () => {
  const pair: Problem["kinds"] = [
    { id: "left", quantity: 1, forms: [{ width: 40, height: 60 }], together: "seam" },
    { id: "right", quantity: 1, forms: [{ width: 40, height: 60 }], together: "seam" },
  ];
  const offcut = { id: "offcut", width: 60, height: 60, stock: 2, cost: 0 };

  test("come from one dear sheet though two offcuts would give each of them for nothing", () => {
    const problem: Problem = {
      kinds: pair,
      sheets: [offcut, { id: "whole", width: 100, height: 80, cost: 9 }],
      mode: "guillotine",
      aim: "all",
    };
    const packing = pack(problem, { effort: "quick" });
    expect(packing).toMatchObject({ outcome: "complete", cost: "9" });
    expect(verify(problem, packing)).toEqual([]);
  });

  test("are cut from one sheet as far as it goes, where none has room for all", () => {
    const problem: Problem = { kinds: pair, sheets: [offcut], mode: "guillotine", aim: "all" };
    const packing = pack(problem, { effort: "quick" });
    expect(packing.placed.map(({ count }) => count).sort()).toEqual([0, 1]);
    expect(verify(problem, packing)).toEqual([]);
    expect(pack({ ...problem, aim: "fill" }, { effort: "quick" })).toMatchObject({
      sheets: 1,
      value: "2400",
    });
  });

  test("move to another sheet as a whole", () => {
    // Best fit lays the pair on the large sheet, where the wide piece must be.
    const problem: Problem = {
      kinds: [...pair, { id: "wide", quantity: 1, forms: [{ width: 95, height: 60, turns: "upright" }] }],
      sheets: [
        { id: "large", width: 100, height: 70, stock: 1 },
        { id: "small", width: 85, height: 60, stock: 1 },
      ],
      mode: "guillotine",
      aim: "all",
    };
    expect(pack(problem, { effort: "quick" }).outcome).toBe("complete");
  });
});
