/**
 * Draws one layout of a packing for a cutting machine: nothing but absolute paths of M, L and Z, one group an operation,
 * every style on every path, the document in working order. What comes out at the wrong size is found with the check
 * group, which stands below the sheet.
 */

import { formatSize, TICKS_PER_MM } from "@sheetwright/measure";
import type { Packing, Problem } from "@sheetwright/packing";
import type { FoldDirection, LayoutMarks } from "@sheetwright/planner";
import { layoutFacts } from "../layout/layout-facts.js";
import { runInWords } from "../wording/count-of.js";
import { displayName } from "../wording/display-name.js";
import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement, writeDocument } from "../writer/svg-element.js";
import { checkMarks } from "./check-marks.js";
import { cutData } from "./cut-data.js";
import { type CutPath, nearestFirst, type Point } from "./cut-path.js";
import { cutPaths, type Edges, machineShapes } from "./cut-paths.js";
import {
  CHECK_TITLE,
  type CutterOperation,
  type CutterUnit,
  OPERATION_COLOURS,
  OPERATIONS,
  requireKnown,
  requireLineWidth,
  UNITS_PER_MM,
} from "./operations.js";
import { type ScoreStyle, scorePaths, slitPaths } from "./score-paths.js";
import { stitchPaths } from "./stitch-paths.js";
import { strokeMarks } from "./stroke-marks.js";

/** How a cutter file is written. */
export interface CutterFileOptions {
  /**
   * `once` (the default): shared edges are cut a single time and edges on the sheet's own are not cut. `closed`: a closed
   * outline a piece, shared edges twice.
   */
  readonly edges?: Edges;
  /**
   * The operations that are written (default: all). Without `mark` the pieces are not labelled; without `check` the
   * document is exactly the sheet. There is a group of scores only where some piece has one, and behind it one for those
   * on the inside of a fold, and one of stitches likewise. Slits are cut before anything else. A piece that a machine cuts
   * to a shape is cut along its outline; one for a die is cut as the die blank.
   */
  readonly operations?: readonly CutterOperation[];
  /** What one user unit is (default `mm`); the size of the document stays the same. */
  readonly userUnit?: CutterUnit;
  /** Line colours as SVG writes them; by default from the palette of Okabe & Ito (2008). */
  readonly colours?: Partial<Readonly<Record<CutterOperation, string>>>;
  /** Width of all lines in millimetres (default 0.1). */
  readonly lineWidth?: number;
  /** What only the trade knows: scores and tops of the pieces, and which show their printed back. */
  readonly marks?: LayoutMarks;
  /**
   * `dashed` (the default): scores are dashes that begin and end at the edges of the piece, so that a blade leaves the
   * paper whole between them. `solid`: whole lines, for a tool that creases.
   */
  readonly scores?: ScoreStyle;
}

/** A group of the file; scores on the inside have one of their own, since a tool that creases works from one side. */
type Group = CutterOperation | "score-inside";
const TITLES: Readonly<Record<Group, string>> = {
  mark: "Mark: labels, drawn with a pen",
  score: "Score",
  "score-inside":
    "Score on the inside: dashes that a blade cuts through do for either side; to crease, turn the paper over",
  stitch: "Stitch: dashes and holes that a blade cuts through; they come before the cut",
  cut: "Cut",
  check: CHECK_TITLE,
};

/**
 * Draws `packing.layouts[index]` as a cutter file. Lengths of the problem are ticks of 1/1600 mm. Throws a RangeError
 * where the packing has no such layout or does not answer the problem, and where an option has no meaning or the
 * marks do not go with the problem.
 */
