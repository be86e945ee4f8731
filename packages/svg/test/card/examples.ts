import { inches, millimetres } from "@sheetwright/measure";
import type { Expansion } from "@sheetwright/planner";
import { type BuiltCard, buildCard, expansion, type LayerNote } from "./build.js";
import { papers } from "./example-papers.js";
import { foldedExamples } from "./folded-examples.js";
import { shapedExamples } from "./shaped-examples.js";

/** A card of the invented Lantern Night workshop that is drawn and measured for a test and for the docs. */
export interface CardExample {
  readonly name: string;
  readonly source: Expansion;
  readonly number: number;
}

const inch = inches;
const at = (x: number, y: number, width: number, height: number) =>
  [inch(x), inch(y), inch(width), inch(height)] as const;
const atMm = (x: number, y: number, width: number, height: number) =>
  [millimetres(x), millimetres(y), millimetres(width), millimetres(height)] as const;

const rooftops = buildCard({
  number: 1,
  name: "Rooftops",
  format: "us-a7",
  front: [inch(5), inch(7)],
  fold: "side",
  base: "night",
  guests: 12,
  samples: 1,
  layers: [
    { purpose: "mat", paper: "copper", at: at(0.125, 0.125, 4.75, 6.75) },
    { purpose: "band", paper: "cream", at: at(0.25, 0.25, 4.5, 1.125), on: 0, block: "sky" },
    { purpose: "band", paper: "stars.comets", at: at(0.25, 1.375, 4.5, 5.375), on: 0, block: "sky" },
    { purpose: "cover", paper: "cream", at: at(0.25, 1.125, 4.5, 0.5), on: 1 },
    { purpose: "sentiment mat", paper: "copper", at: at(1.4375, 4.375, 2.125, 0.625), on: 1 },
    { purpose: "sentiment", paper: "cream", at: at(1.5, 4.4375, 2, 0.5), on: 4, text: "Good night" },
  ],
});

const plain = buildCard({
  number: 2,
  name: "Plain invitation",
  format: "us-a2",
  front: [inch(4.25), inch(5.5)],
  fold: "either",
  base: "cream",
  guests: 12,
  samples: 1,
  layers: [{ purpose: "mat", paper: "cream", at: at(0.125, 0.125, 4, 5.25) }],
});

const lanterns: readonly LayerNote[] = [
  { purpose: "mat", paper: "cream", at: at(0.125, 0.125, 4.75, 6.75) },
  { purpose: "mat", paper: "night", at: at(0.1875, 0.1875, 4.625, 6.625), on: 0 },
  { purpose: "panel", paper: "stars.dots", at: at(0.3125, 0.3125, 4.375, 6.375), on: 1 },
  { purpose: "string", paper: "copper", at: at(0.3125, 1, 4.375, 0.125), on: 2 },
  { purpose: "lantern mat", paper: "copper", at: at(0.625, 1.125, 1.125, 2), on: 2 },
  { purpose: "lantern", paper: "ember", at: at(0.6875, 1.1875, 1, 1.875), on: 4 },
  { purpose: "lantern mat", paper: "copper", at: at(1.9375, 1.125, 1.125, 2.5), on: 2 },
  { purpose: "lantern", paper: "ember", at: at(2, 1.1875, 1, 2.375), on: 6 },
  { purpose: "lantern mat", paper: "copper", at: at(3.25, 1.125, 1.125, 1.75), on: 2 },
  { purpose: "lantern", paper: "ember", at: at(3.3125, 1.1875, 1, 1.625), on: 8 },
  { purpose: "sentiment mat", paper: "night", at: at(0.9375, 4.9375, 3.125, 0.875), on: 2 },
  { purpose: "sentiment", paper: "cream", at: at(1, 5, 3, 0.75), on: 10, text: "Light the lanterns" },
];

const twelve = buildCard({
  number: 3,
  name: "Three lanterns",
  format: "us-a7",
  front: [inch(5), inch(7)],
  fold: "side",
  base: "night",
  guests: 6,
  layers: lanterns,
});

const slimline = buildCard({
  number: 4,
  name: "Long street",
  format: "slimline",
  front: [inch(8.5), inch(3.5)],
  fold: "top",
  base: "cream",
  guests: 12,
  layers: [
    { purpose: "mat", paper: "night", at: at(0.125, 0.125, 8.25, 3.25) },
    { purpose: "band", paper: "stars.dots", at: at(0.25, 0.25, 2.6875, 3), on: 0, block: "sky" },
    { purpose: "band", paper: "stars.comets", at: at(2.9375, 0.25, 2.625, 3), on: 0, block: "sky" },
    { purpose: "band", paper: "stars.plain-sky", at: at(5.5625, 0.25, 2.6875, 3), on: 0, block: "sky" },
    { purpose: "cover", paper: "copper", at: at(2.8125, 0.25, 0.25, 3), on: 1 },
    { purpose: "cover", paper: "copper", at: at(5.4375, 0.25, 0.25, 3), on: 1 },
    {
      purpose: "sentiment",
      paper: "cream",
      at: at(5.875, 2.25, 2.125, 0.625),
      on: 1,
      text: "Home by moonlight",
    },
  ],
  roundings: [
    { layer: 1, what: "seam", position: inch(2.6875), by: inch(1) / 48 },
    { layer: 2, what: "seam", position: inch(5.3125), by: -inch(1) / 48 },
  ],
});

