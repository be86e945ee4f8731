import { readProject } from "@sheetwright/cards";
import { inches } from "@sheetwright/measure";
import { howMany, type Problem, pack } from "@sheetwright/packing";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compareCase } from "../../src/compare/compare-case.js";
import { compareSizes, comparisonOf } from "../../src/compare/compare-sizes.js";
import type { ComparedSize, ComparisonRow } from "../../src/compare/comparison.js";
import { pieceCases } from "../../src/compare/piece-cases.js";
import { projectCases } from "../../src/compare/project-cases.js";

function size(width: number, height: number, cost: string | null = null): ComparedSize {
  return {
    id: `${width} x ${height}`,
    name: `${width} x ${height} in`,
    width: inches(width),
    height: inches(height),
    cost,
  };
}

function pieces(...list: readonly (readonly [width: number, height: number, quantity: number])[]): Problem {
  return {
    kinds: list.map(([width, height, quantity], i) => ({
      id: `piece ${i + 1}`,
      quantity,
      forms: [{ width: inches(width), height: inches(height) }],
    })),
    sheets: [{ id: "any", width: 1, height: 1 }],
    mode: "guillotine",
    aim: "all",
  };
}

describe("sizes compared", () => {
  it("tells sheets, waste, cuts and cost of each size and number of copies", () => {
    const one = pieces([4.25, 5.5, 1]);
    const { rows, sizes, copies } = compareSizes(
      pieceCases(one, [size(8.5, 11, "0.35"), size(6, 6)], [4, 9]),
    );
    expect(sizes.map(({ id }) => id)).toEqual(["8.5 x 11", "6 x 6"]);
    expect(copies).toEqual([4, 9]);
    const brief = rows.map(({ sheets, atLeast, wastePercent, cuts, cost }) => [
      sheets,
      atLeast,
      wastePercent,
      cuts,
      cost,
    ]);
    // A sheet of letter paper is four quarters by three cuts, and three sheets are cut alike.
    expect(brief).toEqual([
      [1, 1, 0, 3, "0.35"],
      [3, 3, 25, 9, "1.05"],
      [4, 4, 35.1, 8, null],
      [9, 9, 35.1, 18, null],
    ]);
  });

  it("names the pieces that are too large for a size, and says nothing else of it", () => {
    const [row] = compareSizes(pieceCases(pieces([5, 7, 1], [3, 3, 1]), [size(6, 6)], [2])).rows;
    expect(row).toMatchObject({ tooLarge: ["piece 1"], sheets: null, wastePercent: null, cuts: null });
  });

  it("gives the same rows as single plans, sheet by sheet, wherever the cases are worked out", () => {
    const cases = pieceCases(pieces([5, 7, 2], [2, 3.5, 3]), [size(12, 12), size(8.5, 11)], [1, 2, 5]);
    const apart = [...cases]
      .reverse()
      .map((one) => compareCase(one))
      .reverse();
    expect(comparisonOf(cases, apart)).toEqual(compareSizes(cases));
    for (const [i, { asked }] of cases.entries()) {
      if (asked.of !== "pieces") throw new RangeError("pieces");
      expect(apart[i]!.sheets).toBe(pack(asked.problem, { effort: "quick" }).sheets);
    }
  });

  it("takes the plan for more copies where it takes fewer sheets, and what is proven for fewer copies", () => {
    const cases = pieceCases(pieces([5, 5, 1]), [size(12, 12)], [3, 5, 4]);
    const row = (sheets: number, atLeast: number, copies: number): ComparisonRow => ({
      ...compareCase(cases[0]!),
      copies,
      sheets,
      atLeast,
      sheetArea: `${sheets * 100}`,
      pieceArea: `${copies * 20}`,
      wastePercent: 100 - (copies * 20) / sheets,
    });
    const { rows } = comparisonOf(cases, [row(3, 2, 3), row(2, 1, 5), row(4, 2, 4)]);
    expect(
      rows.map(({ copies, sheets, atLeast, wastePercent }) => [copies, sheets, atLeast, wastePercent]),
    ).toEqual([
      [3, 2, 2, 70],
      [5, 2, 2, 50],
      [4, 2, 2, 60],
    ]);
  });

  it("agrees with the yield of one piece on one sheet", () => {
    const side = fc.integer({ min: 4, max: 24 }).map((halves) => halves / 2);
    fc.assert(
      fc.property(side, side, fc.integer({ min: 1, max: 30 }), (width, height, count) => {
        const sheet = { width: inches(12), height: inches(12) };
        const [row] = compareSizes(pieceCases(pieces([width, height, 1]), [size(12, 12)], [count])).rows;
        const most = howMany(sheet, { width: inches(width), height: inches(height) }).count;
        expect(row!.sheets).toBe(Math.ceil(count / most));
      }),
      { numRuns: 30 },
    );
  });

  it("plans a project with all its papers as sheets of each size, its grain along the same side", () => {
    const { project } = readProject(`
      sheetwright: 1
      title: Two cards
      papers:
        night: { cardstock: us-letter, count: 1, grain: long, cost: 0.35 }
        stars: { pad: 6 x 6, designs: { dots: 1, comets: { count: 1, pattern: one-way } } }
      cards:
        - name: Harbour
          format: us-a2
          base: night
          copies: 3
          front: [{ mat: stars.comets, border: 1/8 }]
    `);
    const sizes = [
      { id: "wide", name: "wide letter", width: inches(11), height: inches(8.5), cost: "0.35" },
      { id: "small", name: "small", width: inches(5), height: inches(7), cost: null },
    ];
    const cases = projectCases(project!, sizes, [1, 8]);
    const rows = compareSizes(cases).rows;
    // A sheet of 11 x 8 1/2 in gives two bases of 8 1/2 x 5 1/2 in, and two mats of 4 x 5 1/4 in with their pattern upright.
    expect(rows.map(({ sheets, tooLarge }) => [sheets, tooLarge])).toEqual([
      [2, []],
      [4 + 4, []],
      [null, ["1a base"]],
      [null, ["1a base"]],
    ]);
    const { asked } = cases[1]!;
    if (asked.of !== "project") throw new RangeError("project");
    expect(asked.project.papers.map(({ grain }) => grain)).toEqual(["width", "unknown"]);
    expect(rows[1]!.cost).toBe("2.80");
  });
});
