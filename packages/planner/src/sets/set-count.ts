/** How many complete sets of cards papers and items give. All plain data. */

import type { Card } from "@sheetwright/cards";
import type { Unit } from "@sheetwright/measure";
import type { Plan } from "../plan-model.js";

/** What {@link completeSets} answers. */
export interface SetCount {
  readonly title: string;
  readonly units: Unit;
  /** What one set holds. Cards that are made only as samples belong to none and are absent. */
  readonly set: readonly SetCard[];
  /** Sets that the project asks for: copies for guests. */
  readonly wanted: number;
  /** The largest number found; `null` where papers that come as needed give any number. */
  readonly most: number | null;
  /** All pieces of so many sets: the proof. `null` where that is none, or any number. */
  readonly plan: Plan | null;
  /** The smallest number that is proven impossible; `null` where none is. */
  readonly impossible: ImpossibleSets | null;
  /** The papers and items that run out first, and those that run out next once there is enough of the first. */
  readonly runsOut: readonly RunOut[];
  /** What more of the papers and items that run out first would give: one set more, then all until the next run out. */
  readonly withMore: readonly SetsWithMore[];
  /** Designs of papers that come as needed and that some piece may be cut from. */
  readonly asNeeded: readonly string[];
  /** Pieces that no paper is large enough for, by their labels: there is no set with them. */
  readonly noPaper: readonly string[];
  /** True where the search was ended early, so that another run may find more. */
  readonly cancelled: boolean;
}

/** A card of a set. */
export interface SetCard {
  readonly card: Card["number"];
  readonly name: string;
  /** Copies of it in one set. */
  readonly copies: number;
}

/** A number of sets that is proven impossible. */
export interface ImpossibleSets {
  readonly sets: number;
  /** The papers whose bounds show it, those planned together by their designs; empty where a piece fits no paper. */
  readonly papers: readonly (readonly string[])[];
  /** Items of which there is too little, proven; absent where that is none. */
  readonly items?: readonly string[];
  /** A plan for so many sets that is short, with those bounds. */
  readonly plan: Plan;
}

/** Papers and items that run out at the same number of sets. */
export interface RunOut {
  /** The most sets found before they run out. */
  readonly sets: number;
  /** Designs of papers that are planned together. */
  readonly papers: readonly {
    readonly designs: readonly string[];
    /** Whether it is proven that they do not give one set more. */
    readonly proven: boolean;
  }[];
  /** Items that the project names; absent where none of them runs out. */
  readonly items?: readonly { readonly item: string; readonly proven: boolean }[];
}

/** Sets that were found with sheets and items more than there are. */
export interface SetsWithMore {
  readonly sets: number;
  readonly sheets: readonly { readonly design: string; readonly more: number }[];
  /** Rolls, or single ones, of items; absent where no more is needed of them. */
  readonly items?: readonly { readonly item: string; readonly more: number }[];
}
