import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  inches,
  LONGEST_LENGTH,
  millimetres,
  namedSizes,
  parseSize,
  SizeError,
  type Ticks,
  tryParseSize,
  type Unit,
} from "../src/index.js";

function problemOf(text: string, unit: Unit = "in") {
  const result = tryParseSize(text, { unit });
  if (result.ok) throw new Error(`"${text}" was read as ${result.width} x ${result.height} ticks.`);
  return result.problem;
}

describe("a size as a maker writes it", () => {
  test.each<[string, Ticks, Ticks]>([
    ["12x12in", inches(12), inches(12)],
    ["210x297mm", millimetres(210), millimetres(297)],
    ["8 1/2 x 11", inches(8.5), inches(11)],
    ['8.5"x11"', inches(8.5), inches(11)],
    ["6 x 6", inches(6), inches(6)],
    ["8½ x 11", inches(8.5), inches(11)],
    ["8-1/2 X 11 in", inches(8.5), inches(11)],
    ["210 × 297 mm", millimetres(210), millimetres(297)],
    ["6 by 8", inches(6), inches(8)],
    ["12inx12in", inches(12), inches(12)],
    ["12 inches x 12 inches", inches(12), inches(12)],
    ["21x29.7cm", millimetres(210), millimetres(297)],
    ["210 mm x 297", millimetres(210), millimetres(297)],
    ["210mm x 11in", millimetres(210), inches(11)],
    ["  6\tx 6 ", inches(6), inches(6)],
  ])("%s is read", (text, width, height) => {
    expect(parseSize(text, { unit: "in" })).toMatchObject({ width, height, exact: true });
  });

  test("a unit given once counts for both, on either side", () => {
    expect(parseSize("8 1/2 x 11 in", { unit: "mm" })).toMatchObject({ width: inches(8.5), unit: "in" });
    expect(parseSize('8 1/2" x 11', { unit: "mm" })).toMatchObject({ height: inches(11), unit: "in" });
    expect(parseSize("25.4 x 50.8", { unit: "mm" })).toMatchObject({ width: inches(1), unit: "mm" });
  });

  test("nothing is turned: the first length is the width", () => {
    expect(parseSize("11 x 8 1/2", { unit: "in" })).toMatchObject({ width: inches(11), height: inches(8.5) });
  });

  test("a length that has to be rounded is told", () => {
    expect(parseSize("1/3 x 1", { unit: "in" })).toMatchObject({ exact: false });
    expect(parseSize("1 x 1/3", { unit: "in" })).toMatchObject({ exact: false });
  });

  test("a name gives its size, id, name and kind", () => {
    expect(parseSize("us-letter", { unit: "mm" })).toEqual({
      width: inches(8.5),
      height: inches(11),
      unit: "in",
      exact: true,
      id: "us-letter",
      name: "US Letter sheet",
      kind: "sheet",
    });
    expect(parseSize(" ISO A4 ", { unit: "in" })).toMatchObject({ id: "iso-a4", unit: "mm" });
    expect(parseSize("craft-12x12", { unit: "in" })).toMatchObject({ id: "craft-12x12" });
    expect(parseSize("env-us-6-3/4", { unit: "in" })).toMatchObject({ id: "env-us-6.75" });
  });

  test("a kind limits the names", () => {
    expect(parseSize("iso-a6", { unit: "in", kind: "card" })).toMatchObject({ id: "card-iso-a6" });
    expect(tryParseSize("env-us-a2", { unit: "in", kind: "sheet" })).toMatchObject({
      ok: false,
      problem: { code: "unknown-name", expected: "the name of a sheet" },
    });
  });

  test("every named size is read by its id", () => {
    for (const { id, width, height } of namedSizes) {
      expect(parseSize(id, { unit: "in" })).toMatchObject({ id, width, height });
    }
  });
});

