import type { Grain, Score } from "../project.js";

/** How the grain of a paper lies at a fold: along it, across it, not known, or there is none. */
export type FoldVerdict = "along" | "across" | "unknown" | "none";

/**
 * The side of an upright piece that a score runs along; it divides the other one. Paper folds smoother and cracks less
 * where the grain runs the same way (paper-merchant pages and bookbinding handbooks).
 *
 * @example
 * grainForFold({ along: "width" }) // => "height"
 */
export function grainForFold(score: Pick<Score, "along">): "width" | "height" {
  return score.along === "width" ? "height" : "width";
}

/**
 * How the grain lies at a score of a piece that is cut upright, or a quarter turned, from a sheet with this grain.
 *
 * @example
 * const score = { along: "width" };
 * foldVerdict(score, false, "height") // => "along"
 * foldVerdict(score, true, "height") // => "across"
 * foldVerdict(score, true, "unknown") // => "unknown"
 */
export function foldVerdict(score: Pick<Score, "along">, turned: boolean, paperGrain: Grain): FoldVerdict {
  if (paperGrain === "none" || paperGrain === "unknown") return paperGrain;
  const upright = grainForFold(score) === paperGrain;
  return upright === turned ? "across" : "along";
}
