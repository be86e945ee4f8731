import { inches } from "@sheetwright/measure";
import { describe, expect, test } from "vitest";
import { expandProject } from "../../src/index.js";
import { bands, byBorder, card, choice, mat, panel, project } from "../small-project.js";

describe("layers by their border", () => {
  test("of several mats, each as much smaller as twice its border", () => {
    // A mat of 3/16 in all shows 3/32 on each side (common practice, no source).
    const layers = [
      mat(byBorder(inches(3 / 32))),
      mat(byBorder(inches(1 / 16))),
      mat(byBorder(inches(1 / 8))),
    ];
    const { cards } = expandProject(
      project([card(inches(5), inches(7), [...layers, panel(byBorder(inches(1 / 4)))])]),
    );
    expect(cards[0]?.layers.map(({ width, height }) => [width / inches(1), height / inches(1)])).toEqual([
      [4.8125, 6.8125],
      [4.6875, 6.6875],
      [4.4375, 6.4375],
      [3.9375, 5.9375],
    ]);
  });
});

describe("thirds of a US A2 card", () => {
  // Lines at 1.417 and 2.833 in across and at 1.833 and 3.667 in down (computed from 4 1/4 x 5 1/2).
  test.each([
    ["upright", [1.417, 2.833]],
    ["across", [1.833, 3.667]],
  ] as const)("%s lie where the table says, to half the precision", (runs, lines) => {
    const thirds = bands([1, 1, 1], byBorder(0), {
      runs,
      seam: { cover: choice("night"), width: inches(1 / 4) },
    });
    const { cards } = expandProject(project([card(inches(4.25), inches(5.5), [thirds])]));
    const seams = cards[0]?.seams.map(({ position }) => position) ?? [];
    expect(seams).toHaveLength(2);
    seams.forEach((seam, index) => {
      expect(seam % inches(1 / 16)).toBe(0);
      expect(Math.abs(seam - inches(1) * (lines[index] ?? 0))).toBeLessThanOrEqual(inches(1 / 32) + 20);
    });
  });
});
