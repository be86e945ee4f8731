import { inches, millimetres } from "@sheetwright/measure";
import { describe, expect, test } from "vitest";
import { expandProject, flatsOf } from "../../src/index.js";
import {
  bands,
  byBorder,
  bySize,
  card,
  choice,
  mat,
  middle,
  panel,
  project,
  sentiment,
  strip,
} from "../small-project.js";

function layerSizes(layers: readonly { width: number; height: number }[], ticks: number): number[][] {
  return layers.map(({ width, height }) => [width / ticks, height / ticks]);
}

describe("mats", () => {
  // Card, layer, and the border that shows on each side. Common practice, but for the 3/16 in row, which is computed.
  const LAYER_SIZES = [
    ["US A2", 4.25, 5.5, 4, 5.25, 0.125, "in"],
    ["US A2, thin", 4.25, 5.5, 4.125, 5.375, 0.0625, "in"],
    ["US A2, between", 4.25, 5.5, 3.875, 5.125, 0.1875, "in"],
    ["US A1", 3.5, 4.875, 3.25, 4.625, 0.125, "in"],
    ["US A1, thin", 3.5, 4.875, 3.375, 4.75, 0.0625, "in"],
    ["US A6", 4.5, 6.25, 4.25, 6, 0.125, "in"],
    ["US A6, thin", 4.5, 6.25, 4.375, 6.125, 0.0625, "in"],
    ["US A7", 5, 7, 4.75, 6.75, 0.125, "in"],
    ["US A7, thin", 5, 7, 4.875, 6.875, 0.0625, "in"],
    ["US A8", 5.25, 7.875, 5, 7.625, 0.125, "in"],
    ["US A9", 5.5, 8.5, 5.25, 8.25, 0.125, "in"],
    ["US No. 10", 3.875, 9.25, 3.625, 9, 0.125, "in"],
    ["3 in square", 3, 3, 2.75, 2.75, 0.125, "in"],
    ["6 in square", 6, 6, 5.75, 5.75, 0.125, "in"],
    ["slimline", 3.5, 8.5, 3.25, 8.25, 0.125, "in"],
    ["A6 of 147 mm", 105, 147, 100, 142, 2.5, "mm"],
  ] as const;

  test.each(LAYER_SIZES)("%s", (_, width, height, layerWidth, layerHeight, border, unit) => {
    const ticks = unit === "in" ? inches : millimetres;
    const design = card(ticks(width), ticks(height), [mat(byBorder(ticks(border)))]);
    const [only] = expandProject(project([design])).cards[0]?.layers ?? [];
    expect(only).toMatchObject({ width: ticks(layerWidth), height: ticks(layerHeight) });
    expect(only?.border).toEqual({
      left: ticks(border),
      right: ticks(border),
      top: ticks(border),
      bottom: ticks(border),
    });
  });

  // Common practice: layers 1 and 2 of a US A2 card, 1/8 in each.
  test("a second layer lies on the first, not on the card", () => {
    const border = inches(0.125);
    const design = card(inches(4.25), inches(5.5), [mat(byBorder(border)), mat(byBorder(border))]);
    const { layers } = expandProject(project([design])).cards[0] ?? { layers: [] };
    expect(layerSizes(layers, inches(1))).toEqual([
      [4, 5.25],
      [3.75, 5],
    ]);
    expect(layers.map(({ on }) => on)).toEqual([null, 0]);
  });

  // Common practice: a slimline card from 7 x 8 1/2, scored at 3 1/2, and its mat at 1/8 in.
  test("a slimline card that lies has its score and its mat where the trade has them", () => {
    const front = { width: inches(8.5), height: inches(3.5) };
    const design = card(front.width, front.height, [mat(byBorder(inches(0.125)))], {
      flats: flatsOf({ front, fold: "top" }),
    });
    const { pieces } = expandProject(project([design]));
    expect(pieces.map(({ label, forms }) => ({ label, forms }))).toEqual([
      {
        label: "1a base",
        forms: [
          {
            width: inches(8.5),
            height: inches(7),
            scores: [{ along: "height", at: inches(3.5), folds: "mountain" }],
            grainAlong: "width",
          },
        ],
      },
      {
        label: "1b mat",
        forms: [{ width: inches(8.25), height: inches(3.25), scores: [], grainAlong: null }],
      },
    ]);
  });
});

