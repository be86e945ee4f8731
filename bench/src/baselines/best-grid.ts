import type { Size } from "@sheetwright/measure";
import type { ListedPiece } from "../listed-piece.js";

/** Pieces in the plain grid of one size on one sheet: all upright or all turned, whichever gives more. */
export function bestGrid(sheet: Size, piece: Size & { readonly turn: boolean }): number {
  const { width, height } = piece;
  const upright = Math.floor(sheet.width / width) * Math.floor(sheet.height / height);
  const turned = piece.turn ? Math.floor(sheet.width / height) * Math.floor(sheet.height / width) : 0;
  return Math.max(upright, turned);
}

/** Sheets taken when each kind is cut from sheets of its own by its best grid; `null` where a piece does not fit. */
export function sheetsByGrid(sheet: Size, pieces: readonly ListedPiece[]): number | null {
  let sheets = 0;
  for (const piece of pieces) {
    if (piece.quantity === 0) continue;
    const perSheet = bestGrid(sheet, piece);
    if (perSheet === 0) return null;
    sheets += Math.ceil(piece.quantity / perSheet);
  }
  return sheets;
}
