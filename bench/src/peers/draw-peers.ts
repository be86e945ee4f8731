import type { Group, Panel } from "../chart/bar-chart.js";
import { drawBars } from "../chart/draw-bars.js";
import { FILLS, OTHER_FILLS } from "../chart/look.js";
import type { Row } from "../comparison/row.js";
import { EFFORTS } from "../written-options.js";
import { SHEET_PEERS, SQUARE_PEERS } from "./peer.js";
import { solverOf } from "./write-peers.js";

/** Ours from dark to light, then the others. */
const SERIES = [
  ...EFFORTS.map((effort, i) => ({
    name: solverOf({ solver: "sheetwright", effort }),
    fill: FILLS[i] ?? FILLS[0],
  })),
  ...[...SHEET_PEERS, ...SQUARE_PEERS].map((solver, i) => ({
    name: solver,
    fill: OTHER_FILLS[i] ?? FILLS[3],
  })),
];

/** Draws the share of paper that becomes no piece, by family and packer. */
export function drawPeers(rows: readonly Row[], seed: number): string {
  const used = SERIES.filter(({ name }) => rows.some((row) => solverOf(row) === name));
  const panels = (["sheets", "strip"] as const).flatMap((question) =>
    [false, true].flatMap((rotation): Panel[] => {
      const chosen = rows.filter((row) => row.question === question && row.rotation === rotation);
      if (chosen.length === 0) return [];
      const what = question === "sheets" ? "fewest equal sheets" : "one sheet or square";
      return [
        {
          title: `${what}, ${rotation ? "turned" : "fixed"}`,
          outline: null,
          shown: used.flatMap(({ name }, i) => (chosen.some((row) => solverOf(row) === name) ? [i] : [])),
          groups: groupsOf(
            chosen,
            used.map(({ name }) => name),
          ),
        },
      ];
    }),
  );
  return drawBars({
    title: "Beside other packers",
    measure: "Share of the sheets used that becomes no piece. Shorter is better.",
    series: used,
    decimals: 1,
    scale: "one",
    mark: "edge-to-edge cuts cannot waste less (best bound known)",
    panels,
    notes: [
      "Ours are cut edge to edge; the others lay pieces freely, each tried with several orders, of which the best counts.",
      "One sheet or square: ours fill a sheet of the best height, the others a square of their own. Mean of the instances.",
      `Seed ${seed}.`,
    ],
  });
}

function groupsOf(rows: readonly Row[], solvers: readonly string[]): readonly Group[] {
  return [...new Set(rows.map(({ family }) => family))].map((family): Group => {
    const own = rows.filter((row) => row.family === family);
    const ordered = solvers.map((name) => own.find((row) => solverOf(row) === name));
    const best = ordered.find((row) => row?.bestBound != null);
    return {
      label: family,
      note: `${own[0]?.instances ?? 0} instances`,
      values: ordered.map((row) => (row ? wasteOf(row) : null)),
      mark: best && best.question === "sheets" ? leastWaste(best) : null,
    };
  });
}

/** In percent; of one sheet or square the mean of the instances, as large and small ones count alike there. */
function wasteOf({ question, sheets, sheetArea, pieceArea, meanUtilisation }: Row): number | null {
  if (question === "strip") return meanUtilisation === null ? null : 100 - meanUtilisation;
  return sheets === null ? null : 100 - (100 * pieceArea) / sheetArea;
}

/** What the bounds leave over, in percent of the sheets that they count. */
function leastWaste({ details }: Row): number | null {
  let sheetArea = 0;
  let pieceArea = 0;
  for (const detail of details) {
    if (detail.sheets === null || detail.bestBound === null) return null;
    sheetArea += (detail.sheetArea / detail.sheets) * detail.bestBound;
    pieceArea += detail.pieceArea;
  }
  return sheetArea === 0 ? null : 100 - (100 * pieceArea) / sheetArea;
}
