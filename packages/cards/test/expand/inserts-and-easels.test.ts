import { inches } from "@sheetwright/measure";
import { describe, expect, test } from "vitest";
import {
  type Design,
  expandProject,
  findProjectFaults,
  flatsOf,
  type Layer,
  readProject,
} from "../../src/index.js";
import { byBorder, card, choice, mat, panel, project } from "../small-project.js";

const front = { width: inches(5), height: inches(7) };
const inch = (ticks: number) => ticks / inches(1);
const insert = {
  path: "cards[0].insert",
  paper: choice("cream"),
  border: inches(1 / 4),
  grain: "prefer",
} as const;

/** A US A7 card with these layers on one of its surfaces. */
function withInside(layers: readonly Layer[], more: Partial<Design>): Design {
  const design = card(front.width, front.height, layers, more);
  return {
    ...design,
    surfaces: design.surfaces.map((one) => ({ ...one, name: "inside", path: "cards[0].inside" })),
  };
}

describe("an insert", () => {
  test("of a side fold leaves its border at all edges but the fold, on both pages", () => {
    const { pieces, cards } = expandProject(project([card(front.width, front.height, [], { insert })]));
    expect(pieces[1]).toMatchObject({
      label: "1b insert",
      path: "cards[0].insert",
      quantity: 1,
      grainNeed: "prefer",
    });
    // 2 x (5 - 1/4) by 7 - 2 x 1/4 (computed).
    expect(pieces[1]?.forms).toEqual([
      {
        width: inches(9.5),
        height: inches(6.5),
        scores: [{ along: "width", at: inches(4.75), folds: "mountain" }],
        grainAlong: "height",
      },
    ]);
    expect(
      cards[0]?.layers.map(({ surface, piece, x, y, width, height }) => [
        surface,
        piece,
        ...[x, y, width, height].map(inch),
      ]),
    ).toEqual([
      ["inside", "1b", 0, 0.25, 4.75, 6.5],
      ["inside-front", "1b", 0.25, 0.25, 4.75, 6.5],
    ]);
  });

  test("of a top fold is folded along its width", () => {
    const flats = flatsOf({ front, fold: "top" });
    const { pieces, cards } = expandProject(
      project([card(front.width, front.height, [], { insert, flats })]),
    );
    expect(pieces[1]?.forms).toMatchObject([
      { width: inches(4.5), height: inches(13.5), scores: [{ along: "height", at: inches(6.75) }] },
    ]);
    expect(cards[0]?.layers.map(({ x, y }) => [inch(x), inch(y)])).toEqual([
      [0.25, 0],
      [0.25, 0.25],
    ]);
  });

  test("of a card that may be folded either way has a form for each", () => {
    const flats = flatsOf({ front, fold: "either" });
    const { pieces } = expandProject(project([card(front.width, front.height, [], { insert, flats })]));
    expect(
      pieces[1]?.forms.map(({ width, height, grainAlong }) => [inch(width), inch(height), grainAlong]),
    ).toEqual([
      [9.5, 6.5, "height"],
      [4.5, 13.5, "width"],
    ]);
  });

  test("carries what lies inside", () => {
    const design = withInside([panel(byBorder(inches(1 / 2)))], { insert });
    const { cards } = expandProject(project([design]));
    expect(cards[0]?.layers[2]).toMatchObject({
      on: 0,
      width: inches(3.75),
      height: inches(5.5),
      x: inches(0.5),
    });
  });

  test("with a border that leaves nothing of it vanishes", () => {
    const wide = { ...insert, border: inches(3.5) };
    expect(findProjectFaults(project([card(front.width, front.height, [], { insert: wide })]))).toMatchObject(
      [
        {
          code: "layer-vanishes",
          path: "cards[0].insert.border",
          message: expect.stringContaining("Nothing is left of the 1b insert."),
        },
      ],
    );
  });

  test("belongs into a card that is folded once", () => {
    const flats = flatsOf({ front, fold: "gate" });
    expect(
      findProjectFaults(project([card(front.width, front.height, [], { insert, flats })])),
    ).toMatchObject([
      { code: "contradiction", path: "cards[0].insert", message: expect.stringContaining("the fold gate") },
    ]);
  });

  test("needs grain along its fold like a base, where that is required", () => {
    const strict = { ...insert, grain: "require" } as const;
    expect(
      findProjectFaults(project([card(front.width, front.height, [], { insert: strict })])),
    ).toMatchObject([{ code: "grain-required", path: "cards[0].insert.grain" }]);
  });
});

describe("an easel", () => {
  const flats = flatsOf({ front, fold: "easel" });

  test("has a front of its own, as large as the card, from the paper of its base, that carries what lies on it", () => {
    const design = card(front.width, front.height, [mat(byBorder(inches(1 / 8)))], { flats });
    const { pieces, cards } = expandProject(project([design]));
    expect(pieces.map(({ label, faces }) => [label, ...faces])).toEqual([
      ["1a base", "night"],
      ["1b easel front", "night"],
      ["1c mat", "night"],
    ]);
    expect(cards[0]?.layers).toMatchObject([
      { surface: "front", x: 0, y: 0, width: front.width, height: front.height, on: null },
      { width: inches(4.75), height: inches(6.75), on: 0 },
    ]);
  });

  test("may have it from another paper", () => {
    const design = card(front.width, front.height, [], { flats, frontPaper: choice("cream") });
    expect(expandProject(project([design])).pieces[1]).toMatchObject({
      faces: ["cream"],
      path: "cards[0].front-paper",
    });
  });

  test("is the only card that takes a paper for it", () => {
    const design = card(front.width, front.height, [], { frontPaper: choice("cream") });
    expect(findProjectFaults(project([design]))).toMatchObject([
      { code: "contradiction", path: "cards[0].front-paper" },
    ]);
  });
});

test("borders that other layers lie on all along are told, those that a strip crosses are not", () => {
  const read = (layers: string) =>
    readProject(
      `sheetwright: 1\ntitle: x\npapers: { night: { cardstock: us-letter, grain: long } }\n` +
        `cards: [{ name: A, format: us-a7, base: night, front: [${layers}] }]\n`,
    ).faults;
  const across = "{ strip: night, width: 1, top: 0 }";
  const crossing = "{ strip: night, width: 1, top: 3 }";
  const framed = "{ mat: night, border: 1/8 }";
  expect(read(`${crossing}, ${framed}`)).toEqual([]);
  expect(read(`${across}, ${framed}`)).toMatchObject([
    {
      code: "border-covered",
      path: "cards[0].front[1].border",
      message:
        "The border of the front of the card, 1/8 in at the top, does not show in its full width: the 1b strip lies on it all " +
        "along. Make it smaller or move it.",
    },
  ]);
  // With no border there is nothing to cover.
  expect(read(`${across}, { mat: night, border: { sides: 1/8, top: 0 } }`)).toEqual([]);
  // Half of it, in width or length: the first nowhere leaves its full width, the second does.
  expect(read(`{ strip: night, width: 1/16, top: 0 }, ${framed}`)).toHaveLength(1);
  expect(read(`{ strip: night, width: 1, length: 2, top: 0 }, ${framed}`)).toEqual([]);
  // Two that do not carry cover it together.
  const [left, right] = ["left: 0", "right: 0"].map(
    (at) => `{ panel: night, size: 2 1/2 x 1, ${at}, top: 0 }`,
  );
  expect(read(`${left}, ${right}, ${framed}`)).toMatchObject([
    {
      message: expect.stringContaining(
        "the 1b panel and the 1c panel lie on it all along. Make them smaller",
      ),
    },
  ]);
});
