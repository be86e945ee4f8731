/**
 * A project: the bundle of papers and the designs made from it, with every default filled in. All plain data; lengths
 * are ticks of 1/1600 mm, sizes width x height as the thing stands before the maker with its pattern upright.
 */

import type { Size, Ticks, Unit } from "@sheetwright/measure";
import type { SilenceableCode } from "./checks/silenceable-codes.js";
import type { DieMachine } from "./die.js";
import type { namedFolds, namedSurfaces } from "./fold/names.js";
import type { Choice, Layer } from "./layer.js";

export type { DieMachine, DieMat, DieSize, Shadow, Stitched } from "./die.js";
export type {
  Along,
  AnyPaper,
  BandParts,
  BandShares,
  Bands,
  Choice,
  DieCut,
  Extent,
  InnerBands,
  Layer,
  LayerJoin,
  Mat,
  Panel,
  Place,
  Ribbon,
  Run,
  Seam,
  Sentiment,
  Strip,
} from "./layer.js";

/** Everything a plan starts from: what {@link readProject} makes of a project file. */
export interface Project {
  readonly title: string;
  /** The unit that bare numbers were read in and that lengths are shown in. */
  readonly units: Unit;
  /** What derived divisions are rounded to: 1/16 in or 0.5 mm unless the file says otherwise. */
  readonly precision: Ticks;
  readonly trimmer: Trimmer;
  /** What presses dies; absent: a small one. */
  readonly dieMachine?: DieMachine | undefined;
  readonly papers: readonly Paper[];
  /** How many bags hold the same bundle each; absent: a class, with one pile for all guests. */
  readonly kits?: Kits | undefined;
  readonly cards: readonly Design[];
  /** Ribbons, tapes and what is counted singly, as they are on hand; absent where nothing is said of them. */
  readonly items?: readonly BundleItem[] | undefined;
  /** What work costs; absent where nothing is said of it. */
  readonly rates?: Rates | undefined;
  /** Warnings and notes that the maker knows of and means. */
  readonly silences: readonly Silence[];
  /** Pieces that an earlier plan cut and that are not cut again; absent where there are none. No project file says so. */
  readonly cutAlready?: readonly CutAlready[] | undefined;
}

/** Bags that all hold the same: what one of them makes, every one makes. */
export interface Kits {
  /** All bags, the maker's own for samples among them. */
  readonly bags: number;
}

/** Copies of a piece that are cut already. */
export interface CutAlready {
  /** The id of the piece; one that no card has is passed over. */
  readonly piece: string;
  readonly count: number;
}

/** A check whose findings the maker does not want to be told. */
export interface Silence {
  /** Where it stands in the file, such as `silence[0]`. */
  readonly path: string;
  readonly check: SilenceableCode;
  /** The place where it holds, with all that stands there, such as `cards[0].front[1]`; `null`: everywhere. */
  readonly at: string | null;
  readonly because: string;
}

/** What work and what is used up cost, each as decimal text with up to four decimals; `null` where it is not reckoned. */
export interface Rates {
  /** The sign or name of the currency, such as `$`. */
  readonly currency: string | null;
  /** Cost of an hour of work. */
  readonly hour: string | null;
  /** Minutes of work for one copy of a card. */
  readonly minutesPerCard: string | null;
  /** Cost of a yard, or of a metre where the units are mm, of ribbons and tapes; absent where none is known. */
  readonly ribbons?: readonly NamedCost[] | undefined;
  /** What one copy of a card takes of adhesive, ink and such; absent where it is not reckoned. */
  readonly consumables?: readonly NamedCost[] | undefined;
  /** The wished price is the cost times this; absent where none is wished for. */
  readonly priceFactor?: string | undefined;
}

/** A cost by the maker's word for what it is of, as decimal text with up to four decimals. */
export interface NamedCost {
  readonly name: string;
  readonly cost: string;
}

