/** The tables of the suite `peers`, as text that reads well in a terminal and as Markdown. */
import { type Circumstances, writeCircumstances } from "../comparison/circumstances.js";
import type { Row } from "../comparison/row.js";
import { decimal, effortsOf, figuresTable, signed, turnsOf, whole } from "../comparison/write-figures.js";

const INTRODUCTION = `Other packers are general-purpose ones that lay pieces freely: their layouts need not be cut edge to edge, ours must be.
- They are tried with several orders of the pieces, the largest first. Of each instance the best try counts; seconds are
  those of all tries.
- Their layouts are checked for size, place and overlap, ours by \`verify\`.
- bound: fewest sheets that edge-to-edge cuts need, by the best bound known; above: sheets more than that
- waste: share of the sheets used that becomes no piece`;

const STRIPS = `Packers without a sheet lay all pieces into as small a square as they can, and are measured by the use of the square round
their layout. We fill one sheet of the strip's width and best height, on which all pieces can lie if cuts need not go
from edge to edge. Use is the mean of the instances; fixed is the only way these packers have.`;

/** Writes all tables. */
export function writePeers(
  rows: readonly Row[],
  { seed, circumstances }: { readonly seed: number; readonly circumstances: Circumstances },
): string {
  const sheets = rows.filter(({ question }) => question === "sheets");
  const strips = rows.filter(({ question }) => question === "strip");
  const blocks = ["# Beside other packers", `Ours at effort ${effortsOf(rows)}; seed ${seed}.`];
  if (sheets.length > 0) {
    blocks.push("## Fewest equal sheets", INTRODUCTION, writeSheets(sheets));
    const tries = sheets.filter((row) => Object.keys(row.tries).length > 0);
    if (tries.length > 0) blocks.push("### Sheets by each try", ...writeTries(tries));
  }
  if (strips.length > 0) blocks.push("## Filling one sheet or square", STRIPS, writeStrips(strips));
  blocks.push(writeCircumstances(circumstances));
  return `${blocks.join("\n\n")}\n`;
}

/** The solver as a reader knows it. */
export function solverOf({ solver, effort }: Pick<Row, "solver" | "effort">): string {
  return effort === null ? solver : `${solver}, ${effort}`;
}

function writeSheets(rows: readonly Row[]): string {
  const head = [
    "family",
    "turns",
    "solver",
    "of",
    "sheets",
    "bound",
    "above",
    "best published",
    "difference",
    "waste %",
    "s",
  ];
  const lines = rows.map((row) => [
    row.family,
    turnsOf(row),
    solverOf(row),
    String(row.instances),
    whole(row.sheets),
    ...aboveBound(row, rows),
    whole(row.bestPublished),
    row.sheets === null || row.bestPublished === null ? "-" : signed(row.sheets - row.bestPublished),
    decimal(row.utilisation === null ? null : 100 - row.utilisation, 1),
    row.seconds.toFixed(1),
  ]);
  return figuresTable(head, lines, 3);
}

/** The best bound that one of our rows knows of the same instances, and the sheets above it. */
function aboveBound({ family, rotation, sheets }: Row, rows: readonly Row[]): readonly string[] {
  const bounds = rows
    .filter((row) => row.family === family && row.rotation === rotation)
    .flatMap(({ bestBound }) => (bestBound === null ? [] : [bestBound]));
  const bound = bounds.length === 0 ? null : Math.max(...bounds);
  return [whole(bound), bound === null || sheets === null ? "-" : whole(sheets - bound)];
}

function writeTries(rows: readonly Row[]): readonly string[] {
  const solvers = [...new Set(rows.map(({ solver }) => solver))];
  return solvers.map((solver) => {
    const own = rows.filter((row) => row.solver === solver);
    const names = Object.keys(own[0]?.tries ?? {});
    const head = [`${solver}: order`, ...own.map((row) => `${row.family}, ${turnsOf(row)}`)];
    const lines = names.map((name) => [name, ...own.map((row) => whole(row.tries[name] ?? null))]);
    lines.push(["best of each instance", ...own.map((row) => whole(row.sheets))]);
    return figuresTable(head, lines, 1);
  });
}

function writeStrips(rows: readonly Row[]): string {
  const head = ["family", "turns", "solver", "of", "mean use %", "use of all %", "s"];
  const lines = rows.map((row) => [
    row.family,
    turnsOf(row),
    solverOf(row),
    String(row.instances),
    decimal(row.meanUtilisation, 2),
    decimal(row.utilisation, 1),
    row.seconds.toFixed(1),
  ]);
  return figuresTable(head, lines, 3);
}
