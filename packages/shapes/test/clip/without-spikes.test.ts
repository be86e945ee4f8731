import { describe, expect, test } from "vitest";
import { withoutSpikes } from "../../src/clip/without-spikes.js";
import { areaOf } from "../../src/measure/area.js";
import type { Point } from "../../src/outline/point.js";
import { outlinesOfPath } from "../../src/svg/index.js";

const line = (...numbers: readonly (readonly [number, number])[]): readonly Point[] =>
  numbers.map(([x, y]) => ({ x, y }));

describe("a line without spikes", () => {
  test.each([
    [
      "one at its end",
      line([0, 0], [9, 0], [9, 9], [0, 9], [4, 9], [0, 9]),
      line([0, 0], [9, 0], [9, 9], [4, 9], [0, 9]),
    ],
    ["one beyond a corner", line([0, 0], [12, 0], [9, 0], [9, 9]), line([0, 0], [9, 0], [9, 9])],
    [
      "one of several stretches",
      line([0, 0], [9, 0], [9, 5], [9, 9], [9, 5], [9, 0], [0, 9]),
      line([0, 0], [9, 0], [0, 9]),
    ],
    [
      "one where it starts",
      line([5, 20], [5, 9], [9, 9], [9, 0], [0, 0], [0, 9], [5, 9]),
      line([5, 9], [9, 9], [9, 0], [0, 0], [0, 9]),
    ],
    ["nothing but spikes", line([0, 0], [9, 0]), line([0, 0], [9, 0])],
    ["none", line([0, 0], [5, 0], [9, 0], [9, 9]), line([0, 0], [5, 0], [9, 0], [9, 9])],
  ])("%s", (_, from, to) => expect(withoutSpikes(from)).toEqual(to));

  test("a level spike loses no part", () => {
    // The engine alone gives 5.5 square millimetres and a part turned inside out.
    const { outlines } = outlinesOfPath("M0 0C0 0 0-.5 44 .25H0H.01Z", {
      unitsPerInch: 25.4,
      mergeCrossings: true,
    });
    const area = outlines.reduce((sum, outline) => sum + areaOf(outline), 0) / 2_560_000;
    // By the integral of the curve.
    expect(area).toBeCloseTo(12.1, 1);
  });
});
