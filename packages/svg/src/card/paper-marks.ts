/**
 * Marks that tell a paper's pattern and material in a picture. They are single short lines, since pattern fills are lost
 * in some readers, and only whole marks are drawn, so that none is cut by the layer over it.
 *
 *     two-way      one-way      glitter
 *     ' ' ' '      ^ ^ ^ ^      . '  .
 *      ' ' '        ^ ^ ^        '  . '
 */

import { TICKS_PER_MM, type Ticks } from "@sheetwright/measure";
import type { CardPiece } from "./card-facts.js";
import { isVisible, type Surface } from "./visible-part.js";

/** A line of a mark, with its ends from the mark's centre, in millimetres. */
type MarkLine = readonly (readonly [x: number, y: number])[];

/** One kind of marks, on a grid whose every other row is set off by half a step. */
interface Marks {
  readonly stepX: number;
  readonly stepY: number;
  readonly halfWidth: number;
  readonly halfHeight: number;
  /** How far a mark may stray from its place on the grid. */
  readonly stray: number;
  readonly line: MarkLine;
}

const DASHES: Marks = {
  stepX: 3.2,
  stepY: 2.4,
  halfWidth: 0.1,
  halfHeight: 0.65,
  stray: 0,
  line: [
    [0, -0.65],
    [0, 0.65],
  ],
};
const CARETS: Marks = {
  stepX: 3.8,
  stepY: 2.4,
  halfWidth: 0.85,
  halfHeight: 0.5,
  stray: 0,
  line: [
    [-0.75, 0.4],
    [0, -0.4],
    [0.75, 0.4],
  ],
};
const GLITTER: Marks = {
  stepX: 2,
  stepY: 1,
  halfWidth: 0.25,
  halfHeight: 0.15,
  stray: 0.5,
  line: [
    [-0.15, 0],
    [0.15, 0],
  ],
};

/**
 * The lines of a paper's marks on the visible part of `surfaces[index]`, in millimetres from the top left corner of the
 * front as drawn at `scale`; empty for a plain paper.
 */
export function paperMarks(
  piece: CardPiece,
  surfaces: readonly Surface[],
  index: number,
  scale: number,
): readonly MarkLine[] {
  const marks = marksOf(piece);
  const surface = surfaces[index];
  if (marks === null || surface === undefined) return [];
  const { stepX, stepY, halfWidth, halfHeight, stray, line } = marks;
  const toTicks = (length: number): Ticks => Math.round((length * TICKS_PER_MM) / scale);
  const left = (surface.x * scale) / TICKS_PER_MM;
  const top = (surface.y * scale) / TICKS_PER_MM;
  const across = (surface.width * scale) / TICKS_PER_MM;
  const down = (surface.height * scale) / TICKS_PER_MM;
  // The grid is centred on the layer, so that a narrow one shows a row as well.
  const columns = Math.max(1, Math.floor(across / stepX));
  const rows = Math.max(1, Math.floor(down / stepY));
  const lines: MarkLine[] = [];
  for (let row = 0; row < rows; row += 1) {
    const odd = row % 2 === 1;
    for (let column = 0; column < columns - (odd && columns > 1 ? 1 : 0); column += 1) {
      const [strayX, strayY] = stray === 0 ? [0, 0] : strayOf(row, column, stray);
      const x =
        left + across / 2 + (column - (columns - 1) / 2 + (odd && columns > 1 ? 0.5 : 0)) * stepX + strayX;
      const y = top + down / 2 + (row - (rows - 1) / 2) * stepY + strayY;
      const room: Surface = {
        x: toTicks(x - halfWidth - 0.2),
        y: toTicks(y - halfHeight - 0.2),
        width: toTicks(2 * halfWidth + 0.4),
        height: toTicks(2 * halfHeight + 0.4),
      };
      if (isVisible(surfaces, index, room)) lines.push(line.map(([dx, dy]) => [x + dx, y + dy] as const));
    }
  }
  return lines;
}

/** Whether a piece is drawn with the grains of glitter. */
export function isGlitter({ face: { pattern }, material }: CardPiece): boolean {
  return material === "glitter" && pattern === "none";
}

function marksOf(piece: CardPiece): Marks | null {
  if (isGlitter(piece)) return GLITTER;
  return piece.face.pattern === "none" ? null : piece.face.pattern === "one-way" ? CARETS : DASHES;
}

/** Where a mark strays to: looks like chance, but is the same every time. */
function strayOf(row: number, column: number, stray: number): readonly [number, number] {
  let hash = Math.imul(row + 1, 0x9e3779b1) ^ Math.imul(column + 1, 0x85ebca77);
  hash = Math.imul(hash ^ (hash >>> 15), 0xc2b2ae3d);
  const share = (bits: number) => ((hash >>> bits) % 256) / 255 - 0.5;
  return [2 * stray * share(3), 2 * stray * share(17)];
}
