import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { guillotineTable } from "../../src/bounds/guillotine-value.js";
import { patternRows } from "../../src/columns/pattern.js";
import { stripFiller } from "../../src/columns/strip-layouts.js";
import { type Layout, type Packing, type Problem, pack, verify } from "../../src/index.js";
import { compileProblem } from "../../src/search/compiled-problem.js";

interface Case {
  readonly pieces: readonly (readonly [width: number, height: number, price: number])[];
  readonly width: number;
  readonly height: number;
  readonly kerf: number;
  readonly mayTurn: boolean;
  readonly axis: "x" | "y";
}

const cases: fc.Arbitrary<Case> = fc.record({
  pieces: fc.array(
    fc.tuple(fc.integer({ min: 2, max: 9 }), fc.integer({ min: 2, max: 9 }), fc.integer({ min: 1, max: 60 })),
    { minLength: 1, maxLength: 4 },
  ),
  width: fc.integer({ min: 6, max: 22 }),
  height: fc.integer({ min: 6, max: 22 }),
  kerf: fc.constantFrom(0, 1),
  mayTurn: fc.boolean(),
  axis: fc.constantFrom("x" as const, "y" as const),
});

const problemOf = ({ pieces, width, height, kerf, mayTurn }: Case, mode: Problem["mode"]): Problem => ({
  kinds: pieces.map(([w, h], i) => ({
    id: `k${i}`,
    quantity: 200,
    forms: [{ width: w, height: h, turns: mayTurn ? "both" : "upright" }],
  })),
  sheets: [{ id: "sheet", width, height }],
  mode,
  aim: "all",
  kerf,
});

/** The most value in strips, by trying every piece at every place: the slow and plain way. */
function plainBest({ pieces, width, height, kerf, mayTurn, axis }: Case): number {
  const [length, room] = axis === "y" ? [width + kerf, height + kerf] : [height + kerf, width + kerf];
  const lying = pieces.flatMap(([w, h, price]) => {
    const upright = { w: w + kerf, h: h + kerf, price };
    return mayTurn ? [upright, { w: h + kerf, h: w + kerf, price }] : [upright];
  });
  const items = lying
    .map(({ w, h, price }) => (axis === "y" ? { long: w, high: h, price } : { long: h, high: w, price }))
    .filter(({ long, high }) => long <= length && high <= room);
  const inStrip = (high: number): number => {
    const best = [0];
    for (let at = 1; at <= length; at++) {
      const options = items.filter((item) => item.high <= high && item.long <= at);
      best.push(
        Math.max(best[at - 1] ?? 0, ...options.map((item) => item.price + (best[at - item.long] ?? 0))),
      );
    }
    return best[length] ?? 0;
  };
  const strips = [...new Set(items.map((item) => item.high))].map((high) => ({ high, value: inStrip(high) }));
  const best = [0];
  for (let at = 1; at <= room; at++) {
    const options = strips.filter(({ high }) => high <= at);
    best.push(
      Math.max(best[at - 1] ?? 0, ...options.map(({ high, value }) => value + (best[at - high] ?? 0))),
    );
  }
  return best[room] ?? 0;
}

const weigh = ({ pieces }: Case, counts: Float64Array): number =>
  pieces.reduce((sum, [, , price], i) => sum + price * (counts[i] ?? 0), 0);

/** A packing that consists of one layout, as the verifier takes it. */
function packingOf(problem: Problem, counts: Float64Array, layout: Layout): Packing {
  const kinds = problem.kinds.map((kind, i) => ({ ...kind, quantity: counts[i] ?? 0 }));
  const other = pack({ ...problem, kinds }, { effort: "quick" });
  const sheets = layout.run;
  const cost = `${BigInt(sheets * (problem.sheets[0]?.width ?? 0) * (problem.sheets[0]?.height ?? 0))}`;
  const proven = other.bound.aim === "all" && other.bound.cost === cost;
  return { ...other, layouts: [layout], sheets, cost, proven };
}

