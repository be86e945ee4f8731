import { millimetres, type Ticks } from "@sheetwright/measure";
import type { Sheet } from "@sheetwright/packing";
import type { FormMarks, LayoutMarks } from "@sheetwright/planner";
import { boxOf, outlineOf, type Shape, type StitchOptions, stitch } from "@sheetwright/shapes";
import { inch, kind, type Plan, piece, plan, repeat, split, waste } from "./build.js";

interface Marked extends Plan {
  readonly marks: LayoutMarks;
}

/** How a shape is cut. */
interface CutNote {
  /** The name of the die; a cutting machine or scissors where there is none. */
  readonly die?: string;
  readonly across?: Ticks;
  readonly stitched?: StitchOptions;
  readonly bottomOff?: Ticks;
}

/** Marks of a die blank for a shape. */
export function shaped(shape: Shape, { die, across, stitched, bottomOff }: CutNote): FormMarks {
  const outline = outlineOf(shape);
  const { width, height } = boxOf(outline);
  const { dashes, holes } = stitched === undefined ? { dashes: [], holes: [] } : stitch(outline, stitched);
  return {
    scores: [],
    topOn: [],
    backOn: [],
    die: {
      name: die ?? null,
      cut: { width, height },
      shape: shape.shape,
      ...(across === undefined ? {} : { across }),
      outline: [outline],
      ...(stitched === undefined ? {} : { stitches: { dashes, holes } }),
      ...(bottomOff === undefined ? {} : { trim: { left: 0, right: 0, top: 0, bottom: bottomOff } }),
    },
  };
}

/** Shapes of dies, one stitched, one cut straight afterwards, one turned; two that a machine cuts; one known by its size alone. */
function diesOnLetter(): Marked {
  const letter: Sheet = { id: "night", name: "Night-blue cardstock", width: inch(8.5), height: inch(11) };
  const kinds = [
    kind("1b", inch(3.5), inch(3.5), "1b moon"),
    kind("1c", inch(3), inch(3), "1c hill"),
    kind("1d", inch(3.5), inch(3.25), "1d heart"),
    kind("1e", inch(4), inch(1.75), "1e banner"),
    kind("1f", inch(3.5), inch(2.5), "1f ring"),
    kind("1g", inch(1.5), inch(1.5), "1g star"),
  ];
  const of = (id: string, turned = false) => piece({ kind: id, turned });
  const tree = split("y", letter.height, [
    [
      inch(3.5),
      split("x", letter.width, [
        ...repeat(2, inch(3.5), of("1b")),
        [inch(1.5), split("y", inch(3.5), repeat(2, inch(1.5), of("1g")), waste)],
      ]),
    ],
    [
      inch(3.25),
      split(
        "x",
        letter.width,
        [
          [inch(3.5), of("1d")],
          [inch(3), split("y", inch(3.25), [[inch(3), of("1c", true)]], waste)],
        ],
        waste,
      ),
    ],
    [
      inch(4),
      split(
        "x",
        letter.width,
        [
          [inch(1.75), of("1e", true)],
          [inch(3), split("y", inch(4), [[inch(3), of("1c")]], waste)],
          [inch(3.5), split("y", inch(4), [[inch(2.5), of("1f")]], waste)],
        ],
        waste,
      ),
    ],
  ]);
  const marks: LayoutMarks = {
    sheets: { night: { grain: "height", pattern: "none", colour: "#26324f" } },
    forms: {
      "1b": [
        shaped(
          { shape: "scalloped-circle", diameter: inch(3) },
          { die: "scalloped disc", across: inch(3), stitched: { inset: inch(1 / 4) } },
        ),
      ],
      "1c": [
        shaped(
          { shape: "circle", diameter: inch(2.5) },
          { die: "disc", across: inch(2.5), bottomOff: inch(1) },
        ),
      ],
      "1d": [
        shaped(
          { shape: "heart", width: inch(3), height: inch(2.75) },
          { stitched: { marks: "holes", inset: millimetres(3) } },
        ),
      ],
      "1e": [shaped({ shape: "banner", width: inch(3.5), height: inch(1.25) }, { die: "banner" })],
      "1f": [
        shaped(
          {
            shape: "frame",
            outer: { shape: "oval", width: inch(3), height: inch(2) },
            window: { shape: "oval", width: inch(2), height: inch(1) },
          },
          {},
        ),
      ],
      "1g": [
        {
          scores: [],
          topOn: [],
          backOn: [],
          die: { name: "star", cut: { width: inch(1), height: inch(1) } },
        },
      ],
    },
  };
  return { ...plan(kinds, [letter], [{ sheet: "night", run: 1, tree }]), marks };
}

/** Discs of one die in strips of four and three, and hearts that a die cuts out of a strip that lies turned. */
function stripsOnLetter(): Marked {
  const letter: Sheet = { id: "cream", name: "Cream cardstock", width: inch(8.5), height: inch(11) };
  const kinds = [
    kind("1b*4", inch(8.25), inch(2.25), "1b moon, strip of 4"),
    kind("1b*3", inch(6.25), inch(2.25), "1b moon, strip of 3"),
    kind("1c*2", inch(2), inch(4.25), "1c heart, strip of 2"),
    kind("1d", inch(2), inch(2), "1d tag die blank"),
  ];
  const row = (id: string, width: Ticks, height: Ticks) =>
    [height, split("x", letter.width, [[width, piece({ kind: id })]], waste)] as const;
  const tree = split(
    "y",
    letter.height,
    [
      row("1b*4", inch(8.25), inch(2.25)),
      row("1b*4", inch(8.25), inch(2.25)),
      row("1b*3", inch(6.25), inch(2.25)),
      [
        inch(2),
        split(
          "x",
          letter.width,
          [
            [inch(4.25), piece({ kind: "1c*2", turned: true })],
            [inch(2), piece({ kind: "1d" })],
          ],
          waste,
        ),
      ],
    ],
    waste,
  );
  const moon = shaped(
    { shape: "circle", diameter: inch(1.75) },
    { die: "disc", across: inch(1.75), stitched: { inset: inch(1 / 8) } },
  );
  const heart = shaped(
    { shape: "heart", width: inch(1.5), height: inch(1.75) },
    { die: "heart", bottomOff: inch(1 / 4) },
  );
  const along = (count: number, pitch: Ticks, side: "x" | "y") =>
    Array.from({ length: count }, (_, i) => ({
      x: inch(1 / 4),
      y: inch(1 / 4),
      [side]: inch(1 / 4) + i * pitch,
    }));
  const marks: LayoutMarks = {
    sheets: { cream: { grain: "height", pattern: "none", colour: "#f3ead7" } },
    forms: {
      "1b*4": [{ ...moon, shapesAt: along(4, inch(2), "x") }],
      "1b*3": [{ ...moon, shapesAt: along(3, inch(2), "x") }],
      "1c*2": [{ ...heart, shapesAt: along(2, inch(2), "y") }],
      "1d": [shaped({ shape: "tag", width: inch(1), height: inch(1.5) }, { die: "tag" })],
    },
  };
  return { ...plan(kinds, [letter], [{ sheet: "cream", run: 1, tree }]), marks };
}

/** Examples with shapes; drawn, listed, cut and read back as all others. */
export const dieExamples = [
  { name: "dies-on-letter", unit: "in", ...diesOnLetter() },
  { name: "strips-on-letter", unit: "in", ...stripsOnLetter() },
] as const;
