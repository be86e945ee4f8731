import type { Demand } from "../best-fit.js";
import type { CompiledProblem } from "../compiled-problem.js";

/** What pieces need of the sheets that they are cut from; areas are those of pieces and sheets with a kerf more both ways. */
export interface SheetNeed {
  /** Area of all pieces. */
  readonly area: number;
  /**
   * Whether some numbers of sheets have the area for what may lie on them. If not, no plan does with them.
   * @param counts by sheet index.
   */
  readonly isMetBy: (counts: readonly number[]) => boolean;
}

/** Adds up what is wanted, by the sheets that it may be cut from. */
export function sheetNeed(problem: CompiledProblem, demand: Demand): SheetNeed {
  const { kerf } = problem;
  const areas = problem.sheets.map((sheet) => (sheet.width + kerf) * (sheet.height + kerf));
  const bySheets = new Map<string, { readonly fits: readonly boolean[]; area: number }>();
  let area = 0;
  for (const { index, lays } of problem.kinds) {
    const copies = demand.wanted[index] ?? 0;
    if (copies === 0) continue;
    const each = lays.flat().map((lay) => (lay.width + kerf) * (lay.height + kerf));
    const own = copies * Math.min(...each);
    const fits = lays.map((list) => list.length > 0);
    const key = fits.map(Number).join("");
    const known = bySheets.get(key) ?? { fits, area: 0 };
    known.area += own;
    area += own;
    bySheets.set(key, known);
  }
  const sets = [...bySheets.values()];
  // What fits only some of these sheets needs its area there, too.
  const needs = sets.map(({ fits }) => ({
    fits,
    area: sets
      .filter((other) => other.fits.every((has, sheet) => !has || fits[sheet]))
      .reduce((sum, other) => sum + other.area, 0),
  }));
  const isMetBy = (counts: readonly number[]): boolean =>
    needs.every((set) => {
      const given = areas.reduce((sum, each, i) => (set.fits[i] ? sum + each * (counts[i] ?? 0) : sum), 0);
      return given >= set.area;
    });
  return { area, isMetBy };
}
