import type { Rectangle } from "@sheetwright/packing";
import type { Box } from "./box.js";
import { toMillimetres } from "./to-millimetres.js";

/** The largest band beside a piece's window, or the whole piece. */
export function freeOfWindow(piece: Box, window: Rectangle | null): Box {
  if (window === null) return piece;
  const hole = toMillimetres(window);
  const right = piece.x + piece.width;
  const bottom = piece.y + piece.height;
  const bands: readonly Box[] = [
    { ...piece, height: hole.y - piece.y },
    { ...piece, y: hole.y + hole.height, height: bottom - hole.y - hole.height },
    { ...piece, width: hole.x - piece.x },
    { ...piece, x: hole.x + hole.width, width: right - hole.x - hole.width },
  ];
  return bands.reduce((best, band) =>
    Math.min(band.width, band.height) > Math.min(best.width, best.height) ? band : best,
  );
}
