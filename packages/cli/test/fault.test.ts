import { describe, expect, it } from "vitest";
import { type Fault, quote, writeFault, writeFaults } from "../src/fault.js";

const fault = (place: Fault["place"]): Fault => ({ code: "x", place, message: "wrong." });

describe("a fault", () => {
  it("says its place first", () => {
    expect(writeFault(fault({ option: "--trim" }))).toBe("--trim: wrong.");
    expect(writeFault(fault({ file: "a.csv" }))).toBe("a.csv: wrong.");
    expect(writeFault(fault({ file: "a.csv", line: 4 }))).toBe("a.csv:4: wrong.");
    expect(writeFault(fault({ file: "a.csv", line: 4, column: 2 }))).toBe("a.csv:4, column 2: wrong.");
    expect(writeFault(fault({ file: "a.csv", line: 4, column: 2, heading: "width" }))).toBe(
      "a.csv:4, column 2 (width): wrong.",
    );
  });

  it("is shown with up to nine others; the rest is counted", () => {
    const many = (count: number): readonly Fault[] =>
      Array.from({ length: count }, () => fault({ file: "a.csv" }));
    expect(writeFaults(many(1))).toBe("a.csv: wrong.\n1 fault; no file was written.\n");
    expect(writeFaults(many(10)).split("\n")).toHaveLength(12);
    expect(writeFaults(many(11))).toMatch(/\nand 1 more fault\.\n11 faults; no file was written\.\n$/);
    expect(writeFaults(many(30))).toMatch(/\nand 20 more faults\.\n/);
  });

  it("points to the help where an option is wrong", () => {
    expect(writeFaults([fault({ option: "--trim" })])).toMatch(
      /sheetwright plan --help explains the options\.\n$/,
    );
  });
});

describe("a quoted value", () => {
  it("neither floods nor garbles a terminal", () => {
    expect(quote('8.5"')).toBe('"8.5""');
    expect(quote("a\nb\u001b[2J")).toBe('"a\\nb\\u001b[2J"');
    expect(quote("x".repeat(50))).toBe(`"${"x".repeat(39)}…"`);
    expect(quote("🌙".repeat(40))).toBe(`"${"🌙".repeat(40)}"`);
  });
});
