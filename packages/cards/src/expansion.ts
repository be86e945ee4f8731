/**
 * A project worked out: what each card is made of and where each layer lies, and the cut list that follows from it. All
 * plain data in ticks; enough to draw the cards without the plan.
 */

import type { Size, Ticks, Unit } from "@sheetwright/measure";
import type { Outline, Point } from "@sheetwright/shapes";
import type {
  CopiesFor,
  Extra,
  Flat,
  GrainNeed,
  Paper,
  Run,
  Score,
  Sides,
  Slit,
  SurfaceName,
} from "./project.js";

/** What {@link expandProject} makes of a project. */
export interface Expansion {
  readonly title: string;
  readonly units: Unit;
  readonly papers: readonly Paper[];
  readonly cards: readonly Card[];
  /** The cut list for all copies, in the order of the labels. */
  readonly pieces: readonly Piece[];
  /** What is used by its length and not cut from paper, in the order of the labels. */
  readonly items: readonly Item[];
}

/** A design with everything measured. */
export interface Card {
  readonly number: number;
  readonly name: string;
  readonly format: string | null;
  readonly front: Size;
  readonly copies: number;
  readonly copiesFor: CopiesFor;
  readonly flats: readonly Flat[];
  /** The id of the base's piece. */
  readonly base: string;
  /** The surfaces that the fold gives, upright as the reader sees each; the front first. */
  readonly surfaces: readonly CardSurface[];
  /** What lies on them, each from the bottom to the top: a layer never lies below one that it is on. */
  readonly layers: readonly CardLayer[];
  /** Where parts of a layer meet. */
  readonly seams: readonly CardSeam[];
  /** Layers larger than their paper, and how each is made up. */
  readonly joins: readonly Join[];
  /** Borders that mats cut by the next die up give; absent where there is none. */
  readonly reveals?: readonly Reveal[] | undefined;
  /** Lengths that were rounded to the project's precision. */
  readonly roundings: readonly Rounding[];
  /** What is fastened on it that is not cut, in the order of the file; absent where there is nothing. */
  readonly extras?: readonly CardExtra[] | undefined;
}

/** Something on a card that is neither cut from paper nor from a ribbon: so many of it on one surface. */
export type CardExtra = Pick<Extra, "name" | "count" | "surface">;

/** A surface of a card with its size, upright as its reader sees it, in ticks. */
export interface CardSurface extends Size {
  readonly name: SurfaceName;
}

/** A piece where it lies on a surface, from the surface's top left corner. */
export interface CardLayer extends Size {
  readonly surface: SurfaceName;
  readonly x: Ticks;
  readonly y: Ticks;
  /** The id of its piece, or of its item where that is not of paper. */
  readonly piece: string;
  /** The index of the layer that carries it, of the first band where that is bands; the surface itself where `null`. */
  readonly on: number | null;
  /**
   * Distances to the edges of what carries it, never negative; for bands that all are of one paper each and meet edge to
   * edge, of their whole extent to their carrier.
   */
  readonly border: Sides;
  /** Its words, for a sentiment. */
  readonly text: string | null;
  /** The thickness of the foam under it; absent where it is glued flat. */
  readonly foam?: Ticks | undefined;
  /**
   * What it is cut to, from its own top left corner, after anything is cut straight off it; absent where it is a rectangle,
   * or cut by a die of which only the size is known.
   */
  readonly outline?: readonly Outline[] | undefined;
  /** The stitches in it, from its own top left corner; absent where there are none. */
  readonly stitches?: StitchMarks | undefined;
}

/** Stitches as they are seen: dashes that are pressed, drawn or sewn, and pricked holes. */
export interface StitchMarks {
  /** Each as the points along it: two where it is straight, more where it bends. */
  readonly dashes: readonly (readonly Point[])[];
  readonly holes: readonly { readonly centre: Point; readonly diameter: Ticks }[];
}

/** What a mat cut by the next die up shows round what lies on it. */
export interface Reveal {
  /** Where the mat stands in the file, such as `cards[2].front[0].mats[0]`. */
  readonly path: string;
  /** The id of the mat's piece. */
  readonly mat: string;
  /** The id of the piece on it. */
  readonly piece: string;
  readonly wanted: Ticks;
  /** The border that it gives, where it is narrowest and widest; sides that are cut straight off do not count. */
  readonly least: Ticks;
  readonly most: Ticks;
}

