import { describe, expect, test } from "vitest";
import {
  allowedTurns,
  type Grain,
  type GrainNeed,
  grainTurns,
  type Pattern,
  patternTurns,
} from "../../src/index.js";

describe("pattern", () => {
  test("any pattern forbids the quarter turn, and only that", () => {
    expect(patternTurns("none")).toBe("both");
    expect(patternTurns("two-way")).toBe("upright");
    expect(patternTurns("one-way")).toBe("upright");
  });
});

describe("grain", () => {
  test.each([
    ["width", "width", "upright"],
    ["width", "height", "turned"],
    ["height", "width", "turned"],
    ["height", "height", "upright"],
    ["width", "none", null],
    ["height", "unknown", null],
    [null, "width", null],
  ] as const)("wanted along %s from a sheet with the grain along %s: %s", (wanted, sheet, turns) => {
    expect(grainTurns(wanted, sheet)).toBe(turns);
  });
});

describe("pattern and grain together", () => {
  // Wanted side, pattern, grain of the sheet, need, and the turns that are left.
  const TABLE: readonly [
    "width" | "height" | null,
    Pattern,
    Grain,
    GrainNeed,
    ReturnType<typeof allowedTurns>,
  ][] = [
    ["height", "none", "height", "require", "upright"],
    ["height", "none", "width", "require", "turned"],
    ["height", "none", "none", "require", "both"],
    ["height", "none", "unknown", "require", null],
    ["height", "two-way", "height", "require", "upright"],
    ["height", "two-way", "width", "require", null],
    ["height", "one-way", "width", "require", null],
    ["height", "one-way", "none", "require", "upright"],
    ["height", "one-way", "unknown", "require", null],
    ["height", "none", "width", "prefer", "both"],
    ["height", "one-way", "width", "prefer", "upright"],
    ["height", "none", "unknown", "prefer", "both"],
    ["height", "none", "width", "ignore", "both"],
    [null, "none", "unknown", "require", "both"],
    [null, "one-way", "width", "require", "upright"],
  ];

  test.each(TABLE)(
    "grain along %s, pattern %s, sheet %s, %s: %s",
    (grainAlong, pattern, grain, need, turns) => {
      expect(allowedTurns({ grainAlong }, pattern, grain, need)).toBe(turns);
    },
  );
});
