/**
 * Draws a shape at true size as a file for a cutting machine or a drawing program: nothing but absolute paths of M, L, C
 * and Z, a path for each outline and window, one group an operation, the document in working order.
 */

import { TICKS_PER_MM, type Ticks } from "@sheetwright/measure";
import {
  boxOfAll,
  FLATTEN_TOLERANCE,
  flatten,
  type Hole,
  type Outline,
  type Point,
} from "@sheetwright/shapes";
import { checkMarks } from "../cutter/check-marks.js";
import { cutData } from "../cutter/cut-data.js";
import { type CutPath, endOf, nearestFirst, ringPath } from "../cutter/cut-path.js";
import {
  CHECK_TITLE,
  type CutterUnit,
  OPERATION_COLOURS,
  requireKnown,
  requireLineWidth,
  UNITS_PER_MM,
} from "../cutter/operations.js";
import { stitchesAsPaths } from "../cutter/stitch-paths.js";
import { displayName } from "../wording/display-name.js";
import { formatNumber } from "../writer/format-number.js";
import { stepsData } from "../writer/path-data.js";
import { element, writeDocument } from "../writer/svg-element.js";

/** What a file of a shape tells apart: stitches, the cut, and marks to measure. */
export type ShapeOperation = "stitch" | "cut" | "check";

/** How a shape is drawn. */
export interface ShapeDrawingOptions {
  /** Its title (default `Shape`). */
  readonly title?: string | undefined;
  /** Stitches in it, where the outlines stand: dashes become lines of their own, holes small circles. */
  readonly stitches?:
    | { readonly dashes?: readonly (readonly Point[])[]; readonly holes?: readonly Hole[] }
    | undefined;
  /**
   * `curves` (the default): arcs become cubic curves within 0.001 mm. `lines`: straight lines within `tolerance`, for
   * programs that read no curves.
   */
  readonly arcs?: "curves" | "lines" | undefined;
  /** How far lines may lie from their arcs, in ticks (default 0.02 mm). */
  readonly tolerance?: Ticks | undefined;
  /** White space all round, in ticks (default 2 mm). */
  readonly margin?: Ticks | undefined;
  /** Whether two rulers and a square to measure stand below it (default: no, so that nothing but the shape is cut). */
  readonly check?: boolean | undefined;
  /** What one user unit is (default `mm`); the size of the document stays the same. */
  readonly userUnit?: CutterUnit | undefined;
  /** Line colours as SVG writes them; by default those of cutter files. */
  readonly colours?: Partial<Readonly<Record<ShapeOperation, string>>> | undefined;
  /** Width of all lines in millimetres (default 0.1). */
  readonly lineWidth?: number | undefined;
}

const MARGIN: Ticks = 2 * TICKS_PER_MM;
const MOST_MARGIN: Ticks = 1000 * TICKS_PER_MM;

const TITLES: Readonly<Record<ShapeOperation, string>> = {
  stitch: "Stitch: dashes and holes that a blade cuts through; they come before the cut",
  cut: "Cut: windows first",
  check: CHECK_TITLE,
};

/**
 * Draws a shape, one outline or several that keep their places to each other, as an SVG document at true size. Lengths are
 * ticks of 1/1600 mm; the drawing's top left corner is the margin before that of their box. Outer lines run clockwise, windows the other way.
 *
 * Throws a RangeError where there is no outline, or where an option has no meaning.
 *
 * @example
 * const heart = outlineOf({ shape: "heart", width: inches(2), height: inches(2) });
 * const svg = drawShape(heart, { title: "Heart" });
 * svg.split("\n")[0]
 * // => '<svg xmlns="http://www.w3.org/2000/svg" width="54.8mm" height="54.8mm" viewBox="0 0 54.8 54.8">'
 * readOutlines(svg).box // => { x: 3200, y: 3200, width: 81280, height: 81280 }
 */
