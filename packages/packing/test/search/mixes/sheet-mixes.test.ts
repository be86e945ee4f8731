import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Problem } from "../../../src/index.js";
import { type CompiledProblem, compileProblem } from "../../../src/search/compiled-problem.js";
import { demandOf } from "../../../src/search/demand.js";
import { newMeter } from "../../../src/search/meter.js";
import { allMixes, nearMixes } from "../../../src/search/mixes/sheet-mixes.js";
import { type SheetNeed, sheetNeed } from "../../../src/search/mixes/sheet-need.js";
import { randomStream } from "../../../src/search/random-stream.js";

const sheet = fc.record({
  width: fc.integer({ min: 5, max: 40 }),
  height: fc.integer({ min: 5, max: 40 }),
  cost: fc.nat(6),
  stock: fc.integer({ min: 0, max: 3 }),
});
const piece = fc.record({
  width: fc.integer({ min: 2, max: 25 }),
  height: fc.integer({ min: 2, max: 25 }),
  quantity: fc.integer({ min: 1, max: 3 }),
});

/** Pieces that may not turn, and one to three sizes of sheets in short stock, offcuts among them. */
const problems = fc
  .record({
    sheets: fc.array(sheet, { minLength: 1, maxLength: 3 }),
    pieces: fc.array(piece, { minLength: 1, maxLength: 4 }),
    kerf: fc.nat(2),
  })
  .map(({ sheets, pieces, kerf }): Problem => {
    const kinds = pieces.map(({ width, height, quantity }, i) => {
      return { id: `${i}`, quantity, forms: [{ width, height, turns: "upright" as const }] };
    });
    return {
      kinds,
      sheets: sheets.map((s, i) => ({ id: `s${i}`, ...s })),
      mode: "guillotine",
      aim: "all",
      kerf,
    };
  });

/** Every number of each sheet in stock, with what they cost. */
function everyMix({ sheets }: CompiledProblem): readonly { counts: number[]; cost: number }[] {
  let mixes: { counts: number[]; cost: number }[] = [{ counts: [], cost: 0 }];
  for (const { stock, cost: each } of sheets) {
    mixes = mixes.flatMap(({ counts, cost }) =>
      Array.from({ length: stock + 1 }, (_, n) => ({ counts: [...counts, n], cost: cost + n * each })),
    );
  }
  return mixes;
}

/** Whether every piece has its area on the sheets that it fits, by trying all sets of sheets. */
function hasArea(problem: CompiledProblem, counts: readonly number[]): boolean {
  const gross = (size: { readonly width: number; readonly height: number }): number =>
    (size.width + problem.kerf) * (size.height + problem.kerf);
  for (let set = 0; set < 2 ** problem.sheets.length; set++) {
    const isIn = (index: number): boolean => Math.floor(set / 2 ** index) % 2 === 1;
    const given = problem.sheets.reduce((sum, s, i) => sum + (isIn(i) ? (counts[i] ?? 0) * gross(s) : 0), 0);
    let needed = 0;
    for (const { quantity, lays } of problem.kinds) {
      const [lay] = lays.flat();
      if (lay && lays.every((list, i) => list.length === 0 || isIn(i))) needed += quantity * gross(lay);
    }
    if (needed > given) return false;
  }
  return true;
}

const fitting = (problem: Problem): boolean => compileProblem(problem).kinds.every((kind) => kind.fits);
const keys = (mixes: readonly { readonly counts: readonly number[] }[]): readonly string[] =>
  mixes.map(({ counts }) => counts.join(" ")).sort();

describe("mixes of sheets", () => {
  test("are all those from the stock that cost less and have area enough, with all that costs nothing", () => {
    let found = 0;
    fc.assert(
      fc.property(problems.filter(fitting), fc.integer({ min: 1, max: 30 }), (source, below) => {
        const problem = compileProblem(source);
        const demand = demandOf(problem);
        const copies = demand.wanted.reduce((sum, count) => sum + count, 0);
        const need = sheetNeed(problem, demand);
        const mixes = allMixes(problem, demand, need, below, newMeter()) ?? [];
        const expected = everyMix(problem).filter(({ counts, cost }) => {
          const most = problem.sheets.map(({ stock }) => Math.min(stock, copies));
          const isSound = counts.every((n, i) => n <= (most[i] ?? 0));
          const hasFree = problem.sheets.every((s, i) => s.cost > 0 || counts[i] === most[i]);
          return isSound && hasFree && cost < below && hasArea(problem, counts);
        });
        expect(keys(mixes)).toEqual(keys(expected));
        for (const mix of mixes) {
          const sum = (of: (i: number) => number): number =>
            mix.counts.reduce((all, n, i) => all + n * of(i), 0);
          expect(mix.cost).toBe(sum((i) => problem.sheets[i]?.cost ?? 0));
        }
        found += mixes.length;
      }),
    );
    expect(found).toBeGreaterThan(100);
  });

  test("near those of a plan come from the stock, cost less and have area enough, too", () => {
    let found = 0;
    fc.assert(
      fc.property(problems.filter(fitting), fc.nat(1000), (source, seed) => {
        const problem = compileProblem(source);
        const demand = demandOf(problem);
        const need: SheetNeed = sheetNeed(problem, demand);
        const own = demand.stock;
        const cost = problem.sheets.reduce((sum, s) => sum + s.cost * s.stock, 0);
        const mixes = nearMixes(problem, demand, need, own, cost, randomStream(seed, 0), newMeter());
        const every = new Map(everyMix(problem).map((mix) => [mix.counts.join(" "), mix.cost]));
        for (const mix of mixes) {
          expect(every.get(mix.counts.join(" "))).toBe(mix.cost);
          expect(mix.cost).toBeLessThan(cost);
          expect(hasArea(problem, mix.counts)).toBe(true);
        }
        expect(new Set(keys(mixes)).size).toBe(mixes.length);
        found += mixes.length;
      }),
    );
    expect(found).toBeGreaterThan(50);
  });

  test("are not listed where there are too many", () => {
    const sheets = Array.from({ length: 40 }, (_, i) => ({ id: `${i}`, width: 10, height: 10 + i }));
    const kinds = [{ id: "piece", quantity: 100, forms: [{ width: 5, height: 5 }] }];
    const problem = compileProblem({ kinds, sheets, mode: "guillotine", aim: "all" });
    const demand = demandOf(problem);
    const need = sheetNeed(problem, demand);
    expect(allMixes(problem, demand, need, 4000, newMeter())).toBeUndefined();
    const own = problem.sheets.map(({ index }) => (index < 25 ? 1 : 0));
    const near = nearMixes(problem, demand, need, own, 5000, randomStream(1, 0), newMeter());
    expect(near.length).toBeGreaterThan(100);
  });
});
