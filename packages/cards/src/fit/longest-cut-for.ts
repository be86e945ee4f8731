import type { Size, Ticks } from "@sheetwright/measure";
import type { Sides } from "../project.js";

/** The part of a sheet that a piece is cut from, and what is trimmed off it first. */
export interface TrimmedSheet {
  /** The sheet before it is trimmed. */
  readonly sheet: Size;
  readonly trim: Sides;
  /** The sheet inside its trim. */
  readonly usable: Size;
}

/**
 * The longest cut that it takes at least to free one piece from a sheet it fits, edge to edge: the trims in the order left,
 * right, top, bottom, then a cut across the whole part and one across what that leaves, in the better order. A tool that
 * makes no longer cuts can do it, one that makes shorter ones cannot. 0 where nothing has to be cut.
 *
 *     +-----------+         +-------+---+
 *     |           |         |       |   |
 *     +-------+---+         |       |   |
 *     | piece |   |         | piece |   |
 *     +-------+---+         +-------+   |
 *       across first         upright first
 *
 * @internal
 */
export function longestCutFor(lying: Size, { sheet, trim, usable }: TrimmedSheet): Ticks {
  const trims = Math.max(
    trim.left > 0 || trim.right > 0 ? sheet.height : 0,
    trim.top > 0 || trim.bottom > 0 ? usable.width : 0,
  );
  const isNarrower = lying.width < usable.width;
  const isLower = lying.height < usable.height;
  const acrossFirst = Math.max(isLower ? usable.width : 0, isNarrower ? lying.height : 0);
  const uprightFirst = Math.max(isNarrower ? usable.height : 0, isLower ? lying.width : 0);
  return Math.max(trims, Math.min(acrossFirst, uprightFirst));
}
