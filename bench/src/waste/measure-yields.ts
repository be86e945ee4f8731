/** Yields of the common pieces on a sheet: by `howMany` in both modes, beside plain ways and the bound by area. */
import { formatSize, type Size } from "@sheetwright/measure";
import { howMany, type Mode } from "@sheetwright/packing";
import { bestGrid } from "../baselines/best-grid.js";
import { countByShelves } from "../baselines/first-fit-shelves.js";
import { percentOf } from "../percent-of.js";
import { COMMON_PIECES } from "./common-pieces.js";
import { findingsOfYield } from "./findings-of-yield.js";

/** The ways of cutting that are compared for one size on one sheet; `area` is the bound that no way can pass. */
export const YIELD_WAYS = ["guillotine", "shelf", "firstFitShelves", "bestGrid", "area"] as const;
type YieldWay = (typeof YIELD_WAYS)[number];

/** What one sheet gives of one piece. */
interface PieceYield extends Size {
  readonly piece: string;
  readonly counts: Readonly<Record<YieldWay, number>>;
  /** Share of the sheet that becomes pieces by edge-to-edge cuts in any order, in percent. */
  readonly usePercent: number;
  /** True where no edge-to-edge layout gives more. */
  readonly exact: boolean;
  readonly verified: boolean;
}

/** Yields on one sheet. */
export interface SheetYields {
  readonly sheet: string;
  /** The pieces that fit; the others have no row. */
  readonly pieces: readonly PieceYield[];
  /** Common pieces that do not fit on the sheet. */
  readonly tooLarge: number;
  /** Share of the sheet that becomes pieces, the mean over the pieces that fit; `null` where none fits. */
  readonly meanUsePercent: Readonly<Record<YieldWay, number>> | null;
  readonly seconds: number;
  /** What `verify` found, one sentence each; empty where all is well. */
  readonly faults: readonly string[];
}

/**
 * Measures all common pieces on a sheet.
 *
 * @param now a clock in seconds.
 */
export function measureYields(sheet: Size & { readonly id: string }, now: () => number): SheetYields {
  const began = now();
  const size = { width: sheet.width, height: sheet.height };
  const faults: string[] = [];
  const fitting = COMMON_PIECES.filter((piece) => bestGrid(size, { ...piece, turn: true }) > 0);
  const pieces = fitting.map((piece): PieceYield => {
    const name = formatSize(piece.width, piece.height, { unit: "in" });
    let verified = true;
    const yieldOf = (mode: Exclude<Mode, "stopped">) => {
      const found = howMany(size, piece, { mode });
      for (const { path, message } of findingsOfYield(size, piece, mode, found)) {
        faults.push(`${sheet.id}, ${name}, ${mode}: ${path}: ${message}`);
        verified = false;
      }
      return found;
    };
    const guillotine = yieldOf("guillotine");
    const counts: Readonly<Record<YieldWay, number>> = {
      guillotine: guillotine.count,
      shelf: yieldOf("shelf").count,
      firstFitShelves: countByShelves(size, { ...piece, turn: true }),
      bestGrid: bestGrid(size, { ...piece, turn: true }),
      area: Math.floor(area(size) / area(piece)),
    };
    const usePercent = percentOf(BigInt(counts.guillotine * area(piece)), BigInt(area(size)));
    return { piece: name, ...piece, counts, usePercent, exact: guillotine.exact, verified };
  });
  const mean = (way: YieldWay): number => {
    const used = pieces.reduce((sum, piece) => sum + BigInt(piece.counts[way] * area(piece)), 0n);
    return percentOf(used, BigInt(pieces.length) * BigInt(area(size)));
  };
  return {
    sheet: sheet.id,
    pieces,
    tooLarge: COMMON_PIECES.length - pieces.length,
    meanUsePercent:
      pieces.length === 0
        ? null
        : {
            guillotine: mean("guillotine"),
            shelf: mean("shelf"),
            firstFitShelves: mean("firstFitShelves"),
            bestGrid: mean("bestGrid"),
            area: mean("area"),
          },
    seconds: now() - began,
    faults,
  };
}

function area({ width, height }: Size): number {
  return width * height;
}
