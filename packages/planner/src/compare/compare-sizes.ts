import { type CompareOptions, type ComparisonCase, compareCase } from "./compare-case.js";
import { rowByMore } from "./compare-row.js";
import type { ComparedSize, Comparison, ComparisonRow } from "./comparison.js";

/**
 * Compares sizes of sheets: works all cases out, one after another. Throws as {@link compareCase} does.
 *
 * @example
 * const one = {
 *   kinds: [{ id: "mat", quantity: 1, forms: [{ width: 5, height: 7 }] }],
 *   sheets: [{ id: "any", width: 1, height: 1 }],
 *   mode: "guillotine",
 *   aim: "all",
 * };
 * const sizes = [
 *   { id: "square", name: "square", width: 12, height: 12, cost: null },
 *   { id: "small", name: "small", width: 6, height: 6, cost: null },
 * ];
 * const { rows } = compareSizes(pieceCases(one, sizes, [1, 3]));
 * rows.map(({ size, copies, sheets, tooLarge }) => [size, copies, sheets, tooLarge])
 * // => [["square", 1, 1, []], ["square", 3, 1, []], ["small", 1, null, ["mat"]], ["small", 3, null, ["mat"]]]
 */
export function compareSizes(cases: readonly ComparisonCase[], options: CompareOptions = {}): Comparison {
  return comparisonOf(
    cases,
    cases.map((one) => compareCase(one, options)),
    options,
  );
}

/**
 * Puts rows together that were worked out anywhere, one a case and in the same order. Where the search found fewer sheets for
 * more copies, these serve for the fewer copies too; what is proven for fewer copies holds for more.
 *
 * @example
 * const { sizes, copies } = comparisonOf([], []);
 * [sizes, copies] // => [[], []]
 */
export function comparisonOf(
  cases: readonly ComparisonCase[],
  rows: readonly ComparisonRow[],
  { effort = "quick", seed = 1 }: CompareOptions = {},
): Comparison {
  const sizes = new Map<string, ComparedSize>(cases.map(({ size }) => [size.id, size]));
  return {
    sizes: [...sizes.values()],
    copies: [...new Set(cases.map(({ copies }) => copies))],
    rows: evened(rows),
    search: { effort, seed },
  };
}

/** No row takes more sheets than one of the same size with more copies, or is proven to take fewer than one with fewer. */
function evened(rows: readonly ComparisonRow[]): readonly ComparisonRow[] {
  const result = [...rows];
  const order = rows.map((_, index) => index).sort((a, b) => rows[a]!.copies - rows[b]!.copies || a - b);
  const known = new Map<string, ComparisonRow>();
  for (const index of [...order].reverse()) {
    const row = result[index]!;
    const more = known.get(row.size);
    const better = more === undefined ? null : rowByMore(row, more);
    if (better !== null) result[index] = better;
    known.set(row.size, result[index]!);
  }
  const proven = new Map<string, number>();
  for (const index of order) {
    const row = result[index]!;
    const atLeast = Math.max(row.atLeast ?? 0, proven.get(row.size) ?? 0);
    proven.set(row.size, atLeast);
    if (row.atLeast !== null) result[index] = { ...row, atLeast };
  }
  return result;
}
