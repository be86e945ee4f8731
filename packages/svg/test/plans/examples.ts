import { millimetres } from "@sheetwright/measure";
import type { CutNode, Sheet } from "@sheetwright/packing";
import type { LayoutMarks } from "@sheetwright/planner";
import { inch, kind, offcut, type Plan, piece, plan, repeat, split, waste } from "./build.js";
import { dieExamples } from "./die-examples.js";
import { markedExamples } from "./marked-examples.js";

/**
 * One layout each, made by hand: the inputs of the committed drawings. Names are the invented Lantern Night workshop's.
 */
export interface Example extends Plan {
  readonly name: string;
  readonly unit: "in" | "mm";
  readonly marks?: LayoutMarks;
}

const letter: Sheet = { id: "cream", name: "Cream cardstock", width: inch(8.5), height: inch(11) };
const twelve: Sheet = { id: "night", name: "Night-blue cardstock", width: inch(12), height: inch(12) };
const pad: Sheet = { id: "stars", name: "Star pad, comets", width: inch(6), height: inch(6) };
const a4: Sheet = { id: "ember", name: "Ember cardstock", width: millimetres(210), height: millimetres(297) };

function oneBigPiece(): Plan {
  const panel = kind("panel", inch(8), inch(10.5), "Table sign");
  const tree = split("x", letter.width, [
    [inch(8), split("y", letter.height, [[inch(10.5), piece({ kind: "panel" })]], offcut)],
  ]);
  return plan([panel], [letter], [{ sheet: "cream", run: 1, tree }]);
}

function cardBases(): Plan {
  const sheet = { ...letter, trim: { left: inch(1 / 8), top: inch(1 / 8) } };
  const kinds = [
    kind("base", inch(4.25), inch(5.5), "Rooftops base"),
    kind("mat", inch(4), inch(5.25), "Rooftops mat"),
    kind("tag", inch(1.5), inch(2.5), "Lantern tag"),
    kind("band", inch(0.5), inch(5.25), "Seam cover"),
  ];
  const width = sheet.width - inch(1 / 8);
  const height = sheet.height - inch(1 / 8);
  const run = 3;
  const base = piece({ kind: "base", count: run });
  const mat = piece({ kind: "mat", count: run });
  const tag = piece({ kind: "tag", count: run });
  const band = piece({ kind: "band", count: run });
  const tree = split(
    "y",
    height,
    [
      [
        inch(5.5),
        split(
          "x",
          width,
          [
            [inch(4.25), base],
            [inch(4), split("y", inch(5.5), [[inch(5.25), mat]], waste)],
          ],
          waste,
        ),
      ],
      [
        inch(5.25),
        split(
          "x",
          width,
          [
            [inch(4), mat],
            ...repeat(4, inch(0.5), band),
            [inch(1.5), split("y", inch(5.25), repeat(2, inch(2.5), tag), waste)],
          ],
          offcut,
        ),
      ],
    ],
    waste,
  );
  return plan(
    kinds,
    [sheet],
    [
      { sheet: "cream", run, tree },
      { sheet: "cream", run: 1, tree: offcut },
    ],
    {
      smallestOffcut: { width: inch(1), height: inch(0.75) },
    },
  );
}

function sixtySmallPieces(): Plan {
  const names = ["Star, small", "Star, large", "Moon", "Lantern front", "Lantern back", "Window pane"];
  const kinds = names.map((name, i) =>
    kind(`k${i}`, inch(i < 3 ? 1.875 : 1), inch(i < 3 ? 1.25 : 1.5), name),
  );
  const row = (height: number, width: number, count: number, id: string) =>
    [
      inch(height),
      split("x", twelve.width, repeat(count, inch(width), piece({ kind: id, count: 2 }))),
    ] as const;
  const tree = split("y", twelve.height, [
    row(1.25, 1.875, 6, "k0"),
    row(1.25, 1.875, 6, "k1"),
    row(1.25, 1.875, 6, "k2"),
    row(1.5, 1, 12, "k3"),
    row(1.5, 1, 12, "k4"),
    row(1.5, 1, 12, "k5"),
    row(1.5, 1, 6, "k3"),
  ]);
  return plan(kinds, [twelve], [{ sheet: "night", run: 2, tree }]);
}

