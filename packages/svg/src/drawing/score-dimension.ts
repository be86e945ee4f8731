/**
 * Finds a place for the dimension of a score: a line from the edge that is lined up against to the score, and the words
 * beside it. It is put near the end of the score, clear of all that stands on the piece already; where there is no such
 * place, the list of pieces alone tells the distance.
 *
 * Upright and level scores are one case here: `along` is the way the score runs, `across` the way it is measured.
 */

import { textWidth } from "../text/text-width.js";
import { type Box, boxesOverlap } from "./box.js";
import { type FittedLabel, textAbout } from "./fit-label.js";
import type { ScoreLine } from "./score-line.js";

/** A dimension in its place (millimetres on the sheet). */
export interface ScoreDimension {
  /** From the edge to the score. */
  readonly line: {
    readonly x1: number;
    readonly y1: number;
    readonly x2: number;
    readonly y2: number;
  };
  readonly label: FittedLabel;
}

const DIMENSION_TEXT = 2.6;
/** From the end of a score to its dimension, at most. */
const INSET = 6;
/** From a dimension tried to the next. */
const STEP = 2;
/** Dimension line to words, words to other things, and words to the edge of the piece. */
const BESIDE = 0.5;
const AIR = 0.7;
/** A distance under this is not drawn. */
const SHORTEST = 1.5;

/** What a dimension keeps clear of. */
interface Around {
  readonly piece: Box;
  /** Labels, marks, other dimensions, the window: neither words nor line may meet them. */
  readonly taken: readonly Box[];
  /** Scores: lines may cross them, words may not. */
  readonly scores: readonly Box[];
  /** Where other upright scores stand for an upright one, and level ones for a level one. */
  readonly others: readonly number[];
}

/** Places the dimension, or gives `null`. */
export function placeDimension(
  { score, at }: ScoreLine,
  text: string,
  around: Around,
): ScoreDimension | null {
  const { piece } = around;
  const { upright } = score;
  const [from, to] = upright ? [piece.y, piece.y + piece.height] : [piece.x, piece.x + piece.width];
  const [near, far] = upright ? [piece.x, piece.x + piece.width] : [piece.y, piece.y + piece.height];
  const edge = score.edge === "left" || score.edge === "top" ? near : far;
  if (Math.abs(at - edge) < SHORTEST) return null;

  const inset = Math.min(INSET, (to - from) / 4);
  const measured = partsMeasured(edge, at, around.others);
  for (const upwards of [false, true]) {
    const words = textAbout(0, 0, text, DIMENSION_TEXT, upwards);
    const along = upright ? words.box.height : words.box.width;
    const across = upright ? words.box.width : words.box.height;
    const beyond = at + (edge < at ? 1 : -1) * (AIR + across / 2);
    const inside = measured
      .filter(([a, b]) => Math.abs(b - a) >= across + 2 * AIR)
      .map(([a, b]) => (a + b) / 2);
    for (const middle of [...inside, beyond]) {
      for (let down = to - inset; down >= from + 1; down -= STEP) {
        const centre = middle === beyond ? down : down - BESIDE - along / 2;
        const [x, y] = upright ? [middle, centre] : [centre, middle];
        const found: ScoreDimension = {
          line: upright ? { x1: edge, y1: down, x2: at, y2: down } : { x1: down, y1: edge, x2: down, y2: at },
          label: textAbout(x, y, text, DIMENSION_TEXT, upwards),
        };
        if (isFree(found, around)) return found;
      }
    }
  }
  return null;
}

/** What a dimension takes up: its words and its line. */
export function dimensionBoxes({ line, label }: ScoreDimension): readonly Box[] {
  const half = 0.5;
  const x = Math.min(line.x1, line.x2);
  const y = Math.min(line.y1, line.y2);
  const width = Math.abs(line.x2 - line.x1);
  const height = Math.abs(line.y2 - line.y1);
  const thin =
    height === 0 ? { x, y: y - half, width, height: 2 * half } : { x: x - half, y, width: 2 * half, height };
  return [label.box, thin];
}

/** Whether words of a dimension could fit on a piece at all; saves the search on small ones. */
export function mayHoldDimension({ width, height }: Box, text: string): boolean {
  return Math.max(width, height) > textWidth(text, DIMENSION_TEXT) + 2;
}

/** The stretches from the edge to the score as other scores divide it, the one next to the score first. */
function partsMeasured(
  edge: number,
  at: number,
  others: readonly number[],
): readonly (readonly [number, number])[] {
  const between = others
    .filter((other) => (other - edge) * (other - at) < 0)
    .sort((a, b) => Math.abs(a - at) - Math.abs(b - at));
  const stops = [at, ...between, edge];
  return stops.slice(1).map((stop, i) => [stops[i] as number, stop] as const);
}

function isFree(found: ScoreDimension, { piece, taken, scores }: Around): boolean {
  const [words, line] = dimensionBoxes(found) as [Box, Box];
  if (
    words.x < piece.x + AIR ||
    words.y < piece.y + AIR ||
    words.x + words.width > piece.x + piece.width - AIR ||
    words.y + words.height > piece.y + piece.height - AIR
  ) {
    return false;
  }
  if (taken.some((box) => boxesOverlap(words, box, AIR) || boxesOverlap(line, box, AIR))) return false;
  return !scores.some((box) => boxesOverlap(words, box, AIR / 2));
}
