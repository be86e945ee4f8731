/**
 * Where everything goes on the page, in millimetres. Left: title, sheet, check ruler. Right: what to do, the panel, and
 * the check square where a column leaves room for it. The page is as large as its content needs, in whole quarter inches:
 * browsers round pages to whole pixels and printer dots, and a quarter inch is a whole number of both (24, and 75 at
 * 300 dpi), so the printed page has exactly this size.
 *
 *     +--------------------------------+
 *     | title          cut 3 sheets    |
 *     | +------------+ panel   panel   |
 *     | |   sheet    | ......  ......  |
 *     | +------------+ ......  +----+  |
 *     | ruler          ......  +----+  |
 *     +--------------------------------+
 */

import { breakLines } from "../text/break-lines.js";
import { ascentOf, fitsWidth, lineHeightOf } from "../text/text-width.js";
import { RULER_HEIGHT, RULER_WIDTH } from "./check-ruler.js";
import { badgeBox } from "./cut-number.js";
import { flowRows, heightOf, type Row } from "./flow-rows.js";
import type { LayoutFigure } from "./layout-figure.js";
import { ARROW_BREADTH, lengthOfArrows, lengthOfBelow, type SheetArrows } from "./sheet-arrows.js";
import { PANEL_WIDTH } from "./side-panel.js";

const MARGIN = 10;
const COLUMN_GAP = 8;
/** Columns may be this high beside a small sheet before a further one is begun. */
const COLUMN_MOST = 190;
export const SUBTITLE = 3.2;
export const NOTE = 2.6;
const NOTE_TEXT = "Measure this after printing; if it is not 100 mm, print at 100 % / actual size.";
const SQUARE = 50;
/** A patch of the paper's colour before the title, and the white space after it. */
export const SWATCH = 5.2;
const AFTER_SWATCH = 2.6;
/** From the sheet, or the numbers round it, to the arrows. */
const BEFORE_ARROWS = 1.8;
const QUARTER_INCH = 6.35;

