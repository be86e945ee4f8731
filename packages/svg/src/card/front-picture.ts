/** Draws the front of a card, or another surface: every layer as a flat rectangle, or the shape that it is cut to, in the colour of its paper, with its pattern and words. */

import { TICKS_PER_MM } from "@sheetwright/measure";
import { difference, intersection, moved, type Outline, outlineOf } from "@sheetwright/shapes";
import type { Box } from "../drawing/box.js";
import type { FittedLabel } from "../drawing/fit-label.js";
import { HAIRLINE, OUTLINE } from "../drawing/look.js";
import { labelElement } from "../drawing/text-element.js";
import { drawStitches } from "../shape/draw-stitches.js";
import { displayName } from "../wording/display-name.js";
import { formatNumber } from "../writer/format-number.js";
import { outlinesData, type PlaceOf } from "../writer/path-data.js";
import { type Attributes, element, type SvgElement } from "../writer/svg-element.js";
import type { CardPiece, Glimpse, SurfaceFacts } from "./card-facts.js";
import type { FrontLine } from "./closed-front.js";
import { fitWords } from "./fit-words.js";
import { edgeColour, glitterColour, inkOn, markColour, shadeColour } from "./paper-colours.js";
import { isGlitter, paperMarks } from "./paper-marks.js";
import { freePart, type Surface } from "./visible-part.js";

/** Width of the line that lifts a layer off what it lies on. */
const SHADE = 0.35;

/** How far the shade of a shape lies off its edges along both sides: about as wide as that line. */
const SHADE_OF_SHAPE = 0.3;

const MARK = 0.2;

/** Words in their place on the front. */
export interface PlacedWords {
  /** The index of their layer among the surfaces. */
  readonly surface: number;
  readonly label: FittedLabel;
  /** What they take of the front, in ticks. */
  readonly room: Surface;
}

/** A rectangle of the front as drawn, in millimetres from the top left corner of the front. */
export function scaledBox({ x, y, width, height }: Surface, scale: number): Box {
  const toMillimetres = (ticks: number) => (ticks * scale) / TICKS_PER_MM;
  return {
    x: toMillimetres(x),
    y: toMillimetres(y),
    width: toMillimetres(width),
    height: toMillimetres(height),
  };
}

/** Fits the words of all sentiments that have room for them. */
export function wordsOnFront({ layers, surfaces }: SurfaceFacts, scale: number): readonly PlacedWords[] {
  return layers.flatMap(({ layer }, index) => {
    const words = layer.text === null ? "" : displayName({ id: "", name: layer.text });
    if (layer.text === null || words === displayName({ id: "" })) return [];
    const free = freePart(surfaces, index + 1);
    if (free === null) return [];
    const label = fitWords(scaledBox(free, scale), words);
    if (label === null) return [];
    const toTicks = (length: number) => Math.round((length * TICKS_PER_MM) / scale);
    const room = {
      x: toTicks(label.box.x),
      y: toTicks(label.box.y),
      width: toTicks(label.box.width),
      height: toTicks(label.box.height),
    };
    return [{ surface: index + 1, label, room }];
  });
}

/** The front as drawn with its top left corner at (x, y), with the words given. */
export interface FrontPicture {
  readonly facts: SurfaceFacts;
  /** Edges of the base that show on it. */
  readonly lines: readonly FrontLine[];
  readonly words: readonly PlacedWords[];
  readonly scale: number;
  readonly x: number;
  readonly y: number;
  /** Begins the ids of the drawn elements. */
  readonly prefix: string;
}

/** Draws the layers in painting order, each in a group with its marks and words. */
export function drawFront({ facts, lines, words, scale, x, y, prefix }: FrontPicture): readonly SvgElement[] {
  const { surfaces, base, layers } = facts;
  const pieces: readonly CardPiece[] = [base, ...layers];
  return surfaces.map((surface, index) => {
    const piece = pieces[index] as CardPiece;
    const box = scaledBox(surface, scale);
    const at: Box = { ...box, x: x + box.x, y: y + box.y };
    const { colour } = piece.face;
    const edge = edgeColour(colour);
    const layer = index === 0 ? undefined : layers[index - 1]?.layer;
    const outline = layer?.outline;
    const placeOf: PlaceOf = (point) => [
      at.x + (point.x * scale) / TICKS_PER_MM,
      at.y + (point.y * scale) / TICKS_PER_MM,
    ];
    // Marks of the base keep clear of what is seen behind it.
    const painted = index === 0 ? [surface, ...facts.glimpses, ...surfaces.slice(1)] : surfaces;
    const marks = paperMarks(piece, painted, index, scale);
    const said = words.find((word) => word.surface === index);
    return element("g", { id: `${prefix}-${index}` }, [
      element("title", {}, [`${piece.label}, ${piece.paperName}`]),
      cut(outline, at, placeOf, {
        "data-role": index > 0 ? "layer" : facts.surface.name === "front" ? "front" : "surface",
        "data-piece": piece.piece.id,
        "data-on": index === 0 ? undefined : onOf(facts, index),
        fill: colour,
        stroke: edge,
        "stroke-width": HAIRLINE,
      }),
      ...drawMarks(marks, x, y, isGlitter(piece) ? glitterColour(colour) : markColour(colour)),
      ...(outline === undefined
        ? shade(at, shadeColour(colour))
        : shadeOfShape(outline, at, placeOf, scale, shadeColour(colour))),
      ...(layer?.stitches === undefined
        ? []
        : drawStitches(
            layer.stitches,
            placeOf,
            scale / TICKS_PER_MM,
            { "data-piece": piece.piece.id },
            edge,
          )),
      ...(index === 0
        ? [
            ...facts.glimpses.map((glimpse) => drawGlimpse(glimpse, scale, x, y)),
            ...lines.map((line) => frontLine(line, at, scale, inkOn(colour))),
          ]
        : []),
      ...(said === undefined
        ? []
        : [
            element("g", { "data-role": "words", "data-of": `${prefix}-${index}` }, [
              labelElement(said.label, x + said.label.x, y + said.label.y, () => inkOn(colour)),
            ]),
          ]),
    ]);
  });
}