/**
 * A seam between two parts that lie beside each other on a surface. The rectangle is what is left free between them: no
 * wider (or higher) than 0 where they meet.
 */
export interface CardSeam {
  readonly surface: SurfaceName;
  readonly x: Ticks;
  readonly y: Ticks;
  readonly width: Ticks;
  readonly height: Ticks;
  /** `across`: it lies level, between what is above and what is below. */
  readonly runs: Run;
  /** What makes it: the bands, such as `cards[2].front[0]`, or a layer's `cards[2].front[0].join`. */
  readonly path: string;
  /** Its middle line, from the top or the left of all that is divided there. */
  readonly position: Ticks;
  /** The id of the piece or item that lies centred on it; `null` where none was asked for. */
  readonly cover: string | null;
  /** Whether it is to be seen, by the maker's own word. */
  readonly bare: boolean;
  /** Index of the first layer that lies above all that meets here. */
  readonly above: number;
}

/** A layer that its paper is too small for, and how it is made up from smaller pieces. */
export interface Join {
  /** Where the layer stands in the file, such as `cards[2].front[0]`. */
  readonly path: string;
  /** What the layer is called: `mat`. */
  readonly purpose: string;
  /**
   * - `whole`: its paper is large enough after all, and it is cut in one piece
   * - `ends`: its own paper as large as it comes, and another one at its ends
   * - `parts`: of one paper in several parts
   * - `hide`: cut short, with what is missing below another layer
   */
  readonly by: "whole" | "ends" | "parts" | "hide";
  /** The side of the layer that is too long, as it stands. */
  readonly along: "width" | "height";
  /** How long that side is, and how much of it its paper gives. */
  readonly extent: Ticks;
  readonly gives: Ticks;
  /** Ids of its pieces, from the left or the top. */
  readonly pieces: readonly string[];
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
  /** How many are to be cut: copies of the card times one, without those that are cut already. */
  readonly quantity: number;
  /** Copies that an earlier plan cut, of those that are asked for; absent where there are none. */
  readonly cutAlready?: number | undefined;
  readonly grainNeed: GrainNeed;
  /** What is cut out of it by a die; absent where it is itself what lies on the card. */
  readonly die?: PieceDie | undefined;
}

/** What is cut to a shape out of the middle of a piece, a die blank. */
export interface PieceDie {
  /** The name of the die; `null`: a cutting machine, or scissors along a drawn line. */
  readonly name: string | null;
  /** Width and height of the shape. */
  readonly cut: Size;
  /** The shape by its name in the catalogue, such as `scalloped-circle`; absent where only its size is known. */
  readonly shape?: string | undefined;
  /** How far it is across, where the shape's size is told by one length; absent where it is width x height. */
  readonly across?: Ticks | undefined;
  /** What it cuts, from the top left corner of `cut`; absent where only its size is known. */
  readonly outline?: readonly Outline[] | undefined;
  /** Stitches that it presses, from there; absent where there are none. */
  readonly stitches?: StitchMarks | undefined;
  /** What is cut straight off its sides afterwards; absent where nothing is. */
  readonly trim?: Sides | undefined;
}

/** One way to cut a piece, upright as it stands on the card. */
export interface PieceForm extends Size {
  readonly scores: readonly Score[];
  /** Cuts inside the piece that free strips of it; absent where there are none. */
  readonly slits?: readonly Slit[] | undefined;
  /** The side that the grain should run along; `null` where it is of no matter. */
  readonly grainAlong: "width" | "height" | null;
}

/** A ribbon or a tape: for each copy of a card one of this length. */
export interface Item {
  /** Design number and letter, in one row with the pieces of the card: `3f`. */
  readonly id: string;
  /** The id and what it is: `3f ribbon`. */
  readonly label: string;
  /** The design's number. */
  readonly card: number;
  /** Where it comes from in the file, such as `cards[2].front[0].seam`. */
  readonly path: string;
  readonly kind: "ribbon" | "tape";
  /** The maker's words for it. */
  readonly name: string;
  /** `#rrggbb`, for drawings. */
  readonly colour: string;
  readonly width: Ticks;
  /** Of one: what shows, and for a ribbon the ends that are tucked behind. */
  readonly length: Ticks;
  /** Copies of the card times one. */
  readonly quantity: number;
}
