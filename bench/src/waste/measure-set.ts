/** Plans one set of pieces on sheets of one size, in both modes, beside the plain ways of cutting it. */
import { formatSize, type Size } from "@sheetwright/measure";
import { type Effort, type Mode, type Problem, pack, verify } from "@sheetwright/packing";
import { sheetsByGrid } from "../baselines/best-grid.js";
import { sheetsByShelves } from "../baselines/first-fit-shelves.js";
import type { ListedPiece } from "../listed-piece.js";
import type { PieceSet } from "../sets/piece-set.js";

/** One plan of a set. */
export interface SetPlan {
  /** Sheets used; `null` where not every piece could be planned. */
  readonly sheets: number | null;
  /** No plan uses fewer sheets; `null` where a piece fits no sheet. */
  readonly bound: number | null;
  /** True where the plan reaches the bound. */
  readonly proven: boolean;
  readonly verified: boolean;
  readonly seconds: number;
}

/** One set, planned and compared. */
export interface SetMeasure {
  readonly family: string;
  readonly id: string;
  /** Different pieces, and pieces with all their copies. */
  readonly kinds: number;
  readonly copies: number;
  /** Area of all copies, square ticks. */
  readonly area: bigint;
  readonly guillotine: SetPlan;
  readonly shelf: SetPlan;
  /** Sheets by the plain ways; `null` where a piece does not fit. */
  readonly firstFitShelves: number | null;
  readonly gridByKind: number | null;
  /** The pieces that could not be planned by edge-to-edge cuts in any order, by name and size. */
  readonly missing: readonly string[];
  /** What `verify` found, one sentence each. */
  readonly faults: readonly string[];
}

/** How a set is planned. */
export interface SetOptions {
  readonly effort: Effort;
  readonly seed: number;
  /** A clock in seconds. */
  readonly now: () => number;
}

/** Plans and compares one set. */
export function measureSet(
  sheet: Size & { readonly id: string },
  { family, id, pieces }: PieceSet,
  { effort, seed, now }: SetOptions,
): SetMeasure {
  const faults: string[] = [];
  const missing: string[] = [];
  const plan = (mode: Exclude<Mode, "stopped">): SetPlan => {
    const problem: Problem = {
      kinds: pieces.map(({ name, width, height, quantity, turn }) => ({
        id: name,
        quantity,
        forms: [{ width, height, turns: turn ? "both" : "upright" }],
      })),
      sheets: [{ id: sheet.id, width: sheet.width, height: sheet.height }],
      mode,
      aim: "all",
    };
    const began = now();
    const packing = pack(problem, { effort, seed });
    const seconds = now() - began;
    const findings = verify(problem, packing);
    for (const { path, message } of findings) faults.push(`${sheet.id}, ${id}, ${mode}: ${path}: ${message}`);
    if (mode === "guillotine") missing.push(...packing.missing.map(({ kind }) => describe(pieces, kind)));
    return {
      sheets: packing.outcome === "complete" ? packing.sheets : null,
      bound: packing.bound.aim === "all" ? packing.bound.sheets : null,
      proven: packing.outcome === "complete" && packing.proven,
      verified: findings.length === 0,
      seconds,
    };
  };
  const wanted = pieces.filter(({ quantity }) => quantity > 0);
  return {
    family,
    id,
    kinds: wanted.length,
    copies: wanted.reduce((sum, { quantity }) => sum + quantity, 0),
    area: wanted.reduce(
      (sum, { width, height, quantity }) => sum + BigInt(width * height) * BigInt(quantity),
      0n,
    ),
    guillotine: plan("guillotine"),
    shelf: plan("shelf"),
    firstFitShelves: sheetsByShelves(sheet, pieces),
    gridByKind: sheetsByGrid(sheet, pieces),
    missing,
    faults,
  };
}

function describe(pieces: readonly ListedPiece[], name: string): string {
  const piece = pieces.find((one) => one.name === name);
  if (piece === undefined) return name;
  const size = formatSize(piece.width, piece.height, { unit: "in" });
  return `${name} (${size}${piece.turn ? "" : ", not to be turned"})`;
}
