import type { Size } from "@sheetwright/measure";

/** A row of a piece list, lengths in ticks. */
export interface ListedPiece extends Size {
  readonly name: string;
  /** Copies wanted, from 0. */
  readonly quantity: number;
  /** Whether a quarter turn is allowed. */
  readonly turn: boolean;
}
