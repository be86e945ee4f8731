/** What the cards of a plan cost, a card and a guest, and what a price would be. All plain data; money is decimal text. */

import type { Card } from "@sheetwright/cards";
import type { Unit } from "@sheetwright/measure";

/** What {@link priceOf} answers. The costs of the parts, and those of the cards, each add up to the total exactly. */
export interface Price {
  readonly title: string;
  readonly units: Unit;
  /** The sign or name of the currency; `null` where not given. */
  readonly currency: string | null;
  /** All that is reckoned: paper first, then envelopes, extras, ribbons, consumables and work. */
  readonly parts: readonly PricePart[];
  readonly cards: readonly CardPrice[];
  readonly total: string;
  /** What is used and has no cost given, by its name: it is in none of the sums. */
  readonly unknown: readonly string[];
  /** The price is the cost times this; `null` where none is wished for. */
  readonly factor: string | null;
  /** What comes to one guest; `null` where no copies are for guests. */
  readonly guest: GuestPrice | null;
}

/** What something is that costs. */
export type PriceKind = "paper" | "envelopes" | "extras" | "ribbons" | "consumables" | "work";

/** One thing that costs. */
export interface PricePart {
  readonly kind: PriceKind;
  readonly name: string;
  /** Sheets, pieces or copies; of ribbon the length in ticks, of work the time in 1/10,000 of a minute. */
  readonly quantity: number;
  /** What `per` of that cost. */
  readonly each: string;
  readonly per: number;
  /** Rounded up to hundredths. */
  readonly cost: string;
  /** Each card's share, those without are absent: of paper by the area of its pieces, else by its number or length. */
  readonly shares: readonly {
    readonly card: Card["number"];
    readonly percent: number;
    readonly cost: string;
  }[];
}

/** What the copies of one card cost. */
export interface CardPrice {
  readonly card: Card["number"];
  readonly name: string;
  /** Copies reckoned with: samples and spares among them. */
  readonly copies: number;
  readonly costs: Readonly<Record<PriceKind, string>>;
  readonly total: string;
  /** Cost of one copy, rounded up to hundredths. */
  readonly copy: string;
  /** Total times factor by copies, rounded up to hundredths; `null` where no price is wished for. */
  readonly price: string | null;
}

/** What comes to one guest: all cards, with samples and spares. */
export interface GuestPrice {
  /** The most guests that any card is made for; with kits the most bags that are for guests. */
  readonly guests: number;
  /** Rounded up to hundredths. */
  readonly cost: string;
  readonly price: string | null;
}
