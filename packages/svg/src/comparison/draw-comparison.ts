/**
 * Draws how much of the paper becomes no piece, for sheets of several sizes: a small chart a size, all to one scale, the
 * least waste first.
 *
 *     +--------------------------------------+
 *     | Waste by sheet size                  |
 *     | 1 US letter       | 2 12 x 12 in     |
 *     | 20|\              | 20|              |
 *     |   | \_/\__        |   |\__/\_        |
 *     |  0+-------- 50    |  0+-------- 50   |
 *
 * For one number of copies a bar stands in the place of the line.
 */
import type { ComparedSize, Comparison, ComparisonRow } from "@sheetwright/planner";
import { drawLines, linesHeight, setLines } from "../card/text-lines.js";
import { ACCENT, FONT_FAMILY, HAIRLINE, INK, PAPER, QUIET, RULE, WASTE } from "../drawing/look.js";
import { textElement } from "../drawing/text-element.js";
import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement, writeDocument } from "../writer/svg-element.js";
import { type RoundScale, roundScale } from "./round-scale.js";

/** What a chart of a comparison says besides. */
export interface ComparisonChartOptions {
  /** What is compared, such as the title of a project or the name of a file (default: nothing). */
  readonly title?: string | undefined;
}

const WIDTH = 190;
const MARGIN = 8;
const TITLE = 5.6;
const TEXT = 3;
const NAME = 3.2;
const NOTE = 2.6;
const BELOW_HEAD = 5;
const GAP = 7;
const MOST_COLUMNS = 3;
/** Of one chart: the lines round it, and left of it the numbers. */
const PLOT_HEIGHT = 24;
const NUMBERS = 6;
/** From the words to the plot, half a number of its axis among it. */
const ABOVE_PLOT = 3.2;
const BAR = 5;
const LINE = 0.55;
const DOT = 0.6;
/** Up to so many numbers of copies each is a dot on the line. */
const MOST_DOTS = 12;
/** Marks along an axis, beside that at 0. */
const STEPS_UP = 4;
const STEPS_ACROSS = 5;

/** A size with its rows, by rising copies. */
interface Series {
  readonly size: ComparedSize;
  readonly rows: readonly ComparisonRow[];
  /** Mean waste in percent; `null` where nothing can be told of it. */
  readonly mean: number | null;
}

/**
 * Draws a comparison as an SVG document, 190 mm wide. The same comparison gives the same bytes.
 *
 * @example
 * const comparison = {
 *   sizes: [{ id: "us-letter", name: "US letter", width: 345440, height: 447040, cost: null }],
 *   copies: [1],
 *   rows: [],
 *   search: { effort: "quick", seed: 1 },
 * };
 * drawComparison(comparison).includes(">US letter</text>") // => true
 */
export function drawComparison(comparison: Comparison, { title }: ComparisonChartOptions = {}): string {
  const series = seriesOf(comparison);
  const copies = [...comparison.copies].sort((a, b) => a - b);
  const inner = WIDTH - 2 * MARGIN;
  const columns = Math.max(1, Math.min(MOST_COLUMNS, series.length));
  const room = (inner - (columns - 1) * GAP) / columns;
  const worst = Math.max(0, ...series.flatMap(({ rows }) => rows.map((row) => row.wastePercent ?? 0)));
  const axes: Axes = { copies, up: roundScale(Math.min(100, worst), STEPS_UP), room };
  const head = [
    ...setLines(title === undefined ? "Waste by sheet size" : `${title}: waste by sheet size`, {
      width: inner,
      size: TITLE,
      colour: INK,
      bold: true,
      most: 2,
    }),
    ...setLines(explain(copies), { width: inner, size: TEXT, colour: QUIET, most: 3 }),
  ];
  let y = MARGIN + linesHeight(head) + BELOW_HEAD;
  const drawn: SvgElement[] = [];
  for (let first = 0; first < series.length; first += columns) {
    const panels = series.slice(first, first + columns).map((one) => panelOf(one, axes));
    panels.forEach((panel, column) => {
      drawn.push(panel.draw(MARGIN + column * (room + GAP), y, first + column + 1));
    });
    y += Math.max(...panels.map(({ height }) => height)) + GAP;
  }
  const height = y - (series.length > 0 ? GAP : 0) + MARGIN;
  return writeDocument(
    element(
      "svg",
      {
        xmlns: "http://www.w3.org/2000/svg",
        width: `${formatNumber(WIDTH)}mm`,
        height: `${formatNumber(height)}mm`,
        viewBox: `0 0 ${formatNumber(WIDTH)} ${formatNumber(height)}`,
        "font-family": FONT_FAMILY,
        "text-rendering": "geometricPrecision",
        "data-drawing": "comparison",
      },
      [
        element("title", {}, ["Waste by sheet size"]),
        element("rect", { id: "page", x: 0, y: 0, width: WIDTH, height, fill: PAPER }),
        element("g", { id: "head" }, drawLines(head, MARGIN, MARGIN)),
        ...drawn,
      ],
    ),
  );
}

