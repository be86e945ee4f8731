import type { Family } from "../instances/family.js";
import { problemOf } from "../instances/problem-of.js";
import type { ComparisonOptions } from "./comparison-options.js";
import type { TaskedWay } from "./measure-ways.js";

/** A family planned by `pack`, once for each effort. */
export function ourWays(
  { efforts, seed }: Pick<ComparisonOptions, "efforts" | "seed">,
  family: Family,
  mayTurn: boolean,
): readonly TaskedWay[] {
  return efforts.map((effort) => ({
    family,
    mayTurn,
    solver: "sheetwright",
    effort,
    taskOf: (instance) => ({
      solver: "sheetwright",
      problem: problemOf(instance, family.question, mayTurn),
      effort,
      seed,
    }),
  }));
}