/** What the tool can do, and what is worth keeping. */
export interface Trimmer {
  /** `edge-to-edge`: every cut crosses the part. `strips`: strips, pieces from the strips, one last trim. */
  readonly cuts: "edge-to-edge" | "strips";
  /** Width lost by each cut. */
  readonly kerf: Ticks;
  readonly longestCut: Ticks | null;
  /** The narrowest part the tool holds firmly. */
  readonly narrowestHold: Ticks;
  /** A leftover is an offcut from this size on. */
  readonly smallestOffcut: Size;
}

/** The direction of a paper's fibres on the sheet; `none` for handmade paper. */
export type Grain = "width" | "height" | "none" | "unknown";

/**
 * The way a pattern can be looked at: `none` in any way; `two-way` also upside down; `one-way` only as it stands. A
 * rectangle of either of the last two may not take a quarter turn; a one-way one is marked with its top.
 */
export type Pattern = "none" | "two-way" | "one-way";

/** A paper of the bundle, all of one size. */
export interface Paper {
  /** Its key in the file; letters, digits, `-` and `_`. */
  readonly id: string;
  /** What a reader sees. */
  readonly name: string;
  readonly material: "cardstock" | "glitter" | "paper" | "pad";
  readonly sheet: Size;
  /** The name of the sheet's size, such as `US letter`; `null` where it has none. */
  readonly sheetName: string | null;
  /** What is squared off each side before anything else. */
  readonly trim: Sides;
  readonly grain: Grain;
  /** Where the grain is known from: the maker, or what such paper mostly is; `null` where it is not known. */
  readonly grainBasis: "given" | "assumed" | null;
  readonly weight: PaperWeight | null;
  readonly thickness: Ticks | null;
  /** How it is sold; absent where nothing is said of it. */
  readonly pack?: PaperPack | undefined;
  /**
   * Into how many bags its sheets go out whole, the same number of sheets into each; no piece of it crosses bags. Absent: it
   * is cut for all from one pile.
   */
  readonly bags?: number | undefined;
  /** One of its own for a plain paper; for a pad one for each design. */
  readonly designs: readonly PaperDesign[];
}

/** A pack of a paper, as it is sold. */
export interface PaperPack {
  /** Sheets in it; of a pad, of each of its designs. */
  readonly sheets: number;
  /** Cost of one pack as decimal text with up to four decimals; `null` where not given. */
  readonly cost: string | null;
}

/** A ribbon, a tape, or something that is counted singly, such as pearls: what of it is on hand, and how it is sold. */
export interface BundleItem {
  /** Its name, as cards use it; capitals and spaces round it are of no matter. */
  readonly name: string;
  /** Where it stands in the file, such as `items.pearl`. */
  readonly path: string;
  /** How long one roll of a ribbon or a tape is; absent where it is counted singly. */
  readonly length?: Ticks | undefined;
  /** Rolls, or single ones, on hand; `null`: as many as needed. */
  readonly count: number | null;
  /** Cost of one, of a ribbon of one roll, as decimal text with up to four decimals; absent where it is not known. */
  readonly cost?: string | undefined;
  /** How it is sold; absent where it is sold singly. */
  readonly pack?: ItemPack | undefined;
  /**
   * Into how many bags its rolls go out whole, the same number of rolls into each. Absent: lengths are cut for all from one
   * pile, and what is counted singly is dealt out.
   */
  readonly bags?: number | undefined;
}

/** A pack of an item, as it is sold. */
export interface ItemPack {
  /** How many are in it. */
  readonly items: number;
  /** Cost of one pack as decimal text with up to four decimals; `null` where not given. */
  readonly cost: string | null;
}

/** A length a side. */
export interface Sides {
  readonly left: Ticks;
  readonly right: Ticks;
  readonly top: Ticks;
  readonly bottom: Ticks;
}