export function drawShape(shape: Outline | readonly Outline[], options: ShapeDrawingOptions = {}): string {
  const {
    arcs = "curves",
    tolerance = FLATTEN_TOLERANCE,
    margin = MARGIN,
    userUnit = "mm",
    lineWidth = 0.1,
    colours = {},
  } = options;
  requireKnown("arcs", arcs, ["curves", "lines"]);
  requireKnown("userUnit", userUnit, Object.keys(UNITS_PER_MM));
  requireLineWidth(lineWidth);
  if (!(Number.isInteger(margin) && margin >= 0 && margin <= MOST_MARGIN)) {
    throw new RangeError(`margin: expected whole ticks from 0 to ${MOST_MARGIN}, found ${margin}.`);
  }
  const given = "outer" in shape ? [shape] : shape;
  if (given.length === 0)
    throw new RangeError("outlines: expected one at least, found none. Give the outline of a shape.");

  const scale = UNITS_PER_MM[userUnit];
  const perTick = scale / TICKS_PER_MM;
  const box = boxOfAll(given);
  const x = margin - box.x;
  const y = margin - box.y;
  const outlines = arcs === "curves" ? given : given.map((outline) => straightened(outline, tolerance));
  const width = (box.width + 2 * margin) / TICKS_PER_MM;
  const height = (box.height + 2 * margin) / TICKS_PER_MM;
  const check = options.check === true ? checkMarks(width, height) : null;
  const pageWidth = Math.max(width, check?.right ?? 0);
  const pageHeight = Math.max(height, check?.bottom ?? 0);

  const { dashes = [], holes = [] } = options.stitches ?? {};
  const stitches = nearestFirst(stitchesAsPaths({ dashes, holes }, x, y), [0, 0]);
  const windows = outlines.flatMap((outline) => outline.windows.map((window) => ringPath(window, x, y)));
  const outer = outlines.map((outline) => ringPath(outline.outer, x, y));
  const inner = nearestFirst(windows, whereEnds(stitches));
  const cuts = [...inner, ...nearestFirst(outer, whereEnds(inner))];

  const dataOf: Readonly<Record<ShapeOperation, readonly string[]>> = {
    stitch: stitches.map((path) => cutData(path, perTick)),
    cut: cuts.map((path) => cutData(path, perTick)),
    check: (check?.paths ?? []).map(({ strokes, closed }) =>
      strokes
        .map(
          (stroke) =>
            stepsData(
              stroke.map(([across, down]) => ({ x: across, y: down })),
              (point) => [point.x * scale, point.y * scale],
            ) + (closed ? "Z" : ""),
        )
        .join(""),
    ),
  };
  const groups = (["stitch", "cut", "check"] as const).flatMap((operation) => {
    const stroke = colours[operation] ?? OPERATION_COLOURS[operation];
    const paths = dataOf[operation]
      .filter((d) => d !== "")
      .map((d) => element("path", { d, fill: "none", stroke, "stroke-width": lineWidth * scale }));
    if (paths.length === 0) return [];
    return [element("g", { id: operation }, [element("title", {}, [TITLES[operation]]), ...paths])];
  });
  return writeDocument(
    element(
      "svg",
      {
        xmlns: "http://www.w3.org/2000/svg",
        width: `${formatNumber(pageWidth)}mm`,
        height: `${formatNumber(pageHeight)}mm`,
        viewBox: `0 0 ${formatNumber(pageWidth * scale)} ${formatNumber(pageHeight * scale)}`,
      },
      [element("title", {}, [displayName({ id: options.title ?? "Shape" })]), ...groups],
    ),
  );
}

function whereEnds(paths: readonly CutPath[]): readonly [number, number] {
  const last = paths.at(-1);
  return last === undefined ? [0, 0] : endOf(last);
}

function straightened(outline: Outline, tolerance: Ticks): Outline {
  const { outer, windows } = flatten(outline, { tolerance });
  const edges = (corners: readonly Point[]) => corners.map((to) => ({ to }));
  return { outer: edges(outer), windows: windows.map(edges) };
}
