/**
 * The plain way to cut mixed pieces: first-fit decreasing height. Pieces by falling height, each on the first shelf with
 * room; a shelf is a strip across the sheet, as high as its first piece; a new shelf on the first sheet with room for one,
 * else a new sheet. A piece that may turn lies flat, or stands, and the other way only where that alone fits; the better
 * of the two rules counts.
 *
 * Source: E. Coffman, M. Garey, D. Johnson, R. Tarjan, Performance bounds for level-oriented two-dimensional packing
 * algorithms, SIAM J. Computing 9 (1980). Written for this comparison alone; shares nothing with the packing it measures.
 */
import type { Size } from "@sheetwright/measure";
import type { ListedPiece } from "../listed-piece.js";

interface Shelf {
  readonly height: number;
  roomAlong: number;
}

type Rule = "flat" | "standing";
const RULES: readonly Rule[] = ["flat", "standing"];

/** Copies of one size that first-fit shelves get from one sheet. */
export function countByShelves(sheet: Size, piece: Size & { readonly turn: boolean }): number {
  const most = Math.floor((sheet.width * sheet.height) / (piece.width * piece.height));
  return Math.max(...RULES.map((rule) => placeOnOne(sheet, piece, rule, most)));
}

function placeOnOne(sheet: Size, piece: Size & { readonly turn: boolean }, rule: Rule, most: number): number {
  const stack = newStack(sheet, 1);
  const ways = waysToLie(piece, rule);
  return stack.place(ways, most);
}

/** Sheets that first-fit shelves take for all pieces; `null` where a piece does not fit. */
export function sheetsByShelves(sheet: Size, pieces: readonly ListedPiece[]): number | null {
  const counts = RULES.map((rule) => sheetsByRule(sheet, pieces, rule));
  const found = counts.filter((count) => count !== null);
  return found.length === counts.length ? Math.min(...found) : null;
}

function sheetsByRule(sheet: Size, pieces: readonly ListedPiece[], rule: Rule): number | null {
  const fitting = (way: Size): boolean => way.width <= sheet.width && way.height <= sheet.height;
  const queue = pieces
    .filter((piece) => piece.quantity > 0)
    .map((piece) => ({ quantity: piece.quantity, ways: waysToLie(piece, rule).filter(fitting) }));
  const height = ({ ways }: { readonly ways: readonly Size[] }): number => ways[0]?.height ?? 0;
  const width = ({ ways }: { readonly ways: readonly Size[] }): number => ways[0]?.width ?? 0;
  queue.sort((a, b) => height(b) - height(a) || width(b) - width(a));
  const stack = newStack(sheet, Number.POSITIVE_INFINITY);
  for (const { quantity, ways } of queue) if (stack.place(ways, quantity) < quantity) return null;
  return stack.sheets();
}

/** The ways a piece may lie, the one of the rule first. */
function waysToLie({ width, height, turn }: Size & { readonly turn: boolean }, rule: Rule): readonly Size[] {
  const long = Math.max(width, height);
  const short = Math.min(width, height);
  if (!turn || long === short) return [{ width, height }];
  const flat = { width: long, height: short };
  const standing = { width: short, height: long };
  return rule === "flat" ? [flat, standing] : [standing, flat];
}

/** Sheets with shelves on them, at most `most`; `place` says how many of the copies it could place. */
function newStack(
  sheet: Size,
  most: number,
): { place(ways: readonly Size[], copies: number): number; sheets(): number } {
  const shelves: Shelf[] = [];
  const roomBelow: number[] = [];
  const onShelf = (shelf: Shelf, ways: readonly Size[]): boolean => {
    const way = ways.find(({ width, height }) => width <= shelf.roomAlong && height <= shelf.height);
    if (way === undefined) return false;
    shelf.roomAlong -= way.width;
    return true;
  };
  const newShelf = (index: number, ways: readonly Size[]): boolean => {
    const room = roomBelow[index] ?? 0;
    const way = ways.find(({ width, height }) => width <= sheet.width && height <= room);
    if (way === undefined) return false;
    roomBelow[index] = room - way.height;
    shelves.push({ height: way.height, roomAlong: sheet.width - way.width });
    return true;
  };
  return {
    sheets: () => roomBelow.length,
    place: (ways, copies) => {
      // Where one copy found no room, the next ones of its kind find none either.
      let shelf = 0;
      let index = 0;
      for (let placed = 0; placed < copies; placed++) {
        while (shelf < shelves.length && !onShelf(shelves[shelf] as Shelf, ways)) shelf++;
        if (shelf < shelves.length) continue;
        while (index < roomBelow.length && !newShelf(index, ways)) index++;
        if (index < roomBelow.length) continue;
        if (roomBelow.length >= most) return placed;
        roomBelow.push(sheet.height);
        if (!newShelf(index, ways)) {
          roomBelow.pop();
          return placed;
        }
      }
      return copies;
    },
  };
}