describe("what is no size", () => {
  test.each([
    ["", "empty", 1, undefined],
    ["12", "not-two-lengths", 1, undefined],
    ["12 x 12 x 2", "not-two-lengths", 10, undefined],
    ["12 x", "empty", 5, "height"],
    ["x 12", "empty", 1, "width"],
    ["8,5 x 11", "decimal-comma", 2, "width"],
    ["8.5 x 11 ft", "unknown-unit", 10, "height"],
    ["8 1/0 x 11", "zero-denominator", 5, "width"],
    ["0 x 11", "zero", 1, "width"],
    ["8 1/2 x -11", "negative", 9, "height"],
    ["8 1/2 x 11 mm", "fraction-in-metric", 1, "width"],
    ["8 x 9 x", "not-two-lengths", 8, undefined],
    ["us-leter", "unknown-name", 1, undefined],
    [" papyrus", "unknown-name", 2, undefined],
    ["1".repeat(300), "not-two-lengths", 1, undefined],
  ])("%j is refused as %s at column %i", (text, code, at, side) => {
    const problem = problemOf(text);
    expect(problem).toMatchObject({ code, at, text, path: "" });
    expect(problem.side).toBe(side);
  });

  test("a misspelt name gets a suggestion", () => {
    expect(problemOf("us-leter").message).toBe(
      '"us-leter" is not a size: found "us-leter" at column 1, expected the name of a size. ' +
        "Did you mean us-letter?",
    );
    expect(problemOf("a2").help).toBe("Did you mean us-a2, iso-a2 or env-us-a2?");
    expect(problemOf("papyrus")).toMatchObject({ suggestions: [] });
    expect(problemOf("papyrus").help).toContain("us-letter or iso-a4");
  });

  test("messages say which of the two lengths is wrong", () => {
    expect(problemOf("12 x 12 ft").message).toBe(
      '"12 x 12 ft" is not a size: found "ft" at column 9 in the height, expected one of the units in, mm and ' +
        "cm. Convert it: 1 ft is 12 in.",
    );
  });

  test("the error carries the problem, and the path it was given", () => {
    try {
      parseSize("us-leter", { unit: "in", path: "papers.night" });
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(SizeError);
      const { details, ...rest } = error as SizeError;
      expect(details.path).toBe("papers.night");
      expect({ ...rest, message: (error as SizeError).message }).toEqual({ name: "SizeError", ...details });
    }
  });

  test("a programming fault is a TypeError or RangeError, not a SizeError", () => {
    expect(() => parseSize(12 as unknown as string, { unit: "in" })).toThrow(TypeError);
    expect(() => parseSize("us-letter", { unit: "pt" as Unit })).toThrow(TypeError);
    expect(() => parseSize("6x6", { unit: "in", longest: -1 })).toThrow(RangeError);
  });

  test("any text is read as two lengths in range, or refused with a SizeError, never anything else", () => {
    const likeSizes = fc
      .array(
        fc.constantFrom(
          "1",
          "8",
          "0",
          "/2",
          " ",
          "x",
          "×",
          "by",
          ".5",
          ",",
          "½",
          '"',
          "'",
          "in",
          "mm",
          "cm",
          "us-",
          "a4",
        ),
        { maxLength: 9 },
      )
      .map((parts) => parts.join(""));
    const texts = fc.oneof(likeSizes, fc.string({ unit: "binary" }), fc.string({ unit: "grapheme" }));
    fc.assert(
      fc.property(texts, fc.constantFrom<Unit>("in", "mm"), (text, unit) => {
        try {
          const { width, height } = parseSize(text, { unit });
          for (const length of [width, height]) {
            expect(Number.isSafeInteger(length)).toBe(true);
            expect(length).toBeGreaterThan(0);
            expect(length).toBeLessThanOrEqual(LONGEST_LENGTH);
          }
        } catch (error) {
          expect(error).toBeInstanceOf(SizeError);
          expect((error as SizeError).at).toBeGreaterThanOrEqual(1);
          expect((error as SizeError).at).toBeLessThanOrEqual(text.length + 1);
        }
      }),
    );
  });
});
