/** The table of the suite `scale`, as text that reads well in a terminal and as Markdown. */
import { figuresTable } from "../comparison/write-figures.js";
import { type Machine, writeMachine } from "../machine.js";
import type { Growing, ScaleOptions } from "./scale-options.js";
import { COPIES, KINDS, type ScaleRow, timesAsLong } from "./scale-row.js";

const INTRODUCTION = `Pieces with sides of 1 to 6 in on sheets of 12 x 12 in, edge-to-edge cuts in any order. Every row is planned in a process of its
own, one after another, and its plan is checked by \`verify\`, which re-proves its bound.
- s: seconds of processor time that the plan takes, all threads of its process together; peak MiB: the most memory that its process has held, with what Node takes by itself
- at least: no plan uses fewer sheets, by a certificate of this run; above %: sheets above that
- work: places looked at by the search, which is the same on every machine`;

const HEADINGS: Readonly<Record<Growing, string>> = {
  copies: `## More copies of ${KINDS} kinds`,
  kinds: `## More kinds with ${COPIES.toLocaleString("en-US")} copies in all`,
};

/** Writes the tables. */
export function writeScale(
  { efforts, growing, seed }: ScaleOptions,
  rows: readonly ScaleRow[],
  { machine, seconds }: { readonly machine: Machine; readonly seconds: number },
): string {
  const blocks = growing.flatMap((what) => [
    HEADINGS[what],
    tableOf(rows.filter((row) => row.growing === what)),
    ...(what === "copies" ? writeTimes(efforts, rows) : []),
  ]);
  return `${[
    "# Time and memory against copies and kinds",
    `Effort ${efforts.join(", ")}; seed ${seed}.`,
    INTRODUCTION,
    ...blocks,
    `Measured in ${seconds.toFixed(1)} s on ${writeMachine(machine)}.`,
  ].join("\n\n")}\n`;
}

function tableOf(rows: readonly ScaleRow[]): string {
  const head = [
    "effort",
    "kinds",
    "copies",
    "s",
    "peak MiB",
    "sheets",
    "at least",
    "above %",
    "layouts",
    "work",
  ];
  const lines = rows.map((row) => [
    row.effort,
    String(row.kinds),
    String(row.copies),
    row.seconds.toFixed(2),
    row.peakMiB.toFixed(0),
    String(row.sheets),
    String(row.bound),
    row.bound === 0 ? "-" : ((100 * (row.sheets - row.bound)) / row.bound).toFixed(2),
    String(row.layouts),
    String(row.work),
  ]);
  return figuresTable(head, lines, 1);
}

function writeTimes(efforts: ScaleOptions["efforts"], rows: readonly ScaleRow[]): readonly string[] {
  const told = efforts.flatMap((effort) => {
    const times = timesAsLong(rows, effort);
    return times === null ? [] : [`${times.toFixed(2)} times at ${effort}`];
  });
  return told.length === 0 ? [] : [`100,000 copies take as long as 1,000: ${told.join(", ")}.`];
}
