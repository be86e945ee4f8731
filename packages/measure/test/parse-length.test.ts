import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  inches,
  LengthError,
  LONGEST_LENGTH,
  millimetres,
  parseLength,
  parseLengthExact,
  type Ticks,
  tryParseLength,
  type Unit,
} from "../src/index.js";

const read = (text: string, unit: Unit = "in") => parseLength(text, { unit });

function problemOf(text: string, unit: Unit = "in") {
  const result = tryParseLength(text, { unit });
  if (result.ok) throw new Error(`"${text}" was read as ${result.ticks} ticks.`);
  return result.problem;
}

describe("a length as a maker writes it", () => {
  test.each<[string, Ticks]>([
    ["8 1/2", inches(8.5)],
    ["8-1/2 in", inches(8.5)],
    ['8.5"', inches(8.5)],
    ["3/8", inches(0.375)],
    ["8", inches(8)],
    ["0 1/2", inches(0.5)],
    ["5/4", inches(1.25)],
    ["008.50", inches(8.5)],
    [".5", inches(0.5)],
    ["1/64", 635],
    ["8½", inches(8.5)],
    ["8 ½ in", inches(8.5)],
    ["8-½", inches(8.5)],
    ["⅜", inches(0.375)],
    ["2⅞″", inches(2.875)],
    ["8 1⁄2", inches(8.5)],
    ["8‑1/2", inches(8.5)],
    ["8–1/2", inches(8.5)],
    ["6''", inches(6)],
    ["6”", inches(6)],
    ["6 ′′", inches(6)],
    ["6 inch", inches(6)],
    ["6 inches", inches(6)],
    ["6 in.", inches(6)],
    ["6 IN", inches(6)],
    ["  8   1 / 2   in  ", inches(8.5)],
    ["8\u00a01/2\u202fin", inches(8.5)],
    ["216 mm", millimetres(216)],
    ["21.6cm", millimetres(216)],
    ["210mm", millimetres(210)],
    ["0.01 mm", 16],
    ["216 millimetres", millimetres(216)],
    ["21.6 Centimeters", millimetres(216)],
  ])("%s is read", (text, ticks) => {
    expect(read(text, "in")).toBe(ticks);
  });

  test("a number without a unit is in the default unit, a written unit wins over it", () => {
    expect(read("25.4", "mm")).toBe(inches(1));
    expect(read("8 1/2 in", "mm")).toBe(inches(8.5));
    expect(read("25.4 mm", "in")).toBe(inches(1));
  });

  test("8½ is eight and a half, not 81 halves as text normalising would make it", () => {
    expect(read("8½")).toBe(inches(8.5));
    expect("8½".normalize("NFKC")).toBe("81⁄2");
  });

  test("every one-character fraction has the value of its digits", () => {
    for (const character of "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒") {
      // The Unicode decomposition of the character, as an outside check of the table.
      expect(read(character)).toBe(read(character.normalize("NFKC")));
    }
  });

  test("a value between two ticks is rounded half up, and that is told", () => {
    expect(parseLengthExact("1/3", { unit: "in" })).toEqual({ ticks: 13547, exact: false, unit: "in" });
    // 1/128 in = 317.5 ticks, 0.0003125 mm = half a tick.
    expect(parseLengthExact("1/128", { unit: "in" })).toEqual({ ticks: 318, exact: false, unit: "in" });
    expect(parseLengthExact("0.0003125 mm", { unit: "in" })).toEqual({ ticks: 1, exact: false, unit: "mm" });
    expect(parseLengthExact("29.7 cm", { unit: "in" })).toEqual({ ticks: 475_200, exact: true, unit: "mm" });
  });

  test("digits beyond what a float can hold still count", () => {
    // A float reads 0.50000000000000000000001 as 0.5 and loses that it is not exact.
    expect(parseLengthExact("0.50000000000000000000001", { unit: "in" })).toEqual({
      ticks: 20320,
      exact: false,
      unit: "in",
    });
  });

  test("0 is a length only where it is allowed", () => {
    expect(parseLength("0", { unit: "in", allowZero: true })).toBe(0);
    expect(parseLength("0.00001 mm", { unit: "in", allowZero: true })).toBe(0);
    expect(problemOf("0").code).toBe("zero");
    expect(problemOf("0/4").code).toBe("zero");
    expect(problemOf("0.00001 mm").code).toBe("zero");
  });

  test("10 m is the longest, unless another limit is given", () => {
    expect(read("10000 mm")).toBe(LONGEST_LENGTH);
    expect(problemOf("10000.01 mm")).toMatchObject({ code: "too-long", expected: "at most 10 m" });
    expect(problemOf("394")).toMatchObject({ code: "too-long", expected: "at most 10 m (about 393 in)" });
    expect(problemOf("9".repeat(99)).code).toBe("too-long");
    expect(parseLength("900 in", { unit: "in", longest: inches(380) * 3 })).toBe(inches(300) * 3);
    const short = tryParseLength("12 1/64", { unit: "in", longest: inches(12) });
    expect(short).toMatchObject({ ok: false, problem: { code: "too-long", expected: "at most 12 in" } });
  });
});

