import type { Piece } from "@sheetwright/cards";
import type { PaperGroup } from "../plan-model.js";
import { findLeftovers } from "../totals/find-leftovers.js";
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
  const known = new Map(problem.sheets.map((sheet) => [sheet.id, sheet]));
  const forms = new Map(problem.kinds.map(({ id, forms }) => [id, forms]));
  const pieceOf = new Map(strips.map(({ kind, piece }) => [kind, piece]));
  const byPiece = new Map<string, bigint>();
  let whole = 0n;
  for (const { sheet: id, run, tree } of packing.layouts) {
    if (!own.has(id)) continue;
    const { width, height } = known.get(id)!;
    whole += BigInt(width) * BigInt(height) * BigInt(run);
    const ahead = [tree];
    for (let node = ahead.pop(); node !== undefined; node = ahead.pop()) {
      if (node.type === "split") ahead.push(...node.parts.map((part) => part.node));
      if (node.type !== "piece") continue;
      for (const { kind, form, count } of node.shares) {
        const size = forms.get(kind)![form]!;
        const piece = pieceOf.get(kind) ?? kind;
        const area = BigInt(size.width) * BigInt(size.height) * BigInt(count);
        byPiece.set(piece, (byPiece.get(piece) ?? 0n) + area);
      }
    }
  }
  const byPurpose = new Map<string, bigint>();
  for (const { id, purpose } of pieces) {
    const area = byPiece.get(id) ?? 0n;
    if (area > 0n) byPurpose.set(purpose, (byPurpose.get(purpose) ?? 0n) + area);
  }
  const kept = findLeftovers(problem, packing, (sheet) => own.has(sheet))
    .filter(({ keep }) => keep)
    .reduce((sum, { width, height, count }) => sum + BigInt(width) * BigInt(height) * BigInt(count), 0n);
  return { whole, kept, pieces: byPurpose };
}

/** The same in percent: the largest use first, what is left and lost behind. All of it adds up to 100 but for rounding. */
export function designUses({
  whole,
  kept,
  pieces,
}: DesignAreas): Pick<DesignNeed, "uses" | "keptPercent" | "wastePercent"> {
  const used = [...pieces.values()].reduce((sum, area) => sum + area, 0n);
  const uses = [...pieces]
    .sort(([, a], [, b]) => (a === b ? 0 : a > b ? -1 : 1))
    .map(([purpose, area]) => ({ purpose, percent: percentOf(area, whole) }));
  return { uses, keptPercent: percentOf(kept, whole), wastePercent: percentOf(whole - used - kept, whole) };
}
