import { inches } from "@sheetwright/measure";
import { describe, expect, test } from "vitest";
import { placeAlong } from "../../src/expand/place-along.js";
import { expandProject } from "../../src/index.js";
import { bands, byBorder, card, choice, project } from "../small-project.js";

describe("a layer along one side of its carrier", () => {
  test("lies as far from an edge as asked", () => {
    expect(placeAlong({ from: "start", distance: 3 }, 4, 20, 5)).toEqual({ start: 3, rounding: null });
    expect(placeAlong({ from: "end", distance: 3 }, 4, 20, 5)).toEqual({ start: 13, rounding: null });
  });

  test("lies in the middle, half a tick early where that cannot be halved", () => {
    expect(placeAlong({ from: "middle" }, 4, 20, 5)).toEqual({ start: 8, rounding: null });
    expect(placeAlong({ from: "middle" }, 5, 20, 5)).toEqual({ start: 7, rounding: null });
  });

  test("has its middle on the nearest mark to a third, half up", () => {
    expect(placeAlong({ from: "third", third: 1 }, 4, 30, 5)).toEqual({ start: 8, rounding: null });
    // Exact at 6 2/3 and 13 1/3; the marks are 5, 10 and 15.
    const rounding = { position: 5, by: 5 - 20 / 3 };
    expect(placeAlong({ from: "third", third: 1 }, 4, 20, 5)).toMatchObject({
      start: 3,
      rounding: { position: 5 },
    });
    expect(placeAlong({ from: "third", third: 1 }, 4, 20, 5).rounding?.by).toBeCloseTo(rounding.by);
    expect(placeAlong({ from: "third", third: 2 }, 4, 20, 5)).toMatchObject({
      start: 13,
      rounding: { position: 15 },
    });
    // Exact at 5, halfway between 4 and 6 where the marks are even, and 10 of 15 between 8 and 12 where they are fours.
    expect(placeAlong({ from: "third", third: 1 }, 2, 15, 2)).toEqual({
      start: 5,
      rounding: { position: 6, by: 1 },
    });
    expect(placeAlong({ from: "third", third: 2 }, 2, 15, 4)).toEqual({
      start: 11,
      rounding: { position: 12, by: 2 },
    });
  });

  test("has its middle half a tick late where it has an odd number of ticks", () => {
    expect(placeAlong({ from: "third", third: 1 }, 5, 30, 5)).toEqual({ start: 8, rounding: null });
  });
});

test("a cover of an odd number of ticks starts half a tick late", () => {
  // 1/64 in is 635 ticks.
  const seam = { cover: choice("cream"), width: inches(9 / 64) };
  const design = card(inches(4), inches(4), [bands([1, 1], byBorder(0), { seam })]);
  const cover = expandProject(project([design])).cards[0]?.layers[2];
  expect(cover).toMatchObject({ y: inches(2) - Math.floor(inches(9 / 64) / 2), height: 9 * 635 });
});
