import { expandProject, explainNoPaper, type Project } from "@sheetwright/cards";
import { checkProblem, type Effort, type Problem, pack } from "@sheetwright/packing";
import { plan } from "../plan.js";
import { proven } from "../search/group-search.js";
import { rowOf, rowTooLarge } from "./compare-row.js";
import type { ComparedSize, ComparisonRow } from "./comparison.js";
import { kindsTooLarge } from "./kinds-too-large.js";

/** One number of copies on sheets of one size: plain data, so that whoever has threads may work it out anywhere. */
export interface ComparisonCase {
  readonly size: ComparedSize;
  readonly copies: number;
  /** Pieces for all copies with as many sheets of the size as needed, or a project of which all papers are such sheets. */
  readonly asked:
    | { readonly of: "pieces"; readonly problem: Problem }
    | { readonly of: "project"; readonly project: Project };
}

/** How to compare. */
export interface CompareOptions {
  /** Work to do for each size and number of copies (default `quick`). */
  readonly effort?: Effort | undefined;
  /** A whole number from 0; the same seed gives the same figures everywhere (default 1). */
  readonly seed?: number | undefined;
}

/**
 * Works one case out; a function of the case and the options alone. Throws ProblemError or ProjectError where what is asked
 * contradicts itself, RangeError for a bad seed or effort.
 *
 * @example
 * const problem = {
 *   kinds: [{ id: "mat", quantity: 2, forms: [{ width: 5, height: 7 }] }],
 *   sheets: [{ id: "any", width: 1, height: 1 }],
 *   mode: "guillotine",
 *   aim: "all",
 * };
 * const square = { id: "12x12", name: "square", width: 12, height: 12, cost: "0.60" };
 * const [four] = pieceCases(problem, [square], [4]);
 * const { sheets, atLeast, wastePercent, cuts, cost } = compareCase(four, { effort: "standard" });
 * [sheets, atLeast, wastePercent, cuts, cost] // => [3, 3, 35.2, 11, "1.80"]
 */
export function compareCase(one: ComparisonCase, options: CompareOptions = {}): ComparisonRow {
  const { size, copies, asked } = one;
  const { effort = "quick", seed = 1 } = options;
  if (asked.of === "pieces") {
    const names = new Map(asked.problem.kinds.map(({ id, name }) => [id, name ?? id]));
    const nameOf = (kind: string): string => names.get(kind) ?? kind;
    // What contradicts itself is for the search to refuse.
    const tooLarge = checkProblem(asked.problem).length === 0 ? kindsTooLarge(asked.problem) : [];
    if (tooLarge.length > 0) return rowTooLarge(size, copies, tooLarge.map(nameOf));
    const packing = proven(asked.problem, pack(asked.problem, { effort, seed }));
    if (packing.outcome === "complete") return rowOf(size, copies, [{ problem: asked.problem, packing }]);
    // There are as many sheets as needed: what is missing cannot be cut from any of them.
    return rowTooLarge(
      size,
      copies,
      packing.missing.map(({ kind }) => nameOf(kind)),
    );
  }
  const tooLarge = piecesTooLarge(asked.project);
  if (tooLarge.length > 0) return rowTooLarge(size, copies, tooLarge);
  const planned = plan(asked.project, { effort, seed });
  if (planned.enough === "yes") return rowOf(size, copies, planned.groups);
  const labels = new Map(planned.pieces.map(({ id, label }) => [id, label]));
  const missing = planned.shortages.flatMap(({ pieces }) => pieces.map(({ piece }) => piece));
  return rowTooLarge(
    size,
    copies,
    missing.map((id) => labels.get(id) ?? id),
  );
}

/** Labels of the pieces that no paper of a project is large enough for; known without planning the others. */
function piecesTooLarge(project: Project): readonly string[] {
  const { pieces } = expandProject(project);
  const wanted = pieces.filter(({ quantity }) => quantity > 0);
  return wanted.filter((piece) => explainNoPaper(project, piece) !== null).map(({ label }) => label);
}
