import { expect, test } from "vitest";
import { makeRow } from "../../src/comparison/make-row.js";
import type { Question } from "../../src/instances/family.js";
import { NOTHING_PUBLISHED } from "../../src/instances/published-results.js";
import { writeMissedOptima } from "../../src/packing/write-missed-optima.js";

/** A family of three instances with what is found of each and the best that is published. */
function rowOf(question: Question, found: readonly number[], best: readonly (number | null)[]) {
  const instances = found.map((_, i) => ({
    id: `number ${i + 1}`,
    sheets: [{ width: 10, height: 10, stock: null }],
    pieces: [],
    copies: 1,
    group: null,
    cell: null,
    fixed: { best: best[i] ?? null, bound: null },
    turned: { best: null, bound: null },
  }));
  const way = { mayTurn: false, solver: "sheetwright", effort: "quick" } as const;
  const solved = found.map((figure) => ({
    sheets: question === "sheets" ? figure : 1,
    sheetArea: 100,
    pieceArea: 75,
    value: question === "sheets" ? null : figure,
    bounds: { sheets: 1, sheetArea: 100, value: 99 },
    proven: false,
    work: 10,
    steps: null,
    seconds: 0.5,
    tries: {},
    faults: [],
  }));
  return makeRow({ family: { name: "trays", question, instances }, ...way }, solved, NOTHING_PUBLISHED);
}

test("names instances whose published best is not reached, whether less or more is better", () => {
  const fewest = writeMissedOptima([rowOf("sheets", [3, 5, 4], [3, 4, null])]).join("\n");
  expect(fewest).toContain("number 2");
  expect(fewest).not.toMatch(/number [13]/);
  const most = writeMissedOptima([rowOf("value", [30, 50, 40], [30, 40, 41])]).join("\n");
  expect(most).toContain("number 3");
  expect(most).not.toMatch(/number [12]/);
});

test("says so where all are reached, and nothing where none is published", () => {
  expect(writeMissedOptima([rowOf("sheets", [3, 5], [3, 5])])).toEqual([
    "Every best that is published of an instance alone is reached.",
  ]);
  expect(writeMissedOptima([rowOf("sheets", [3, 5], [null, null])])).toEqual([]);
});
