// What a paper weighs and how thick it is, as far as its label says; the rest is estimated or assumed, and says so.

import { estimateCaliper, grammageOf, inches, type PaperGrade, type Ticks } from "@sheetwright/measure";
import type { Paper, PaperWeight } from "../project.js";

/**
 * How well a measure is founded: `given` by the maker, `estimated` from what she gave, or `assumed` from what is usual. In
 * that order each is weaker than the one before.
 */
export type Basis = "given" | "estimated" | "assumed";

/** What one sheet of a paper weighs, and how thick it is. */
export interface PaperMeasures {
  readonly grammage: {
    /** In g/m2; not rounded. */
    readonly value: number;
    readonly basis: Basis;
    /** The grade that pounds without one were read in; `null` where nothing had to be read into the label. */
    readonly readAs: PaperGrade | null;
    /** Another grade that the label may as well mean; `null` where there is none. */
    readonly orElse: PaperGrade | null;
  };
  readonly caliper: { readonly value: Ticks; readonly basis: Basis };
}

type Material = Paper["material"];

/** What pounds without a grade are read in (common practice, no source: cardstock is sold by cover weight). */
const GRADE_OF: Readonly<Record<Material, PaperGrade>> = {
  cardstock: "cover",
  glitter: "cover",
  paper: "text",
  pad: "text",
};

/**
 * The grade that pounds without one are read in, for papers of a material.
 *
 * @internal
 */
export function usualGrade(material: Material): PaperGrade {
  return GRADE_OF[material];
}

/** Cardstock of so many pounds without a grade is sold as cover and as index (common practice, no source). */
const COVER_OR_INDEX = 110;

/**
 * What paper without a label is taken for, in g/m2 and inches: 80 lb cover, glitter cardstock, and patterned paper of the
 * text sort. All from memory, with low confidence.
 */
const USUAL: Readonly<Record<Material, { readonly grammage: number; readonly caliper: number }>> = {
  cardstock: { grammage: 216, caliper: 0.011 },
  glitter: { grammage: 300, caliper: 0.018 },
  paper: { grammage: 120, caliper: 0.006 },
  pad: { grammage: 120, caliper: 0.006 },
};

/**
 * What a paper weighs and how thick it is. A label in g/m2, or in lb with a grade, gives the weight; lb without a grade is
 * read as cover weight for cardstock and glitter, as text weight for paper and pads, and marked as assumed. A thickness that
 * is not given is estimated from the weight, a weight that is not given from the thickness. Where neither is, both are what
 * paper of its kind usually has, from memory.
 *
 * @example
 * const weight = { unit: "lb", pounds: 80, grade: "cover", text: "80 lb cover" };
 * const night = paperMeasures({ material: "cardstock", weight, thickness: null });
 * [Math.round(night.grammage.value), night.grammage.basis] // => [216, "given"]
 * [Math.round(night.caliper.value / 40.64), night.caliper.basis] // => [11, "estimated"]
 * paperMeasures({ material: "pad", weight: null, thickness: null }).grammage.basis // => "assumed"
 */
export function paperMeasures({
  material,
  weight,
  thickness,
}: Pick<Paper, "material" | "weight" | "thickness">): PaperMeasures {
  const sort = material === "glitter" ? "glitter" : "uncoated";
  const caliper = thickness === null ? null : ({ value: thickness, basis: "given" } as const);
  if (weight === null) {
    const nothing = { readAs: null, orElse: null };
    if (caliper !== null) {
      const value = caliper.value / ticksOfOneGram(sort);
      return { grammage: { value, basis: "estimated", ...nothing }, caliper };
    }
    const usual = USUAL[material];
    return {
      grammage: { value: usual.grammage, basis: "assumed", ...nothing },
      caliper: { value: inches(usual.caliper), basis: "assumed" },
    };
  }
  const grammage = labelledGrammage(weight, GRADE_OF[material]);
  const basis = grammage.basis === "given" ? "estimated" : "assumed";
  return { grammage, caliper: caliper ?? { value: estimateCaliper(grammage.value, sort), basis } };
}

/**
 * What a label says of the weight; pounds without a grade are read in `usual`.
 *
 * @internal
 */
export function labelledGrammage(weight: PaperWeight, usual: PaperGrade): PaperMeasures["grammage"] {
  if (weight.unit === "g/m2") return { value: weight.grammage, basis: "given", readAs: null, orElse: null };
  if (weight.grade !== null) {
    const value = grammageOf(weight.pounds, weight.grade);
    return { value, basis: "given", readAs: null, orElse: null };
  }
  return {
    value: grammageOf(weight.pounds, usual),
    basis: "assumed",
    readAs: usual,
    orElse: usual === "cover" && weight.pounds === COVER_OR_INDEX ? "index" : null,
  };
}

/**
 * The weaker of two foundations.
 *
 * @internal
 */
export function weaker(one: Basis, other: Basis): Basis {
  return ORDER.indexOf(one) >= ORDER.indexOf(other) ? one : other;
}

const ORDER: readonly Basis[] = ["given", "estimated", "assumed"];

/** Ticks of thickness to a g/m2; thickness is weight times bulk, so one weight tells it. */
function ticksOfOneGram(sort: "uncoated" | "glitter"): number {
  const much = 1000;
  return estimateCaliper(much, sort) / much;
}