describe("a base", () => {
  // Common practice: a US A2 card comes from 5 1/2 x 8 1/2 or from 4 1/4 x 11.
  test("that may be folded either way has two forms, with the grain along the score of each", () => {
    const front = { width: inches(4.25), height: inches(5.5) };
    const design = card(front.width, front.height, [], { flats: flatsOf({ front, fold: "either" }) });
    expect(expandProject(project([design])).pieces[0]?.forms).toEqual([
      {
        width: inches(8.5),
        height: inches(5.5),
        scores: [{ along: "width", at: inches(4.25), folds: "mountain" }],
        grainAlong: "height",
      },
      {
        width: inches(4.25),
        height: inches(11),
        scores: [{ along: "height", at: inches(5.5), folds: "mountain" }],
        grainAlong: "width",
      },
    ]);
  });
});

describe("lines of thirds", () => {
  // Common practice; the lines 1.417, 2.833 and 1.833, 3.667 in of an upright US A2 card are computed. To 1/16 in they
  // are 1 7/16, 2 13/16, 1 13/16 and 3 11/16.
  const THIRDS = [
    ["x", 1, 1.417, 1 + 7 / 16],
    ["x", 2, 2.833, 2 + 13 / 16],
    ["y", 1, 1.833, 1 + 13 / 16],
    ["y", 2, 3.667, 3 + 11 / 16],
  ] as const;

  test.each(THIRDS)("%s %i: %d in becomes %d in", (axis, third, exact, rounded) => {
    const place = { [axis]: { from: "third", third } };
    const design = card(inches(4.25), inches(5.5), [panel(bySize(inches(1), inches(1), place))]);
    const [worked] = expandProject(project([design])).cards;
    const [layer] = worked?.layers ?? [];
    expect((layer?.[axis] ?? 0) + inches(0.5)).toBe(inches(rounded));
    expect(worked?.roundings).toHaveLength(1);
    const [rounding] = worked?.roundings ?? [];
    expect(rounding).toMatchObject({ piece: "1b", what: "third", position: inches(rounded) });
    expect(Math.abs((rounding?.position ?? 0) - (rounding?.by ?? 0) - inches(exact))).toBeLessThan(
      inches(0.0005),
    );
  });

  test("a line that falls on the precision is not a rounding", () => {
    const place = { x: { from: "third", third: 1 } } as const;
    const design = card(inches(6), inches(6), [panel(bySize(inches(1), inches(1), place))]);
    expect(expandProject(project([design])).cards[0]?.roundings).toEqual([]);
  });
});

