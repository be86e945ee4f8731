import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flowRows, heightOf, type Row } from "../../src/drawing/flow-rows.js";

const row = (height: number, more: Partial<Row> = {}): Row => ({ height, draw: () => [], ...more });

describe("flowRows", () => {
  test("keeps to one column while the rows fit, even below the preferred height", () => {
    const rows = [row(30), row(30), row(30)];
    expect(flowRows(rows, 100, 100).columns).toEqual([rows]);
    expect(flowRows(rows, 50, 95).columns).toEqual([rows]);
  });

  test("evens out the columns it needs", () => {
    const rows = Array.from({ length: 20 }, () => row(10));
    const { columns, height } = flowRows(rows, 50, 150);
    expect(columns.map(({ length }) => length)).toEqual([10, 10]);
    expect(height).toBe(100);
  });

  test("keeps a heading with its first row and drops white space at the top of a column", () => {
    const heading = row(10, { keepWithNext: true });
    const rows = [row(80), row(5, { blank: true }), heading, row(30)];
    const { columns } = flowRows(rows, 100, 100);
    expect(columns).toEqual([
      [rows[0], rows[1]],
      [rows[2], rows[3]],
    ]);
    const { columns: after } = flowRows([row(98), row(5, { blank: true }), row(50)], 100, 100);
    expect(after.map(heightOf)).toEqual([98, 50]);
  });

  test("keeps all rows in order, none twice, and no column higher than allowed", () => {
    const rows = fc.array(
      fc.record({ height: fc.integer({ min: 1, max: 40 }), keepWithNext: fc.boolean() }),
      {
        maxLength: 60,
      },
    );
    fc.assert(
      fc.property(rows, fc.integer({ min: 1, max: 120 }), (specs, preferred) => {
        // A block that is kept together is at most three rows here, as in a panel.
        const all = specs.map(({ height, keepWithNext }, i) =>
          row(height, { keepWithNext: keepWithNext && i % 3 > 0 }),
        );
        const { columns, height } = flowRows(all, preferred, 150);
        expect(columns.flat()).toEqual(all);
        expect(height).toBeLessThanOrEqual(152);
        expect(Math.max(0, ...columns.map(heightOf))).toBe(height);
      }),
    );
  });
});