export function drawCutterFile(
  problem: Problem,
  packing: Packing,
  index: number,
  options: CutterFileOptions = {},
): string {
  const { edges = "once", operations = OPERATIONS, userUnit = "mm", lineWidth = 0.1, colours = {} } = options;
  const { scores: scoreStyle = "dashed" } = options;
  const scale = UNITS_PER_MM[userUnit];
  requireKnown("edges", edges, ["once", "closed"]);
  requireKnown("userUnit", userUnit, Object.keys(UNITS_PER_MM));
  requireKnown("scores", scoreStyle, ["dashed", "solid"]);
  for (const operation of operations) requireKnown("operations", operation, OPERATIONS);
  requireLineWidth(lineWidth);

  const { sheet, layout, laidOut, pieces, marks } = layoutFacts(problem, packing, index, options.marks);
  const width = laidOut.width / TICKS_PER_MM;
  const height = laidOut.height / TICKS_PER_MM;
  const check = operations.includes("check") ? checkMarks(width, height) : null;
  const pageWidth = Math.max(width, check?.right ?? 0);
  const pageHeight = Math.max(height, check?.bottom ?? 0);

  const shapes = marks.places.map(({ shape }) => shape);
  const perTick = scale / TICKS_PER_MM;
  const scoresOf = (folds: readonly FoldDirection[]) =>
    scorePaths(laidOut, marks.places, scoreStyle, folds).map((strokes) => pathData(strokes, false, scale));
  const dataOf: Readonly<Record<Group, () => readonly string[]>> = {
    mark: () => {
      const strokes = strokeMarks(laidOut, pieces, marks.places);
      return inOrderOfPlace(strokes).map((each) => pathData(each, false, scale));
    },
    score: () => scoresOf(["mountain", "both"]),
    "score-inside": () => scoresOf(["valley"]),
    stitch: () => stitchPaths(machineShapes(laidOut, shapes)).map((path) => cutData(path, perTick)),
    // Slits come first, while the piece is still held by the sheet.
    cut: () => [
      ...slitPaths(laidOut, marks.places).map(({ points }) => pathData([points], false, scale)),
      ...cutPaths(laidOut, edges, shapes).map((path) => cutData(path, perTick)),
    ],
    check: () => (check?.paths ?? []).map(({ strokes, closed }) => pathData(strokes, closed, scale)),
  };

  const groups = OPERATIONS.filter((operation) => operations.includes(operation)).flatMap((operation) => {
    const stroke = colours[operation] ?? OPERATION_COLOURS[operation];
    const ids: readonly Group[] = operation === "score" ? ["score", "score-inside"] : [operation];
    return ids.flatMap((id) => {
      const paths = dataOf[id]()
        .filter((d) => d !== "")
        .map((d) => element("path", { d, fill: "none", stroke, "stroke-width": lineWidth * scale }));
      if ((operation === "score" || operation === "stitch") && paths.length === 0) return [];
      return [element("g", { id }, [element("title", {}, [TITLES[id]]), ...paths])];
    });
  });

  const size = formatSize(sheet.width, sheet.height, { unit: "mm" });
  const title = `${displayName(sheet)}, ${size}, layout ${index + 1} of ${packing.layouts.length}: ${runInWords(layout.run)}`;
  const root: SvgElement = element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width: `${formatNumber(pageWidth)}mm`,
      height: `${formatNumber(pageHeight)}mm`,
      viewBox: `0 0 ${formatNumber(pageWidth * scale)} ${formatNumber(pageHeight * scale)}`,
    },
    [element("title", {}, [title]), ...groups],
  );
  return writeDocument(root);
}

/** Path data of strokes in millimetres, each its own subpath; steps too short to be written are dropped. */
function pathData(strokes: readonly (readonly Point[])[], closed: boolean, scale: number): string {
  let data = "";
  for (const stroke of strokes) {
    const points = stroke
      .map(([x, y]) => `${formatNumber(x * scale)} ${formatNumber(y * scale)}`)
      .filter((point, i, all) => point !== all[i - 1]);
    if (points.length > 1) data += `M${points.join("L")}${closed ? "Z" : ""}`;
  }
  return data;
}

/** Labels in the order a pen reaches them, by where each begins. */
function inOrderOfPlace(
  labels: readonly (readonly (readonly Point[])[])[],
): readonly (readonly (readonly Point[])[])[] {
  const spots = new Map<CutPath, readonly (readonly Point[])[]>();
  for (const strokes of labels) {
    const [start] = strokes[0] ?? [];
    if (start !== undefined) spots.set({ points: [start], closed: false }, strokes);
  }
  return nearestFirst([...spots.keys()], [0, 0]).map((spot) => spots.get(spot) ?? []);
}
