import { inches, type Ticks, type Unit } from "@sheetwright/measure";
import type {
  Card,
  CardLayer,
  Expansion,
  Flat,
  Paper,
  PaperDesign,
  Pattern,
  Piece,
  Rounding,
  SurfaceName,
} from "@sheetwright/planner";

import { type FoldNote, flatOf, foldNote, surfacesOf } from "./folded.js";

/** A paper in few words. */
export interface PaperNote {
  readonly id: string;
  readonly colour: string;
  readonly name?: string;
  readonly material?: Paper["material"];
  readonly pattern?: Pattern;
  /** For a pad: its designs. */
  readonly designs?: readonly {
    readonly id: string;
    readonly colour: string;
    readonly name?: string;
    readonly pattern?: Pattern;
  }[];
  readonly back?: { readonly colour: string; readonly name: string };
}

export function paper(note: PaperNote): Paper {
  const { id, name = id, material = "cardstock" } = note;
  const own = [{ id, colour: note.colour, name, pattern: note.pattern ?? "none" }];
  const designs =
    note.designs?.map((one) => ({ ...one, id: `${id}.${one.id}`, name: one.name ?? one.id })) ?? own;
  return {
    id,
    name,
    material,
    sheet: { width: inches(8.5), height: inches(11) },
    sheetName: "US letter",
    trim: { left: 0, right: 0, top: 0, bottom: 0 },
    grain: "height",
    grainBasis: "given",
    weight: null,
    thickness: null,
    designs: designs.map(
      (one): PaperDesign => ({
        id: one.id,
        name: one.name,
        count: null,
        cost: null,
        front: { id: one.id, name: one.name, pattern: one.pattern ?? "none", colour: one.colour },
        back:
          note.back === undefined
            ? null
            : { id: `${one.id}.back`, name: note.back.name, pattern: "none", colour: note.back.colour },
        offcuts: [],
      }),
    ),
  };
}

/** A layer by its place on the front: from the left and top edge, width and height. */
export interface LayerNote {
  readonly purpose: string;
  readonly paper: string | readonly string[];
  readonly at: readonly [x: Ticks, y: Ticks, width: Ticks, height: Ticks];
  /** The index of what carries it, from 0 among the layers; the base where not given. */
  readonly on?: number;
  readonly text?: string;
  /** Layers with the same word are bands of one block. */
  readonly block?: string;
  /** The front where not given; `at` is from its corner. */
  readonly surface?: SurfaceName;
}

/** A card in few words; lengths are ticks. */
export interface CardNote {
  readonly number: number;
  readonly name: string;
  readonly format?: string;
  readonly front: readonly [width: Ticks, height: Ticks];
  readonly fold: Flat["fold"] | "either" | FoldNote;
  readonly base: string;
  readonly guests?: number;
  readonly samples?: number;
  readonly layers: readonly LayerNote[];
  readonly roundings?: readonly (Omit<Rounding, "piece"> & { readonly layer: number })[];
}

export interface BuiltCard {
  readonly card: Card;
  readonly pieces: readonly Piece[];
}

function foldsOf({ fold, front }: CardNote): readonly FoldNote[] {
  if (typeof fold !== "string") return [fold];
  const kinds = fold === "either" ? (["side", "top"] as const) : [fold];
  return kinds.map((kind) => foldNote(kind, front));
}

/** A card with its pieces, lettered from the bottom to the top. */
export function buildCard(note: CardNote): BuiltCard {
  const { number, guests = 12, samples = 0 } = note;
  const [width, height] = note.front;
  const copies = guests + samples;
  const folds = foldsOf(note);
  const flats = folds.map((fold) => flatOf(note.front, fold));
  const surfaces = folds[0] === undefined ? [] : surfacesOf(note.front, folds[0]);
  const piece = (
    index: number,
    purpose: string,
    faces: readonly string[],
    forms: Piece["forms"],
    path: string,
  ): Piece => {
    const id = `${number}${letter(index)}`;
    return {
      id,
      label: `${id} ${purpose}`,
      purpose,
      card: number,
      path,
      faces,
      paperText: faces.join(" or "),
      forms,
      quantity: copies,
      grainNeed: index === 0 ? "prefer" : "ignore",
    };
  };
  const base = piece(
    0,
    "base",
    [note.base],
    flats.map((flat) => ({
      width: flat.width,
      height: flat.height,
      scores: flat.scores,
      ...(flat.slits.length > 0 ? { slits: flat.slits } : {}),
      grainAlong:
        flat.scores.length === 0 ? null : flat.along === "width" ? ("height" as const) : ("width" as const),
    })),
    `cards[${number - 1}].base`,
  );
  const pieces = note.layers.map(
    ({ purpose, paper: faces, at: [, , w, h], block, surface = "front" }, index) =>
      piece(
        index + 1,
        purpose,
        typeof faces === "string" ? [faces] : faces,
        [{ width: w, height: h, scores: [], grainAlong: null }],
        `cards[${number - 1}].${surface}[${block ?? index}]`,
      ),
  );
  // Bands lie and carry as one surface.
  const wholeOf = (layer: LayerNote): LayerNote["at"] => {
    const all =
      layer.block === undefined ? [layer] : note.layers.filter(({ block }) => block === layer.block);
    const left = Math.min(...all.map(({ at: [x] }) => x));
    const top = Math.min(...all.map(({ at: [, y] }) => y));
    return [
      left,
      top,
      Math.max(...all.map(({ at: [x, , w] }) => x + w)) - left,
      Math.max(...all.map(({ at: [, y, , h] }) => y + h)) - top,
    ];
  };
  const layers = note.layers.map((layer, index): CardLayer => {
    const [x, y, w, h] = layer.at;
    const carrier = layer.on === undefined ? undefined : note.layers[layer.on];
    const { surface = "front" } = layer;
    const whole = surfaces.find(({ name }) => name === surface);
    if (whole === undefined) throw new Error(`The fold gives no ${surface}.`);
    const [cx, cy, cw, ch] = carrier === undefined ? [0, 0, whole.width, whole.height] : wholeOf(carrier);
    const [bx, by, bw, bh] = wholeOf(layer);
    return {
      surface,
      x,
      y,
      width: w,
      height: h,
      piece: pieces[index]?.id ?? "",
      on: layer.on ?? null,
      border: { left: bx - cx, right: cx + cw - bx - bw, top: by - cy, bottom: cy + ch - by - bh },
      text: layer.text ?? null,
    };
  });
  return {
    card: {
      number,
      name: note.name,
      format: note.format ?? null,
      front: { width, height },
      copies,
      copiesFor: { guests, samples },
      flats,
      base: base.id,
      surfaces,
      layers,
      seams: [],
      joins: [],
      roundings: (note.roundings ?? []).map(({ layer, ...rounding }) => ({
        ...rounding,
        piece: pieces[layer]?.id ?? "",
      })),
    },
    pieces: [base, ...pieces],
  };
}

function letter(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : `${letter(Math.floor(index / 26) - 1)}${last}`;
}

/** A project worked out, from its papers and cards. */
export function expansion(
  papers: readonly Paper[],
  cards: readonly BuiltCard[],
  units: Unit = "in",
): Expansion {
  return {
    title: "Lantern Night workshop",
    units,
    papers,
    cards: cards.map(({ card }) => card),
    pieces: cards.flatMap(({ pieces }) => pieces),
    items: [],
  };
}
