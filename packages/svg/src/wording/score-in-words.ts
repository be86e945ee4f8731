import { formatLength, type Unit } from "@sheetwright/measure";
import type { LyingScore } from "../layout/lying-marks.js";
import { unbroken } from "../text/break-lines.js";

/** Whose edges are meant: `the` left edge, or `its` left edge. */
type Whose = "the" | "its";

/**
 * Where to score: `at 2 in and 6 in from the left edge`; copies that lie turned are spoken of apart where their scores
 * are measured from other edges.
 */
export function scoresInWords(
  {
    upright,
    turned,
  }: { readonly upright: readonly LyingScore[] | null; readonly turned: readonly LyingScore[] | null },
  unit: Unit,
  whose: Whose,
): string {
  const [first, second] = [upright, turned].map((scores) =>
    scores === null ? "" : placesInWords(scores, unit, whose),
  ) as [string, string];
  if (first === "" || second === "" || first === second) return first === "" ? second : first;
  return `${first}; where it lies turned, ${second}`;
}

/**
 * Scores by the edge they are measured from; those on the inside of their fold apart, since the piece is turned over for
 * them. An upright line keeps its distance from the left and right edges when the piece is turned over from top to bottom.
 */
function placesInWords(scores: readonly LyingScore[], unit: Unit, whose: Whose): string {
  const outside = edgesInWords(
    scores.filter(({ folds }) => folds === "mountain"),
    unit,
    whose,
  );
  const both = scores.filter(({ folds }) => folds === "both");
  const bothWays = both.length === 0 ? "" : `${edgesInWords(both, unit, whose)}, to fold both ways`;
  const turnings = [true, false].map((upright) => {
    const inside = scores.filter((score) => score.folds === "valley" && score.upright === upright);
    const over = upright ? "from top to bottom" : "from left to right";
    return inside.length === 0
      ? ""
      : `on the inside (turn it over ${over}) ${edgesInWords(inside, unit, whose)}`;
  });
  return [outside, bothWays, ...turnings].filter((words) => words !== "").join("; ");
}

function edgesInWords(scores: readonly LyingScore[], unit: Unit, whose: Whose): string {
  const edges = [...new Set(scores.map(({ edge }) => edge))];
  return edges
    .map((edge) => {
      const distances = scores
        .filter((score) => score.edge === edge)
        .map(({ distance }) => distance)
        .sort((a, b) => a - b)
        .map((distance) => unbroken(formatLength(distance, { unit })));
      return `at ${listed(distances)} from ${whose} ${edge} edge`;
    })
    .join(" and ");
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(items: readonly string[]): string {
  const last = items.at(-1) ?? "";
  return items.length < 2 ? last : `${items.slice(0, -1).join(", ")} and ${last}`;
}
