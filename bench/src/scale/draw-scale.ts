import type { Group, Panel } from "../chart/bar-chart.js";
import { drawBars } from "../chart/draw-bars.js";
import { FILLS } from "../chart/look.js";
import type { Growing, ScaleOptions } from "./scale-options.js";
import { COPIES, KINDS, type ScaleRow } from "./scale-row.js";

const TITLES: Readonly<Record<Growing, string>> = {
  copies: `copies of ${KINDS} kinds`,
  kinds: `kinds, ${COPIES.toLocaleString("en-US")} copies in all`,
};

/** Draws time on the left and memory on the right: more copies above, more kinds below. */
export function drawScale({ efforts, growing, seed }: ScaleOptions, rows: readonly ScaleRow[]): string {
  const panels = growing.flatMap((what): Panel[] => {
    const own = rows.filter((row) => row.growing === what);
    return [
      { title: `Seconds by ${TITLES[what]}`, ...panelOf(own, what, efforts, "s", ({ seconds }) => seconds) },
      { title: `MiB by ${TITLES[what]}`, ...panelOf(own, what, efforts, "MiB", ({ peakMiB }) => peakMiB) },
    ];
  });
  return drawBars({
    title: "What many copies and many kinds take",
    measure: "Time and memory of one plan in a process of its own. Shorter is better.",
    series: efforts.map((effort, i) => ({ name: `Sheetwright, ${effort}`, fill: FILLS[i] ?? FILLS[0] })),
    decimals: 2,
    scale: "by panel",
    mark: null,
    panels,
    notes: [
      "Pieces with sides of 1 to 6 in on sheets of 12 x 12 in, edge-to-edge cuts in any order.",
      `The memory holds what Node takes by itself. Seed ${seed}.`,
    ],
  });
}

function panelOf(
  rows: readonly ScaleRow[],
  what: Growing,
  efforts: ScaleOptions["efforts"],
  unit: string,
  measured: (row: ScaleRow) => number,
): Omit<Panel, "title"> {
  const counts = [...new Set(rows.map((row) => row[what]))];
  const groups = counts.map((count): Group => {
    const own = rows.filter((row) => row[what] === count);
    return {
      label: count.toLocaleString("en-US"),
      note: count === 1 ? what.slice(0, -1).replace("copie", "copy") : what,
      values: efforts.map((effort) => {
        const row = own.find((each) => each.effort === effort);
        return row === undefined ? null : measured(row);
      }),
      mark: null,
    };
  });
  return { outline: null, unit, decimals: unit === "s" ? 2 : 0, groups };
}
