/** The table of the suite `shapes`, as text that reads well in a terminal and as Markdown. */
import { markdownTable } from "markdown-table";
import { type Machine, writeMachine } from "../machine.js";
import type { ShapeMeasure, WayMeasure } from "./measure-shapes.js";
import { CHORD_TOLERANCE } from "./shape-ways.js";

const INTRODUCTION = `All in this run, in turns:
- ours: \`flatten\`, \`offset\` and \`union\` of @sheetwright/shapes on outlines of lines and arcs, arcs in the result
- clipper2-ts: \`inflatePaths\` and \`union\` on chords within ${CHORD_TOLERANCE} ticks of the arcs, given as integers beforehand; chords in the result
- polygon-clipping: \`union\` on the same chords

Milliseconds are of the quickest round and, behind the stroke, of the middle one. Edges are lines and arcs, for the others corners. The
difference is that of the area to ours, in millionths.`;

/** Writes the table. */
export function writeShapes(
  rounds: number,
  measures: readonly ShapeMeasure[],
  { machine, seconds }: { readonly machine: Machine; readonly seconds: number },
): string {
  const operations = [...new Set(measures.map(({ operation }) => operation))];
  const blocks = operations.flatMap((operation) => [
    `## ${operation[0]?.toUpperCase()}${operation.slice(1)}`,
    tableOf(measures.filter((measure) => measure.operation === operation)),
  ]);
  return `${[
    "# Time of outlines",
    INTRODUCTION,
    ...blocks,
    `Measured in ${seconds.toFixed(1)} s, ${rounds} rounds, on ${writeMachine(machine)}.`,
  ].join("\n\n")}\n`;
}

function tableOf(measures: readonly ShapeMeasure[]): string {
  const all = [
    ["ours", ({ ours }: ShapeMeasure) => ours],
    ["clipper2-ts", ({ clipper }: ShapeMeasure) => clipper],
    ["polygon-clipping", ({ polygonClipping }: ShapeMeasure) => polygonClipping],
  ] as const;
  const ways = all.filter(([, of]) => measures.some((measure) => of(measure) !== null));
  const others = ways.slice(1);
  const head = [
    "outlines",
    "edges in",
    ...ways.map(([name]) => `${name} ms`),
    ...ways.map(([name]) => `${name} edges`),
    ...others.map(([name]) => `${name} difference`),
  ];
  const rows = measures.map((measure) => [
    measure.outlines,
    String(measure.edges),
    ...ways.map(([, of]) => said(of(measure), ({ least, middle }) => `${time(least)} / ${time(middle)}`)),
    ...ways.map(([, of]) => said(of(measure), ({ edges }) => String(edges))),
    ...others.map(([, of]) => said(of(measure), ({ areaOff }) => areaOff.toFixed(0).replace(/^-0$/, "0"))),
  ]);
  return markdownTable([head, ...rows], { align: ["l", ...head.slice(1).map(() => "r")] });
}

function said(measure: WayMeasure | "failed" | null, say: (measure: WayMeasure) => string): string {
  return measure === null ? "-" : measure === "failed" ? "failed" : say(measure);
}

function time(milliseconds: number): string {
  return milliseconds < 10 ? milliseconds.toFixed(2) : milliseconds.toFixed(0);
}
