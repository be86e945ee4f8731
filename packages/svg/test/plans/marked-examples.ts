import { millimetres } from "@sheetwright/measure";
import type { Sheet } from "@sheetwright/packing";
import type { FoldDirection, FormMarks, LayoutMarks } from "@sheetwright/planner";
import { inch, kind, type Plan, piece, plan, repeat, split, waste } from "./build.js";

/** A plan with what only the trade knows of its sheets and pieces. */
interface Marked extends Plan {
  readonly marks: LayoutMarks;
}

const cream: Sheet = { id: "cream", name: "Cream cardstock", width: inch(8.5), height: inch(11) };
const stars: Sheet = { id: "stars", name: "Star pad, comets", width: inch(6), height: inch(6) };
const ember: Sheet = {
  id: "ember",
  name: "Ember cardstock",
  width: millimetres(210),
  height: millimetres(297),
};

/** Marks of a form with scores at some places along a side. */
function scored(along: "width" | "height", ...at: readonly number[]): FormMarks {
  return { scores: at.map((place) => ({ along, at: place })), topOn: [], backOn: [] };
}

const plain: FormMarks = { scores: [], topOn: [], backOn: [] };

/** One design's base from both of its flats: 7 x 5 in folded at the side, and 3 1/2 x 10 in folded at the top. */
function scoredBases(): Marked {
  const flats = [
    { width: inch(7), height: inch(5) },
    { width: inch(3.5), height: inch(10) },
  ];
  const kinds = [
    { id: "1a", name: "1a base", quantity: 1, forms: flats },
    kind("1b", inch(3.25), inch(4.75), "1b mat"),
    kind("1e", inch(3.5), inch(0.5), "1e strip"),
  ];
  const run = 4;
  const tree = split("x", cream.width, [
    [
      inch(3.5),
      split(
        "y",
        cream.height,
        [
          [inch(10), piece({ kind: "1a", form: 1, count: run })],
          [inch(0.5), piece({ kind: "1e", count: run })],
        ],
        waste,
      ),
    ],
    [
      inch(5),
      split("y", cream.height, [
        [inch(7), piece({ kind: "1a", turned: true, count: run })],
        [
          inch(3.25),
          split("x", inch(5), [[inch(4.75), piece({ kind: "1b", turned: true, count: run })]], waste),
        ],
      ]),
    ],
  ]);
  const marks: LayoutMarks = {
    sheets: { cream: { grain: "height", pattern: "none", colour: "#f3ead3" } },
    forms: {
      "1a": [scored("width", inch(3.5)), scored("height", inch(5))],
      "1b": [plain],
      "1e": [plain],
    },
  };
  const smallestOffcut = { width: inch(2), height: inch(0.5) };
  return { ...plan(kinds, [cream], [{ sheet: "cream", run, tree }], { smallestOffcut }), marks };
}

/** Pieces of a pattern that runs one way, and some cut to show the printed back. */
function oneWayPad(): Marked {
  const kinds = [
    kind("2b", inch(3), inch(4), "2b panel"),
    kind("3c", inch(2), inch(1.25), "3c band"),
    kind("3d", inch(1.5), inch(1.75), "3d mat"),
    kind("5f", inch(0.5), inch(1.75), "5f strip"),
    kind("5g", inch(0.5), inch(0.5), "5g star"),
  ];
  const run = 6;
  const of = (id: string) => piece({ kind: id, count: run });
  const tree = split("y", stars.height, [
    [
      inch(4),
      split("x", stars.width, [
        [inch(3), of("2b")],
        [inch(2), split("y", inch(4), repeat(3, inch(1.25), of("3c")), waste)],
        [inch(0.5), split("y", inch(4), repeat(8, inch(0.5), of("5g")))],
      ]),
    ],
    [
      inch(1.75),
      split("x", stars.width, [...repeat(2, inch(1.5), of("3d")), ...repeat(4, inch(0.5), of("5f"))]),
    ],
  ]);
  const topped: FormMarks = { scores: [], topOn: ["stars"], backOn: [] };
  const marks: LayoutMarks = {
    sheets: { stars: { grain: "width", pattern: "one-way", colour: "#2c3e6b" } },
    forms: {
      "2b": [topped],
      "3c": [topped],
      "3d": [{ scores: [], topOn: [], backOn: ["stars"] }],
      "5f": [topped],
      "5g": [topped],
    },
  };
  return { ...plan(kinds, [stars], [{ sheet: "stars", run, tree }]), marks };
}

