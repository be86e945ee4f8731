/** The tables of the suite `alternatives`. */
import type { Effort } from "@sheetwright/packing";
import { markdownTable } from "markdown-table";
import type { AlternativeFigures } from "./measure-alternatives.js";
import { PROJECT_WAYS } from "./project-ways.js";

const INTRODUCTION = `Each project is planned as it is written, and with more or less of a choice:

- no choice: every piece from the first of its papers, folded in the first way, without offcuts
- papers and folds: as written, without offcuts
- offcuts: the first paper and fold, with offcuts
- any paper like it: wherever a plain paper is named, any plain one of its material will do that is no lighter and is handed out alike

A plan in brackets lacks pieces: its papers do not give all.`;

/** Writes the tables. */
export function writeAlternatives(effort: Effort, rows: readonly AlternativeFigures[]): string {
  return `${[
    "# Choices of papers, folds and offcuts",
    INTRODUCTION,
    "## Sheets, and offcuts from earlier",
    tableOf(rows, ({ sheets, offcuts }) => (offcuts === 0 ? String(sheets) : `${sheets} + ${offcuts}`)),
    "## Cost of the sheets, or their area in square inches where some have none",
    tableOf(rows, ({ cost, area }) => cost ?? `${area} sq in`),
    `Planned with the effort ${effort}, seed 1.`,
  ].join("\n\n")}\n`;
}

function tableOf(rows: readonly AlternativeFigures[], say: (row: AlternativeFigures) => string): string {
  const ways = PROJECT_WAYS.map(({ name }) => name);
  const projects = [...new Set(rows.map(({ project }) => project))];
  const cells = projects.map((project) => [
    project,
    ...ways.map((way) => {
      const row = rows.find((one) => one.project === project && one.way === way);
      if (row === undefined) return "-";
      return row.complete ? say(row) : `(${say(row)})`;
    }),
  ]);
  return markdownTable([["project", ...ways], ...cells], { align: ["l", ...ways.map(() => "r")] });
}
