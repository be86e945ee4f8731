import { inches } from "@sheetwright/measure";
import { describe, expect, test } from "vitest";
import type { LyingScore } from "../../src/layout/lying-marks.js";
import { spaced } from "../../src/text/break-lines.js";
import { listed, scoresInWords } from "../../src/wording/score-in-words.js";

function from(edge: LyingScore["edge"], ...distances: readonly number[]): readonly LyingScore[] {
  return distances.map((distance) => {
    const ticks = inches(distance);
    return { upright: edge !== "top", at: ticks, edge, distance: ticks, folds: "mountain" };
  });
}

function valley(edge: LyingScore["edge"], ...distances: readonly number[]): readonly LyingScore[] {
  return from(edge, ...distances).map((score) => ({ ...score, folds: "valley" }));
}

describe("scoresInWords", () => {
  const words = (upright: readonly LyingScore[] | null, turned: readonly LyingScore[] | null) =>
    spaced(scoresInWords({ upright, turned }, "in", "its"));

  test("says how far from which edge", () => {
    expect(words(from("left", 4.25), null)).toBe("at 4 1/4 in from its left edge");
    expect(spaced(scoresInWords({ upright: null, turned: from("top", 2) }, "mm", "the"))).toBe(
      "at 50.8 mm from the top edge",
    );
  });

  test("joins several, nearest first, and those from another edge after them", () => {
    expect(words(from("left", 6, 2, 4), null)).toBe("at 2 in, 4 in and 6 in from its left edge");
    expect(words([...from("left", 2), ...from("top", 3)], null)).toBe(
      "at 2 in from its left edge and at 3 in from its top edge",
    );
  });

  test("tells scores on the inside apart, and to turn the piece over so that their edge stays where it is", () => {
    // The ridge that a score raises goes inside the fold (common practice; paper-merchant pages).
    expect(words([...from("left", 2), ...valley("left", 4)], null)).toBe(
      "at 2 in from its left edge; on the inside (turn it over from top to bottom) at 4 in from its left edge",
    );
    expect(words(valley("top", 4), null)).toBe(
      "on the inside (turn it over from left to right) at 4 in from its top edge",
    );
    const both = from("left", 2, 8).map((score) => ({ ...score, folds: "both" as const }));
    expect(words(both, null)).toBe("at 2 in and 8 in from its left edge, to fold both ways");
  });

  test("tells turned copies apart only where they differ", () => {
    expect(words(from("left", 2), from("top", 2))).toBe(
      "at 2 in from its left edge; where it lies turned, at 2 in from its top edge",
    );
    expect(words(from("left", 2), from("left", 2))).toBe("at 2 in from its left edge");
  });
});

test("lists words as in a sentence", () => {
  expect(listed([])).toBe("");
  expect(listed(["a"])).toBe("a");
  expect(listed(["a", "b"])).toBe("a and b");
  expect(listed(["a", "b", "c"])).toBe("a, b and c");
});
