/** A base as it is cut: the flat with its scores and slits, its panels named, and their measures. Drawn smaller than it is. */

import { TICKS_PER_MM, type Unit } from "@sheetwright/measure";
import type { Flat, FoldDirection } from "@sheetwright/planner";
import type { Box } from "../drawing/box.js";
import { OUTLINE, SMALLEST_TEXT } from "../drawing/look.js";
import { scoreDashes } from "../drawing/score-dashes.js";
import { textElement } from "../drawing/text-element.js";
import { textWidth } from "../text/text-width.js";
import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import type { CardPiece } from "./card-facts.js";
import { DIMENSION_ROOM, dimensionText, drawDimension } from "./dimension-line.js";
import { ordinates } from "./ordinates.js";
import { panelNames } from "./panel-names.js";
import { edgeColour, inkOn } from "./paper-colours.js";

/** A flat at a scale. */
export interface FlatFigure {
  readonly width: number;
  readonly height: number;
  /** True where no line of its measures runs through another measure. */
  readonly isClear: boolean;
  /** True where every panel bears its name. */
  readonly isNamed: boolean;
  /** Draws it with its top left corner, dimensions included, at (x, y). */
  readonly draw: (x: number, y: number) => readonly SvgElement[];
}

/** Of a score on a flat, in millimetres of the drawing. */
const FLAT_DASH = { dash: 1.8, gap: 1 } as const;
const SCORE_WIDTH = 0.3;
const WORD = SMALLEST_TEXT;

/** Makes the figure of one flat; `id` is that of its rectangle. */
export function flatFigure(flat: Flat, base: CardPiece, scale: number, unit: Unit, id: string): FlatFigure {
  const toPage = (ticks: number) => (ticks * scale) / TICKS_PER_MM;
  const [width, height] = [toPage(flat.width), toPage(flat.height)];
  const side = flat.along === "width";
  const ink = inkOn(base.face.colour);
  // Text may be longer than its line.
  const beyond = (drawn: number, length: number) => Math.max(1, dimensionText(length, unit) - drawn);

  // One score has a dimension line; several are told by how far each is from the same edge.
  const [only] = flat.scores;
  const single = flat.scores.length === 1 ? only : undefined;
  const ticks = (lines: readonly { readonly at: number }[]) =>
    lines.map(({ at }) => ({ at: toPage(at), length: at }));
  const scores = ordinates(
    side ? "top" : "left",
    side ? width : height,
    single === undefined ? ticks(flat.scores) : [],
    unit,
  );
  const slits = ordinates(side ? "right" : "top", side ? height : width, ticks(flat.slits), unit, true);
  const room = side
    ? {
        left: Math.max(DIMENSION_ROOM, scores.before),
        right: Math.max(beyond(width, flat.width), scores.after, slits.room),
        top: Math.max(single === undefined ? scores.room : DIMENSION_ROOM, slits.before, 1),
        bottom: DIMENSION_ROOM,
      }
    : {
        left: Math.max(single === undefined ? scores.room : DIMENSION_ROOM, slits.before, 1),
        right: Math.max(DIMENSION_ROOM, slits.after, beyond(width, flat.width)),
        top: Math.max(
          beyond(height, flat.height),
          single === undefined ? 1 : beyond(toPage(single.at), single.at),
          scores.before,
          slits.room,
        ),
        bottom: DIMENSION_ROOM,
      };
  return {
    width: room.left + width + room.right,
    height: room.top + height + room.bottom,
    isClear: scores.isClear && slits.isClear,
    isNamed:
      flat.scores.length === 0 ||
      names(flat, { x: 0, y: 0, width, height }, toPage, ink).length === flat.panels.length,
    draw: (x, y) => {
      const box: Box = { x: x + room.left, y: y + room.top, width, height };
      const far = { x: box.x + width, y: box.y + height };
      return [
        element("rect", {
          id,
          "data-role": "flat",
          "data-fold": flat.fold,
          ...box,
          fill: base.face.colour,
          stroke: edgeColour(base.face.colour),
          "stroke-width": OUTLINE,
        }),
        ...flat.scores.flatMap(({ at, folds }) => dashes(box, flat.along, toPage(at), folds, ink)),
        ...flat.slits.map(({ at, from, to }) => slitLine(box, flat.along, [at, from, to].map(toPage), ink)),
        ...names(flat, box, toPage, ink),
        ...scores.draw(box.x, box.y),
        ...slits.draw(side ? far.x : box.x, box.y),
        ...(single === undefined
          ? []
          : drawDimension({
              beside: side ? "top" : "left",
              edge: side ? box.y : box.x,
              from: side ? box.x : box.y,
              to: (side ? box.x : box.y) + toPage(single.at),
              length: single.at,
              unit,
            })),
        ...drawDimension({ beside: "bottom", edge: far.y, from: box.x, to: far.x, length: flat.width, unit }),
        ...drawDimension({
          ...(side ? { beside: "left", edge: box.x } : { beside: "right", edge: far.x }),
          from: box.y,
          to: far.y,
          length: flat.height,
          unit,
        }),
      ];
    },
  };
}

