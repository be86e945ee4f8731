// Which way a piece may lie on a sheet. A quarter turn swaps the axes of the piece against those of the sheet, and with
// them the grain and the pattern. A half turn changes neither axis, so it is never asked about here.

import type { PieceForm } from "../expansion.js";
import type { Grain, GrainNeed, Pattern } from "../project.js";

/** How a piece may lie: as it stands on the card, a quarter turned, or both. */
export type Turns = "upright" | "turned" | "both";

/**
 * The turns that a pattern allows: a paper without a pattern allows both; one that can be looked at two ways forbids
 * the quarter turn like one that can be looked at one way only.
 *
 * @example
 * patternTurns("none") // => "both"
 * patternTurns("two-way") // => "upright"
 * patternTurns("one-way") // => "upright"
 */
export function patternTurns(pattern: Pattern): "upright" | "both" {
  return pattern === "none" ? "both" : "upright";
}

/**
 * The turn that brings the grain of a paper along the wanted side of a piece; `null` where the grain is of no matter,
 * or where the paper has none or nobody knows it.
 *
 * @example
 * grainTurns("height", "height") // => "upright"
 * grainTurns("height", "width") // => "turned"
 * grainTurns("height", "unknown") // => null
 * grainTurns(null, "width") // => null
 */
export function grainTurns(
  grainAlong: "width" | "height" | null,
  paperGrain: Grain,
): "upright" | "turned" | null {
  if (grainAlong === null || paperGrain === "none" || paperGrain === "unknown") return null;
  return grainAlong === paperGrain ? "upright" : "turned";
}

/**
 * The turns that pattern and grain leave a form of a piece. The grain counts only where it is required; paper without a
 * grain, such as handmade paper, meets any requirement. `null` where they contradict each other: the pattern forbids the
 * turn that the grain asks for, or a required grain is not known.
 *
 * @example
 * const form = { grainAlong: "height" };
 * allowedTurns(form, "none", "width", "prefer") // => "both"
 * allowedTurns(form, "none", "width", "require") // => "turned"
 * allowedTurns(form, "one-way", "height", "require") // => "upright"
 * allowedTurns(form, "one-way", "width", "require") // => null
 * allowedTurns(form, "none", "unknown", "require") // => null
 * allowedTurns(form, "none", "none", "require") // => "both"
 */
export function allowedTurns(
  form: Pick<PieceForm, "grainAlong">,
  pattern: Pattern,
  paperGrain: Grain,
  need: GrainNeed,
): Turns | null {
  const byPattern = patternTurns(pattern);
  if (need !== "require" || form.grainAlong === null) return byPattern;
  if (paperGrain === "unknown") return null;
  const byGrain = grainTurns(form.grainAlong, paperGrain);
  if (byGrain === null) return byPattern;
  return byPattern === "upright" && byGrain === "turned" ? null : byGrain;
}
