import { type Form, type Problem, pack, type Sheet } from "@sheetwright/packing";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { kindsTooLarge } from "../../src/compare/kinds-too-large.js";

function problem(form: Form, sheet: Partial<Sheet> = {}, quantity = 1): Problem {
  return {
    kinds: [{ id: "piece", quantity, forms: [form] }],
    sheets: [{ id: "sheet", width: 100, height: 60, ...sheet }],
    mode: "guillotine",
    aim: "all",
  };
}

describe("kinds that are too large", () => {
  it.each([
    ["as large as the sheet", problem({ width: 100, height: 60 }), []],
    ["that fits once turned", problem({ width: 60, height: 100 }), []],
    ["that would fit turned but must not", problem({ width: 60, height: 100, turns: "upright" }), ["piece"]],
    [
      "that must be turned and would fit upright",
      problem({ width: 100, height: 60, turns: "turned" }),
      ["piece"],
    ],
    ["one longer than the sheet", problem({ width: 101, height: 10 }), ["piece"]],
    ["that fits but for the trim", problem({ width: 100, height: 10 }, { trim: { left: 1 } }), ["piece"]],
    ["of which none is wanted", problem({ width: 101, height: 10 }, {}, 0), []],
    ["that may come from other sheets only", problem({ width: 5, height: 5, sheets: [] }), ["piece"]],
    [
      "that turns on this sheet alone",
      problem({ width: 60, height: 100, turns: "upright", sheets: [{ sheet: "sheet", turns: "both" }] }),
      [],
    ],
  ])("judges a piece %s", (_, asked, expected) => {
    expect(kindsTooLarge(asked)).toEqual(expected);
  });

  it("are those that no plan has where there are sheets without end", () => {
    const side = fc.integer({ min: 1, max: 14 });
    const turns = fc.constantFrom("upright", "turned", "both");
    const kind = fc.record({ width: side, height: side, turns, quantity: fc.integer({ min: 0, max: 3 }) });
    fc.assert(
      fc.property(
        fc.array(kind, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 0, max: 2 }),
        (list, trim) => {
          const asked: Problem = {
            kinds: list.map(({ quantity, ...form }, i) => ({ id: `${i}`, quantity, forms: [form] })),
            sheets: [{ id: "sheet", width: 12, height: 9, trim: { left: trim, bottom: trim } }],
            mode: "guillotine",
            aim: "all",
          };
          const { missing } = pack(asked, { effort: "quick" });
          expect(kindsTooLarge(asked)).toEqual(missing.map((one) => one.kind));
        },
      ),
      { numRuns: 40 },
    );
  });
});
