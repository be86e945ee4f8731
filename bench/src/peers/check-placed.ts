/**
 * Checks layouts of packers that are not bound to edge-to-edge cuts: every piece once and at its size, inside its sheet, and
 * none over another. Shares no code with any packer.
 */
import type { Size } from "@sheetwright/packing";
import type { PlacedPiece } from "./placed-piece.js";

/** What is wrong, one sentence each; nothing where the layouts are right. */
export function checkPlaced(
  pieces: readonly Size[],
  placed: readonly PlacedPiece[],
  sheet: Size,
  mayTurn: boolean,
): readonly string[] {
  const faults: string[] = [];
  const times = pieces.map(() => 0);
  for (const one of placed) {
    const piece = pieces[one.piece];
    if (piece === undefined) {
      faults.push(`piece ${one.piece} was never given.`);
      continue;
    }
    times[one.piece] = (times[one.piece] ?? 0) + 1;
    const upright = one.width === piece.width && one.height === piece.height;
    const turned = mayTurn && one.width === piece.height && one.height === piece.width;
    if (!upright && !turned) {
      faults.push(
        `piece ${one.piece} is ${one.width} x ${one.height} on its sheet, expected ${piece.width} x ${piece.height}.`,
      );
    }
    const inside =
      one.x >= 0 && one.y >= 0 && one.x + one.width <= sheet.width && one.y + one.height <= sheet.height;
    // A coordinate that is no number is inside of nothing.
    if (!inside) faults.push(`piece ${one.piece} leaves sheet ${one.sheet}.`);
  }
  for (const [i, count] of times.entries()) {
    if (count !== 1) faults.push(`piece ${i} is placed ${count} times, expected once.`);
  }
  for (const sheetPieces of bySheet(placed).values()) {
    // From left to right: only pieces that start before another ends can lie over it.
    const sorted = [...sheetPieces].sort((a, b) => a.x - b.x);
    sorted.forEach((a, i) => {
      for (let k = i + 1; k < sorted.length; k++) {
        const b = sorted[k];
        if (b === undefined || b.x >= a.x + a.width) break;
        if (a.y < b.y + b.height && b.y < a.y + a.height) {
          faults.push(`pieces ${a.piece} and ${b.piece} lie over each other on sheet ${a.sheet}.`);
        }
      }
    });
  }
  return faults;
}

function bySheet(placed: readonly PlacedPiece[]): ReadonlyMap<number, readonly PlacedPiece[]> {
  const sheets = new Map<number, PlacedPiece[]>();
  for (const one of placed) {
    const found = sheets.get(one.sheet);
    if (found) found.push(one);
    else sheets.set(one.sheet, [one]);
  }
  return sheets;
}
