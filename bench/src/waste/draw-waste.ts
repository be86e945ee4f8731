import type { Group, Panel } from "../chart/bar-chart.js";
import { drawBars } from "../chart/draw-bars.js";
import { FILLS } from "../chart/look.js";
import type { SheetWaste, WasteRequest } from "./measure-waste.js";
import { sheetLabel } from "./sheet-label.js";
import { sumSets } from "./sum-sets.js";
import { wasteOf } from "./waste-of.js";

/** Draws waste by sheet size as an SVG chart: a panel a sheet, a group for the common pieces and for each family of sets. */
export function drawWaste(request: WasteRequest, results: readonly SheetWaste[]): string {
  const { seed, effort, sets, list } = request;
  const what = list
    ? `${list.name.slice(0, 60)}: the list as it was given.`
    : `Mixed pieces: ${sets} seeded sets of each family, cut as a whole from as few sheets as each way can.`;
  return drawBars({
    title: "How much paper is wasted",
    measure: "Share of the paper used that becomes no piece. Shorter is better.",
    series: [
      { name: "Sheetwright, edge to edge", fill: FILLS[0] },
      { name: "Sheetwright, shelves", fill: FILLS[1] },
      { name: "plain: first-fit shelves", fill: FILLS[2] },
      { name: "plain: grid by kind", fill: FILLS[3] },
    ],
    decimals: 1,
    scale: "one",
    mark: "proven: no way of cutting wastes less",
    panels: results.map(panelOf),
    notes: [
      "Common pieces: as many of one size as one sheet gives, the mean of all sizes that fit on it.",
      `${what} Effort ${effort}, seed ${seed}.`,
    ],
  });
}

function panelOf(result: SheetWaste): Panel {
  const { sheet, yields, sets } = result;
  const families = [...new Set(sets.map(({ family }) => family))];
  return {
    title: sheetLabel(sheet),
    outline: { width: sheet.width, height: sheet.height },
    groups: [
      ...groupOfYields(yields),
      ...families.map((family): Group => {
        const sum = sumSets(
          sheet,
          sets.filter((set) => set.family === family),
        );
        const { guillotine, shelf, firstFitShelves, gridByKind } = sum.ways;
        const ways = [guillotine, shelf, firstFitShelves, gridByKind];
        return {
          label: family,
          note: `${sum.copies} pieces`,
          values: ways.map(({ usePercent }) => wasteOf(usePercent)),
          mark: wasteOf(sum.bound.usePercent),
        };
      }),
    ],
  };
}

function groupOfYields({ pieces, meanUsePercent }: SheetWaste["yields"]): readonly Group[] {
  if (meanUsePercent === null) return [];
  const { guillotine, shelf, firstFitShelves, bestGrid, area } = meanUsePercent;
  return [
    {
      label: "common pieces",
      note: `${pieces.length} sizes`,
      values: [guillotine, shelf, firstFitShelves, bestGrid].map(wasteOf),
      mark: wasteOf(area),
    },
  ];
}
