import type { Piece } from "@sheetwright/cards";
import type { PaperGroup } from "../plan-model.js";
import { keptArea, kindAreas, sheetsArea, sumOf } from "../totals/areas.js";
import { percentOf } from "../totals/percent-of.js";
import type { DesignNeed } from "./need.js";

/** Areas of one design of a paper, in square ticks. */
export interface DesignAreas {
  readonly whole: bigint;
  readonly kept: bigint;
  /** By purpose, in the order of the pieces. */
  readonly pieces: ReadonlyMap<string, bigint>;
}

/** What becomes of the sheets and offcuts of one design in the packing of its group. */
export function designAreas(
  { problem, packing, sheets, strips = [] }: PaperGroup,
  design: string,
  pieces: readonly Piece[],
): DesignAreas {
  const own = new Set(sheets.filter((one) => one.design === design).map(({ sheet }) => sheet));
  const pieceOf = new Map(strips.map(({ kind, piece }) => [kind, piece]));
  const isOwn = (sheet: string): boolean => own.has(sheet);
  const byPiece = new Map<string, bigint>();
  for (const [kind, area] of kindAreas(problem, packing, isOwn)) {
    const piece = pieceOf.get(kind) ?? kind;
    byPiece.set(piece, (byPiece.get(piece) ?? 0n) + area);
  }
  const byPurpose = new Map<string, bigint>();
  for (const { id, purpose } of pieces) {
    const area = byPiece.get(id) ?? 0n;
    if (area > 0n) byPurpose.set(purpose, (byPurpose.get(purpose) ?? 0n) + area);
  }
  return {
    whole: sheetsArea(problem, packing, isOwn),
    kept: keptArea(problem, packing, isOwn),
    pieces: byPurpose,
  };
}

/** The same in percent: the largest use first, what is left and lost behind. All of it adds up to 100 but for rounding. */
export function designUses({
  whole,
  kept,
  pieces,
}: DesignAreas): Pick<DesignNeed, "uses" | "keptPercent" | "wastePercent"> {
  const used = sumOf(pieces.values());
  const uses = [...pieces]
    .sort(([, a], [, b]) => (a === b ? 0 : a > b ? -1 : 1))
    .map(([purpose, area]) => ({ purpose, percent: percentOf(area, whole) }));
  return { uses, keptPercent: percentOf(kept, whole), wastePercent: percentOf(whole - used - kept, whole) };
}