function narrowStrips(): Plan {
  const kinds = [
    kind("long", inch(0.25), inch(11), "Seam cover, long"),
    kind("short", inch(4), inch(0.25), "Seam cover, short"),
    kind("bit", inch(0.25), inch(0.25), "Corner mark"),
  ];
  const shorts = split("y", inch(11), [
    ...repeat(20, inch(0.25), piece({ kind: "short", count: 4 })),
    [inch(0.25), split("x", inch(4), repeat(8, inch(0.25), piece({ kind: "bit", count: 4 })))],
  ]);
  const tree = split("x", letter.width, [
    ...repeat(12, inch(0.25), piece({ kind: "long", count: 4 })),
    [inch(4), shorts],
  ]);
  return plan(kinds, [letter], [{ sheet: "cream", run: 4, tree }]);
}

function longNames(): Plan {
  const sheet: Sheet = {
    id: "washi",
    name: "Handgeschöpftes Büttenpapier mit Fäden & Blüten, 90 g/m², zweite Lieferung <hell>",
    width: millimetres(210),
    height: millimetres(297),
  };
  const kinds = [
    kind(
      "a",
      millimetres(100),
      millimetres(140),
      "Laternennacht: Grundkarte für die großen Umschläge, außen",
    ),
    kind("b", millimetres(60), millimetres(30), "Überdeckstreifen “Śnieg & żółć” für Vorder- und Rückseite"),
    kind("c", millimetres(30), millimetres(30), "Straßenlaternenbeleuchtungsanlage"),
    kind("d", millimetres(25), millimetres(40), "灯籠の夜・小さな窓"),
    kind("e", millimetres(60), millimetres(8), "Фонарик, узкая полоска"),
    kind("f", millimetres(12), millimetres(12), "Étoile filante"),
  ];
  const one = (id: string) => piece({ kind: id });
  const upper = split("x", sheet.width, [...repeat(2, millimetres(100), one("a"))], waste);
  const column = split("y", millimetres(157), [
    ...repeat(2, millimetres(30), one("b")),
    ...repeat(4, millimetres(8), one("e")),
  ]);
  const bits = split("y", millimetres(157), repeat(6, millimetres(12), one("f")));
  const lower = split("x", sheet.width, [
    [millimetres(60), column],
    [millimetres(30), split("y", millimetres(157), repeat(4, millimetres(30), one("c")))],
    ...repeat(2, millimetres(25), split("y", millimetres(157), repeat(3, millimetres(40), one("d")))),
    ...repeat(2, millimetres(12), bits),
  ]);
  const tree = split("y", sheet.height, [
    [millimetres(140), upper],
    [millimetres(157), lower],
  ]);
  return plan(kinds, [sheet], [{ sheet: "washi", run: 1, tree }]);
}

function sharedPlaces(): Plan {
  const kinds = [
    kind("3b", inch(2.5), inch(2.5), "3b"),
    kind("5a", inch(2.5), inch(2.5), "5a"),
    kind("6c", inch(1), inch(3.5), "Comet tail"),
    kind("6d", inch(3.5), inch(1), "Comet band"),
    kind("6e", inch(0.75), inch(1), "Spark"),
    kind("6f", inch(0.75), inch(1), "Ember"),
  ];
  const both = piece({ kind: "3b", count: 8 }, { kind: "5a", count: 4 });
  const tails = piece({ kind: "6c", count: 7 }, { kind: "6d", count: 3, turned: true });
  const bits = piece({ kind: "6e", count: 5 }, { kind: "6f", count: 7 });
  const tree = split("y", pad.height, [
    [inch(2.5), split("x", pad.width, repeat(2, inch(2.5), both))],
    [
      inch(3.5),
      split("x", pad.width, [
        ...repeat(3, inch(1), tails),
        [inch(0.75), split("y", inch(3.5), repeat(3, inch(1), bits))],
        [inch(1), piece({ kind: "6c", count: 12 })],
      ]),
    ],
  ]);
  return plan(kinds, [pad], [{ sheet: "stars", run: 12, tree }]);
}

function tinySheet(): Plan {
  const sheet: Sheet = { id: "scrap", name: "Copper glitter scrap", width: inch(2), height: inch(2) };
  const kinds = [
    kind("dot", inch(0.5), inch(0.5), "Lantern glow"),
    kind("bar", inch(0.25), inch(0.5), "Wick"),
  ];
  const dots = split("x", sheet.width, repeat(4, inch(0.5), piece({ kind: "dot" })));
  const bars = split("x", sheet.width, repeat(7, inch(0.25), piece({ kind: "bar" })));
  const tree = split("y", sheet.height, [...repeat(2, inch(0.5), dots), [inch(0.5), bars]]);
  return plan(kinds, [sheet], [{ sheet: "scrap", run: 1, tree }]);
}