/** A paper's weight as its label states it; `text` is what was written. */
export type PaperWeight =
  | { readonly unit: "g/m2"; readonly grammage: number; readonly text: string }
  | {
      readonly unit: "lb";
      readonly pounds: number;
      readonly grade: "bond" | "text" | "cover" | "index" | "bristol" | "tag" | null;
      readonly text: string;
    };

/** Sheets of a paper that are all alike on both faces. */
export interface PaperDesign {
  /** The paper's id, or for a pad `stars.comets`. */
  readonly id: string;
  readonly name: string;
  /** Sheets on hand; `null`: as many as needed. */
  readonly count: number | null;
  /** Cost of one sheet as decimal text with up to four decimals; `null` where not given. */
  readonly cost: string | null;
  readonly front: Face;
  /** The printed back; `null` where a piece is never cut with the back up. */
  readonly back: Face | null;
  /** Parts of such sheets that are left from earlier: they cost nothing and keep the axes of the sheet. */
  readonly offcuts: readonly Offcut[];
}

/** One face of a sheet. */
export interface Face {
  /** The design's id, with `.back` behind it for the back. */
  readonly id: string;
  readonly name: string;
  readonly pattern: Pattern;
  /** `#rrggbb`, for drawings. */
  readonly colour: string;
}

/** A usable leftover, its size as it lies with the pattern upright. */
export interface Offcut extends Size {
  readonly count: number;
}

/** One kind of card. */
export interface Design {
  /** Its place in the list, from 1: it begins the label of each of its pieces. */
  readonly number: number;
  readonly name: string;
  /** Where it stands in the file, such as `cards[2]`. */
  readonly path: string;
  /** The id of the named card size, or `null`. */
  readonly format: string | null;
  /** The front as the card stands, closed. */
  readonly front: Size;
  /** The flats it may be folded from: one, or two where the maker lets the plan choose the fold. */
  readonly flats: readonly Flat[];
  readonly base: Choice;
  /** The paper of the panel that an easel has as its front; absent: that of the base. */
  readonly frontPaper?: Choice | undefined;
  /** A folded leaf inside; absent where there is none. */
  readonly insert?: Insert | undefined;
  /** Whether the grain runs along the fold: as a tie-break, always, or of no matter. */
  readonly foldGrain: GrainNeed;
  /** Copies made in all. */
  readonly copies: number;
  /** What these copies are for. */
  readonly copiesFor: CopiesFor;
  /** What lies on the card, surface by surface; those without layers may be missing. */
  readonly surfaces: readonly SurfaceLayers[];
  /** Knots, buttons, gems and such, that are not cut from paper. */
  readonly extras: readonly Extra[];
  /** What it is mailed in; `null` where the maker says nothing of it. */
  readonly envelope: EnvelopeWish | null;
}

/** Something on a card that is not cut from paper: a knot, buttons, gems. */
export interface Extra {
  /** Where it stands in the file, such as `cards[2].extras[0]`. */
  readonly path: string;
  readonly name: string;
  /** How many of them one copy has. */
  readonly count: number;
  /** What they lie on. */
  readonly surface: SurfaceName;
  /** How far one stands up from what it lies on. */
  readonly thickness: Ticks;
  /** What one weighs, in grams; `null` where nobody knows. */
  readonly grams: number | null;
  /** Whether a small child could swallow one. */
  readonly isSmallPart: boolean;
  /** Cost of one as decimal text with up to four decimals; absent where it is not known. */
  readonly cost?: string | undefined;
}

/** What the maker says of the envelope of a card. */
export interface EnvelopeWish {
  /** The id of a named envelope; `null` for one of its own size, or where she leaves it open. */
  readonly id: string | null;
  /** `null` where she leaves it open. */
  readonly size: Size | null;
  /** The weight of its paper; `null` where not given. */
  readonly weight: PaperWeight | null;
  /** Cost of one as decimal text with up to four decimals; absent where it is not known. */
  readonly cost?: string | undefined;
}

