import { inches } from "@sheetwright/measure";
import { expect, test } from "vitest";
import { drawCard } from "../../src/card/draw-card.js";
import { drawMeasurements } from "../../src/card/draw-measurements.js";
import { writeMeasurements } from "../../src/card/write-measurements.js";
import { buildCard, expansion } from "./build.js";
import { papers } from "./example-papers.js";

const [w, h] = [inches(5), inches(7)];
const built = buildCard({
  number: 1,
  name: "Rooftops",
  front: [w, h],
  fold: "side",
  base: "night",
  layers: [
    { purpose: "panel", paper: "cream", at: [inches(0.25), inches(0.25), inches(4.5), inches(6.5)] },
    { purpose: "ribbon", paper: "cream", at: [inches(0.25), inches(3), inches(4.5), inches(0.375)], on: 0 },
    {
      purpose: "insert",
      paper: "cream",
      at: [0, inches(0.25), inches(4.75), inches(6.5)],
      surface: "inside",
    },
  ],
});
const [base, panel, ribbon, leaf] = built.pieces;
const right = built.card.layers[2];
if (
  base === undefined ||
  panel === undefined ||
  ribbon === undefined ||
  leaf === undefined ||
  right === undefined
)
  throw new Error("A piece is missing.");

// The ribbon is no piece but an item, and the insert is one piece on both pages.
const scores = [{ along: "width", at: inches(4.75), folds: "mountain" } as const];
const insert = {
  ...leaf,
  forms: [{ width: inches(9.5), height: inches(6.5), scores, grainAlong: "height" as const }],
};
const left = {
  ...right,
  surface: "inside-front" as const,
  x: inches(0.25),
  border: { ...right.border, left: inches(0.25), right: 0 },
};
const plain = expansion(papers, [
  { card: { ...built.card, layers: [...built.card.layers, left] }, pieces: [base, panel, insert] },
]);
const source = {
  ...plain,
  items: [
    {
      id: ribbon.id,
      label: ribbon.label,
      card: 1,
      path: ribbon.path,
      kind: "ribbon" as const,
      name: "copper ribbon",
      colour: "#b87333",
      width: inches(0.375),
      length: inches(5.5),
      quantity: 12,
    },
  ],
};

test("a ribbon is drawn in its own colour, and listed as long as it is cut", () => {
  expect(drawCard(source, 1)).toContain("#b87333");
  const text = writeMeasurements(source, 1).replace(/\s+/g, " ");
  expect(text).toContain("1c ribbon copper ribbon 5 1/2 x 3/8 139.7 x ~9.53 on 1b:");
  expect(text).toContain("with ends to tape behind");
  expect(text).toMatch(
    /Lay 1c ribbon on 1b panel: [^.]+\. Tape its ends behind; until then leave the edges of 1b there unglued\./,
  );
});

test("a picture names the sizes that are cut, a folded leaf once", () => {
  const drawn = drawCard(source, 1).replace(/\u00a0/g, " ");
  const said = [...drawn.matchAll(/>([^<>]+)</g)].map(([, words]) => words).join(" ");
  expect(said).toContain("5 1/2 x 3/8 in,");
  expect(said).not.toContain("4 1/2 x 3/8 in");
  expect(said.match(/9 1\/2 x 6 1\/2 in flat,/g)).toHaveLength(1);
  expect(said).not.toContain("4 3/4 x 6 1/2 in");
});

test("an insert is listed once, unfolded with its score, and laid once, for both pages", () => {
  const text = writeMeasurements(source, 1).replace(/\s+/g, " ");
  expect(text.match(/9 1\/2 x 6 1\/2/g)).toHaveLength(1);
  expect(text).toContain("score 4 3/4 in from the left");
  expect(
    text.match(/Score 1d insert 4 3\/4 in from the left, fold it, and lay it with its fold/g),
  ).toHaveLength(1);
  expect(text).not.toContain("Lay 1d insert");
});

test("what names neither a piece nor an item is refused", () => {
  expect(() => drawMeasurements({ ...source, items: [] }, 1)).toThrow(RangeError);
});

test("what lies on parts that stand apart is told to lie on all of them", () => {
  const parts = [0, 1].map((index) => ({
    purpose: "band",
    paper: "cream",
    at: [0, index * inches(3.53125), w, inches(3.46875)] as const,
    block: "bands",
  }));
  const cover = { purpose: "cover", paper: "night", at: [0, inches(3.25), w, inches(0.5)] as const, on: 0 };
  const { card, pieces } = buildCard({
    number: 1,
    name: "Apart",
    front: [w, h],
    fold: "side",
    base: "night",
    layers: [...parts, cover],
  });
  const seam = {
    surface: "front" as const,
    x: 0,
    y: inches(3.46875),
    width: w,
    height: inches(1 / 16),
    runs: "across" as const,
    path: "cards[0].front[bands]",
    position: inches(3.5),
    cover: "1d",
    bare: false,
    above: 2,
  };
  const rounding = { piece: "1b", what: "seam", position: seam.position, by: 100 } as const;
  const apart = expansion(papers, [{ card: { ...card, seams: [seam], roundings: [rounding] }, pieces }]);
  const text = writeMeasurements(apart, 1).replace(/\s+/g, " ");
  expect(text).toContain("Lay 1d cover on 1b band and 1c band, its middle on the seam of 1b and 1c:");
  expect(text).toContain(
    "The seam below 1b band is rounded to a mark of the ruler: its middle lies 3 1/2 in from the top of what is divided there.",
  );
});