function fortyCuts(): Plan {
  const kerf = millimetres(1);
  const kinds = [
    kind("flag", millimetres(40), millimetres(27), "Flag"),
    kind("tab", millimetres(20), millimetres(27), "Tab"),
    kind("label", millimetres(60), millimetres(20), "Gift label"),
  ];
  const inside = a4.height - 2 * millimetres(5);
  const width = a4.width - 2 * millimetres(5);
  const flags = split(
    "x",
    width,
    [...repeat(4, millimetres(40), piece({ kind: "flag" })), [millimetres(20), piece({ kind: "tab" })]],
    waste,
    kerf,
  );
  const labels = split("x", width, repeat(3, millimetres(60), piece({ kind: "label" })), waste, kerf);
  const tree = split(
    "y",
    inside,
    [...repeat(5, millimetres(27), flags), ...repeat(4, millimetres(20), labels)],
    offcut,
    kerf,
  );
  const sheet = {
    ...a4,
    trim: { left: millimetres(5), right: millimetres(5), top: millimetres(5), bottom: millimetres(5) },
  };
  return plan(kinds, [sheet], [{ sheet: "ember", run: 1, tree }], { kerf });
}

function windowInPiece(): Plan {
  const kinds = [
    kind("frame", inch(5), inch(7), "Shadow frame"),
    kind("inlay", inch(2), inch(3), "Inlay"),
    kind("star", inch(1), inch(1), "Star"),
  ];
  const inWindow: CutNode = split("y", inch(5), [
    [inch(3), split("x", inch(3), [[inch(2), piece({ kind: "inlay" })]], offcut)],
    [inch(1), split("x", inch(3), repeat(3, inch(1), piece({ kind: "star" })), waste)],
  ]);
  const frame: CutNode = {
    ...piece({ kind: "frame" }),
    window: {
      x: inch(1),
      y: inch(1),
      width: inch(3),
      height: inch(5),
      tool: "cutting machine",
      tree: inWindow,
    },
  };
  const tree = split("x", letter.width, [
    [inch(5), split("y", letter.height, [[inch(7), frame]])],
    [inch(3), split("y", letter.height, repeat(3, inch(2), piece({ kind: "inlay", turned: true })))],
  ]);
  return plan(kinds, [letter], [{ sheet: "cream", run: 1, tree }]);
}

function fiveBlocks(): Plan {
  const kinds = [
    kind("top", inch(4), inch(2), "Ridge"),
    kind("right", inch(2), inch(4), "Chimney"),
    kind("bottom", inch(4), inch(2), "Street"),
    kind("left", inch(2), inch(4), "Tower"),
    kind("centre", inch(2), inch(2), "Moon"),
  ];
  const tree: CutNode = {
    type: "stopped",
    hand: "clockwise",
    x1: inch(2),
    x2: inch(4),
    y1: inch(2),
    y2: inch(4),
    top: piece({ kind: "top" }),
    right: piece({ kind: "right" }),
    bottom: piece({ kind: "bottom" }),
    left: piece({ kind: "left" }),
    centre: piece({ kind: "centre" }),
  };
  return plan(kinds, [pad], [{ sheet: "stars", run: 1, tree }], { mode: "stopped" });
}

/** All examples, in the order of the pictures in the docs. */
export const examples: readonly Example[] = [
  { name: "card-bases-on-letter", unit: "in", ...cardBases() },
  { name: "one-big-piece", unit: "in", ...oneBigPiece() },
  { name: "sixty-small-pieces", unit: "in", ...sixtySmallPieces() },
  { name: "narrow-strips", unit: "in", ...narrowStrips() },
  { name: "long-names-on-a4", unit: "mm", ...longNames() },
  { name: "shared-places-on-pad", unit: "in", ...sharedPlaces() },
  { name: "tiny-sheet", unit: "in", ...tinySheet() },
  { name: "forty-cuts-with-kerf", unit: "mm", ...fortyCuts() },
  { name: "window-in-a-piece", unit: "in", ...windowInPiece() },
  { name: "five-blocks", unit: "in", ...fiveBlocks() },
  ...markedExamples,
  ...dieExamples,
];