/** Whom copies are made for, such as 12 guests and 1 sample: these add up to the copies of the card. */
export interface CopiesFor {
  readonly guests: number;
  readonly samples: number;
  /** Copies more, made only of what the papers give beyond those; absent where none are wished for, else at least 1. */
  readonly spares?: number | undefined;
}

/** A folded leaf inside a card with a side or a top fold, its fold in that of the card. What lies inside lies on it. */
export interface Insert {
  /** Where it stands in the file, such as `cards[2].insert`. */
  readonly path: string;
  readonly paper: Choice;
  /** What shows of the card round it, at all edges but the fold. */
  readonly border: Ticks;
  /** Whether its grain runs along its fold. */
  readonly grain: GrainNeed;
}

/** What lies on one surface of a card. */
export interface SurfaceLayers {
  readonly name: SurfaceName;
  /** Where the list stands in the file, such as `cards[2].front`. */
  readonly path: string;
  /** From the bottom to the top. */
  readonly layers: readonly Layer[];
}

/**
 * A surface of a card as its reader sees it.
 * - `front`, `back`: of the closed card
 * - `inside`: the page that faces the reader, at the right or below; `inside-front`: the other one, behind the front
 * - `left-door`, `right-door`, `upper-door`, `lower-door`: of a gate
 * - `flap`: the half of a z that folds back to the front, or what folds in first of a tri, and `inside-flap` its inside
 * - `page-1`, `page-2` and so on: what shows, from the left or the top, when any other fold is opened
 */
export type SurfaceName = (typeof namedSurfaces)[number] | `page-${number}`;

/** How much a wanted grain direction counts. */
export type GrainNeed = "prefer" | "require" | "ignore";

/**
 * How a card is folded.
 * - `flat`: not at all
 * - `side`, `top`: once, along the left or the top edge of the front
 * - `gate`: two doors that meet in the middle of the front; `double-gate`: with a part folded at each door
 * - `z`: the front half of the card folds back on itself, so that half of the inside shows
 * - `tri`: three panels, one folded in between the two others; `roll`: more panels, rolled up
 * - `double-parallel`: in half, and in half again
 * - `accordion`: panels of one width, to and fro
 * - `easel`: folded at the top, the front folded once more at half its height, so that it stands
 * - `shutter`: to and fro, with two strips cut free that fold the other way
 * - `own`: as the maker says, panel by panel
 */
export type FoldKind = (typeof namedFolds)[number] | "own";

/** The sheet a card is folded from, unfolded, its outside up and its front upright. */
export interface Flat extends Size {
  readonly fold: FoldKind;
  /** The side of the flat that its scores divide; `width` where there is none. */
  readonly along: "width" | "height";
  /** Extents of the panels along that side, from the left or the top; they add up to it. */
  readonly panels: readonly Ticks[];
  /** Between each two panels, in their order. */
  readonly scores: readonly Score[];
  /** Cuts inside the flat that free strips; empty but for a shutter. */
  readonly slits: readonly Slit[];
}

/**
 * Which way paper folds at a score, seen with the outside up: `mountain` away from the eye, `valley` towards it; `both`
 * where slits let a part of it fold the other way. The ridge that a score raises goes inside the fold, so a mountain is
 * scored on the outside and a valley on the inside.
 */
export type FoldDirection = "mountain" | "valley" | "both";

/** A score: the side of the piece it divides, and how far along that side it lies. It runs across that side. */
export interface Score {
  readonly along: "width" | "height";
  /** From the left or top edge of the upright piece. */
  readonly at: Ticks;
  readonly folds: FoldDirection;
}

/** A cut that starts and ends inside a piece and runs along one of its sides. */
export interface Slit {
  /** The side that it runs along. */
  readonly along: "width" | "height";
  /** From the left or top edge that it runs beside. */
  readonly at: Ticks;
  /** Where it starts and ends on the side that it runs along, from the left or the top. */
  readonly from: Ticks;
  readonly to: Ticks;
}