describe("what is no length", () => {
  test.each([
    ["", "empty", 1],
    [" \t\n", "empty", 1],
    ["abc", "not-a-length", 1],
    ["in", "not-a-length", 1],
    ["+8", "not-a-length", 1],
    ["~8 1/2 in", "not-a-length", 1],
    ["8.", "not-a-length", 2],
    ["8. in", "not-a-length", 2],
    ["1e3", "not-a-length", 2],
    ["1.5E-2", "not-a-length", 4],
    ["8".repeat(101), "not-a-length", 1],
    ["-3", "negative", 1],
    [" - 3", "negative", 2],
    ["−3", "negative", 1],
    ["-½", "negative", 1],
    ["8,5", "decimal-comma", 2],
    [",5", "decimal-comma", 1],
    ["8 1/0", "zero-denominator", 5],
    ["1 / 00 in", "zero-denominator", 5],
    ["8 5/4", "improper-fraction", 1],
    ["8 4/4", "improper-fraction", 1],
    ["8.5 1/2", "decimal-with-fraction", 5],
    ["8.5½", "decimal-with-fraction", 4],
    ["3/8 mm", "fraction-in-metric", 1],
    ["1 ½ cm", "fraction-in-metric", 1],
    ["3 ft", "unknown-unit", 3],
    ["3'", "unknown-unit", 2],
    ["1' 6\"", "unknown-unit", 2],
    ["3 m", "unknown-unit", 3],
    ["12px", "unknown-unit", 3],
    ["8 1/2 1/2", "extra-text", 7],
    ["8 1/", "extra-text", 3],
    ["8 - 1/2", "extra-text", 3],
    ["8 in 1/2", "extra-text", 6],
    ["6 in x 6 in", "extra-text", 6],
    ["8½½", "extra-text", 3],
    ["8 ЦМ", "extra-text", 3],
    ["٣", "not-a-length", 1],
  ])("%j is refused as %s at column %i", (text, code, at) => {
    expect(problemOf(text)).toMatchObject({ code, at, text, path: "" });
  });

  test("messages are full sentences that say what, where, found, expected and what helps", () => {
    expect(problemOf("8,5").message).toBe(
      '"8,5" is not a length: found "," at column 2, expected a dot as the decimal mark. Write 8.5 with a dot.',
    );
    expect(problemOf("3 ft").message).toBe(
      '"3 ft" is not a length: found "ft" at column 3, expected one of the units in, mm and cm. ' +
        "Convert it: 1 ft is 12 in.",
    );
    expect(problemOf("").message).toBe(
      '"" is not a length: found nothing, expected a length. Write a length such as 8 1/2 in, 3/8 in or 216 mm.',
    );
    expect(problemOf("-3").message).toBe(
      '"-3" is not a usable length: found "-3" at column 1, expected a length above 0. ' +
        "Write 3 if that is meant.",
    );
    expect(problemOf("3/8", "mm").message).toBe(
      '"3/8" is not a length: found "3/8" at column 1, expected a decimal, since fractions are read in inches ' +
        "only, and this is in mm. Write 3/8 in for inches, or a decimal such as 9.5 mm.",
    );
  });

  test.each([
    ["1,000", "Write 1.000 with a dot, or 1000 if thousands are meant."],
    ["1,234.5", "Write 1234.5 without a comma."],
    ["1.234,5", "Write 1234.5 with a dot."],
    [",5", "Write 0.5 with a dot."],
    ["8 5/4", "Write 9 1/4 if that is meant."],
    ["8 4/4", "Write 9 if that is meant."],
    ["3 m", "Convert it: 1 m is 100 cm."],
    ["3 furlongs", "Write the length in inches, mm or cm."],
    ["8.", "Write 8, or 8.5 with digits after the dot."],
    ["-", "Write a length such as 8 1/2 in."],
  ])("%s gets help that fits: %s", (text, help) => {
    expect(problemOf(text).help).toBe(help);
  });

  test("long and unprintable input is shown short and escaped", () => {
    const { message } = problemOf(`${"9".repeat(60)}\u001b[31m`);
    expect(message).not.toContain("\u001b");
    expect(problemOf("8 \u001b[31m").message).toContain('"8 \\u{1b}[31m"');
    expect(problemOf("x".repeat(5000)).message.length).toBeLessThan(300);
  });

  test("the error carries the problem, and the path it was given", () => {
    const result = tryParseLength("8,5", { unit: "in", path: "cards[2].front[0].border" });
    expect(result).toMatchObject({ ok: false, problem: { path: "cards[2].front[0].border" } });
    try {
      parseLength("8,5", { unit: "in", path: "cards[2].front[0].border" });
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(LengthError);
      const { details, ...rest } = error as LengthError;
      expect(details).toEqual(result.ok ? undefined : result.problem);
      expect({ ...rest, message: (error as LengthError).message }).toEqual({
        name: "LengthError",
        ...details,
      });
    }
  });

  test("a programming fault is a TypeError or RangeError, not a LengthError", () => {
    expect(() => parseLength(8.5 as unknown as string, { unit: "in" })).toThrow(TypeError);
    expect(() => parseLength("8", { unit: "cm" as Unit })).toThrow(TypeError);
    expect(() => parseLength("8", { unit: "in", longest: 0.5 })).toThrow(RangeError);
  });
});

