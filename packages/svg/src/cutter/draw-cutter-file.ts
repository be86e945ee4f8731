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
import { type CutPath, nearestFirst, type Point } from "./cut-path.js";
import { cutPaths, type Edges } from "./cut-paths.js";
import { type ScoreStyle, scorePaths, slitPaths } from "./score-paths.js";
import { strokeMarks } from "./stroke-marks.js";

/** What a group of a cutter file is for: labels and tops drawn with a pen, scores, cuts, and marks to measure. */
export type CutterOperation = "mark" | "score" | "cut" | "check";

/** What one user unit of a cutter file is. Readers that ignore the size of a document take it for one of the others. */
export type CutterUnit = "mm" | "1/96 in" | "1/72 in";

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
   * on the inside of a fold. Slits are cut before anything else.
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

const ORDER: readonly CutterOperation[] = ["mark", "score", "cut", "check"];
const COLOURS: Readonly<Record<CutterOperation, string>> = {
  mark: "#0072B2",
  score: "#009E73",
  cut: "#000000",
  check: "#0072B2",
};
/** A group of the file; scores on the inside have one of their own, since a tool that creases works from one side. */
type Group = CutterOperation | "score-inside";
const TITLES: Readonly<Record<Group, string>> = {
  mark: "Mark: labels, drawn with a pen",
  score: "Score",
  "score-inside":
    "Score on the inside: dashes that a blade cuts through do for either side; to crease, turn the paper over",
  cut: "Cut",
  check: "Check: measure 100 mm, 4 in and the 50 mm square; neither draw nor cut",
};
const UNITS_PER_MM: Readonly<Record<CutterUnit, number>> = {
  mm: 1,
  "1/96 in": 96 / 25.4,
  "1/72 in": 72 / 25.4,
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
  const { edges = "once", operations = ORDER, userUnit = "mm", lineWidth = 0.1, colours = {} } = options;
  const { scores: scoreStyle = "dashed" } = options;
  const scale = UNITS_PER_MM[userUnit];
  requireKnown("edges", edges, ["once", "closed"]);
  requireKnown("userUnit", userUnit, Object.keys(UNITS_PER_MM));
  requireKnown("scores", scoreStyle, ["dashed", "solid"]);
  for (const operation of operations) requireKnown("operations", operation, ORDER);
  if (!(lineWidth > 0 && lineWidth < 100)) {
    throw new RangeError(`lineWidth: expected millimetres over 0 and under 100, found ${lineWidth}.`);
  }

  const { sheet, layout, laidOut, pieces, marks } = layoutFacts(problem, packing, index, options.marks);
  const width = laidOut.width / TICKS_PER_MM;
  const height = laidOut.height / TICKS_PER_MM;
  const check = operations.includes("check") ? checkMarks(width, height) : null;
  const pageWidth = Math.max(width, check?.right ?? 0);
  const pageHeight = Math.max(height, check?.bottom ?? 0);

  const scoresOf = (folds: readonly FoldDirection[]) =>
    scorePaths(laidOut, marks.places, scoreStyle, folds).map((strokes) => pathData(strokes, false, scale));
  const dataOf: Readonly<Record<Group, () => readonly string[]>> = {
    mark: () => {
      const strokes = strokeMarks(laidOut, pieces, marks.places);
      return inOrderOfPlace(strokes).map((each) => pathData(each, false, scale));
    },
    score: () => scoresOf(["mountain", "both"]),
    "score-inside": () => scoresOf(["valley"]),
    // Slits come first, while the piece is still held by the sheet.
    cut: () => [
      ...slitPaths(laidOut, marks.places).map(({ points }) => pathData([points], false, scale)),
      ...cutPaths(laidOut, edges).map(({ points, closed }) =>
        pathData([points.map(([x, y]): Point => [x / TICKS_PER_MM, y / TICKS_PER_MM])], closed, scale),
      ),
    ],
    check: () => (check?.paths ?? []).map(({ strokes, closed }) => pathData(strokes, closed, scale)),
  };

  const groups = ORDER.filter((operation) => operations.includes(operation)).flatMap((operation) => {
    const stroke = colours[operation] ?? COLOURS[operation];
    const ids: readonly Group[] = operation === "score" ? ["score", "score-inside"] : [operation];
    return ids.flatMap((id) => {
      const paths = dataOf[id]()
        .filter((d) => d !== "")
        .map((d) => element("path", { d, fill: "none", stroke, "stroke-width": lineWidth * scale }));
      if (operation === "score" && paths.length === 0) return [];
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

function requireKnown(option: string, found: string, known: readonly string[]): void {
  if (known.includes(found)) return;
  throw new RangeError(`${option}: expected one of ${known.join(", ")}; found ${JSON.stringify(found)}.`);
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
