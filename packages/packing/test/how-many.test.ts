import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { howMany, ProblemError, type Size, verify } from "../src/index.js";
import { fewestSheets } from "./brute-force.js";
import { YIELDS } from "./yields.js";

const INCH = 40640;
const MM = 1600;

function sizeOf(text: string, unit = INCH): Size {
  const [width, height] = text.split("x").map((side) => Math.round(Number(side) * unit));
  return { width: width as number, height: height as number };
}

/** Pieces in the tree of a yield. */
function countOf(found: ReturnType<typeof howMany>): number {
  return JSON.stringify(found.layout.tree).split('"type":"piece"').length - 1;
}

describe("howMany", () => {
  test("gives three 5 x 7 in from 12 x 12 in, as edge-to-edge cuts do", () => {
    const found = howMany(sizeOf("12x12"), sizeOf("5x7"));
    expect(found.count).toBe(3);
    expect(found.exact).toBe(true);
    expect(countOf(found)).toBe(3);
  });

  test("keeps a pattern upright where turning is not allowed", () => {
    expect(howMany(sizeOf("8.5x11"), { ...sizeOf("5.5x8.5"), turns: "upright" }).count).toBe(1);
    expect(howMany(sizeOf("8.5x11"), { ...sizeOf("5.5x8.5"), turns: "turned" }).count).toBe(2);
  });

  test("takes trim and kerf off", () => {
    expect(howMany(sizeOf("8.5x11"), sizeOf("5.5x8.5")).count).toBe(2);
    expect(howMany({ ...sizeOf("8.5x11"), trim: { left: 1 } }, sizeOf("5.5x8.5")).count).toBe(1);
    expect(howMany(sizeOf("8.5x11"), sizeOf("5.5x8.5"), { kerf: 1 }).count).toBe(1);
  });

  test("gives nothing for a piece that is larger than the sheet", () => {
    const found = howMany(sizeOf("6x6"), sizeOf("6.5x3"));
    expect(found.count).toBe(0);
    expect(found.exact).toBe(true);
  });

  test("refuses pieces so small that a sheet gives more than a layout can hold", () => {
    const roll = { width: 16_000_000, height: 16_000_000 };
    expect(() => howMany(roll, { width: 1, height: 1 })).toThrow(
      expect.objectContaining({ code: "too-many" }),
    );
    expect(howMany({ width: 1000, height: 1000 }, { width: 10, height: 10 }).count).toBe(10_000);
  });

  test("says what is wrong with a size", () => {
    expect(() => howMany({ width: 0, height: 10 }, { width: 1, height: 1.5 })).toThrow(ProblemError);
  });

  // Yields computed by exhaustive guillotine search, independently of this code (source: computed).
  test.each(YIELDS.filter((row) => ["12x12", "8.5x11", "6x6"].includes(row.sheet)))(
    "gives the guillotine optimum of $piece in from $sheet in: $best",
    ({ sheet, piece, best }) => {
      expect(howMany(sizeOf(sheet), sizeOf(piece)).count).toBe(best);
    },
  );

  test.each(YIELDS.filter((row) => !["12x12", "8.5x11", "6x6"].includes(row.sheet)))(
    "gives at least the best grid of $piece in from $sheet in, and the guillotine optimum where it is known",
    ({ sheet, piece, grid, best }) => {
      const found = howMany(sizeOf(sheet), sizeOf(piece));
      expect(found.count).toBeGreaterThanOrEqual(grid);
      if (best !== null) expect(found.count).toBe(best);
    },
  );

  // Published by makers, without a named source (common practice); each fits the area bound by hand.
  test.each([
    ["8.5x11", "2.5x3.5", 10],
    ["12x12", "6x12", 2],
    ["12x12", "5x10", 2],
    ["12x12", "4x8", 4],
    ["12x12", "3x6", 8],
    ["8.5x11", "5.5x11", 1],
    ["8.5x11", "5.5x8.5", 2],
    ["8.5x11", "4.25x11", 2],
  ])("gives from %s in as many %s in as makers do: %i (common practice)", (sheet, piece, count) => {
    expect(howMany(sizeOf(sheet), sizeOf(piece)).count).toBe(count);
  });

  test("gives two 127 x 177.8 mm, two 4 1/4 x 5 1/2 in and two A6 bases from A4 (common practice)", () => {
    const a4 = sizeOf("210x297", MM);
    expect(howMany(a4, sizeOf("127x177.8", MM)).count).toBe(2);
    expect(howMany(a4, sizeOf("4.25x5.5")).count).toBe(2);
    expect(howMany(a4, sizeOf("148.5x210", MM)).count).toBe(2);
    expect(howMany(a4, sizeOf("105x297", MM)).count).toBe(2);
  });

  const small = fc.record({
    width: fc.integer({ min: 4, max: 16 }),
    height: fc.integer({ min: 4, max: 16 }),
  });

  test("agrees with looking at every way to cut up to five pieces", () => {
    fc.assert(
      fc.property(
        small,
        fc.record({ width: fc.integer({ min: 3, max: 9 }), height: fc.integer({ min: 3, max: 9 }) }),
        fc.nat(1),
        (sheet, piece, kerf) => {
          const { count } = howMany(sheet, piece, { kerf });
          const ways = [piece, { width: piece.height, height: piece.width }];
          const copies = Math.min(count, 5);
          if (copies > 0)
            expect(
              fewestSheets(
                sheet,
                Array.from({ length: copies }, () => ways),
                kerf,
              ),
            ).toBe(1);
          if (count < 5) {
            const one = fewestSheets(
              sheet,
              Array.from({ length: count + 1 }, () => ways),
              kerf,
            );
            expect(one).toBeGreaterThan(1);
          }
        },
      ),
    );
  });

  test("returns a layout that verifies, in either mode and with a last trim", () => {
    fc.assert(
      fc.property(
        fc.record({ width: fc.integer({ min: 20, max: 90 }), height: fc.integer({ min: 20, max: 90 }) }),
        fc.record({ width: fc.integer({ min: 5, max: 40 }), height: fc.integer({ min: 5, max: 40 }) }),
        fc.nat(3),
        fc.constantFrom("shelf" as const, "guillotine" as const),
        (sheet, piece, kerf, mode) => {
          const found = howMany(sheet, piece, { kerf, mode });
          const { count, layout } = found;
          expect(countOf(found)).toBe(count);
          if (count === 0) return;
          const area = sheet.width * sheet.height;
          const kinds = [{ id: "piece", quantity: count, forms: [piece] }];
          const sheets = [{ id: "sheet", ...sheet }];
          const identity = { family: "identity" } as const;
          const findings = verify(
            { kinds, sheets, kerf, mode, aim: "all" },
            {
              version: 1,
              mode,
              aim: "all",
              outcome: "complete",
              layouts: [layout],
              placed: [{ kind: "piece", count }],
              missing: [],
              sheets: 1,
              cost: `${area}`,
              value: `${count * piece.width * piece.height}`,
              bound: {
                aim: "all",
                cost: `${area}`,
                sheets: 1,
                certificate: {
                  type: "weights",
                  sheets: [{ sheet: "sheet", x: identity, y: identity, capacity: 1 }],
                },
              },
              proven: true,
              search: {
                effort: "quick",
                seed: 1,
                lp: "none",
                starts: 1,
                steps: 0,
                work: 1,
                ended: "finished",
              },
            },
          );
          expect(findings).toEqual([]);
        },
      ),
    );
  });
});
