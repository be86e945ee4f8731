/**
 * The layers of a card as its project describes them: a part of the model in project.ts, which gives them out. All plain
 * data; lengths are ticks, places are told from the left and the top of what carries a layer.
 */

import type { Size, Ticks } from "@sheetwright/measure";
import type { DieMat, DieSize, Shadow } from "./die.js";
import type { Paper, PaperWeight, Sides } from "./project.js";

/** The faces a piece may be cut from, in the maker's order; any of them is right. */
export interface Choice {
  /** Ids of faces; never empty. */
  readonly faces: readonly string[];
  /** What the file says, such as `stars` for any design of the pad. */
  readonly text: string;
  /** The kinds of paper that were asked for instead of papers by their names; absent where there are none. */
  readonly any?: readonly AnyPaper[] | undefined;
}

/** Any paper of a kind, such as any plain cardstock of at least 65 lb cover. */
export interface AnyPaper {
  /** `null`: of whatever material. */
  readonly material: Paper["material"] | null;
  /** `plain`: without a pattern, and no pad; `patterned`: all others; `null`: either. */
  readonly look: "plain" | "patterned" | null;
  /** `null`: of whatever weight, and also where that is not known. */
  readonly atLeast: PaperWeight | null;
}

/** What lies on a surface of a card. */
export type Layer = Mat | Panel | Bands | Strip | Sentiment | DieCut;

interface Common {
  /** Where it stands in the file, such as `cards[2].front[0]`. */
  readonly path: string;
  /** The maker's word for its purpose; `null`: the word of its kind. */
  readonly name: string | null;
  /** The wanted direction of the grain on the layer as it stands; `null` where it is of no matter. */
  readonly grain: { readonly along: "width" | "height"; readonly need: "prefer" | "require" } | null;
  /** The thickness of the foam that lifts it, and with it all that lies on it; `null` where it is glued flat. */
  readonly foam: Ticks | null;
  /** What lies on this layer, from the bottom to the top. */
  readonly layers: readonly Layer[];
}

/** A layer that shows a border round what lies on it. */
export interface Mat extends Common {
  readonly kind: "mat";
  readonly paper: Choice;
  readonly extent: Extent;
  /** How it is made up where its paper is smaller; absent where the maker said nothing. */
  readonly join?: LayerJoin | undefined;
}

/** A layer of its own. */
export interface Panel extends Common {
  readonly kind: "panel";
  readonly paper: Choice;
  readonly extent: Extent;
  /** How it is made up where its paper is smaller; absent where the maker said nothing. */
  readonly join?: LayerJoin | undefined;
}

/** Papers that meet edge to edge. */
export interface Bands extends Common, BandParts {
  readonly kind: "bands";
  readonly extent: Extent;
}

/** How something is divided into bands. */
export interface BandParts {
  /** `across`: one below the other. `upright`: side by side. */
  readonly runs: Run;
  readonly shares: BandShares;
  /** As many as there are bands, from the top or the left: a paper, or bands in their turn. */
  readonly papers: readonly (Choice | InnerBands)[];
  /** What is done about each seam; `bare` where the maker wants to see it, `null` where she said nothing. */
  readonly seam: Seam | "bare" | null;
}

/** Bands that divide one of the bands they are among. */
export interface InnerBands extends BandParts {
  /** Where they stand in the file, such as `cards[2].front[0].papers[1]`. */
  readonly path: string;
}

/** How wide bands are, from the top or the left. */
export type BandShares =
  /** Positive whole numbers; where they meet is rounded to the project's precision. */
  | { readonly by: "ratio"; readonly ratios: readonly number[] }
  /** To the tick; at most one is what the others leave. Without one they add up to what they divide. */
  | { readonly by: "width"; readonly widths: readonly (Ticks | "rest")[] };

/** What is done about a seam between two parts. */
export interface Seam {
  /** Centred on the seam; `bare` where the maker wants to see it, `null` where she said nothing. */
  readonly cover: Choice | Ribbon | "bare" | null;
  /** Of the cover. Of no meaning without one. */
  readonly width: Ticks;
  /** How far the parts stand apart: each loses half of it. Absent: they meet. */
  readonly gap?: Ticks | undefined;
}

/** A ribbon or a tape: bought by its length, not cut from a sheet. */
export interface Ribbon {
  readonly kind: "ribbon" | "tape";
  /** The maker's words for it, such as `copper ribbon`. */
  readonly name: string;
  /** `#rrggbb`, for drawings. */
  readonly colour: string;
}

/** The direction of a strip's or band's length on the card as it stands. */
export type Run = "across" | "upright";

/** A strip laid from edge to edge of what carries it, or as long as `length` says. */
export interface Strip extends Common {
  readonly kind: "strip";
  readonly runs: Run;
  readonly paper: Choice;
  readonly width: Ticks;
  readonly length: Ticks | null;
  readonly place: Place;
  /** How it is made up where its paper is smaller; absent where the maker said nothing. */
  readonly join?: LayerJoin | undefined;
}

/**
 * How a layer is made up that is larger than the sheets of its paper, along the side that is too long.
 * - `ends`: its own paper in the middle, as large as it comes, and another at both ends; or at the right or lower one
 * - `parts`: its own paper, in two thirds and one third (or halves), or in thirds
 * - `hide`: cut short at one end, where another layer lies on it
 */
export type LayerJoin =
  | {
      readonly by: "ends";
      readonly paper: Choice;
      readonly at: "both" | "one";
      readonly seam: Seam | "bare" | null;
    }
  | { readonly by: "parts"; readonly parts: 2 | 3; readonly seam: Seam | "bare" | null }
  | { readonly by: "hide" };

/** A small strip with words, with mats of its own. */
export interface Sentiment extends Common {
  readonly kind: "sentiment";
  readonly paper: Choice;
  readonly size: Size;
  /** Of the outermost mat. */
  readonly place: Place;
  /** The words, for the drawing; `null` where not given. */
  readonly text: string | null;
  /** From the inside out. */
  readonly mats: readonly { readonly paper: Choice; readonly border: Ticks }[];
}

/**
 * A layer that is cut to a shape out of a die blank, a rectangle that is larger than its shape: by a die, or by a cutting
 * machine or by hand. Of a stack, this is what lies on top; its mats and its shadow lie beneath it.
 */
export interface DieCut extends Common, DieSize {
  readonly kind: "die";
  /** The name of the die; `null`: cut by a cutting machine or by hand. */
  readonly die: string | null;
  readonly paper: Choice;
  /** Where the lowest of the stack lies. */
  readonly place: Place;
  /**
   * What is cut straight off its sides once it is cut to its shape, and with it off its mats and its shadow in the same
   * lines, so that it stands on a strip; absent: nothing.
   */
  readonly trim?: Sides | undefined;
  /** What lies beneath it, from the inside out; absent: nothing. */
  readonly mats?: readonly DieMat[] | undefined;
  /** What lies beneath all of them; absent: nothing. */
  readonly shadow?: Shadow | undefined;
}

/** How large a layer is on what carries it. */
export type Extent =
  | { readonly by: "border"; readonly border: Sides }
  | { readonly by: "size"; readonly size: Size; readonly place: Place };

/** Where a layer of a given size lies on what carries it. */
export interface Place {
  readonly x: Along;
  readonly y: Along;
}

/**
 * A place along one side of the carrier: so far from its start (left, top) or end, in the middle, or with the layer's
 * middle on the first or second third, rounded to the project's precision.
 */
export type Along =
  | { readonly from: "start" | "end"; readonly distance: Ticks }
  | { readonly from: "middle" }
  | { readonly from: "third"; readonly third: 1 | 2 };