/** What carries a layer: the id of a piece. */
function onOf({ base, layers }: SurfaceFacts, index: number): string {
  const on = layers[index - 1]?.layer.on ?? null;
  return (on === null ? base : (layers[on] ?? base)).piece.id;
}

/** A layer as a rectangle, or along its outline. */
function cut(
  outline: readonly Outline[] | undefined,
  box: Box,
  placeOf: PlaceOf,
  { "data-role": role, "data-piece": piece, "data-on": on, ...style }: Attributes,
): SvgElement {
  const who = { "data-role": role, "data-piece": piece, "data-on": on };
  if (outline === undefined) return element("rect", { ...who, ...box, ...style });
  return element("path", { ...who, d: outlinesData(outline, placeOf), "fill-rule": "evenodd", ...style });
}

/** Along the lower and the right edges of a shape, what it leaves of itself when it is moved a little up and to the left. */
function shadeOfShape(
  outline: readonly Outline[],
  box: Box,
  placeOf: PlaceOf,
  scale: number,
  fill: string,
): readonly SvgElement[] {
  if (Math.min(box.width, box.height) < 8 * SHADE) return [];
  const inset = Math.round((SHADE_OF_SHAPE * TICKS_PER_MM) / scale);
  const lit = outline.map((part) => moved(part, { x: -inset, y: -inset }));
  const d = outlinesData(difference(outline, lit), placeOf);
  return d === "" ? [] : [element("path", { "data-role": "shade", d, fill, "fill-rule": "evenodd" })];
}

function drawGlimpse(
  { piece, outline, ...surface }: Glimpse,
  scale: number,
  x: number,
  y: number,
): SvgElement {
  const box = scaledBox(surface, scale);
  const { colour } = piece.face;
  // What is cut to a shape is seen as far as the flap leaves it free.
  const seen =
    outline === undefined
      ? undefined
      : intersection(outline, [
          moved(outlineOf({ shape: "rectangle", width: surface.width, height: surface.height }), surface),
        ]);
  const placeOf: PlaceOf = (point) => [
    x + (point.x * scale) / TICKS_PER_MM,
    y + (point.y * scale) / TICKS_PER_MM,
  ];
  return cut(seen, { ...box, x: x + box.x, y: y + box.y }, placeOf, {
    "data-role": "glimpse",
    "data-piece": piece.piece.id,
    fill: colour,
    stroke: edgeColour(colour),
    "stroke-width": HAIRLINE,
  });
}

function frontLine(line: FrontLine, { x, y }: Box, scale: number, stroke: string): SvgElement {
  const [at, from, to] = [line.at, line.from, line.to].map((ticks) => (ticks * scale) / TICKS_PER_MM) as [
    number,
    number,
    number,
  ];
  const ends = line.upright
    ? { x1: x + at, y1: y + from, x2: x + at, y2: y + to }
    : { x1: x + from, y1: y + at, x2: x + to, y2: y + at };
  return element("line", { "data-role": "front-line", ...ends, stroke, "stroke-width": OUTLINE });
}

function drawMarks(
  lines: readonly (readonly (readonly [number, number])[])[],
  x: number,
  y: number,
  colour: string,
): readonly SvgElement[] {
  if (lines.length === 0) return [];
  const d = lines
    .map((line) =>
      line
        .map(([dx, dy], i) => `${i === 0 ? "M" : "L"}${formatNumber(x + dx)} ${formatNumber(y + dy)}`)
        .join(""),
    )
    .join("");
  return [element("path", { d, fill: "none", stroke: colour, "stroke-width": MARK })];
}

/** A line inside the lower and the right edge; on a layer too narrow for it, none. */
function shade({ x, y, width, height }: Box, colour: string): readonly SvgElement[] {
  if (Math.min(width, height) < 4 * SHADE) return [];
  const inset = SHADE / 2 + HAIRLINE / 2;
  const right = x + width - inset;
  const bottom = y + height - inset;
  const d =
    `M${formatNumber(x + SHADE)} ${formatNumber(bottom)}L${formatNumber(right)} ${formatNumber(bottom)}` +
    `L${formatNumber(right)} ${formatNumber(y + SHADE)}`;
  return [element("path", { d, fill: "none", stroke: colour, "stroke-width": SHADE })];
}
