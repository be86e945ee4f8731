import { type Project, readProject } from "@sheetwright/cards";
import { inches, parseLength } from "@sheetwright/measure";
import {
  byBorder,
  bySize,
  card,
  choice,
  face,
  mat,
  panel,
  paper,
  paperDesign,
  project,
} from "../../../cards/test/small-project.js";
import { type Plan, plan } from "../../src/index.js";
import { letterPaper, made, madeWithSpares, pad } from "../bench-project.js";

// Right plans for the tests to damage.

const inch = inches(1);
const length = (text: string): number => parseLength(text, { unit: "in" });

/** A plan with the project it is for. */
export interface Sample {
  readonly project: Project;
  readonly plan: Plan;
}

const papers = (dots: number | null, comets: number | null) => [
  letterPaper(
    "night",
    { trim: { left: 0, right: 0, top: inch / 8, bottom: 0 } },
    { count: 20, cost: "0.35", offcuts: [{ width: length("8 1/2"), height: length("5 1/2"), count: 1 }] },
  ),
  paper("cream", 12 * inch, 12 * inch, {
    grain: "height",
    designs: [paperDesign("cream", { cost: "1.2", front: face("cream", { pattern: "two-way" }) })],
  }),
  pad("stars", {
    dots: { count: dots, cost: "0.2" },
    comets: { count: comets, cost: "0.25", front: face("stars.comets", { pattern: "one-way" }) },
  }),
];

function cardsWith(copies: number, spares?: number) {
  const of = spares === undefined ? made(copies) : madeWithSpares(copies, spares);
  const first = card(
    length("4 1/4"),
    length("5 1/2"),
    [
      mat(byBorder(inch / 8), { paper: choice("cream"), grain: { along: "height", need: "require" } }),
      panel(byBorder(inch / 8), { paper: choice("stars.dots", "stars.comets") }),
    ],
    { name: "Rooftops", foldGrain: "require", ...of },
  );
  const second = card(
    4 * inch,
    4 * inch,
    [panel(bySize(2 * inch, 3 * inch), { paper: choice("stars.comets") })],
    { number: 2, name: "Harbour", base: choice("night"), ...of },
  );
  return [first, second];
}

function sample(wanted: Project): Sample {
  return { project: wanted, plan: plan(wanted, { effort: "quick" }) };
}

/** Enough of everything. */
export const enough = sample(project(cardsWith(4), { papers: papers(null, 9) }));

/** Too few sheets of the pad. */
export const short = sample(project(cardsWith(6), { papers: papers(2, 2) }));

/** Enough for all, and for one of two spares of each card. */
export const spared = sample(
  project(cardsWith(4, 2), {
    papers: papers(0, 10),
    rates: { currency: "$", hour: "18.5", minutesPerCard: "12.25" },
  }),
);

/** Too few sheets, and spares wished for all the same. */
export const shortOfSpares = sample(project(cardsWith(6, 1), { papers: papers(2, 2) }));

/** A mat larger than the sheets of the pad, besides a card that can be made. */
export const homeless = sample(
  project(
    [
      ...cardsWith(1),
      card(5 * inch, 7 * inch, [mat(byBorder(inch / 8), { paper: choice("stars.dots") })], {
        number: 3,
        name: "Too large",
        base: choice("cream"),
      }),
    ],
    { papers: papers(5, 5) },
  ),
);

/** Discs on mats of the next die up, one cut straight, and a star with a shadow, cut without a die. */
export const cutToShapes = sample(dieProject());

function dieProject(): Project {
  const { project: read } =
    readProject(`{ sheetwright: 1, title: Moons, copies: 2, die-machine: { strips: false },
    papers: { night: { cardstock: us-letter, grain: long }, cream: { cardstock: us-letter } },
    dies: { disc: { shape: circle, sizes: { from: 2, to: 3 } }, oval: { shape: oval, sizes: [2 x 3, 3 1/2 x 2 1/2] } },
    cards: [{ name: Moon, format: us-a7, base: night, front: [
      { die: disc, size: 2, paper: cream, mats: [{ mat: night }], trim: { bottom: half }, top: 1/2 },
      { die: oval, size: 2 x 3, paper: cream, mats: [{ mat: night }], bottom: 1/8, left: 1/8 },
      { shape: star, size: 1, paper: cream, shadow: { paper: night }, bottom: 1/8, right: 1/8 } ] }] }`);
  if (read === null) throw new Error("The project has faults.");
  return read;
}

/** Sixteen discs in strips of four, from one sheet of letter instead of two. */
export const inStrips = sample(discProject("16", 3));

/** Discs for spare copies too, in strips. */
export const sparesInStrips = sample(discProject("{ guests: 12, spares: 6 }", 1));

/** More discs than a sheet can hold, in strips or not; whether some strips hold less paper is not known. */
export const shortOfStrips = sample(discProject("20", 1));

/** So many discs that no strips help, proven. */
export const farTooFew = sample(discProject("200", 1));

function discProject(copies: string, sheets: number): Project {
  const { project: read } = readProject(`{ sheetwright: 1, title: Discs, copies: ${copies},
    papers: { night: { cardstock: us-letter, grain: long }, cream: { cardstock: us-letter, count: ${sheets} } },
    dies: { disc: { shape: circle, size: 1 3/4 } },
    cards: [{ name: Disc, format: us-a2, base: night, front: [{ die: disc, paper: cream }] }] }`);
  if (read === null) throw new Error("The project has faults.");
  return read;
}

/** Ribbons for five and pearls for six of ten Lanterns, and more ribbon at hand of another sort than the Moths take. */
export const shortOfItems = sample(
  itemProject("copies: 10", "copper: { length: 25, count: 1 }, pearl: 19, plum: { length: 24, count: 5 }"),
);

/** A roll of ribbon in each of ten bags, and pearls as needed. */
export const itemsInBags = sample(
  itemProject("share: kits, copies: 10", "copper: { length: 12, count: 1 }, pearl: as needed"),
);

function itemProject(copies: string, items: string): Project {
  const seam = (ribbon: string) =>
    `[{ bands: [1, 1], papers: [night, night], seam: { ribbon: ${ribbon}, width: 1/4 } }]`;
  const { project: read } = readProject(`{ sheetwright: 1, title: Ribbons, ${copies},
    papers: { night: { cardstock: us-letter, grain: long } }, items: { ${items} }, cards: [
      { name: Lantern, format: us-a2, base: night, front: ${seam("copper")}, extras: [{ name: Pearl, count: 3, thickness: 1/16 }] },
      { name: Moth, size: 6 1/4 x 4, base: night, front: ${seam("plum")} }] }`);
  if (read === null) throw new Error("The project has faults.");
  return read;
}
