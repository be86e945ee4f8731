import { inches, type Size } from "@sheetwright/measure";

/**
 * Pieces that are often cut for cards, in inches. Source of the sizes: computed, from the card and layer formats of common
 * practice (no published source): card fronts, their folded flats, and mats 1/8 or 1/16 in inside them on each side.
 */
const SIDES: readonly (readonly [width: number, height: number])[] = [
  [2, 3],
  [2.5, 3.5],
  [3, 3],
  [3, 4],
  [3, 4.5],
  [3.5, 5],
  [3.75, 5],
  [3.875, 5.125],
  [4, 5.25],
  [4.125, 5.375],
  [4.25, 5.5],
  [4.5, 6.25],
  [4.5, 6.5],
  [4.75, 6.75],
  [5, 5],
  [5, 6.5],
  [5, 7],
  [5.5, 6.5],
  [5.75, 5.75],
  [4, 8],
  [4.25, 8.5],
  [4.25, 11],
  [5.5, 8.5],
  [5.5, 8],
  [4, 11],
  [5, 10],
  [5.5, 11],
  [6, 12],
  [7, 8.5],
  [6, 7],
  [7, 10],
  [6.25, 9],
  [7.75, 9.25],
  [3.25, 8.25],
];

/** The common pieces, lengths in ticks. All of them may be turned. */
export const COMMON_PIECES: readonly Size[] = SIDES.map(([width, height]) => ({
  width: inches(width),
  height: inches(height),
}));
