import { inches, millimetres } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exactSize, readExactSize } from "../../src/stock/exact-size.js";
import { readStockText } from "../../src/stock/read-stock-text.js";
import { replaceStock, restoreStock } from "../../src/stock/replace-stock.js";
import type { StockData } from "../../src/stock/stock-data.js";
import { writeStockText } from "../../src/stock/write-stock-text.js";
import { memoryFiles } from "../memory-files.js";

const length = fc.integer({ min: 1, max: inches(40) });
const size = fc.record({ width: length, height: length });
const unit = fc.constantFrom("in" as const, "mm" as const);
const name = fc.stringMatching(/^[A-Za-z][A-Za-z0-9_-]{0,9}$/);
const sha = fc.stringMatching(/^[0-9a-f]{64}$/);
const counts = fc.dictionary(
  fc.constantFrom("sheet-night-1", "sheet-night-2", "sheet-1"),
  fc.integer({ min: 1, max: 99 }),
  { noNullPrototype: true },
);

const stocks: fc.Arbitrary<StockData> = fc
  .record({
    revision: fc.nat(1000),
    units: unit,
    papers: fc.uniqueArray(
      fc
        .record({
          design: fc.oneof(
            name,
            fc.tuple(name, name).map((both) => both.join(".")),
          ),
          name: fc.string({ maxLength: 20 }),
          sheet: size,
          grain: fc.constantFrom("width", "height", "none", "unknown"),
          sheets: fc.option(fc.nat(1000)),
          parts: fc.uniqueArray(
            fc.record({ x: fc.nat(1000), y: fc.nat(1000), count: fc.integer({ min: 1, max: 50 }) }),
            {
              selector: ({ x, y }) => `${x} ${y}`,
              maxLength: 5,
            },
          ),
        })
        .map(({ parts, ...paper }) => ({
          ...paper,
          offcuts: parts.flatMap(({ x, y, count }) => {
            const [width, height] = [paper.sheet.width - x, paper.sheet.height - y];
            return width < 1 || height < 1 ? [] : [{ width, height, count }];
          }),
        })),
      { selector: ({ design }) => design, maxLength: 5 },
    ),
    booked: fc.uniqueArray(
      fc.record({ plan: sha, title: fc.string({ maxLength: 20 }), done: counts, spoiled: counts }),
      { selector: ({ plan }) => plan, maxLength: 3 },
    ),
  })
  .map((stock) => stock as StockData);

describe("sizes in a stock file", () => {
  it("read back to the tick, whatever they are", () => {
    fc.assert(
      fc.property(size, unit, (one, shown) => {
        expect(readExactSize(exactSize(one, shown), shown)).toEqual(one);
      }),
    );
  });

  it("are written as on a ruler wherever they lie on one", () => {
    expect(exactSize({ width: inches(8.5), height: inches(11) }, "in")).toBe("8 1/2 x 11 in");
    expect(exactSize({ width: inches(8.5), height: inches(11) }, "mm")).toBe("215.9 x 279.4 mm");
    expect(exactSize({ width: millimetres(210), height: millimetres(297) }, "in")).toBe("210 x 297 mm");
    expect(exactSize({ width: 1, height: 1601 }, "in")).toBe("0.000625 x 1.000625 mm");
  });
});

describe("the text of a stock file", () => {
  it("reads back as what was written", () => {
    fc.assert(
      fc.property(stocks, (stock) => {
        expect(readStockText(writeStockText(stock), "stock.json")).toEqual(stock);
      }),
    );
  });

  it("comes back byte for byte when changes are taken back, in their turn", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(stocks, { minLength: 2, maxLength: 6 }), async (drawn) => {
        const files = memoryFiles({ "/desk/a": "" });
        const at = { files, path: "/desk/stock.json", place: { option: "--stock" } };
        const texts = drawn.map((stock, revision) => writeStockText({ ...stock, revision }));
        for (const [revision, text] of texts.entries()) {
          const before = texts[revision - 1];
          await replaceStock(
            at,
            before === undefined ? null : { text: before, revision: revision - 1 },
            text,
          );
        }
        for (let revision = texts.length - 1; revision > 0; revision--) {
          const [now, before] = [texts[revision]!, texts[revision - 1]!];
          expect(await restoreStock(at, { text: now, revision }, () => undefined)).toBe(true);
          expect(files.all.get("/desk/stock.json")).toBe(before);
        }
        expect(await restoreStock(at, { text: texts[0]!, revision: 0 }, () => undefined)).toBe(false);
        expect([...files.all.keys()]).toEqual(["/desk/a", "/desk/stock.json"]);
      }),
    );
  });
});