describe("any text", () => {
  const likeLengths = fc
    .array(
      fc.oneof(
        fc.constantFrom(
          "1",
          "8",
          "0",
          "12",
          "/",
          " ",
          "-",
          ".",
          ",",
          "½",
          "⅜",
          '"',
          "'",
          "″",
          "~",
          "e3",
          "x",
        ),
        fc.constantFrom("in", "mm", "cm", "ft", "m", "inches", "\u00a0", "⁄", "−", "99999999"),
      ),
      { maxLength: 9 },
    )
    .map((parts) => parts.join(""));
  const texts = fc.oneof(likeLengths, fc.string({ unit: "binary" }), fc.string({ unit: "grapheme" }));

  test("is read as whole ticks in range, or refused with a LengthError, never anything else", () => {
    fc.assert(
      fc.property(texts, fc.constantFrom<Unit>("in", "mm"), fc.boolean(), (text, unit, allowZero) => {
        let ticks: Ticks;
        try {
          ticks = parseLength(text, { unit, allowZero });
        } catch (error) {
          expect(error).toBeInstanceOf(LengthError);
          const { at, message, help, expected } = error as LengthError;
          expect(at).toBeGreaterThanOrEqual(1);
          expect(at).toBeLessThanOrEqual(text.length + 1);
          expect(message).toMatch(/^"[\s\S]*" is not a .*: found [\s\S]*, expected [\s\S]*\. [\s\S]*\.$/);
          expect(help).not.toBe("");
          expect(expected).not.toBe("");
          return;
        }
        expect(Number.isSafeInteger(ticks)).toBe(true);
        expect(ticks).toBeGreaterThanOrEqual(allowZero ? 0 : 1);
        expect(ticks).toBeLessThanOrEqual(LONGEST_LENGTH);
      }),
    );
  });

  test("is read the same with space around it", () => {
    fc.assert(
      fc.property(texts, (text) => {
        const bare = tryParseLength(text.trim(), { unit: "in" });
        const spaced = tryParseLength(`  ${text.trim()}\t`, { unit: "in" });
        expect(spaced.ok).toBe(bare.ok);
        if (bare.ok) expect(spaced).toEqual(bare);
      }),
    );
  });

  test("a ratio is rounded to the nearest tick, half up, in whole-number arithmetic", () => {
    const part = fc.integer({ min: 1, max: 9999 });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 300 }), part, part, (whole, a, b) => {
        const [numerator, denominator] = a < b ? [a, b] : [b, a + 1];
        const text = `${whole} ${numerator}/${denominator} in`;
        const { ticks, exact } = parseLengthExact(text, { unit: "in", allowZero: true });
        // ticks - 1/2 <= value < ticks + 1/2, times 2 x denominator; all of it fits a safe integer.
        const value = 2 * 40_640 * (whole * denominator + numerator);
        const rounded = 2 * ticks * denominator;
        expect(value - rounded).toBeGreaterThanOrEqual(-denominator);
        expect(value - rounded).toBeLessThan(denominator);
        expect(exact).toBe(value === rounded);
      }),
    );
  });
});
