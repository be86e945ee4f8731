import { type ScaleLinear, scaleBand, scaleLinear } from "d3-scale";
import type { Element } from "xast";
import { toXml } from "xast-util-to-xml";
import { x } from "xastscript";
import type { BarChart, Group, Panel } from "./bar-chart.js";
import {
  FONT_FAMILY,
  HAIRLINE,
  INK,
  MARK_LINE,
  PANEL_TITLE,
  PAPER,
  QUIET,
  RULE,
  SMALL_TEXT,
  TEXT,
  TITLE,
} from "./look.js";

/** Fits between the margins of an A4 and of a US Letter page. */
const WIDTH = 180;
const MARGIN = 4;
const GUTTER = 7;
/** Room for the labels of groups, and for the number behind the longest bar. */
const LABELS = 24;
const WIDE_LABELS = 29;
const NUMBERS = 9;
const BAR_PITCH = 3;
const LEAST_GROUP = 5;
const GROUP_GAP = 3.2;
const PANEL_HEAD = 10;
const PANEL_FOOT = 8;
const LONGEST_LABEL = 14;
const LONGEST_WIDE_LABEL = 17;
/** The longer side of a sheet's picture for a longest side of 12 in and more. */
const OUTLINE_SIDE = 6.5;

type Attributes = Readonly<Record<string, string | number>>;

/** Draws a chart as an SVG document in millimetres. Same chart, same bytes. */
export function drawBars(chart: BarChart): string {
  const columns = chart.panels.length === 1 ? 1 : 2;
  const panelWidth = (WIDTH - 2 * MARGIN - (columns - 1) * GUTTER) / columns;
  const legend = drawLegend(chart, MARGIN + 13.5);
  let y = legend.bottom + 6;
  const panels: Element[] = [];
  for (let first = 0; first < chart.panels.length; first += columns) {
    const row = chart.panels.slice(first, first + columns);
    row.forEach((panel, i) => {
      const alike = { one: chart.panels, "by row": row, "by panel": [panel] }[chart.scale];
      const across = shareOf(alike, panelWidth - labelsOf(chart).room - NUMBERS);
      panels.push(
        drawPanel(panel, chart, { x: MARGIN + i * (panelWidth + GUTTER), y, width: panelWidth, across }),
      );
    });
    y += Math.max(...row.map((panel) => panelHeight(panel, chart)));
  }
  const notes = chart.notes.map((note, i) =>
    text(note, { x: MARGIN, y: mm(y + 2 + i * 3.8) }, { fill: QUIET }),
  );
  const height = mm(y + chart.notes.length * 3.8 + MARGIN - 1);
  return `${toXml(
    x(
      "svg",
      {
        xmlns: "http://www.w3.org/2000/svg",
        width: `${WIDTH}mm`,
        height: `${height}mm`,
        viewBox: `0 0 ${WIDTH} ${height}`,
        role: "img",
        "font-family": FONT_FAMILY,
      },
      lines([
        x("title", chart.title),
        x("desc", chart.measure),
        rectangle(0, 0, WIDTH, height, { fill: PAPER }),
        text(chart.title, { x: MARGIN, y: MARGIN + 4.2 }, { size: TITLE, weight: "bold" }),
        text(chart.measure, { x: MARGIN, y: MARGIN + 9 }, { fill: QUIET }),
        ...legend.elements,
        ...panels,
        ...notes,
      ]),
    ),
  )}\n`;
}

/** The scale of panels: from 0 to a round number beyond their longest bar. */
function shareOf(panels: readonly Panel[], width: number): ScaleLinear<number, number> {
  const values = panels.flatMap(({ groups }) => groups.flatMap((group) => [...group.values, group.mark]));
  const longest = Math.max(1, ...values.filter((value) => value !== null));
  return scaleLinear().domain([0, longest]).nice(5).range([0, width]);
}

/** Room for labels: a little more where one needs it. */
function labelsOf({ panels }: Pick<BarChart, "panels">): { readonly room: number; readonly letters: number } {
  const long = panels.some(({ groups }) => groups.some(({ label }) => [...label].length > LONGEST_LABEL));
  return long ? { room: WIDE_LABELS, letters: LONGEST_WIDE_LABEL } : { room: LABELS, letters: LONGEST_LABEL };
}

