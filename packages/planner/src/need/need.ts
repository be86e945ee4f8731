/** What a project takes in all: sheets, packs, ribbon and whatever else is bought. All plain data; lengths are ticks. */

import type { Card, Item } from "@sheetwright/cards";
import type { Ticks, Unit } from "@sheetwright/measure";

/** What {@link needOf} answers. */
export interface Need {
  readonly title: string;
  readonly units: Unit;
  /** Copies of each card that are reckoned with, spares that are wished for among them. */
  readonly cards: readonly {
    readonly card: Card["number"];
    readonly name: string;
    readonly copies: number;
  }[];
  /** The bags of kits, and what goes whole into each; absent in a class. */
  readonly kits?: {
    readonly bags: number;
    readonly perBag: readonly { readonly design: string; readonly name: string; readonly sheets: number }[];
    /** Whole rolls, and what is counted singly, of the items that the project names: of each so many in a bag. */
    readonly itemsPerBag: readonly {
      readonly item: string;
      /** How long a roll is; `null` for what is counted singly. */
      readonly length: Ticks | null;
      readonly count: number;
    }[];
  };
  /** Designs of papers that some piece is cut from, in the order of the project. */
  readonly designs: readonly DesignNeed[];
  /** Papers that some piece is cut from, as they are bought. */
  readonly papers: readonly PaperNeed[];
  /** Items that the project names and some card uses, as they are bought, in its order. */
  readonly namedItems: readonly NamedItemNeed[];
  /** Cost of all that is bought of papers and of items that the project names; `null` where that of one of them is not known. */
  readonly cost: string | null;
  /** Ribbons and tapes, those of one name and width together. */
  readonly items: readonly ItemNeed[];
  /** Knots, buttons and such. */
  readonly extras: readonly { readonly name: string; readonly count: number }[];
  /** Names of papers, of designs of pads, and of items that no card uses. */
  readonly unused: readonly string[];
  /** Pieces that no paper is large enough for, by their labels: nothing is reckoned for them. */
  readonly noPaper: readonly string[];
}

/** What is cut of one design of a paper. */
export interface DesignNeed {
  readonly design: string;
  readonly name: string;
  /** Whole sheets, and offcuts from earlier that save some. */
  readonly sheets: number;
  readonly offcuts: number;
  /** Designs that are planned together with it, since some piece may come from any of them; itself among them. */
  readonly together: readonly string[];
  /** No plan takes fewer whole sheets of all that are planned together, whatever it takes of offcuts; proven. */
  readonly atLeast: number;
  /** Sheets on hand; `null` where the project says `as needed`. */
  readonly onHand: number | null;
  /** What becomes of the sheets and offcuts, in percent of their area with one decimal. */
  readonly uses: readonly { readonly purpose: string; readonly percent: number }[];
  /** Leftovers worth keeping, and what is lost, in the same way. */
  readonly keptPercent: number;
  readonly wastePercent: number;
}

/** How a paper is bought. */
export interface PaperNeed {
  readonly paper: string;
  readonly name: string;
  /** Sheets in a pack, of a pad those of each design; 1 where it is bought by the sheet. */
  readonly packSheets: number;
  /** Packs for all sheets, and for those that are not on hand. */
  readonly packs: number;
  readonly packsToBuy: number;
  /** Sheets to buy, summed over its designs, before they are rounded up to packs. */
  readonly sheetsToBuy: number;
  /** What the packs to buy cost; `null` where that is not known. */
  readonly cost: string | null;
}

/** A ribbon or a tape, all cards together. */
export interface ItemNeed extends Pick<Item, "kind" | "name" | "width"> {
  /** Pieces of it, and their lengths in all. */
  readonly count: number;
  readonly length: Ticks;
}

/** What is needed of a ribbon, a tape or an extra that the project names, and how it is bought. */
export interface NamedItemNeed {
  /** Its name in the project. */
  readonly item: string;
  /** How long one roll is; `null` for what is counted singly. */
  readonly length: Ticks | null;
  /** Rolls, or single ones, for all copies: the fewest that were found. */
  readonly needed: number;
  /** They take no fewer; proven. */
  readonly atLeast: number;
  /** What is on hand; `null` where the project says `as needed`. */
  readonly onHand: number | null;
  /** How many are in a pack; 1 where it is bought singly. */
  readonly packItems: number;
  /** Packs for all that is needed, and for what is not on hand. */
  readonly packs: number;
  readonly packsToBuy: number;
  /** What is to be bought before it is rounded up to packs. */
  readonly toBuy: number;
  /** What the packs to buy cost; `null` where that is not known. */
  readonly cost: string | null;
}
