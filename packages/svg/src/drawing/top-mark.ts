import type { TopEdge } from "../layout/lying-marks.js";
import { type Box, boxesOverlap } from "./box.js";
import type { Point } from "./cut-number.js";

/** A triangle inside a piece that points to its top. */
export interface TopMark {
  readonly edge: TopEdge;
  /** The tip first. */
  readonly points: readonly [Point, Point, Point];
  readonly box: Box;
}

/** Half the base, and the height, largest first. */
const SIZES = [
  { half: 1.5, high: 2.2 },
  { half: 1.05, high: 1.5 },
] as const;
/** From the edge to the tip. */
const INSET = 0.7;
/** White space kept round the mark. */
const AIR = 0.3;
/** Where along the edge the mark may stand, in shares of it: best in the middle. */
const SPOTS = [1 / 2, 1 / 4, 3 / 4, 1 / 8, 7 / 8, 1 / 16, 15 / 16];

/** How far from its edge the smaller mark reaches, white space included. */
const TOP_BAND = INSET + 1.5 + AIR;

/** Finds a place for the mark along an edge, clear of the boxes given, or gives `null`. */
export function placeTop(piece: Box, edge: TopEdge, obstacles: readonly Box[]): TopMark | null {
  for (const { half, high } of SIZES) {
    for (const share of SPOTS) {
      const mark = markAt(piece, edge, share, half, high, INSET);
      const { box } = mark;
      const inside =
        box.x >= piece.x + AIR &&
        box.y >= piece.y + AIR &&
        box.x + box.width <= piece.x + piece.width - AIR &&
        box.y + box.height <= piece.y + piece.height - AIR;
      if (inside && !obstacles.some((other) => boxesOverlap(box, other, AIR))) return mark;
    }
  }
  return null;
}

/** A box less the band along an edge that a small mark of the top takes, white space included. */
export function belowTop({ x, y, width, height }: Box, edge: TopEdge): Box {
  return edge === "top"
    ? { x, y: y + Math.min(TOP_BAND, height), width, height: Math.max(0, height - TOP_BAND) }
    : { x, y, width: Math.max(0, width - TOP_BAND), height };
}

/** A mark in the middle of an edge that is as small as a piece of this size asks for. */
export function smallestTop(piece: Box, edge: TopEdge, depth: number): TopMark {
  const half = Math.min(1.05, 0.35 * (edge === "top" ? piece.width : piece.height));
  return markAt(piece, edge, 1 / 2, half, Math.min(1.5, 0.5 * depth), Math.min(INSET, 0.2 * depth));
}

function markAt(
  piece: Box,
  edge: TopEdge,
  share: number,
  half: number,
  high: number,
  inset: number,
): TopMark {
  if (edge === "top") {
    const x = piece.x + share * piece.width;
    const y = piece.y + inset;
    return {
      edge,
      points: [
        [x, y],
        [x + half, y + high],
        [x - half, y + high],
      ],
      box: { x: x - half, y, width: 2 * half, height: high },
    };
  }
  const x = piece.x + piece.width - inset;
  const y = piece.y + share * piece.height;
  return {
    edge,
    points: [
      [x, y],
      [x - high, y + half],
      [x - high, y - half],
    ],
    box: { x: x - high, y: y - half, width: high, height: 2 * half },
  };
}
