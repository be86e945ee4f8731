// Where only the tests are compiled, nothing else leads to this declaration.
/// <reference path="./maxrects-packer.d.ts" />

/** Packers that fill sheets of one size, asked for as few sheets as they find. */
import ShelfPack from "@mapbox/shelf-pack";
import type { Rectangle, Size } from "@sheetwright/packing";
import { MaxRectsPacker, PACKING_LOGIC } from "maxrects-packer/dist/maxrects-packer.mjs";
import { inOrder, PIECE_ORDERS, type PieceOrder } from "./piece-orders.js";
import type { PlacedPiece } from "./placed-piece.js";

/** One try of a packer. */
export interface SheetsTry {
  /** The order of the pieces, and the packer's own setting where it has one. */
  readonly name: string;
  readonly sheets: number;
  readonly placed: readonly PlacedPiece[];
}

const LOGICS = [
  ["least side left", PACKING_LOGIC.MAX_EDGE],
  ["least area left", PACKING_LOGIC.MAX_AREA],
] as const;

/** maxrects-packer in every order with both of its rules; it puts a piece on the first sheet that takes it. */
export function tryMaxRects(sheet: Size, pieces: readonly Size[], mayTurn: boolean): readonly SheetsTry[] {
  return PIECE_ORDERS.flatMap((order) =>
    LOGICS.map(([rule, logic]): SheetsTry => {
      const packer = new MaxRectsPacker<NumberedRectangle>(sheet.width, sheet.height, 0, {
        smart: false,
        pot: false,
        square: false,
        allowRotation: mayTurn,
        logic,
      });
      for (const { width, height, i } of listed(pieces, order)) {
        packer.add({ x: 0, y: 0, width, height, piece: i });
      }
      return {
        name: `${order.name}, ${rule}`,
        sheets: packer.bins.length,
        placed: packer.bins.flatMap((bin, number) =>
          bin.rects.map(({ x, y, width, height, rot, piece }) => {
            // A turned rectangle keeps its own width and height.
            const size = rot ? { width: height, height: width } : { width, height };
            return { piece, sheet: number, x, y, ...size };
          }),
        ),
      };
    }),
  );
}

interface NumberedRectangle extends Rectangle {
  readonly piece: number;
  /** Set where it was turned. */
  readonly rot?: boolean;
}

/** @mapbox/shelf-pack in every order; it fills one sheet, so a piece goes on the first sheet that takes it. */
export function tryShelfPack(sheet: Size, pieces: readonly Size[]): readonly SheetsTry[] {
  return PIECE_ORDERS.map((order): SheetsTry => {
    const sheets: ShelfPack[] = [];
    const placed: PlacedPiece[] = [];
    for (const { width, height, i } of listed(pieces, order)) {
      // The declared type leaves out that it gives null where a piece does not fit.
      const take = (one: ShelfPack): ShelfPack.Bin | null => one.packOne(width, height);
      let number = 0;
      let bin: ShelfPack.Bin | null = null;
      for (; number < sheets.length && bin === null; number++) bin = take(sheets[number] as ShelfPack);
      if (bin === null) {
        const fresh = new ShelfPack(sheet.width, sheet.height, { autoResize: false });
        sheets.push(fresh);
        number = sheets.length;
        bin = take(fresh);
      }
      if (bin !== null)
        placed.push({ piece: i, sheet: number - 1, x: bin.x, y: bin.y, width: bin.w, height: bin.h });
    }
    return { name: order.name, sheets: sheets.length, placed };
  });
}

function listed(pieces: readonly Size[], order: PieceOrder): readonly (Size & { readonly i: number })[] {
  return inOrder(pieces, order).flatMap((i) => {
    const piece = pieces[i];
    return piece ? [{ width: piece.width, height: piece.height, i }] : [];
  });
}
