/**
 * A project worked out: what each card is made of and where each layer lies, and the cut list that follows from it. All
 * plain data in ticks; enough to draw the cards without the plan.
 */

import type { Size, Ticks, Unit } from "@sheetwright/measure";
import type { Flat, GrainNeed, Paper, Score, Sides, Slit, SurfaceName } from "./project.js";

/** What {@link expandProject} makes of a project. */
export interface Expansion {
  readonly title: string;
  readonly units: Unit;
  readonly papers: readonly Paper[];
  readonly cards: readonly Card[];
  /** The cut list for all copies, in the order of the labels. */
  readonly pieces: readonly Piece[];
}

/** A design with everything measured. */
export interface Card {
  readonly number: number;
  readonly name: string;
  readonly format: string | null;
  readonly front: Size;
  readonly copies: number;
  readonly copiesFor: { readonly guests: number; readonly samples: number };
  readonly flats: readonly Flat[];
  /** The id of the base's piece. */
  readonly base: string;
  /** The surfaces that the fold gives, upright as the reader sees each; the front first. */
  readonly surfaces: readonly CardSurface[];
  /** What lies on them, each from the bottom to the top: a layer never lies below one that it is on. */
  readonly layers: readonly CardLayer[];
  /** Lengths that were rounded to the project's precision. */
  readonly roundings: readonly Rounding[];
}

/** A surface of a card with its size, upright as its reader sees it, in ticks. */
export interface CardSurface extends Size {
  readonly name: SurfaceName;
}

/** A piece where it lies on a surface, from the surface's top left corner. */
export interface CardLayer extends Size {
  readonly surface: SurfaceName;
  readonly x: Ticks;
  readonly y: Ticks;
  /** The id of its piece. */
  readonly piece: string;
  /** The index of the layer that carries it, of the first band where that is bands; the surface itself where `null`. */
  readonly on: number | null;
  /** Distances to the edges of what carries it (for a band, of the bands' whole extent to their carrier); never negative. */
  readonly border: Sides;
  /** Its words, for a sentiment. */
  readonly text: string | null;
}

/** A boundary or middle line that was moved to the next mark of the precision. */
export interface Rounding {
  /** The id of the piece that the rounded line bounds or centres. */
  readonly piece: string;
  /** What was rounded: `seam` between bands, or the `third` a layer is centred on. */
  readonly what: "seam" | "third";
  /** From the start of what is divided. */
  readonly position: Ticks;
  /** How far it was moved, away from the start where positive; may be a fraction of a tick, for telling only. */
  readonly by: number;
}

/** Pieces that are all alike: one for each copy of a card. */
export interface Piece {
  /** Design number and letter: `3b`. Written on the back. */
  readonly id: string;
  /** The id and the purpose: `3b mat`. */
  readonly label: string;
  /** base, mat, panel, band, cover, strip, sentiment, sentiment mat, or the maker's own word. */
  readonly purpose: string;
  /** The design's number. */
  readonly card: number;
  /** Where it comes from in the file, such as `cards[2].front[0]`. */
  readonly path: string;
  /** Ids of the faces it may be cut from, in the maker's order. */
  readonly faces: readonly string[];
  /** What the file says of them. */
  readonly paperText: string;
  /** One size; two for a base that may be folded either way. */
  readonly forms: readonly PieceForm[];
  /** Copies of the card times one. */
  readonly quantity: number;
  readonly grainNeed: GrainNeed;
}

/** One way to cut a piece, upright as it stands on the card. */
export interface PieceForm extends Size {
  readonly scores: readonly Score[];
  /** Cuts inside the piece that free strips of it; absent where there are none. */
  readonly slits?: readonly Slit[] | undefined;
  /** The side that the grain should run along; `null` where it is of no matter. */
  readonly grainAlong: "width" | "height" | null;
}
