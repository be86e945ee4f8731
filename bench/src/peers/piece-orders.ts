import type { Size } from "@sheetwright/packing";

/** An order to hand pieces to a packer in, the largest first. */
export interface PieceOrder {
  readonly name: string;
  /** What it looks at first, and what decides where that is equal. */
  readonly keys: readonly ((piece: Size) => number)[];
}

const area = ({ width, height }: Size): number => width * height;
const longSide = ({ width, height }: Size): number => Math.max(width, height);
const shortSide = ({ width, height }: Size): number => Math.min(width, height);
const width = (piece: Size): number => piece.width;
const height = (piece: Size): number => piece.height;

/** The orders that every packer on sheets is tried with. */
export const PIECE_ORDERS: readonly PieceOrder[] = [
  { name: "area", keys: [area, longSide, width] },
  { name: "long side", keys: [longSide, shortSide, width] },
  { name: "height", keys: [height, width] },
  { name: "width", keys: [width, height] },
];

/** The numbers of the pieces in an order; equal pieces keep theirs. */
export function inOrder(pieces: readonly Size[], { keys }: PieceOrder): readonly number[] {
  return pieces
    .map((piece, i) => ({ i, ranks: keys.map((key) => key(piece)) }))
    .sort((a, b) => {
      const at = a.ranks.findIndex((rank, k) => rank !== b.ranks[k]);
      return at < 0 ? a.i - b.i : (b.ranks[at] ?? 0) - (a.ranks[at] ?? 0);
    })
    .map(({ i }) => i);
}
