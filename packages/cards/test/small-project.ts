import { CUTTING_PRECISION, inches, millimetres, type Unit } from "@sheetwright/measure";
import type {
  Bands,
  Choice,
  Design,
  Extent,
  Face,
  Layer,
  Mat,
  Panel,
  Paper,
  PaperDesign,
  Place,
  Project,
  Sentiment,
  Sides,
  Strip,
} from "../src/index.js";
import { flatsOf } from "../src/index.js";

// Short hands for building projects in code, for tests that say what they are about in one line.

/** A choice of faces. */
export const choice = (...faces: string[]): Choice => ({ faces, text: faces.join(" or ") });

/** The same border on all sides. */
export const evenly = (border: number): Sides => ({
  left: border,
  right: border,
  top: border,
  bottom: border,
});

/** A layer by its border. */
export const byBorder = (border: number | Sides): Extent => ({
  by: "border",
  border: typeof border === "number" ? evenly(border) : border,
});

/** The middle of the carrier, both ways. */
export const middle: Place = { x: { from: "middle" }, y: { from: "middle" } };

/** A layer of its own size. */
export const bySize = (width: number, height: number, place: Partial<Place> = {}): Extent => ({
  by: "size",
  size: { width, height },
  place: { ...middle, ...place },
});

const COMMON = { path: "", name: null, grain: null, foam: null, layers: [] } as const;

export const mat = (extent: Extent, more: Partial<Mat> = {}): Mat => ({
  ...COMMON,
  kind: "mat",
  paper: choice("night"),
  extent,
  ...more,
});

export const panel = (extent: Extent, more: Partial<Panel> = {}): Panel => ({
  ...COMMON,
  kind: "panel",
  paper: choice("cream"),
  extent,
  ...more,
});

export const bands = (ratios: readonly number[], extent: Extent, more: Partial<Bands> = {}): Bands => ({
  ...COMMON,
  kind: "bands",
  runs: "across",
  shares: { by: "ratio", ratios },
  papers: ratios.map((_, index) => choice(index % 2 === 0 ? "cream" : "night")),
  extent,
  seam: null,
  ...more,
});

export const strip = (width: number, more: Partial<Strip> = {}): Strip => ({
  ...COMMON,
  kind: "strip",
  runs: "across",
  paper: choice("night"),
  width,
  length: null,
  place: middle,
  ...more,
});

export const sentiment = (width: number, height: number, more: Partial<Sentiment> = {}): Sentiment => ({
  ...COMMON,
  kind: "sentiment",
  paper: choice("cream"),
  size: { width, height },
  place: middle,
  text: null,
  mats: [],
  ...more,
});

export function face(id: string, more: Partial<Face> = {}): Face {
  return { id, name: id, pattern: "none", colour: "#cccccc", ...more };
}

export function paperDesign(id: string, more: Partial<PaperDesign> = {}): PaperDesign {
  return { id, name: id, count: null, cost: null, front: face(id), back: null, offcuts: [], ...more };
}

export function paper(id: string, width: number, height: number, more: Partial<Paper> = {}): Paper {
  return {
    id,
    name: id,
    material: "cardstock",
    sheet: { width, height },
    sheetName: null,
    trim: evenly(0),
    grain: "unknown",
    grainBasis: (more.grain ?? "unknown") === "unknown" ? null : "given",
    weight: null,
    thickness: null,
    designs: [paperDesign(id)],
    ...more,
  };
}

/** A card of its own size with these layers; paths are filled in as the file would have them. */
export function card(
  width: number,
  height: number,
  layers: readonly Layer[],
  more: Partial<Design> = {},
): Design {
  const number = more.number ?? 1;
  const path = `cards[${number - 1}]`;
  const front = { width, height };
  return {
    number,
    name: `Card ${number}`,
    path,
    format: null,
    front,
    flats: flatsOf({ front, fold: "side" }),
    base: choice("night"),
    foldGrain: "prefer",
    copies: 1,
    copiesFor: { guests: 1, samples: 0 },
    extras: [],
    envelope: null,
    ...more,
    surfaces: [{ name: "front", path: `${path}.front`, layers: withPaths(layers, `${path}.front`) }],
  };
}

function withPaths(layers: readonly Layer[], path: string): readonly Layer[] {
  return layers.map((layer, index) => ({
    ...layer,
    path: `${path}[${index}]`,
    layers: withPaths(layer.layers, `${path}[${index}].layers`),
  }));
}

/** A project of these cards, with letter sheets `night` and `cream` unless it has papers of its own. */
export function project(cards: readonly Design[], more: Partial<Project> = {}): Project {
  const units: Unit = more.units ?? "in";
  const unit = units === "in" ? inches(1) : millimetres(1);
  const letter = { width: inches(8.5), height: inches(11) };
  return {
    title: "Lantern Night workshop",
    units,
    precision: CUTTING_PRECISION[units],
    trimmer: {
      cuts: "edge-to-edge",
      kerf: 0,
      longestCut: null,
      narrowestHold: 2 * unit,
      smallestOffcut: { width: 2 * unit, height: 2 * unit },
    },
    papers: ["night", "cream"].map((id) => paper(id, letter.width, letter.height)),
    cards,
    silences: [],
    ...more,
  };
}
