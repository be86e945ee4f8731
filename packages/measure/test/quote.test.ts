import { describe, expect, test } from "vitest";
import { quote } from "../src/quote.js";

describe("quoting input in a message", () => {
  test("plain text stays as it is, inch marks included", () => {
    expect(quote('8.5"')).toBe('"8.5""');
    expect(quote("8½ × 11 см")).toBe('"8½ × 11 см"');
  });

  test("control, direction and lone surrogate characters are escaped", () => {
    expect(quote("a\u001b[31m\n\u202e\ud800")).toBe('"a\\u{1b}[31m\\u{a}\\u{202e}\\u{d800}"');
    expect(quote("😀")).toBe('"😀"');
  });

  test("more than 40 characters are cut", () => {
    expect(quote("x".repeat(40))).toBe(`"${"x".repeat(40)}"`);
    expect(quote("x".repeat(41))).toBe(`"${"x".repeat(39)}…"`);
  });
});