/** Three scored pieces, upright and turned: folded in the middle, in three, and near an edge. */
function scoresOnA4(): Marked {
  const mm = millimetres;
  const kinds = [
    kind("4a", mm(210), mm(148), "4a base"),
    kind("6a", mm(148), mm(70), "6a base"),
    kind("6d", mm(80), mm(48), "6d tag"),
    kind("6e", mm(24), mm(30), "6e tab"),
  ];
  const of = (id: string, turned = false) => piece({ kind: id, turned });
  const lower = split(
    "x",
    ember.width,
    [
      [mm(70), split("y", mm(149), [[mm(148), of("6a", true)]], waste)],
      [
        mm(48),
        split("y", mm(149), [
          [mm(80), of("6d", true)],
          [mm(30), split("x", mm(48), repeat(2, mm(24), of("6e")))],
        ]),
      ],
      [mm(80), split("y", mm(149), repeat(2, mm(48), of("6d")))],
    ],
    waste,
  );
  const tree = split("y", ember.height, [
    [mm(148), of("4a")],
    [mm(149), lower],
  ]);
  const marks: LayoutMarks = {
    sheets: { ember: { grain: "unknown", pattern: "none", colour: "#c4552d" } },
    forms: {
      "4a": [scored("width", mm(105))],
      "6a": [scored("width", mm(49), mm(98.5))],
      "6d": [scored("height", mm(14))],
      "6e": [scored("width", mm(12))],
    },
  };
  return { ...plan(kinds, [ember], [{ sheet: "ember", run: 1, tree }]), marks };
}

/** Bases that fold to and fro: a z and an easel with a score on the inside, and a shutter with its slits. */
function foldsOnPoster(): Marked {
  const poster: Sheet = { id: "poster", name: "Cream cardstock", width: inch(12), height: inch(18) };
  const kinds = [
    kind("1a", inch(8.5), inch(5.5), "1a base, z"),
    kind("2a", inch(4.25), inch(11), "2a base, easel"),
    kind("3a", inch(10.5), inch(5.5), "3a base, shutter"),
  ];
  const tree = split("y", poster.height, [
    [
      inch(12.5),
      split("x", poster.width, [
        [inch(5.5), split("y", inch(12.5), [[inch(8.5), piece({ kind: "1a", turned: true })]])],
        [inch(4.25), split("y", inch(12.5), [[inch(11), piece({ kind: "2a" })]], waste)],
      ]),
    ],
    [inch(5.5), split("x", poster.width, [[inch(10.5), piece({ kind: "3a" })]], waste)],
  ]);
  const fold = (along: "width" | "height", at: number, folds: FoldDirection) => ({
    along,
    at: inch(at),
    folds,
  });
  const form = (...scores: readonly ReturnType<typeof fold>[]): FormMarks => ({
    scores,
    topOn: [],
    backOn: [],
  });
  const slits = [1.5, 4].map((at) => ({
    along: "width" as const,
    at: inch(at),
    from: inch(1.75),
    to: inch(8.75),
  }));
  const marks: LayoutMarks = {
    sheets: { poster: { grain: "height", pattern: "none", colour: "#f3ead3" } },
    forms: {
      "1a": [form(fold("width", 4.25, "mountain"), fold("width", 6.375, "valley"))],
      "2a": [form(fold("height", 5.5, "mountain"), fold("height", 8.25, "valley"))],
      "3a": [{ ...form(...[1.75, 3.5, 7, 8.75].map((at) => fold("width", at, "both"))), slits }],
    },
  };
  const smallestOffcut = { width: inch(2), height: inch(2) };
  return { ...plan(kinds, [poster], [{ sheet: "poster", run: 1, tree }], { smallestOffcut }), marks };
}

/** Examples with marks; drawn, listed and read back as all others. */
export const markedExamples = [
  { name: "scored-bases-on-letter", unit: "in", ...scoredBases() },
  { name: "one-way-pieces-on-pad", unit: "in", ...oneWayPad() },
  { name: "scores-on-a4", unit: "mm", ...scoresOnA4() },
  { name: "folds-on-poster", unit: "in", ...foldsOnPoster() },
] as const;