/** What decides the page. */
export interface PageContent {
  readonly figure: LayoutFigure;
  /** The sheet's size in millimetres. */
  readonly width: number;
  readonly height: number;
  readonly name: string;
  /** What the sheet is part of, or `null`. */
  readonly project: string | null;
  readonly rows: readonly Row[];
  /** Whether a patch of the paper's colour stands before the title. */
  readonly swatch: boolean;
  readonly arrows: SheetArrows;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** A laid out page; all points are top left corners unless said otherwise. */
export interface Page {
  readonly width: number;
  readonly height: number;
  readonly title: { readonly lines: readonly string[]; readonly size: number } & Point;
  /** Left end of the baseline under the title. */
  readonly subtitle: Point;
  /** Lines under that, each with its baseline. */
  readonly project: readonly (Point & { readonly text: string })[];
  /** A patch of the paper's colour; `null` where none is shown. */
  readonly swatch: Point | null;
  readonly sheet: Point;
  /** Where arrows beside the sheet begin: x of their middle, y of their lower end. */
  readonly beside: Point;
  /** Where what stands below the sheet begins: its left end, and y of its middle. */
  readonly below: Point;
  readonly columns: readonly ({ readonly rows: readonly Row[] } & Point)[];
  readonly panel: Point;
  readonly ruler: Point;
  readonly note: { readonly lines: readonly string[] } & Point;
  readonly square: Point | null;
}

/** Lays the page out. */
export function planPage({ figure, width, height, name, project, rows, swatch, arrows }: PageContent): Page {
  const boxes = figure.numbers.map(badgeBox);
  // Numbers outside the sheet widen the space round it, to whole half millimetres.
  const beyond = (reach: (index: number) => number) =>
    boxes.reduce((most, _, index) => Math.max(most, Math.ceil(2 * reach(index)) / 2), 0);
  const left = beyond((i) => -(boxes[i]?.x ?? 0));
  const top = beyond((i) => -(boxes[i]?.y ?? 0));
  const right = beyond((i) => (boxes[i]?.x ?? 0) + (boxes[i]?.width ?? 0) - width);
  const bottom = beyond((i) => (boxes[i]?.y ?? 0) + (boxes[i]?.height ?? 0) - height);

  const besideWidth = arrows.beside.length === 0 ? 0 : BEFORE_ARROWS + ARROW_BREADTH;
  const belowHeight = arrows.below === null ? 0 : BEFORE_ARROWS + ARROW_BREADTH;
  const leftWidth = Math.max(left + width + right + besideWidth, RULER_WIDTH + 6);
  const titleX = swatch ? MARGIN + SWATCH + AFTER_SWATCH : MARGIN;
  const title = titleIn(leftWidth - (titleX - MARGIN), name);
  const subtitleY =
    MARGIN + title.lines.reduce((sum, line) => sum + lineHeightOf(title.size, line), 0) + ascentOf(SUBTITLE);
  const underSubtitle = subtitleY - ascentOf(SUBTITLE) + lineHeightOf(SUBTITLE);
  const projectLines =
    project === null ? [] : linesFrom(underSubtitle, leftWidth - (titleX - MARGIN), project);
  const bodyY = subtitleY + 8 + projectLines.reduce((sum, { text }) => sum + lineHeightOf(SUBTITLE, text), 0);
  const arrowsLength = lengthOfArrows(arrows.beside);
  const sheetBottom = bodyY + Math.max(top + height + bottom, arrowsLength);
  const rulerY = sheetBottom + belowHeight + 5;
  const noteY = rulerY + RULER_HEIGHT + 0.8;
  const note =
    breakLines(NOTE_TEXT.split(" "), { fits: fitsWidth(leftWidth, NOTE), overflow: "anywhere" }) ?? [];
  const leftBottom = noteY + note.length * lineHeightOf(NOTE);

  const panelX = MARGIN + leftWidth + COLUMN_GAP + 2;
  const flow = flowRows(rows, leftBottom - bodyY, COLUMN_MOST);
  const columns = flow.columns.map((column, index) => ({
    rows: column,
    x: panelX + index * (PANEL_WIDTH + COLUMN_GAP),
    y: bodyY,
  }));
  const pageBottom = Math.max(leftBottom, bodyY + flow.height);

  const last = columns.at(-1);
  const squares: readonly (Point & { readonly room: number })[] = [
    ...(last === undefined
      ? []
      : [{ x: last.x, y: pageBottom - SQUARE, room: pageBottom - bodyY - heightOf(last.rows) }]),
    { x: MARGIN, y: pageBottom - SQUARE, room: pageBottom - leftBottom },
  ];
  const square = squares.find(({ room }) => room >= SQUARE + 6);
  return {
    width: wholeQuarters(
      panelX + Math.max(1, columns.length) * (PANEL_WIDTH + COLUMN_GAP) - COLUMN_GAP + MARGIN,
    ),
    height: wholeQuarters(pageBottom + MARGIN),
    title: { ...title, x: titleX, y: MARGIN },
    subtitle: { x: titleX, y: subtitleY },
    project: projectLines.map((line) => ({ ...line, x: titleX })),
    swatch: swatch ? { x: MARGIN, y: MARGIN } : null,
    sheet: { x: MARGIN + left, y: bodyY + top },
    beside: {
      x: MARGIN + left + width + right + BEFORE_ARROWS + ARROW_BREADTH / 2,
      y: bodyY + Math.max(top + height / 2, arrowsLength / 2) + arrowsLength / 2,
    },
    // In the middle under the sheet, as the arrows beside it are.
    below: {
      x: MARGIN + Math.max(0, left + (width - lengthOfBelow(arrows.below)) / 2),
      y: sheetBottom + BEFORE_ARROWS + ARROW_BREADTH / 2,
    },
    columns,
    panel: { x: panelX, y: MARGIN },
    ruler: { x: MARGIN, y: rulerY },
    note: { lines: note, x: MARGIN, y: noteY },
    square: square === undefined ? null : { x: square.x, y: square.y },
  };
}

function wholeQuarters(length: number): number {
  return Math.ceil(length / QUARTER_INCH) * QUARTER_INCH;
}

/** A text in lines of the size of the subtitle, from `top` down, each with its baseline. */
function linesFrom(
  top: number,
  width: number,
  text: string,
): readonly { readonly text: string; readonly y: number }[] {
  const lines = breakLines(text.split(" "), { fits: fitsWidth(width, SUBTITLE), overflow: "anywhere" });
  let down = top;
  return (lines ?? [text]).map((line) => {
    const y = down + ascentOf(SUBTITLE, line);
    down += lineHeightOf(SUBTITLE, line);
    return { text: line, y };
  });
}

/** The name of the sheet whole, smaller and on more lines where it is long. */
function titleIn(width: number, name: string): { readonly lines: readonly string[]; readonly size: number } {
  const words = name.split(" ");
  for (const size of [5.6, 4.6]) {
    const lines = breakLines(words, { fits: fitsWidth(width, size, true), lines: 1, overflow: "refuse" });
    if (lines !== null) return { lines, size };
  }
  const size = 3.6;
  return {
    lines: breakLines(words, { fits: fitsWidth(width, size, true), overflow: "anywhere" }) ?? [name],
    size,
  };
}