/** What the lines of some flats mean, with a sample of each, 7 mm wide, from its left end at (x, y). */
export interface FlatKey {
  readonly text: string;
  readonly sample: (x: number, y: number, stroke: string) => readonly SvgElement[];
}

/** A key where there is more to tell apart than one kind of dashes. */
export function flatKey(flats: readonly Flat[]): readonly FlatKey[] {
  const scores = flats.flatMap((flat) => flat.scores.map(({ folds }) => folds));
  const isSlit = flats.some(({ slits }) => slits.length > 0);
  const folds = (["mountain", "valley", "both"] as const).filter((each) => scores.includes(each));
  const count = Math.max(...flats.map(({ panels }) => panels.length));
  const paged = flats.some((flat) => panelNames(flat).some((name) => name.startsWith("page ")));
  const level = (x: number, y: number, stroke: string, from: number, to: number): SvgElement =>
    element("line", { x1: x + from, y1: y, x2: x + to, y2: y, stroke, "stroke-width": SCORE_WIDTH });
  return [
    ...(isSlit || folds.some((each) => each !== "mountain")
      ? folds.map((each) => ({
          text: KEY[each],
          sample: (x: number, y: number, stroke: string) =>
            scoreDashes(7, each, FLAT_DASH).map(([from, to]) => level(x, y, stroke, from, to)),
        }))
      : []),
    ...(isSlit
      ? [
          {
            text: "slit, cut with a craft knife",
            sample: (x: number, y: number, stroke: string) => [level(x, y, stroke, 0, 7)],
          },
        ]
      : []),
    ...(paged ? [{ text: `pages 1 to ${count} are on the inside of their panels`, sample: () => [] }] : []),
  ];
}

const KEY: Readonly<Record<FoldDirection, string>> = {
  mountain: "scored on the outside, folds away from you",
  valley: "scored on the inside, folds towards you",
  both: "folds both ways: between the slits and beside them",
};

/** The score in dashes of its own; a dash pattern would end anywhere. */
function dashes(
  box: Box,
  along: "width" | "height",
  at: number,
  folds: FoldDirection,
  stroke: string,
): readonly SvgElement[] {
  const length = along === "width" ? box.height : box.width;
  return scoreDashes(length, folds, FLAT_DASH).map(([from, to], i) => {
    const ends =
      along === "width"
        ? { x1: box.x + at, y1: box.y + from, x2: box.x + at, y2: box.y + to }
        : { x1: box.x + from, y1: box.y + at, x2: box.x + to, y2: box.y + at };
    return element("line", {
      "data-role": i === 0 ? "score" : undefined,
      "data-folds": i === 0 ? folds : undefined,
      ...ends,
      stroke,
      "stroke-width": SCORE_WIDTH,
    });
  });
}

function slitLine(
  { x, y }: Box,
  along: "width" | "height",
  [at = 0, from = 0, to = 0]: readonly number[],
  stroke: string,
): SvgElement {
  const ends =
    along === "width"
      ? { x1: x + from, y1: y + at, x2: x + to, y2: y + at }
      : { x1: x + at, y1: y + from, x2: x + at, y2: y + to };
  return element("line", { "data-role": "slit", ...ends, stroke, "stroke-width": SCORE_WIDTH });
}

/** The names of the panels, each where there is room for it; upwards on a narrow one. */
function names(
  flat: Flat,
  box: Box,
  toPage: (ticks: number) => number,
  colour: string,
): readonly SvgElement[] {
  const all = panelNames(flat);
  let start = 0;
  return flat.panels.flatMap((panel, index) => {
    const extent = toPage(panel);
    const middle = start + extent / 2;
    start += extent;
    const text = all[index] ?? "";
    const across = freeAcross(
      flat,
      panel,
      start - extent,
      toPage,
      flat.along === "width" ? box.height : box.width,
    );
    const [room, down] = flat.along === "width" ? [extent, across] : [across, extent];
    const [x, y] =
      flat.along === "width"
        ? [box.x + middle, box.y + box.height / 2]
        : [box.x + box.width / 2, box.y + middle];
    const length = textWidth(text, WORD);
    if (flat.scores.length === 0) return [];
    if (length + 1.6 <= room && down >= 2 * WORD + 1) {
      return [textElement({ text, x, y: y + 0.36 * WORD, size: WORD, colour, anchor: "middle" })];
    }
    if (length + 1.6 > down || room < 2 * WORD) return [];
    const baseline = x + 0.36 * WORD;
    return [
      element(
        "text",
        {
          x: baseline,
          y,
          "font-size": WORD,
          fill: colour,
          "text-anchor": "middle",
          transform: `rotate(-90 ${formatNumber(baseline)} ${formatNumber(y)})`,
        },
        [text],
      ),
    ];
  });
}

/** What a name in the middle of a panel has between the slits that run through the panel. */
function freeAcross(
  { slits }: Flat,
  panel: number,
  start: number,
  toPage: (ticks: number) => number,
  whole: number,
): number {
  const touching = slits.filter(({ from, to }) => toPage(from) < start + toPage(panel) && toPage(to) > start);
  const nearest = touching.map(({ at }) => Math.abs(toPage(at) - whole / 2));
  return nearest.reduce((least, off) => Math.min(least, 2 * off), whole);
}