function explain(copies: readonly number[]): string {
  return (
    `How much of the paper becomes no piece, in percent, for ${whatCopies(copies)}; the grey part could not be saved by ` +
    "any plan, proven. Sizes with the least waste come first."
  );
}

/** The numbers of copies in words; one that was not looked at is never among them. */
function whatCopies(copies: readonly number[]): string {
  const [first = 0, last = first] = [copies[0], copies.at(-1)];
  if (copies.length < 2) return first === 1 ? "one copy" : `${first} copies`;
  if (last - first + 1 === copies.length) return `${first} to ${last} copies`;
  if (copies.length > MOST_DOTS) return `${copies.length} numbers of copies from ${first} to ${last}`;
  return `${copies.slice(0, -1).join(", ")} and ${last} copies`;
}

/** The sizes with the least mean waste first, those that are too small last. */
function seriesOf({ sizes, rows }: Comparison): readonly Series[] {
  const all = sizes.map((size): Series => {
    const own = rows.filter((row) => row.size === size.id).sort((a, b) => a.copies - b.copies);
    const known = own.flatMap(({ wastePercent }) => (wastePercent === null ? [] : [wastePercent]));
    const isWhole = known.length > 0 && known.length === own.length;
    return {
      size,
      rows: own,
      mean: isWhole ? known.reduce((sum, each) => sum + each, 0) / known.length : null,
    };
  });
  const order = (one: Series): number => one.mean ?? Number.POSITIVE_INFINITY;
  return [...all].sort((a, b) => (order(a) === order(b) ? 0 : order(a) - order(b)));
}

interface Axes {
  readonly copies: readonly number[];
  readonly up: RoundScale;
  readonly room: number;
}

interface Panel {
  readonly height: number;
  readonly draw: (left: number, top: number, number: number) => SvgElement;
}

function panelOf(one: Series, axes: Axes): Panel {
  const { size, mean, rows } = one;
  const { room, copies } = axes;
  const words = [
    ...setLines(size.name, { width: room, size: NAME, colour: INK, bold: true, most: 1 }),
    ...setLines(noteOf(one), { width: room, size: NOTE, colour: QUIET, most: 2 }),
  ];
  const head = linesHeight(words) + ABOVE_PLOT;
  const isBar = copies.length === 1;
  const plot = mean === null ? 0 : (isBar ? BAR : PLOT_HEIGHT) + NOTE + 1.6;
  return {
    height: head + plot,
    draw: (left, top, number) =>
      element("g", { id: `size-${number}`, "data-role": "size", "data-size": size.id }, [
        ...drawLines(words, left, top),
        ...(mean === null
          ? []
          : isBar
            ? drawBar(rows[0] as ComparisonRow, axes, left, top + head)
            : drawPlot(rows, axes, left, top + head)),
      ]),
  };
}

function noteOf({ rows, mean }: Series): string {
  const tooLarge = [...new Set(rows.flatMap((row) => row.tooLarge))];
  const [first, second, ...others] = tooLarge;
  if (first !== undefined) {
    const more =
      others.length === 0
        ? second === undefined
          ? ""
          : ` and ${second}`
        : `, ${second} and ${others.length} more`;
    return `Too small for ${first}${more}.`;
  }
  if (mean === null) return "";
  const [row] = rows;
  if (rows.length === 1 && row !== undefined) {
    const sheets = row.sheets === 1 ? "1 sheet" : `${row.sheets} sheets`;
    return row.cost === null ? sheets : `${sheets}, cost ${row.cost}`;
  }
  return `mean ${oneDecimal(mean)} %`;
}

