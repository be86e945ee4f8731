/**
 * Draws one layout of a packing as a printable sheet at true scale: the sheet as it lies before the maker, with a panel
 * beside it and a check ruler below. One user unit is one millimetre; the page is as large as its content needs.
 */

import { formatSize, TICKS_PER_MM, type Unit } from "@sheetwright/measure";
import type { CutOrder, Packing, Problem } from "@sheetwright/packing";
import type { LayoutMarks } from "@sheetwright/planner";
import { layoutFacts } from "../layout/layout-facts.js";
import { formatYield, layoutYield } from "../layout/layout-yield.js";
import { hasScores } from "../layout/list-trade-marks.js";
import { runInWords } from "../wording/count-of.js";
import { displayName } from "../wording/display-name.js";
import { formatNumber } from "../writer/format-number.js";
import { element, writeDocument } from "../writer/svg-element.js";
import { drawCheck, drawHead, drawPanel, drawSheetArrows } from "./draw-furniture.js";
import { drawSheet } from "./draw-sheet.js";
import { layoutFigure } from "./layout-figure.js";
import { FONT_FAMILY, PAPER } from "./look.js";
import { planPage } from "./plan-page.js";
import { sheetArrows } from "./sheet-arrows.js";
import { panelRows } from "./side-panel.js";

/** How a layout is drawn for print. */
export interface LayoutDrawingOptions {
  /** The unit of every length in words (default `in`). The drawing itself is always at true scale. */
  readonly unit?: Unit;
  /** The cuts in working order; without them no cut is numbered. */
  readonly cuts?: CutOrder;
  /** What the sheet is part of, such as the name of the project; stands under its size. */
  readonly title?: string;
  /** What only the trade knows: grain, pattern and colour of the sheets, scores, slits, tops and printed backs of the pieces. */
  readonly marks?: LayoutMarks;
}

/**
 * Draws `packing.layouts[index]` as an SVG document. Lengths of the problem are ticks of 1/1600 mm. Throws a RangeError
 * where the packing has no such layout or does not answer the problem, and where the marks do not go with the problem.
 */
export function drawLayout(
  problem: Problem,
  packing: Packing,
  index: number,
  options: LayoutDrawingOptions = {},
): string {
  const { unit = "in", cuts } = options;
  const facts = layoutFacts(problem, packing, index, options.marks);
  const { sheet, layout, kerf, laidOut, pieces, offcuts, marks } = facts;
  const figure = layoutFigure(laidOut, pieces, offcuts, marks.places, cuts, unit);
  const arrows = sheetArrows(marks.sheet, marks.listed.some(hasScores));

  const page = planPage({
    figure,
    width: laidOut.width / TICKS_PER_MM,
    height: laidOut.height / TICKS_PER_MM,
    name: displayName(sheet),
    project: options.title === undefined ? null : displayName({ id: options.title }),
    swatch: marks.sheet !== null,
    arrows,
    rows: panelRows({
      laidOut,
      marksOf: marks.ofEntry,
      figure,
      pieces,
      offcuts,
      cuts: cuts?.cuts ?? [],
      numbered: figure.labels.some(({ label }) => label.shows === "number" || label.shows === "short"),
      unnumbered: figure.cuts.length - figure.numbers.length,
      run: layout.run,
      kerf,
      unit,
    }),
  });

  const size = formatSize(sheet.width, sheet.height, { unit });
  const place = packing.layouts.length > 1 ? `, layout ${index + 1} of ${packing.layouts.length}` : "";
  const run = runInWords(layout.run);
  const used = `${formatYield(layoutYield(laidOut, layout.run))} of the sheet used`;
  const root = element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width: `${formatNumber(page.width)}mm`,
      height: `${formatNumber(page.height)}mm`,
      viewBox: `0 0 ${formatNumber(page.width)} ${formatNumber(page.height)}`,
      "font-family": FONT_FAMILY,
      "text-rendering": "geometricPrecision",
      "data-drawing": "layout",
    },
    [
      element("title", {}, [`${displayName(sheet)}, ${size}${place}: ${run}`]),
      element("rect", { id: "page", x: 0, y: 0, width: page.width, height: page.height, fill: PAPER }),
      element(
        "g",
        { id: "head" },
        drawHead(page, { line: `${size}${place}`, run, used }, marks.sheet?.colour),
      ),
      ...drawSheet({
        sheet,
        run: layout.run,
        laidOut,
        pieces,
        places: marks.places,
        sheetMarks: marks.sheet,
        figure,
        unit,
        x: page.sheet.x,
        y: page.sheet.y,
      }),
      ...(marks.sheet === null ? [] : [element("g", { id: "sheet-marks" }, drawSheetArrows(page, arrows))]),
      element("g", { id: "panel" }, drawPanel(page)),
      element("g", { id: "check" }, drawCheck(page)),
    ],
  );
  return writeDocument(root);
}
