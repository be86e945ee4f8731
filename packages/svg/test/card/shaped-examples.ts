import { inches, type Ticks } from "@sheetwright/measure";
import type { CardLayer, Piece, PieceDie } from "@sheetwright/planner";
import {
  boxOf,
  intersection,
  moved,
  type Outline,
  offset,
  outlineOf,
  type Shape,
  type StitchOptions,
  stitch,
} from "@sheetwright/shapes";
import { type BuiltCard, buildCard, type LayerNote } from "./build.js";

const inch = inches;

/** A layer that is cut to a shape, by its place. */
interface ShapeNote extends Omit<LayerNote, "at"> {
  readonly x: Ticks;
  readonly y: Ticks;
  readonly shape: Shape;
  /** A cutting machine or scissors where there is none. */
  readonly die?: string;
  readonly across?: Ticks;
  readonly stitched?: StitchOptions;
  /** How far its outline is grown. */
  readonly grown?: Ticks;
  readonly bottomOff?: Ticks;
}

/** A card with its layers, some of which are cut to shapes. */
function buildShapedCard(
  note: Omit<Parameters<typeof buildCard>[0], "layers"> & {
    readonly layers: readonly (LayerNote | ShapeNote)[];
  },
): BuiltCard {
  const cuts = note.layers.map((layer) => ("shape" in layer ? cutOf(layer) : null));
  const built = buildCard({
    ...note,
    layers: note.layers.map((layer, i): LayerNote => {
      const cut = cuts[i] ?? null;
      if (!("shape" in layer) || cut === null) return layer as LayerNote;
      const { x, y, shape: _, ...rest } = layer;
      return { ...rest, at: [x, y, cut.width, cut.height] };
    }),
  });
  return {
    card: {
      ...built.card,
      layers: built.card.layers.map((layer, i): CardLayer => {
        const cut = cuts[i] ?? null;
        if (cut === null) return layer;
        return {
          ...layer,
          outline: cut.outline,
          ...(cut.stitches === undefined ? {} : { stitches: cut.stitches }),
        };
      }),
    },
    pieces: built.pieces.map((piece, i): Piece => {
      const cut = cuts[i - 1] ?? null;
      if (cut === null) return piece;
      const blank = { width: cut.die.cut.width + inch(0.5), height: cut.die.cut.height + inch(0.5) };
      return { ...piece, die: cut.die, forms: [{ ...blank, scores: [], grainAlong: null }] };
    }),
  };
}

interface Cut {
  readonly width: Ticks;
  readonly height: Ticks;
  readonly outline: readonly Outline[];
  readonly stitches?: NonNullable<PieceDie["stitches"]>;
  readonly die: PieceDie;
}

function cutOf({ shape, die, across, stitched, grown = 0, bottomOff = 0 }: ShapeNote): Cut {
  const grownOutlines = grown === 0 ? [outlineOf(shape)] : offset([outlineOf(shape)], grown).outlines;
  const { x, y, width, height } = boxOf(grownOutlines[0] as Outline);
  const whole = grownOutlines.map((outline) => moved(outline, { x: -x, y: -y }));
  const left = height - bottomOff;
  const kept =
    bottomOff === 0 ? whole : intersection(whole, [outlineOf({ shape: "rectangle", width, height: left })]);
  const lines = stitched === undefined ? [] : whole.map((outline) => stitch(outline, stitched));
  const stitches = {
    dashes: lines.flatMap(({ dashes }) => dashes).filter((dash) => dash.every((point) => point.y <= left)),
    holes: lines.flatMap(({ holes }) => holes).filter(({ centre }) => centre.y <= left),
  };
  const named = die ?? null;
  return {
    width,
    height: left,
    outline: kept,
    ...(stitched === undefined ? {} : { stitches }),
    die: {
      name: named,
      cut: { width, height: named === null ? left : height },
      ...(grown === 0 ? { shape: shape.shape } : {}),
      ...(across === undefined ? {} : { across }),
      outline: named === null ? kept : whole,
      ...(stitched === undefined ? {} : { stitches }),
      ...(named === null || bottomOff === 0
        ? {}
        : { trim: { left: 0, right: 0, top: 0, bottom: bottomOff } }),
    },
  };
}

const at = (x: number, y: number, width: number, height: number): LayerNote["at"] =>
  [inch(x), inch(y), inch(width), inch(height)] as const;

const moon = buildShapedCard({
  number: 30,
  name: "Harvest moon",
  format: "us-a7",
  front: [inch(5), inch(7)],
  fold: "side",
  base: "night",
  guests: 12,
  layers: [
    { purpose: "panel", paper: "stars.dots", at: at(0.25, 0.25, 4.5, 6.5) },
    {
      purpose: "mat",
      paper: "copper",
      x: inch(0.875),
      y: inch(0.625),
      on: 0,
      shape: { shape: "scalloped-circle", diameter: inch(3.25) },
      die: "scalloped disc",
      across: inch(3.25),
    },
    {
      purpose: "moon",
      paper: "cream",
      x: inch(1.125),
      y: inch(0.875),
      on: 1,
      shape: { shape: "circle", diameter: inch(2.75) },
      die: "disc",
      across: inch(2.75),
      stitched: {},
    },
    {
      purpose: "hill",
      paper: "ember",
      x: inch(0.25),
      y: inch(5),
      on: 0,
      shape: { shape: "circle", diameter: inch(3.5) },
      die: "disc",
      across: inch(3.5),
      bottomOff: inch(1.75),
    },
    { purpose: "strip", paper: "night", at: at(0.25, 6.25, 4.5, 0.5), on: 0 },
    {
      purpose: "shadow",
      paper: "night",
      x: inch(2.6875),
      y: inch(3.9375),
      on: 0,
      shape: { shape: "heart", width: inch(1.5), height: inch(1.375) },
      grown: inch(1 / 16),
    },
    {
      purpose: "heart",
      paper: "ember",
      x: inch(2.75),
      y: inch(4),
      on: 5,
      shape: {
        shape: "frame",
        outer: { shape: "heart", width: inch(1.5), height: inch(1.375) },
        window: { shape: "heart", width: inch(0.75), height: inch(0.6875) },
      },
    },
    {
      purpose: "sentiment",
      paper: "cream",
      x: inch(1.375),
      y: inch(2),
      on: 2,
      shape: { shape: "banner", width: inch(2.25), height: inch(0.5) },
      die: "banner",
      text: "by moonlight",
    },
  ],
});

/** Cards with layers that are cut to shapes, with the borders that mats show. */
export const shapedExamples: readonly BuiltCard[] = [
  {
    ...moon,
    card: {
      ...moon.card,
      reveals: [
        {
          path: "cards[29].front[1]",
          mat: "30c",
          piece: "30d",
          wanted: inch(1 / 8),
          least: inch(1 / 8),
          most: inch(1 / 4),
        },
      ],
    },
  },
];
