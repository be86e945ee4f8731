import type { Layout, Packing, Problem, Sheet } from "@sheetwright/packing";

/** A layout with the sheet it is cut from. */
export interface FoundLayout {
  readonly sheet: Sheet;
  readonly layout: Layout;
}

/**
 * Looks up a layout of a packing and its sheet. Throws a RangeError where the packing has no such layout, or the problem
 * no such sheet.
 */
export function findLayout(problem: Problem, packing: Packing, index: number): FoundLayout {
  const layout = packing.layouts[index];
  if (layout === undefined) {
    throw new RangeError(
      `layouts[${index}]: the packing has ${packing.layouts.length} layouts, counted from 0.`,
    );
  }
  const sheet = problem.sheets.find(({ id }) => id === layout.sheet);
  if (sheet === undefined) {
    throw new RangeError(
      `layouts[${index}].sheet: the problem has no sheet with the id ${JSON.stringify(layout.sheet)}; draw a packing with the problem it answers.`,
    );
  }
  return { sheet, layout };
}
