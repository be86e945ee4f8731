import type { Size, Unit } from "@sheetwright/measure";
import type { Effort } from "@sheetwright/packing";
import type { ListedPiece } from "../listed-piece.js";
import type { PieceSet } from "../sets/piece-set.js";
import { seededSets } from "../sets/seeded-sets.js";
import { measureSet, type SetMeasure } from "./measure-set.js";
import { measureYields, type SheetYields } from "./measure-yields.js";

/** A sheet that is measured. */
export interface MeasuredSheet extends Size {
  /** Id of the named size, or the size itself. */
  readonly id: string;
  readonly name: string;
  /** The unit it is best printed in. */
  readonly unit: Unit;
}

/** What is measured. */
export interface WasteRequest {
  readonly sheets: readonly MeasuredSheet[];
  readonly seed: number;
  readonly effort: Effort;
  /** Sets of each family; of no effect with a list. */
  readonly sets: number;
  /** A list of pieces that is planned instead of the seeded sets; `name` is its file's name without the folders. */
  readonly list: { readonly name: string; readonly pieces: readonly ListedPiece[] } | null;
}

/** All figures of one sheet. */
export interface SheetWaste {
  readonly sheet: MeasuredSheet;
  readonly yields: SheetYields;
  readonly sets: readonly SetMeasure[];
}

/** What measuring needs from outside. */
export interface WasteTools {
  /** A clock in seconds. */
  readonly now: () => number;
  /** Told before each step. */
  readonly onProgress?: ((sheet: string, set: string) => void) | undefined;
}

/** Measures yields and sets on every sheet. All figures but seconds depend on the request alone. */
export function measureWaste(request: WasteRequest, { now, onProgress }: WasteTools): readonly SheetWaste[] {
  const { seed, effort } = request;
  return request.sheets.map((sheet) => {
    onProgress?.(sheet.id, "common pieces");
    const yields = measureYields(sheet, now);
    const sets = setsFor(request, sheet).map((set) => {
      onProgress?.(sheet.id, set.id);
      return measureSet(sheet, set, { effort, seed, now });
    });
    return { sheet, yields, sets };
  });
}

function setsFor({ list, seed, sets }: WasteRequest, sheet: Size): readonly PieceSet[] {
  if (list === null) return seededSets(sheet, seed, sets);
  return [{ family: list.name, id: list.name, pieces: list.pieces }];
}