function drawLegend(
  chart: BarChart,
  top: number,
): { readonly elements: readonly Element[]; readonly bottom: number } {
  const elements: Element[] = [];
  let at = MARGIN;
  let y = top;
  const place = (name: string, swatch: (at: number, y: number) => readonly Element[]): void => {
    // No font is measured: 0.56 of the size is a little more than its mean advance.
    const width = 5 + name.length * TEXT * 0.56 + 3;
    if (at > MARGIN && at + width > WIDTH - MARGIN) {
      at = MARGIN;
      y += 4.6;
    }
    elements.push(...swatch(at, y), text(name, { x: mm(at + 4.6), y: mm(y + 2.4) }, { size: TEXT }));
    at += width;
  };
  for (const { name, fill } of chart.series) {
    place(name, (left, up) => [
      rectangle(left, up, 3.6, 2.8, { fill, stroke: INK, "stroke-width": HAIRLINE }),
    ]);
  }
  if (chart.mark !== null) place(chart.mark, (left, up) => mark(left + 1.8, up - 0.3, up + 3.1));
  return { elements, bottom: y + 2.8 };
}

interface Place {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly across: ScaleLinear<number, number>;
}

function shownIn({ shown }: Panel, { series }: BarChart): readonly number[] {
  return shown ?? series.map((_, i) => i);
}

/** Room for the bars, and for the two lines of the label beside a single one. */
function groupHeight(panel: Panel, chart: BarChart): number {
  return Math.max(shownIn(panel, chart).length * BAR_PITCH, LEAST_GROUP);
}

function panelHeight(panel: Panel, chart: BarChart): number {
  return PANEL_HEAD + panel.groups.length * (groupHeight(panel, chart) + GROUP_GAP) + PANEL_FOOT;
}

function drawPanel(panel: Panel, chart: BarChart, { x: left, y: top, width, across }: Place): Element {
  const origin = left + labelsOf(chart).room;
  const firstGroup = top + PANEL_HEAD;
  const pitch = groupHeight(panel, chart) + GROUP_GAP;
  const bottom = firstGroup + panel.groups.length * pitch - GROUP_GAP / 2;
  const elements: Element[] = [
    ...drawTitle(panel, left, top),
    line(left, top + 7.2, left + width, top + 7.2, { stroke: INK, "stroke-width": HAIRLINE }),
  ];
  // There is no room for a longer one at each tick; the panel's title says it.
  const unit = panel.unit ?? "%";
  for (const tick of across.ticks(5)) {
    const at = origin + across(tick);
    const stroke = tick === 0 ? INK : RULE;
    elements.push(
      line(at, firstGroup - 1.2, at, bottom, { stroke, "stroke-width": HAIRLINE }),
      text(
        unit.length === 1 ? `${tick} ${unit}` : String(tick),
        { x: mm(at), y: mm(bottom + 3.2) },
        { fill: QUIET, anchor: "middle" },
      ),
    );
  }
  panel.groups.forEach((group, i) => {
    elements.push(...drawGroup(group, panel, chart, { x: left, y: firstGroup + i * pitch, width, across }));
  });
  return x("g", lines(elements));
}

/** The title, behind a small picture of the sheet where there is one; all sheets to one scale. */
function drawTitle({ title, outline }: Panel, left: number, top: number): readonly Element[] {
  const face = { size: PANEL_TITLE, weight: "bold" } as const;
  if (outline === null) return [text(title, { x: mm(left), y: mm(top + 5.6) }, face)];
  const longest = Math.max(outline.width, outline.height);
  // 12 in at 40640 ticks; larger sheets are drawn as large as that.
  const scale = OUTLINE_SIDE / Math.max(longest, 12 * 40640);
  const wide = outline.width * scale;
  const high = outline.height * scale;
  return [
    rectangle(left + 0.1, top + 6.2 - high, wide, high, { fill: PAPER, stroke: INK, "stroke-width": 0.2 }),
    text(title, { x: mm(left + wide + 2), y: mm(top + 5.6) }, face),
  ];
}

