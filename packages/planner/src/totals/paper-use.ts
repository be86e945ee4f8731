import type { Paper } from "@sheetwright/cards";
import { costText, costUnits } from "../group/cost-units.js";
import type { PaperGroup, PaperUse } from "../plan-model.js";

/** Sheets used and left of each design of each paper, in the order of the project. */
export function paperUse(papers: readonly Paper[], groups: readonly PaperGroup[]): readonly PaperUse[] {
  const whole = new Map<string, number>();
  const offcuts = new Map<string, number>();
  for (const { packing, sheets, bags = 1 } of groups) {
    const known = new Map(sheets.map((one) => [one.sheet, one]));
    for (const { sheet, run } of packing.layouts) {
      const { design, offcut } = known.get(sheet)!;
      const counts = offcut === null ? whole : offcuts;
      counts.set(design, (counts.get(design) ?? 0) + run * bags);
    }
  }
  return papers.flatMap(({ designs }) =>
    designs.map(({ id: design, count }): PaperUse => {
      const used = whole.get(design) ?? 0;
      return {
        design,
        used,
        left: count === null ? null : count - used,
        offcutsUsed: offcuts.get(design) ?? 0,
      };
    }),
  );
}

/** What the whole sheets used cost; offcuts cost nothing. `null` where a used paper has no cost. */
export function planCost(papers: readonly Paper[], use: readonly PaperUse[]): string | null {
  const costs = new Map(papers.flatMap(({ designs }) => designs.map(({ id, cost }) => [id, cost])));
  let sum = 0n;
  for (const { design, used } of use) {
    if (used === 0) continue;
    const cost = costs.get(design) ?? null;
    if (cost === null) return null;
    sum += BigInt(used) * costUnits(cost);
  }
  return costText(sum);
}