const square = buildCard({
  number: 5,
  name: "Square moon",
  format: "sq-6",
  front: [inch(6), inch(6)],
  fold: "side",
  base: "ember",
  guests: 12,
  samples: 2,
  layers: [
    { purpose: "mat", paper: "ember", at: at(0.25, 0.25, 5.5, 5.5) },
    {
      purpose: "panel",
      paper: ["stars.dots", "stars.comets", "stars.plain-sky"],
      at: at(0.5, 0.5, 5, 5),
      on: 0,
    },
    { purpose: "moon", paper: "cream", at: at(1, 1, 2.5, 2.5), on: 1 },
    { purpose: "strip", paper: "night", at: at(0.5, 4, 5, 0.75), on: 1 },
    { purpose: "strip", paper: "copper", at: at(0.5, 4.25, 5, 0.25), on: 1 },
  ],
});

const tiny = buildCard({
  number: 6,
  name: "Gift tag",
  format: "sq-3",
  front: [inch(3), inch(3)],
  fold: "top",
  base: "copper",
  guests: 24,
  layers: [
    { purpose: "mat", paper: "cream", at: at(0.125, 0.125, 2.75, 2.75) },
    { purpose: "panel", paper: "stars.comets", at: at(0.1875, 0.1875, 2.625, 2.625), on: 0 },
    { purpose: "strip", paper: "ember", at: at(0.5, 0.1875, 0.375, 2.625), on: 1 },
    { purpose: "sentiment", paper: "cream", at: at(1.125, 1.75, 1.5, 0.5), on: 1, text: "for you" },
  ],
});

const metric = buildCard({
  number: 7,
  name: "Nachtlicht",
  format: "card-iso-a6",
  front: [millimetres(105), millimetres(148)],
  fold: "side",
  base: "cream",
  guests: 12,
  samples: 1,
  layers: [
    { purpose: "mat", paper: "night", at: atMm(3, 3, 99, 142) },
    { purpose: "band", paper: "stars.dots", at: atMm(6, 6, 93, 45.5), on: 0, block: "sky" },
    { purpose: "band", paper: "ember", at: atMm(6, 51.5, 93, 45), on: 0, block: "sky" },
    { purpose: "band", paper: "stars.comets", at: atMm(6, 96.5, 93, 45.5), on: 0, block: "sky" },
    { purpose: "sentiment mat", paper: "copper", at: atMm(30.5, 89.5, 44, 14), on: 1 },
    { purpose: "sentiment", paper: "cream", at: atMm(32, 91, 41, 11), on: 4, text: "Gute Nacht" },
  ],
  roundings: [
    { layer: 1, what: "seam", position: millimetres(45.5), by: (millimetres(1) * 1) / 6 },
    { layer: 2, what: "seam", position: millimetres(90.5), by: (millimetres(1) * -1) / 6 },
    { layer: 4, what: "third", position: millimetres(90.5), by: (millimetres(1) * -1) / 6 },
  ],
});

const bare = buildCard({
  number: 8,
  name: "Nothing but a fold",
  front: [inch(5), inch(7)],
  fold: "side",
  base: "stars.comets",
  guests: 1,
  layers: [],
});

const elevenMats = buildCard({
  number: 9,
  name: "Eleven mats & <a> very long name for a card, said by a maker who could not stop",
  format: "us-a7",
  front: [inch(5), inch(7)],
  fold: "side",
  base: "cream",
  guests: 12,
  layers: Array.from({ length: 11 }, (_, i): LayerNote => {
    const border = (i + 1) / 16;
    return {
      purpose: "mat",
      paper: i % 2 === 0 ? "night" : "cream",
      at: at(border, border, 5 - 2 * border, 7 - 2 * border),
      ...(i === 0 ? {} : { on: i - 1 }),
    };
  }),
});

const covered = buildCard({
  number: 10,
  name: "Postcards in a pile",
  format: "us-a6",
  front: [inch(6.25), inch(4.5)],
  fold: "top",
  base: "ember",
  guests: 3,
  samples: 1,
  layers: [
    { purpose: "panel", paper: "cream", at: at(0.5, 0.5, 2, 2) },
    { purpose: "panel", paper: "night", at: at(0.25, 0.25, 3.5, 3) },
    { purpose: "panel", paper: "stars.dots", at: at(2.5, 1, 3, 3) },
    { purpose: "panel", paper: "stars.plain-sky", at: at(2.75, 1.25, 2.5, 2.5), on: 2 },
    {
      purpose: "sentiment",
      paper: "night",
      at: at(0.75, 2.25, 4.75, 0.375),
      text: "Wish you were here <3 & warm",
    },
    { purpose: "tag", paper: "cream", at: at(5, 2, 0.875, 1), text: "for the very best aunt" },
  ],
});

const name = ({ card }: BuiltCard): string =>
  card.name
    .toLowerCase()
    .replace(/[^a-z]+/g, "-")
    .split("-")
    .slice(0, 3)
    .join("-");

/** All cards of the examples in one project. */
export const workshop: Expansion = expansion(papers, [
  rooftops,
  plain,
  twelve,
  slimline,
  square,
  tiny,
  metric,
  bare,
  elevenMats,
  covered,
  ...foldedExamples,
]);

export const cardExamples: readonly CardExample[] = [
  rooftops,
  plain,
  twelve,
  slimline,
  square,
  tiny,
  bare,
  elevenMats,
  covered,
  ...foldedExamples,
]
  .map((built): CardExample => ({ name: name(built), source: workshop, number: built.card.number }))
  .concat({
    name: "nachtlicht",
    source: expansion(papers, [metric], "mm"),
    number: metric.card.number,
  })
  .concat(
    shapedExamples.map((built) => ({
      name: name(built),
      source: expansion(papers, shapedExamples),
      number: built.card.number,
    })),
  );
