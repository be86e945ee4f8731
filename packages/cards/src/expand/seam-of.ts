import { inches, millimetres, type Ticks, type Unit } from "@sheetwright/measure";
import type { BandParts, Choice, Ribbon, Seam } from "../project.js";

/** What is done about a seam, in one form. */
export interface SeamOf {
  /** `bare`: it is to be seen. `null`: nothing was said. */
  readonly cover: Choice | Ribbon | "bare" | null;
  /** Of the cover; 0 without one. */
  readonly width: Ticks;
  readonly gap: Ticks;
}

/**
 * What bands, or a join, say of their seams, with what they leave out filled in.
 *
 * @internal
 */
export function seamOf({ seam }: Pick<BandParts, "seam">): SeamOf {
  if (seam === null || seam === "bare") return { cover: seam, width: 0, gap: 0 };
  const { cover, width, gap = 0 } = seam;
  return { cover, width: isCovering(cover) ? width : 0, gap };
}

/**
 * Whether something covers a seam.
 *
 * @internal
 */
export function isCovering(cover: Seam["cover"]): cover is Choice | Ribbon {
  return cover !== null && cover !== "bare";
}

/**
 * Whether a cover is cut from paper.
 *
 * @internal
 */
export function isOfPaper(cover: Choice | Ribbon): cover is Choice {
  return "faces" in cover;
}

/**
 * What a ribbon needs besides what shows, for both ends that are taped behind: 1/2 in each, the least that is usual
 * (common practice, no source: 0.5 to 1 in an end); in the metric trade 13 mm.
 *
 * @internal
 */
export const RIBBON_ENDS: Readonly<Record<Unit, Ticks>> = { in: inches(1), mm: millimetres(26) };

/**
 * How far a cut may be off on one side of a seam: 1/16 in (common practice, no source); in the metric trade 1.5 mm.
 *
 * @internal
 */
export const CUTTING_ERROR: Readonly<Record<Unit, Ticks>> = { in: inches(1 / 16), mm: millimetres(1.5) };
