import { grammageOf, massOf, type Size } from "@sheetwright/measure";
import type { PaperWeight } from "../project.js";
import { type Basis, labelledGrammage, type PaperMeasures, weaker } from "../weight/paper-measures.js";

/** Envelope paper whose weight nobody gave, in lb bond: that of most envelopes (from memory). */
const USUAL_BOND = 24;
/** The heaviest pounds without a grade that are read as bond; envelopes of more are weighed in text (from memory). */
const HEAVIEST_BOND = 40;
/** What flaps and seams add to the two faces, in parts of them: about a quarter (from memory). */
const FLAPS = 1 / 4;

/** What an envelope weighs. */
export interface EnvelopeMass {
  readonly grams: number;
  /** `estimated` at best, since the flaps are. */
  readonly basis: Basis;
}

/**
 * What an empty envelope weighs, in grams: both faces, and a quarter more for flaps and seams (from memory). Sides are ticks.
 * Paper whose weight is not given is taken for 24 lb bond.
 *
 * @example
 * const number10 = { width: 4.125 * 40640, height: 9.5 * 40640 };
 * const { grams, basis } = envelopeMass(number10, { unit: "g/m2", grammage: 90, text: "90 gsm" });
 * [Math.round(10 * grams) / 10, basis] // => [5.7, "estimated"]
 * envelopeMass(number10, null).basis // => "assumed"
 */
export function envelopeMass(size: Size, weight: PaperWeight | null): EnvelopeMass {
  const grammage = envelopeGrammage(weight);
  return {
    grams: 2 * (1 + FLAPS) * massOf(size, grammage.value),
    basis: weaker("estimated", grammage.basis),
  };
}

/**
 * What the paper of an envelope weighs, in g/m2, and how its label was read.
 *
 * @internal
 */
export function envelopeGrammage(weight: PaperWeight | null): PaperMeasures["grammage"] {
  if (weight === null)
    return { value: grammageOf(USUAL_BOND, "bond"), basis: "assumed", readAs: null, orElse: null };
  const isBond = weight.unit === "lb" && weight.pounds <= HEAVIEST_BOND;
  return labelledGrammage(weight, isBond ? "bond" : "text");
}
