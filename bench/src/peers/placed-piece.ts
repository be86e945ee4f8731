import type { Rectangle } from "@sheetwright/packing";

/** A piece where a peer put it. */
export interface PlacedPiece extends Rectangle {
  /** Number of the piece in the list that was given. */
  readonly piece: number;
  /** Number of the sheet, from 0. */
  readonly sheet: number;
}
