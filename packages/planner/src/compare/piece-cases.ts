import type { Problem, Sheet } from "@sheetwright/packing";
import type { ComparisonCase } from "./compare-case.js";
import type { ComparedSize } from "./comparison.js";

/**
 * The cases of a list of pieces: each number of copies on sheets of each size, the sizes one after another.
 *
 * @param one the pieces of one copy. Of its sheets only the trim and the longest cut of the first are of interest.
 *
 * @example
 * const one = {
 *   kinds: [{ id: "mat", quantity: 2, forms: [{ width: 5, height: 7 }] }],
 *   sheets: [{ id: "any", width: 1, height: 1 }],
 *   mode: "guillotine",
 *   aim: "all",
 * };
 * const letter = { id: "letter", name: "letter", width: 8.5, height: 11, cost: null };
 * const cases = pieceCases(one, [letter], [1, 12]);
 * cases.map(({ copies, asked }) => [copies, asked.problem.kinds[0].quantity]) // => [[1, 2], [12, 24]]
 */
export function pieceCases(
  one: Problem,
  sizes: readonly ComparedSize[],
  copies: readonly number[],
): readonly ComparisonCase[] {
  const [first] = one.sheets;
  const { trim, longestCut } = first ?? {};
  return sizes.flatMap((size) =>
    copies.map((count): ComparisonCase => {
      const sheet: Sheet = {
        id: size.id,
        name: size.name,
        width: size.width,
        height: size.height,
        ...(trim === undefined ? {} : { trim }),
        ...(longestCut === undefined ? {} : { longestCut }),
      };
      const kinds = one.kinds.map((kind) => ({ ...kind, quantity: (kind.quantity ?? 0) * count }));
      return { size, copies: count, asked: { of: "pieces", problem: { ...one, kinds, sheets: [sheet] } } };
    }),
  );
}
