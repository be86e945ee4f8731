import type { Paper } from "../project.js";

/** From this weight on a paper is heavy for a fold: where folding guides begin to ask for a crease (150 to 160 g/m2). */
const HEAVY_FROM = 150;

/**
 * Whether a paper is of cover weight, as far as its label says: by its grade, by its g/m2, else by what it is.
 *
 * @internal
 */
export function isCoverWeight({ weight, material }: Pick<Paper, "weight" | "material">): boolean {
  if (weight?.unit === "g/m2") return weight.grammage >= HEAVY_FROM;
  if (weight?.unit === "lb" && weight.grade !== null)
    return weight.grade !== "bond" && weight.grade !== "text";
  return material === "cardstock" || material === "glitter";
}