const asOffcuts = (node: Layout["tree"]): Layout["tree"] =>
  node.type === "split"
    ? { ...node, parts: node.parts.map((part) => ({ ...part, node: asOffcuts(part.node) })) }
    : node.type === "waste"
      ? { type: "offcut" }
      : node;

describe("layouts in strips", () => {
  test("of two stages are worth as much as the plain way finds", () => {
    fc.assert(
      fc.property(cases, (one) => {
        const problem = compileProblem(problemOf(one, "shelf"));
        const rows = patternRows(
          problem,
          problem.kinds.map((kind) => kind.quantity),
        );
        const sheet = problem.sheets[0];
        const filler = sheet && stripFiller(problem, rows, sheet, one.axis, false);
        const prices = Float64Array.from(rows.kinds, (kind) => one.pieces[kind.index]?.[2] ?? 0);
        const counts = new Float64Array(one.pieces.length);
        const layout = filler?.best(prices);
        rows.kinds.forEach((kind, row) => {
          counts[kind.index] = layout?.counts[row] ?? 0;
        });
        expect(weigh(one, counts)).toBe(plainBest(one));
      }),
    );
  });

  test("of three stages are worth at least as much, and no more than any edge-to-edge cuts give", () => {
    let more = 0;
    fc.assert(
      fc.property(cases, (one) => {
        const problem = compileProblem(problemOf(one, "guillotine"));
        const rows = patternRows(
          problem,
          problem.kinds.map((kind) => kind.quantity),
        );
        const [sheet] = problem.sheets;
        const prices = Float64Array.from(rows.kinds, (kind) => one.pieces[kind.index]?.[2] ?? 0);
        if (sheet === undefined || rows.kinds.length === 0) return;
        const value = (stacks: boolean): number => {
          const counts = stripFiller(problem, rows, sheet, one.axis, stacks)?.best(prices)?.counts;
          return (counts ?? prices.map(() => 0)).reduce(
            (sum, count, row) => sum + count * (prices[row] ?? 0),
            0,
          );
        };
        const any = guillotineTable(problem, rows.kinds, sheet, 1e9)?.most(prices) ?? 0;
        expect(value(true)).toBeGreaterThanOrEqual(value(false));
        expect(value(true)).toBeLessThanOrEqual(any);
        if (value(true) > value(false)) more++;
      }),
    );
    expect(more).toBeGreaterThan(0);
  });

  test("can be cut as they stand, with the copies they count, and with no more than there are where that is asked", () => {
    fc.assert(
      fc.property(cases, fc.boolean(), fc.integer({ min: 1, max: 6 }), (one, stacks, most) => {
        const source = problemOf(one, stacks ? "guillotine" : "shelf");
        const problem = compileProblem(source);
        const rows = patternRows(
          problem,
          problem.kinds.map((kind) => kind.quantity),
        );
        const [sheet] = problem.sheets;
        const filler = sheet && stripFiller(problem, rows, sheet, one.axis, stacks);
        const prices = Float64Array.from(rows.kinds, (kind) => one.pieces[kind.index]?.[2] ?? 0);
        const left = stacks ? undefined : new Float64Array(rows.kinds.length).fill(most);
        const layout = filler?.best(prices, left);
        if (layout === undefined) return;
        for (const count of layout.counts) expect(count).toBeLessThanOrEqual(left ? most : Number.MAX_VALUE);
        const counts = new Float64Array(one.pieces.length);
        rows.kinds.forEach((kind, row) => {
          counts[kind.index] = layout.counts[row] ?? 0;
        });
        const asked = {
          ...source,
          kinds: source.kinds.map((kind, i) => ({ ...kind, quantity: counts[i] ?? 0 })),
        };
        const packing = packingOf(source, counts, { sheet: "sheet", run: 1, tree: asOffcuts(layout.tree) });
        expect(verify(asked, packing).filter(({ code }) => code !== "wrong-outcome")).toEqual([]);
      }),
    );
  });
});
