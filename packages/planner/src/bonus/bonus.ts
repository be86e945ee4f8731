/** What can be made besides, from what a plan leaves. All plain data; lengths are ticks. */

import type { Card, Offcut } from "@sheetwright/cards";
import type { Size, Ticks, Unit } from "@sheetwright/measure";

/** What {@link bonusOf} answers. Every entry is for itself: what one uses the others do not have. */
export interface Bonus {
  readonly title: string;
  readonly units: Unit;
  /** What is left of each design of a paper, in the order of the project; those of which nothing is left are absent. */
  readonly left: readonly DesignLeft[];
  /** What is left of each item that the project counts and some card uses, in its order; of rolls only those that are not cut. */
  readonly itemsLeft: readonly ItemLeft[];
  /** Designs of which there are as many sheets as needed: only their offcuts count as left. */
  readonly asNeeded: readonly string[];
  /** Every card, the one of which most copies can be made first; of equals the one that uses more of the paper. */
  readonly cards: readonly CardBonus[];
  /** The panels that were asked for, the one that uses most of the paper that is left first; of equals the larger. */
  readonly panels: readonly PanelBonus[];
  /** True where the search was ended early, so that another run may find more. */
  readonly cancelled: boolean;
}

/** What is left of one design of a paper. */
export interface DesignLeft {
  readonly design: string;
  readonly name: string;
  readonly sheets: number;
  readonly offcuts: readonly Offcut[];
}

/** What is left of a ribbon, a tape or an extra. */
export interface ItemLeft {
  /** Its name in the project. */
  readonly item: string;
  /** How long one roll is; `null` for what is counted singly. */
  readonly length: Ticks | null;
  readonly count: number;
}

/** How many copies more of a card what is left gives, over all papers. */
export interface CardBonus {
  readonly card: Card["number"];
  readonly name: string;
  readonly copies: number;
  /** Area of all their pieces, in percent of all paper that is left, with one decimal. */
  readonly percent: number;
}

/** A panel that may be of use: its size as it stands. */
export interface PanelWish extends Size {
  readonly name: string;
  /** How many would be of use; it does not limit what is found. */
  readonly wanted: number;
  /** False: it lies on the sheets as it stands. Patterned paper is never turned. */
  readonly mayTurn: boolean;
}

/** How many of a panel what is left gives. */
export interface PanelBonus extends Omit<PanelWish, "mayTurn"> {
  readonly count: number;
  /** Designs that give some, the one that gives most first. */
  readonly from: readonly { readonly design: string; readonly name: string; readonly count: number }[];
  /** Area of all of them, in percent of all paper that is left, with one decimal. */
  readonly percent: number;
}
