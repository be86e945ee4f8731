import type { ListedPiece } from "../listed-piece.js";

/** Pieces that are planned together. */
export interface PieceSet {
  /** Name of the sets it belongs to, such as `strips`. */
  readonly family: string;
  /** Unique within a run's sets for one sheet. */
  readonly id: string;
  readonly pieces: readonly ListedPiece[];
}
