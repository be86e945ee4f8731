import type { LaidOut } from "./lay-out.js";

/** How much of the sheets of a run becomes pieces, in square ticks over all sheets of the run. */
export interface LayoutYield {
  readonly used: bigint;
  readonly total: bigint;
}

/**
 * Counts the area of the pieces cut from all sheets of a run. A place that yields a piece on some of the sheets only
 * counts for those. A window counts as part of the piece it is opened in, so what is cut from it is not counted again.
 */
export function layoutYield(laidOut: LaidOut, run: number): LayoutYield {
  let used = 0n;
  for (const piece of laidOut.pieces) {
    if (piece.level > 0) continue;
    const copies = piece.shares.reduce((sum, { count }) => sum + count, 0);
    used += BigInt(piece.width) * BigInt(piece.height) * BigInt(copies);
  }
  return { used, total: BigInt(laidOut.width) * BigInt(laidOut.height) * BigInt(run) };
}

/**
 * Prints a yield in percent with one decimal, rounded to nearest from the exact ratio: `87.4 %`. Full sheets print as
 * `100 %`, and nothing less does.
 */
export function formatYield({ used, total }: LayoutYield): string {
  if (used === total) return "100 %";
  const rounded = (used * 2000n + total) / (2n * total);
  const tenths = rounded > 999n ? 999n : rounded;
  return `${tenths / 10n}.${tenths % 10n} %`;
}
