import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { breakLines, unbroken } from "../../src/text/break-lines.js";

const upTo = (columns: number) => (line: string) => [...line].length <= columns;

describe("breakLines", () => {
  test("fills lines from the first on", () => {
    const words = "one two three four".split(" ");
    expect(breakLines(words, { fits: upTo(9), overflow: "refuse" })).toEqual(["one two", "three", "four"]);
    expect(breakLines(words, { fits: upTo(99), overflow: "refuse" })).toEqual(["one two three four"]);
  });

  test("refuses what does not fit, or shortens it, or breaks words", () => {
    const words = ["Lantern", "windows"];
    expect(breakLines(words, { fits: upTo(5), overflow: "refuse" })).toBe(null);
    expect(breakLines(words, { fits: upTo(7), lines: 1, overflow: "refuse" })).toBe(null);
    expect(breakLines(words, { fits: upTo(9), lines: 1, overflow: "shorten" })).toEqual(["Lantern…"]);
    expect(breakLines(words, { fits: upTo(4), overflow: "anywhere" })).toEqual([
      "Lant",
      "ern",
      "wind",
      "ows",
    ]);
    expect(breakLines(words, { fits: upTo(5), lines: 2, overflow: "shorten" })).toEqual(["Lante", "rn w…"]);
  });

  test("says nothing rather than two letters", () => {
    expect(breakLines(["Lantern"], { fits: upTo(3), lines: 1, overflow: "shorten" })).toBe(null);
    expect(breakLines(["Lantern"], { fits: upTo(0), overflow: "anywhere" })).toBe(null);
  });

  test("keeps sizes on one line and gives their spaces back", () => {
    const words = ["trim", unbroken("8 1/2 x 11 in")];
    expect(breakLines(words, { fits: upTo(14), overflow: "refuse" })).toEqual(["trim", "8 1/2 x 11 in"]);
  });

  test("never makes a line too long, and loses nothing where it may break anywhere", () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ minLength: 1, maxLength: 12, unit: fc.constantFrom("a", "é", "灯", "-") })),
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 1, max: 5 }),
        (words, columns, most) => {
          const fits = upTo(columns);
          const all = breakLines(words, { fits, overflow: "anywhere" });
          expect(all?.every(fits)).toBe(true);
          expect(all?.join("").replaceAll(" ", "")).toBe(words.join(""));
          const some = breakLines(words, { fits, lines: most, overflow: "shorten" });
          expect(some === null || (some.every(fits) && some.length <= most)).toBe(true);
        },
      ),
    );
  });
});