describe("bands", () => {
  // Thirds and quarters of a mat of a US A7 card, 4 3/4 x 6 3/4 in: common practice, rounded to 1/16 in.
  test.each([
    [[1, 1, 1], [2.25, 2.25, 2.25], []],
    [[1, 3], [1.6875, 5.0625], []],
    [[1, 7], [0.875, 5.875], [0.875]],
  ])("%j of 6 3/4 in", (ratios, heights, rounded) => {
    const design = card(inches(5), inches(7), [bands(ratios, byBorder(inches(0.125)))]);
    const [worked] = expandProject(project([design])).cards;
    expect(worked?.layers.map(({ height }) => height / inches(1))).toEqual(heights);
    expect(worked?.layers.map(({ y }) => y)).toEqual(
      heights.map((_, index) => inches(0.125 + heights.slice(0, index).reduce((sum, part) => sum + part, 0))),
    );
    expect(worked?.roundings.map(({ piece, what, position }) => [piece, what, position / inches(1)])).toEqual(
      rounded.map((position) => ["1b", "seam", position]),
    );
  });

  test("side by side they divide the width", () => {
    const design = card(inches(6), inches(6), [bands([1, 2], byBorder(0), { runs: "upright" })]);
    const { layers } = expandProject(project([design])).cards[0] ?? { layers: [] };
    expect(
      layers.map(({ x, width, height }) => [x, width, height].map((ticks) => ticks / inches(1))),
    ).toEqual([
      [0, 2, 6],
      [2, 4, 6],
    ]);
  });

  // Common practice: centre the strip or ribbon on the seam.
  test("a cover has its middle on the seam and reaches from edge to edge of the bands", () => {
    const seam = { cover: choice("cream"), width: inches(0.5) };
    const design = card(inches(5), inches(7), [bands([1, 3], byBorder(inches(0.125)), { seam })]);
    const { layers } = expandProject(project([design])).cards[0] ?? { layers: [] };
    expect(layers[2]).toEqual({
      surface: "front",
      x: inches(0.125),
      y: inches(0.125 + 1.6875 - 0.25),
      width: inches(4.75),
      height: inches(0.5),
      piece: "1d",
      on: 0,
      border: { left: 0, right: 0, top: inches(1.4375), bottom: inches(4.8125) },
      text: null,
    });
  });
});

describe("labels", () => {
  test("letters follow the order in which the card is stacked", () => {
    const border = inches(0.125);
    const design = card(
      inches(5),
      inches(7),
      [
        mat(byBorder(border)),
        bands([1, 3], byBorder(border), {
          seam: { cover: choice("cream"), width: inches(0.5) },
          layers: [panel(bySize(inches(2), inches(1)), { name: "window" })],
        }),
        strip(inches(0.5)),
        sentiment(inches(1), inches(0.5), {
          mats: [
            { paper: choice("night"), border: inches(0.0625) },
            { paper: choice("cream"), border: inches(0.125) },
          ],
        }),
        sentiment(inches(1), inches(0.5), {
          name: "greeting",
          place: { ...middle, y: { from: "start", distance: inches(1) } },
          mats: [{ paper: choice("night"), border: inches(0.0625) }],
        }),
      ],
      { number: 3, copies: 13, copiesFor: { guests: 12, samples: 1 } },
    );
    const { pieces, cards } = expandProject(project([design]));
    expect(pieces.map(({ label }) => label)).toEqual([
      "3a base",
      "3b mat",
      "3c band",
      "3d band",
      "3e cover",
      "3f window",
      "3g strip",
      "3h sentiment mat",
      "3i sentiment mat",
      "3j sentiment",
      "3k greeting mat",
      "3l greeting",
    ]);
    expect(pieces.every(({ quantity }) => quantity === 13)).toBe(true);
    // The strip lies on the mat: bands with layers of their own carry nothing that follows.
    expect(cards[0]?.layers.map(({ on }) => on)).toEqual([null, 0, 0, 1, 1, 0, 0, 6, 7, 0, 9]);
    expect(pieces.map(({ path }) => path)).toEqual([
      "cards[2].base",
      "cards[2].front[0]",
      "cards[2].front[1]",
      "cards[2].front[1]",
      "cards[2].front[1].seam",
      "cards[2].front[1].layers[0]",
      "cards[2].front[2]",
      "cards[2].front[3].mats[1]",
      "cards[2].front[3].mats[0]",
      "cards[2].front[3]",
      "cards[2].front[4].mats[0]",
      "cards[2].front[4]",
    ]);
  });

  test("after z come aa and ab", () => {
    const strips = Array.from({ length: 29 }, () => strip(inches(0.5)));
    const { pieces } = expandProject(project([card(inches(5), inches(7), strips)]));
    expect(pieces.slice(24).map(({ id }) => id)).toEqual(["1y", "1z", "1aa", "1ab", "1ac", "1ad"]);
  });
});
