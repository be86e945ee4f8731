import { expect, test } from "vitest";
import { fillDown, type TableRow } from "../../src/drawing/flow-rows.js";

const row = (height: number, more: Partial<TableRow> = {}): TableRow => ({ height, draw: () => [], ...more });
const heights = (pages: readonly (readonly TableRow[])[]) =>
  pages.map((page) => page.map(({ height }) => height));

test("begins a page where the next row has no room", () => {
  expect(heights(fillDown([row(4), row(5), row(2)], 10))).toEqual([[4, 5], [2]]);
});

test("keeps rows together and drops white space at the top of a page", () => {
  const rows = [row(7), row(1, { blank: true }), row(2, { keepWithNext: true }), row(3)];
  expect(heights(fillDown(rows, 10))).toEqual([
    [7, 1],
    [2, 3],
  ]);
  expect(heights(fillDown([row(9), row(2, { blank: true }), row(3)], 10))).toEqual([[9], [3]]);
});

test("repeats the head of a table", () => {
  const head = row(1);
  const rows = [head, row(6, { head }), row(5, { head })];
  expect(heights(fillDown(rows, 10))).toEqual([
    [1, 6],
    [1, 5],
  ]);
});

test("gives a row that is higher than a page a page of its own", () => {
  expect(heights(fillDown([row(2), row(20), row(2)], 10))).toEqual([[2], [20], [2]]);
});
