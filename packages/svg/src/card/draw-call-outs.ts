/** Draws call-outs: a dot on the layer, a leader to the margin, and there a sample of the paper with the label. */

import { TICKS_PER_MM } from "@sheetwright/measure";
import { INK, OUTLINE, PAPER, QUIET } from "../drawing/look.js";
import { lineHeightOf, textWidth } from "../text/text-width.js";
import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import type { CardPiece } from "./card-facts.js";
import { edgeColour } from "./paper-colours.js";
import type { CallOut } from "./place-call-outs.js";
import { drawLines, linesHeight, setLines, type TextLine } from "./text-lines.js";

const NAME = 3.2;
const DETAIL = 2.7;
/** The side of a sample of paper. */
export const SAMPLE = 4.4;
const BESIDE_SAMPLE = 1.8;
/** White space between one label and the next. */
const GAP = 1.6;
const LETTER = 2.8;
const LETTER_GAP = 0.8;
const BEFORE_LETTER = 1;
const DOT = 0.5;

/** What a label says, in lines. */
export interface CallOutText {
  readonly lines: readonly TextLine[];
  /** The whole label, its sample of paper included. */
  readonly width: number;
  readonly sample: boolean;
  /** Of the lines alone. */
  readonly height: number;
}

/** Sets a label: its name in bold, under it the details, within `width` millimetres. */
export function setCallOut(name: string, details: string, width: number): CallOutText {
  const room = width - SAMPLE - BESIDE_SAMPLE;
  const lines = [
    ...setLines(name, { width: room, size: NAME, colour: INK, bold: true }),
    ...setLines(details, { width: room, size: DETAIL, colour: QUIET }),
  ];
  return {
    lines,
    sample: true,
    width:
      SAMPLE +
      BESIDE_SAMPLE +
      lines.reduce((most, { text, size, bold }) => Math.max(most, textWidth(text, size, bold)), 0),
    height: linesHeight(lines),
  };
}

/** Sets a letter alone, without a sample of its paper. */
export function setLetter(letter: string): CallOutText {
  return {
    lines: [{ text: letter, size: LETTER, bold: true, colour: INK }],
    sample: false,
    width: BEFORE_LETTER + textWidth(letter, LETTER, true),
    height: lineHeightOf(LETTER, letter),
  };
}

/** The most letters that go one below the other. */
export function lettersIn(height: number): number {
  return Math.floor(height / callOutHeight(setLetter("m")));
}

/** What a label takes of the margin, white space included. */
export function callOutHeight({ height, sample }: CallOutText): number {
  return sample ? Math.max(height, SAMPLE) + GAP : height + LETTER_GAP;
}

/** A margin of the picture: how far its leaders run straight on, and where the samples stand, from the front's edge. */
export interface Gutter {
  readonly straight: number;
  readonly width: number;
}

/** The gutter that a margin's leaders need: wider where they have far to go up or down. */
export function gutterFor(callOuts: readonly CallOut[], straight: number, scale: number): Gutter {
  const bend = callOuts.reduce((most, { y, middle }) => Math.max(most, Math.abs(y - middle)), 0);
  const millimetres = (bend * scale) / TICKS_PER_MM;
  return { straight, width: straight + Math.min(14, Math.max(3, Math.ceil(millimetres / 1.5))) + 1.5 };
}

/** A call-out with all that is needed to draw it. */
export interface DrawnCallOut {
  readonly callOut: CallOut;
  readonly piece: CardPiece;
  readonly text: CallOutText;
  readonly gutter: Gutter;
}

/** Where the front lies on the page, and how it is drawn. */
export interface FrontPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly scale: number;
  readonly prefix: string;
}

/** Draws all call-outs: the leaders first, so that no leader is painted over a label. */
export function drawCallOuts(drawn: readonly DrawnCallOut[], place: FrontPlace): readonly SvgElement[] {
  return [
    element(
      "g",
      { id: `${place.prefix}-leaders` },
      drawn.flatMap((each) => leader(each, place)),
    ),
    ...drawn.map((each) => label(each, place)),
  ];
}

function leader({ callOut, gutter }: DrawnCallOut, place: FrontPlace): readonly SvgElement[] {
  const { x, y, width, scale, prefix } = place;
  const toPage = (ticks: number) => (ticks * scale) / TICKS_PER_MM;
  const outwards = callOut.side === "right" ? 1 : -1;
  const edge = callOut.side === "right" ? x + width : x;
  const from = x + toPage(callOut.x);
  const at = y + toPage(callOut.y);
  const middle = y + toPage(callOut.middle);
  const points = [
    [from, at],
    [edge + outwards * gutter.straight, at],
    [edge + outwards * (gutter.width - 1.5), middle],
    [edge + outwards * gutter.width, middle],
  ] as const;
  const written = points.map(([px, py]) => `${formatNumber(px)},${formatNumber(py)}`).join(" ");
  // A light line under the dark one keeps the leader in sight on dark papers.
  const halo = element("line", {
    x1: from,
    y1: at,
    x2: edge,
    y2: at,
    stroke: PAPER,
    "stroke-width": 0.6,
  });
  return [
    halo,
    element("polyline", {
      "data-role": "leader",
      "data-of": `${prefix}-${callOut.surface}`,
      points: written,
      fill: "none",
      stroke: INK,
      "stroke-width": OUTLINE,
      "stroke-linejoin": "round",
    }),
    element("circle", { cx: from, cy: at, r: DOT, fill: INK, stroke: PAPER, "stroke-width": 0.25 }),
  ];
}

function label({ callOut, piece, text, gutter }: DrawnCallOut, place: FrontPlace): SvgElement {
  const outwards = callOut.side === "right" ? 1 : -1;
  const edge = callOut.side === "right" ? place.x + place.width : place.x;
  const middle = place.y + (callOut.middle * place.scale) / TICKS_PER_MM;
  const sampleX = edge + outwards * gutter.width - (outwards < 0 ? SAMPLE : 0);
  const before = text.sample ? SAMPLE + BESIDE_SAMPLE : BEFORE_LETTER;
  const textX = edge + outwards * (gutter.width + before);
  return element(
    "g",
    {
      "data-role": "call-out",
      "data-of": `${place.prefix}-${callOut.surface}`,
      "data-piece": piece.piece.id,
    },
    [
      ...(text.sample ? paperSample(piece, sampleX, middle - SAMPLE / 2) : []),
      ...drawLines(text.lines, textX, middle - text.height / 2, outwards > 0 ? "start" : "end"),
    ],
  );
}

/** A small square of a piece's paper. */
export function paperSample({ face: { colour } }: CardPiece, x: number, y: number): readonly SvgElement[] {
  return [
    element("rect", {
      x,
      y,
      width: SAMPLE,
      height: SAMPLE,
      fill: colour,
      stroke: edgeColour(colour),
      "stroke-width": OUTLINE,
    }),
  ];
}
