import type { Size, Ticks } from "@sheetwright/measure";
import type { FaceOfPaper } from "../expand/face-index.js";
import type { Layer } from "../project.js";
import { fits, waysToCut } from "./ways-to-cut.js";

/** How much of a layer its paper gives. */
export interface Given {
  /** Whether some sheet or offcut gives it whole. */
  readonly whole: boolean;
  /** How wide, or how high, a piece may be that is as the layer along its other side; 0 where that alone is too long. */
  readonly width: Ticks;
  readonly height: Ticks;
}

/**
 * How much of a layer can be cut in one piece, upright or turned as the pattern and a required grain allow, from the sheets
 * and offcuts of these faces; from those that are on hand where any are.
 *
 * @internal
 */
export function longestGiven(
  { width, height }: Size,
  grain: Layer["grain"],
  faces: readonly FaceOfPaper[],
  longestCut: Ticks | null,
): Given {
  const form = { width, height, scores: [], grainAlong: grain?.along ?? null };
  const grainNeed = grain?.need ?? "ignore";
  const cut = (size: Size) => waysToCut({ forms: [{ ...form, ...size }], grainNeed }, faces, longestCut);
  const all = cut({ width, height });
  const whole = all.some(fits);
  const ways = all.some(({ onHand }) => onHand) ? all.filter(({ onHand }) => onHand) : all;
  const most = (side: "width" | "height") => {
    const other: "width" | "height" = side === "width" ? "height" : "width";
    return ways.reduce<Ticks>((best, { turned, over, usable }) => {
      const [along, across] = turned ? ([other, side] as const) : ([side, other] as const);
      if (over[across] > 0) return best;
      const room = Math.min(form[side], usable[along]);
      // A tool that makes no longer cuts may still free a shorter piece.
      const lengths = longestCut === null ? [room] : [room, Math.min(room, longestCut)];
      const found = lengths.find((length) => length > 0 && cut({ ...form, [side]: length }).some(fits));
      return Math.max(best, found ?? 0);
    }, 0);
  };
  return { whole, width: most("width"), height: most("height") };
}
