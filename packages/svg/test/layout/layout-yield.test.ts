import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { layOut } from "../../src/layout/lay-out.js";
import { formatYield, layoutYield } from "../../src/layout/layout-yield.js";
import { offcut, piece, split } from "../plans/build.js";

describe("layoutYield", () => {
  test("counts pieces on all sheets of the run, and a place only where it yields one", () => {
    const sheet = { id: "s", width: 10, height: 10 };
    const tree = split("x", 10, [
      [4, piece({ kind: "a", count: 5 })],
      [3, piece({ kind: "b", count: 2 }, { kind: "c", count: 1 })],
    ]);
    const found = layoutYield(layOut(sheet, { sheet: "s", run: 5, tree }, 0), 5);
    expect(found).toEqual({ used: 40n * 5n + 30n * 3n, total: 500n });
    expect(formatYield(found)).toBe("58.0 %");
  });

  test("counts a piece and what is cut from its window once", () => {
    const sheet = { id: "s", width: 10, height: 10 };
    const window = { x: 2, y: 2, width: 6, height: 6, tool: "knife", tree: piece({ kind: "b" }) };
    const tree = { ...piece({ kind: "a" }), window };
    expect(layoutYield(layOut(sheet, { sheet: "s", run: 1, tree }, 0), 1).used).toBe(100n);
  });

  test("is nothing on an empty sheet", () => {
    const sheet = { id: "s", width: 10, height: 10 };
    expect(formatYield(layoutYield(layOut(sheet, { sheet: "s", run: 1, tree: offcut }, 0), 1))).toBe("0.0 %");
  });
});

describe("formatYield", () => {
  test.each([
    [1n, 3n, "33.3 %"],
    [2n, 3n, "66.7 %"],
    [1n, 8n, "12.5 %"],
    [125n, 1000n * 10n, "1.3 %"],
    [9996n, 10_000n, "99.9 %"],
    [10_000n, 10_000n, "100 %"],
  ])("prints %d of %d as %s", (used, total, text) => {
    expect(formatYield({ used, total })).toBe(text);
  });

  test("is within a tenth of the exact ratio and reaches 100 only when nothing is left", () => {
    fc.assert(
      fc.property(fc.bigInt({ min: 1n, max: 10n ** 24n }), fc.nat(1_000_000), (total, millionths) => {
        const used = (total * BigInt(millionths)) / 1_000_000n;
        const text = formatYield({ used, total });
        if (used === total) return text === "100 %";
        const tenths = BigInt(text.replace(/[. %]/g, ""));
        // |used / total - tenths / 1000| <= 1 / 1000
        const off = used * 1000n - tenths * total;
        return tenths < 1000n && off <= total && -off <= total;
      }),
    );
  });
});
