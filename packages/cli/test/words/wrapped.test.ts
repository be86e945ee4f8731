import { describe, expect, it } from "vitest";
import { wrapped } from "../../src/words/wrapped.js";

describe("a text broken into lines", () => {
  it("stays as it is where it is short, its columns too", () => {
    expect(wrapped("  a   b  c")).toEqual(["  a   b  c"]);
    expect(wrapped("")).toEqual([""]);
  });

  it("breaks at spaces, the later lines indented, and no line is wider than 100 columns", () => {
    const text = `  ${Array.from({ length: 60 }, (_, index) => `word${index}`).join(" ")}`;
    const lines = wrapped(text, "      ");
    expect(lines.length).toBeGreaterThan(3);
    expect(lines.every((line) => line.length <= 100)).toBe(true);
    expect(lines.slice(1).every((line) => line.startsWith("      word"))).toBe(true);
    expect(lines.map((line) => line.trim()).join(" ")).toBe(text.trim());
  });

  it("never breaks a word", () => {
    expect(wrapped(`a ${"x".repeat(120)} b`)).toEqual(["a", "x".repeat(120), "b"]);
  });
});
