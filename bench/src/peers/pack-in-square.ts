/** Packers without a sheet, which lay pieces into as small a square as they can. They sort the pieces themselves. */
import type { Size } from "@sheetwright/packing";
import binPack from "bin-pack";
import potpack from "potpack";
import type { PlacedPiece } from "./placed-piece.js";

/** Pieces in a rectangle that is meant to be nearly a square. */
export interface SquareTry extends Size {
  readonly placed: readonly PlacedPiece[];
}

/** Packs by potpack. */
export function tryPotpack(pieces: readonly Size[]): SquareTry {
  const boxes = pieces.map(({ width, height }, piece) => ({ w: width, h: height, x: -1, y: -1, piece }));
  const { w, h } = potpack(boxes);
  return {
    width: w,
    height: h,
    placed: boxes.map((box) => ({
      piece: box.piece,
      sheet: 0,
      x: box.x,
      y: box.y,
      width: box.w,
      height: box.h,
    })),
  };
}

/** Packs by bin-pack. */
export function tryBinPack(pieces: readonly Size[]): SquareTry {
  const { width, height, items } = binPack(
    pieces.map((piece, i) => ({ width: piece.width, height: piece.height, i })),
  );
  return {
    width,
    height,
    placed: items.map((item) => ({
      piece: item.item.i,
      sheet: 0,
      x: item.x,
      y: item.y,
      width: item.width,
      height: item.height,
    })),
  };
}