function drawGroup(
  group: Group,
  panel: Panel,
  chart: BarChart,
  { x: left, y: top, across }: Place,
): readonly Element[] {
  const origin = left + labelsOf(chart).room;
  const height = groupHeight(panel, chart);
  const shown = shownIn(panel, chart);
  const { letters } = labelsOf(chart);
  const barsHeight = Math.max(shown.length, 1.3) * BAR_PITCH;
  const bars = scaleBand<number>()
    .domain(shown)
    .range([(height - barsHeight) / 2, (height + barsHeight) / 2])
    .paddingInner(0.12);
  const middle = top + height / 2;
  const elements: Element[] = [
    text(shorten(group.label, letters), { x: mm(left), y: mm(middle - 0.4) }, { size: TEXT }),
    text(shorten(group.note, letters), { x: mm(left), y: mm(middle + 3) }, { fill: QUIET }),
  ];
  for (const [place, i] of shown.entries()) {
    const { name, fill } = chart.series[i] ?? { name: "", fill: INK };
    const y = top + (bars(i) ?? 0);
    const value = group.values[i] ?? null;
    const baseline = mm(y + bars.bandwidth() / 2 + 0.9);
    if (value === null) {
      elements.push(text("not possible", { x: mm(origin + 1), y: baseline }, { fill: QUIET }));
      continue;
    }
    const bar = rectangle(origin, y, across(value), bars.bandwidth(), {
      fill,
      stroke: INK,
      "stroke-width": HAIRLINE,
    });
    const said = value.toFixed(panel.decimals ?? chart.decimals);
    bar.children.push(x("title", `${group.label}, ${name}: ${said} ${panel.unit ?? "%"}`));
    const number = { x: mm(origin + across(value) + 1), y: baseline };
    elements.push(bar, text(said, number, { weight: place === 0 ? "bold" : "normal" }));
  }
  if (group.mark !== null)
    elements.push(...mark(origin + across(group.mark), top - 0.7, top + height + 0.35));
  return elements;
}

/** An upright mark that shows on light and on dark fills. */
function mark(at: number, top: number, bottom: number): readonly Element[] {
  return [
    line(at, top, at, bottom, { stroke: PAPER, "stroke-width": MARK_LINE * 2.4 }),
    line(at, top, at, bottom, { stroke: INK, "stroke-width": MARK_LINE }),
  ];
}

interface Face {
  readonly size?: number;
  readonly fill?: string;
  readonly weight?: "normal" | "bold";
  readonly anchor?: "start" | "middle";
}

function text(content: string, at: { readonly x: number; readonly y: number }, face: Face = {}): Element {
  const { size = SMALL_TEXT, fill = INK, weight = "normal", anchor = "start" } = face;
  return x(
    "text",
    { ...at, "font-size": size, "font-weight": weight, "text-anchor": anchor, fill },
    content.replace(FORBIDDEN, ""),
  );
}

/** What XML 1.0 (production 2) allows nowhere, and the writer lets through; the name of a file may hold it. */
const FORBIDDEN = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;

function shorten(label: string, most: number): string {
  const letters = [...label];
  return letters.length <= most ? label : `${letters.slice(0, most - 1).join("")}…`;
}

function rectangle(
  left: number,
  top: number,
  width: number,
  height: number,
  attributes: Attributes,
): Element {
  return x("rect", { x: mm(left), y: mm(top), width: mm(width), height: mm(height), ...attributes });
}

function line(x1: number, y1: number, x2: number, y2: number, attributes: Attributes): Element {
  return x("line", { x1: mm(x1), y1: mm(y1), x2: mm(x2), y2: mm(y2), ...attributes });
}

/** Rounded to a micrometre, so that no tail of a float gets into the file. */
function mm(length: number): number {
  return Math.round(length * 1000) / 1000;
}

/** One element a line. */
function lines(elements: readonly Element[]): (Element | string)[] {
  return elements.flatMap((element) => ["\n", element]).concat("\n");
}
