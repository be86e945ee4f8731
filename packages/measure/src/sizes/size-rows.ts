import type { Unit } from "../unit.js";

/**
 * A sheet as its table gives it: both sides in the table's own unit, the short one first.
 *
 * @internal
 */
export interface SheetRow {
  readonly id: string;
  readonly name: string;
  readonly short: number;
  readonly long: number;
  readonly unit: Unit;
  readonly source: string;
  readonly aliases?: readonly string[];
  readonly notes?: string;
}

/**
 * An envelope as its table gives it, with the usual enclosure, short side by long side.
 *
 * @internal
 */
export interface EnvelopeRow extends SheetRow {
  readonly style: string;
  readonly enclosure?: readonly [short: number, long: number];
}

/**
 * A folded card as its table gives it, with the flats it is folded from and the envelopes it goes in.
 *
 * @internal
 */
export interface CardRow extends SheetRow {
  readonly flats: readonly CardFlatRow[];
  readonly envelopes: readonly string[];
}

/**
 * A flat of a folded card: short side by long side, and the score at a distance from the left or the top edge.
 *
 * @internal
 */
export interface CardFlatRow {
  readonly id: string;
  readonly short: number;
  readonly long: number;
  /** The side of the flat that the score divides: `short` or `long`. */
  readonly divides: "short" | "long";
  readonly score: number;
  readonly fold: "side" | "top";
  readonly source?: string;
}
