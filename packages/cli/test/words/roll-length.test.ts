import { inches } from "@sheetwright/measure";
import { expect, test } from "vitest";
import { METRE, rollLength, YARD } from "../../src/words/roll-length.js";

test.each([
  [3 * YARD, "in", "3 yd"],
  [inches(12), "in", "12 in"],
  [inches(50), "in", "50 in"],
  // Ten metres are 393.7007... in, so they are told in the unit of their label.
  [10 * METRE, "in", "10 m"],
  [(5 * METRE) / 2, "mm", "2.5 m"],
  [METRE / 4, "mm", "250 mm"],
] as const)("a roll of %d ticks is told, where %s are shown, as %s", (length, unit, words) => {
  expect(rollLength(length, unit)).toBe(words);
});
