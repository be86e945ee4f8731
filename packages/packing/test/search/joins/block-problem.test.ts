import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Problem } from "../../../src/index.js";
import { pack } from "../../../src/index.js";
import { compileProblem } from "../../../src/search/compiled-problem.js";
import { draftFromTrees } from "../../../src/search/draft.js";
import { piecesAsBlocks } from "../../../src/search/joins/block.js";
import { blockProblem } from "../../../src/search/joins/block-problem.js";
import { blankSheets, joinBlocks, longestJoin } from "../../../src/search/joins/join-blocks.js";
import { randomStream } from "../../../src/search/random-stream.js";
import { layTable } from "../../../src/search/trees/lay-table.js";

const kind = fc.record({
  width: fc.integer({ min: 2, max: 6 }),
  height: fc.integer({ min: 2, max: 6 }),
  quantity: fc.integer({ min: 1, max: 4 }),
  turns: fc.constantFrom("upright" as const, "both" as const),
});

const problems = fc.record({ kinds: fc.array(kind, { minLength: 2, maxLength: 5 }), kerf: fc.nat(1) }).map(
  ({ kinds, kerf }): Problem => ({
    kinds: kinds.map(({ width, height, quantity, turns }, i) => {
      return { id: `k${i}`, quantity, forms: [{ width, height, turns }] };
    }),
    sheets: [
      { id: "a", width: 14, height: 11 },
      { id: "b", width: 10, height: 17 },
    ],
    mode: "guillotine",
    aim: "all",
    kerf,
  }),
);

describe("blockProblem", () => {
  test("leads from a plan of blocks back to one of all pieces, which costs as much", () => {
    fc.assert(
      fc.property(problems, fc.nat(99), fc.nat(20), (source, seed, least) => {
        const problem = compileProblem(source);
        const wanted = source.kinds.map(({ quantity }) => quantity ?? 0);
        const table = layTable(problem, wanted);
        const pieces = piecesAsBlocks(problem, wanted);
        const sheets = blankSheets(problem, { wanted, stock: [9, 9] }, pieces.length);
        const random = randomStream(seed, 0);
        const joined = joinBlocks(pieces, sheets, problem.kerf, longestJoin(problem), random, least);
        expect(joined.whole.length + joined.left.length).toBeGreaterThanOrEqual(
          Math.min(least, pieces.length),
        );
        const blocks = blockProblem(problem, table, [
          ...joined.whole.map(({ block }) => block),
          ...joined.left,
        ]);
        if (blocks === undefined) throw new Error("Every block fits some sheet.");
        const packing = pack(blocks.problem.source, { effort: "quick", seed: 1 });
        const single = packing.layouts.flatMap(({ sheet, run, tree }) =>
          run === 1 ? [{ sheet, run, tree }] : [],
        );
        if (single.length < packing.layouts.length || packing.outcome !== "complete") return;
        const draft = blocks.expand(draftFromTrees(blocks.problem, single));
        expect([draft?.placed, draft?.cost]).toEqual([wanted, Number(packing.cost)]);
      }),
    );
  });

  test("gives no plan where a block is missing", () => {
    const source: Problem = {
      kinds: [{ id: "mat", quantity: 2, forms: [{ width: 5, height: 4, turns: "upright" }] }],
      sheets: [{ id: "a", width: 10, height: 9 }],
      mode: "guillotine",
      aim: "all",
    };
    const problem = compileProblem(source);
    const blocks = blockProblem(problem, layTable(problem, [2]), piecesAsBlocks(problem, [2]));
    expect(blocks?.expand(draftFromTrees(blocks.problem, []))).toBeUndefined();
  });
});
