import { describe, expect, it } from "vitest";
import { type Fault, quote, writeFault, writeFaults } from "../src/fault.js";

const fault = (place: Fault["place"]): Fault => ({ code: "x", place, message: "wrong." });

const PLAN = { name: "sheetwright plan", writes: true };

describe("a fault", () => {
  it("says its place first", () => {
    expect(writeFault(fault({ option: "--trim" }))).toBe("--trim: wrong.");
    expect(writeFault(fault({ file: "a.csv" }))).toBe("a.csv: wrong.");
    expect(writeFault(fault({ file: "a.csv", line: 4 }))).toBe("a.csv:4: wrong.");
    expect(writeFault(fault({ file: "a.csv", line: 4, column: 2 }))).toBe("a.csv:4, column 2: wrong.");
    expect(writeFault(fault({ file: "a.csv", line: 4, column: 2, heading: "width" }))).toBe(
      "a.csv:4, column 2 (width): wrong.",
    );
    const path = "cards[2].front[0].border";
    expect(writeFault(fault({ file: "a.yaml", line: 14, column: 5, path }))).toBe(
      "a.yaml:14:5 cards[2].front[0].border: wrong.",
    );
    expect(writeFault(fault({ file: "a.yaml", line: 3, column: 1, path: "" }))).toBe("a.yaml:3:1: wrong.");
    expect(writeFault(fault({ file: "a.yaml", path: "" }))).toBe("a.yaml: wrong.");
  });

  it("is shown with up to nine others; the rest is counted", () => {
    const many = (count: number): readonly Fault[] =>
      Array.from({ length: count }, () => fault({ file: "a.csv" }));
    expect(writeFaults(many(1), PLAN)).toBe("a.csv: wrong.\n1 fault; no file was written.\n");
    expect(writeFaults(many(10), PLAN).split("\n")).toHaveLength(12);
    expect(writeFaults(many(11), PLAN)).toMatch(
      /\nand 1 more fault; --json lists them all\.\n11 faults; no file was written\.\n$/,
    );
    expect(writeFaults(many(30), PLAN)).toMatch(/\nand 20 more faults; --json lists them all\.\n/);
  });

  it("does not speak of files where the command writes none", () => {
    const check = { name: "sheetwright check", writes: false };
    expect(writeFaults([fault({ file: "a.yaml", path: "" })], check)).toBe("a.yaml: wrong.\n1 fault.\n");
  });

  it("points to the help where an option is wrong", () => {
    expect(writeFaults([fault({ option: "--trim" })], PLAN)).toMatch(
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
