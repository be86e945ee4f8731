import type { Group, Panel } from "../chart/bar-chart.js";
import { drawBars } from "../chart/draw-bars.js";
import { FILLS } from "../chart/look.js";
import type { Row, Sums } from "../comparison/row.js";
import { turnsOf } from "../comparison/write-figures.js";
import { EFFORTS } from "../written-options.js";

/**
 * Draws how far results are from the best bounds known: families with published sums in panels of their own, by class; all
 * others together. Fixed pieces stand on the left, turned ones on the right.
 */
export function drawPacking(rows: readonly Row[], seed: number): string {
  const efforts = EFFORTS.filter((effort) => rows.some((row) => row.effort === effort));
  const large = [...new Set(rows.filter(({ cells }) => cells.length > 0).map(({ family }) => family))];
  const panels = [...large.map((family) => [family]), null].flatMap((own) =>
    [false, true].flatMap((rotation): Panel[] => {
      const chosen = rows.filter(
        (row) => row.rotation === rotation && (own ? own.includes(row.family) : !large.includes(row.family)),
      );
      const [first] = chosen;
      if (first === undefined) return [];
      const title = `${own ? first.family : large.length > 0 ? "other families" : "families"}, ${turnsOf(first)}`;
      return [
        {
          title,
          outline: null,
          groups: own ? groupsByClass(chosen, efforts) : groupsByFamily(chosen, efforts),
        },
      ];
    }),
  );
  return drawBars({
    title: "How far from the best possible",
    measure:
      "Sheets, or their area, above the best bound known; value, or area placed, below it. Percent of the bound; shorter is better.",
    series: efforts.map((effort, i) => ({ name: `Sheetwright, ${effort}`, fill: FILLS[i] ?? FILLS[0] })),
    decimals: 2,
    scale: "by row",
    mark: "best published, all methods together",
    panels,
    notes: [
      "Edge-to-edge cuts in any order. The bound of an instance is the better of the one proven in this run and the published one.",
      `No mark where nothing, or not all, is published. Seed ${seed}.`,
    ],
  });
}

function groupsByFamily(rows: readonly Row[], efforts: readonly string[]): readonly Group[] {
  return [...new Set(rows.map(({ family }) => family))].map((family) => {
    const own = rows.filter((row) => row.family === family);
    return groupOf(
      family,
      efforts.map((effort) => own.find((row) => row.effort === effort)),
    );
  });
}

function groupsByClass(rows: readonly Row[], efforts: readonly string[]): readonly Group[] {
  const ordered = efforts.map((effort) => rows.find((row) => row.effort === effort));
  const names = ordered[0]?.groups.map(({ group }) => group) ?? [];
  return [
    groupOf("all", ordered),
    ...names.map((name) =>
      groupOf(
        name,
        ordered.map((row) => row?.groups.find(({ group }) => group === name)),
      ),
    ),
  ];
}

function groupOf(label: string, sums: readonly (Sums | undefined)[]): Group {
  const [first] = sums;
  const bound = first?.bestBound ?? null;
  const best = first?.bestPublished ?? null;
  return {
    label,
    note: `${first?.instances ?? 0} instances`,
    values: sums.map((each) => percentOfBound(each?.gap ?? null, each?.bestBound ?? null)),
    mark: best === null || bound === null ? null : percentOfBound(Math.abs(best - bound), bound),
  };
}

function percentOfBound(gap: number | null, bound: number | null): number | null {
  return gap === null || bound === null || bound === 0 ? null : (100 * gap) / bound;
}