/** One bar for one number of copies. */
function drawBar(row: ComparisonRow, { up, room }: Axes, left: number, top: number): readonly SvgElement[] {
  const across = room - NUMBERS - 6;
  const waste = row.wastePercent ?? 0;
  const width = (percent: number): number => (Math.min(percent, up.most) / up.most) * across;
  const least = leastWaste(row);
  return [
    element("rect", { x: left, y: top, width: width(waste), height: BAR, fill: ACCENT }),
    element("rect", {
      x: left,
      y: top,
      width: width(least),
      height: BAR,
      fill: WASTE,
      stroke: ACCENT,
      "stroke-width": HAIRLINE,
    }),
    element("line", {
      x1: left,
      y1: top - 0.8,
      x2: left,
      y2: top + BAR + 0.8,
      stroke: INK,
      "stroke-width": HAIRLINE * 2,
    }),
    textElement({
      text: `${oneDecimal(waste)} %`,
      x: left + width(waste) + 1.2,
      y: top + BAR / 2 + 1,
      size: TEXT,
      bold: true,
    }),
  ];
}

/** A line over the copies, above what no plan could save. */
function drawPlot(
  rows: readonly ComparisonRow[],
  axes: Axes,
  left: number,
  top: number,
): readonly SvgElement[] {
  const { copies, up, room } = axes;
  const [from = 0, to = 1] = [copies[0], copies.at(-1)];
  const origin = left + NUMBERS;
  const across = room - NUMBERS - 1;
  const bottom = top + PLOT_HEIGHT;
  const x = (count: number): number => origin + ((count - from) / (to - from)) * across;
  const y = (percent: number): number => bottom - (Math.min(percent, up.most) / up.most) * PLOT_HEIGHT;
  const point = (row: ComparisonRow, percent: number): string =>
    `${formatNumber(x(row.copies))} ${formatNumber(y(percent))}`;
  const grid = up.marks.flatMap((mark) => [
    element("line", {
      x1: origin,
      y1: y(mark),
      x2: origin + across,
      y2: y(mark),
      stroke: mark === 0 ? INK : RULE,
      "stroke-width": mark === 0 ? HAIRLINE * 2 : HAIRLINE,
    }),
    textElement({
      text: `${mark}`,
      x: origin - 1.2,
      y: y(mark) + NOTE * 0.35,
      size: NOTE,
      colour: QUIET,
      anchor: "end",
    }),
  ]);
  const numbers = marksAcross(copies).map((mark) =>
    textElement({
      text: `${mark}`,
      x: x(mark),
      y: bottom + NOTE + 0.8,
      size: NOTE,
      colour: QUIET,
      anchor: mark === from ? "start" : mark === to ? "end" : "middle",
    }),
  );
  const least = rows.map((row) => point(row, leastWaste(row)));
  const line = rows.map((row) => point(row, row.wastePercent ?? 0));
  const [first, last] = [formatNumber(x(from)), formatNumber(x(to))];
  const dots =
    rows.length > MOST_DOTS
      ? []
      : rows.map((row) =>
          element("circle", { cx: x(row.copies), cy: y(row.wastePercent ?? 0), r: DOT, fill: ACCENT }),
        );
  return [
    element("path", {
      d: `M${first} ${formatNumber(bottom)} L${least.join(" L")} L${last} ${formatNumber(bottom)} Z`,
      fill: WASTE,
      "data-role": "unavoidable",
    }),
    ...grid,
    element("path", {
      d: `M${line.join(" L")}`,
      fill: "none",
      stroke: ACCENT,
      "stroke-width": LINE,
      "stroke-linejoin": "round",
      "data-role": "waste",
    }),
    ...dots,
    ...numbers,
  ];
}

/** First and last number of copies, and round ones between that leave room for them. */
function marksAcross(copies: readonly number[]): readonly number[] {
  const [from = 0, to = 1] = [copies[0], copies.at(-1)];
  const room = (to - from) / 8;
  const between = roundScale(to, STEPS_ACROSS).marks.filter((mark) => mark > from + room && mark < to - room);
  return [from, ...between, to];
}

/** Waste in percent if all pieces came from as few sheets as is proven to be needed at least. */
function leastWaste({ sheets, atLeast, sheetArea, pieceArea }: ComparisonRow): number {
  if (sheets === null || sheets === 0 || sheetArea === null || pieceArea === null) return 0;
  const whole = (Number(sheetArea) / sheets) * (atLeast ?? 0);
  return whole <= 0 ? 0 : Math.max(0, 100 - (100 * Number(pieceArea)) / whole);
}

function oneDecimal(percent: number): string {
  const tenths = Math.round(percent * 10);
  return `${Math.floor(tenths / 10)}.${tenths % 10}`;
}
