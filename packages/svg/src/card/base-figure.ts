/** The flats of a base as they are cut, with their scale and a key to their lines under them. */

import type { Flat } from "@sheetwright/planner";
import { INK } from "../drawing/look.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import {
  type AtScale,
  CAPTION,
  type CaptionedFigure,
  captionLine,
  largest,
  scaleInWords,
  TALLEST_FIGURE,
} from "./captioned-figure.js";
import type { CardFacts } from "./card-facts.js";
import { type FlatFigure, type FlatKey, flatFigure, flatKey } from "./flat-figure.js";

/** Beside a low picture of the front, the flat is drawn no higher than this. */
const SHORT = 58;
/** A flat with many measures may take so much, where it needs it. */
const TALLER = [78, 100] as const;
const BETWEEN_FLATS = 3;
/** A sample of a line, and the white space behind it. */
const KEY_SAMPLE = 8.5;

/** The room for a base. */
export interface BaseRoom {
  readonly width: number;
  readonly height: number;
  /** The height of the figure that it stands beside. */
  readonly besideHeight: number;
}

/**
 * Makes the figure at the largest scale of the list that has room; `null` where there is none, or none at which all
 * measures keep apart and all panels bear their names, where these are asked for.
 */
export function baseFigure(
  { card, base, unit }: CardFacts,
  { width, height, besideHeight }: BaseRoom,
  { isClear = false, isNamed = false }: { readonly isClear?: boolean; readonly isNamed?: boolean } = {},
): CaptionedFigure | null {
  // Two flats share the height, so they get all of it: small ones would have no room for their dimensions.
  const most = card.flats.length > 1 ? height : Math.min(height, Math.max(besideHeight, SHORT));
  const flatsIn = (tallest: number) =>
    largest(0, (scale) => {
      const figures = card.flats.map((flat) => flatFigure(flat, base, scale, unit, `flat-${flat.fold}`));
      const isGood = figures.every((figure) => (figure.isClear || !isClear) && (figure.isNamed || !isNamed));
      return isGood ? placeFlats(figures, width, tallest) : null;
    });
  let flats: AtScale<PlacedFlats> | null = null;
  for (const tallest of [most, SHORT, ...TALLER, ...(isClear ? [] : [TALLEST_FIGURE])])
    flats ??= flatsIn(tallest);
  if (flats === null) return null;
  return {
    width: flats.made.width,
    content: flats.made.height,
    captions: [
      captionLine(`Base, ${flatInWords(card.flats)}${scaleInWords(flats.scale)}`),
      ...flatKey(card.flats).map(keyLine),
    ],
    draw: flats.made.draw,
  };
}

function keyLine({ text, sample }: FlatKey): CaptionedFigure["captions"][number] {
  return (x, y) => {
    const drawn = sample(x, y - 0.36 * CAPTION, INK);
    return [...drawn, ...captionLine(text)(drawn.length === 0 ? x : x + KEY_SAMPLE, y)];
  };
}

function flatInWords(flats: readonly Flat[]): string {
  const most = Math.max(...flats.map(({ scores }) => scores.length));
  if (most === 0) return "";
  if (flatKey(flats).length > 0) return "flat, outside up, ";
  return `flat, outside up, ${most === 1 ? "score" : "scores"} dashed, `;
}

/** Flats one below the other or, where that is too high, beside each other; `null` where there is no room either way. */
function placeFlats(figures: readonly FlatFigure[], room: number, most: number): PlacedFlats | null {
  for (const beside of [false, true]) {
    const sizes = figures.map(({ width, height }) => (beside ? [width, height] : [height, width]));
    const along = sizes.reduce((sum, [size = 0]) => sum + size, (figures.length - 1) * BETWEEN_FLATS);
    const across = sizes.reduce((most, [, size = 0]) => Math.max(most, size), 0);
    const [width, height] = beside ? [along, across] : [across, along];
    if (width > room || height > most) continue;
    return {
      width,
      height,
      draw: (x, y) => {
        let at = 0;
        return figures.map((figure, i) => {
          const drawn = beside ? figure.draw(x + at, y) : figure.draw(x, y + at);
          at += (sizes[i]?.[0] ?? 0) + BETWEEN_FLATS;
          return element("g", { id: `flat-figure-${i + 1}` }, drawn);
        });
      },
    };
  }
  return null;
}

interface PlacedFlats {
  readonly width: number;
  readonly height: number;
  readonly draw: (x: number, y: number) => readonly SvgElement[];
}
