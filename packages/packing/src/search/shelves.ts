/**
 * Shelves: first-fit and best-fit decreasing height. Pieces by falling height, each into the first shelf that takes it,
 * or the one it fills best; a new shelf on the first sheet with room for one, else a new sheet.
 *
 * Source: E. Coffman, M. Garey, D. Johnson, R. Tarjan, Performance bounds for level-oriented two-dimensional packing
 * algorithms, SIAM J. Computing 9 (1980); best fit after J. Berkey, P. Wang, Two-dimensional finite bin-packing
 * algorithms, J. Oper. Res. Soc. 38 (1987). Pieces x shelves steps.
 */
import type { Demand } from "./best-fit.js";
import type { CompiledProblem, Lay } from "./compiled-problem.js";
import {
  canCut,
  cutPiece,
  type FirstCut,
  type Forest,
  type Free,
  openSheet,
  plantForest,
} from "./cut-forest.js";
import type { Meter } from "./meter.js";

/** One way to fill shelves. */
export interface ShelfRules {
  /** `down`: shelves lie one below the other; `across`: side by side. */
  readonly direction: FirstCut;
  /** Pieces that may turn lie flat in their shelf, or stand. */
  readonly flat: boolean;
  readonly best: boolean;
}

/** All eight ways. */
export const SHELF_RULES: readonly ShelfRules[] = (["down", "across"] as const).flatMap((direction) =>
  [true, false].flatMap((flat) => [false, true].map((best) => ({ direction, flat, best }))),
);

/** Fills shelves with what is wanted. Kinds that belong together are left out: shelves do not keep groups. */
export function fillShelves(
  problem: CompiledProblem,
  demand: Demand,
  rules: ShelfRules,
  meter: Meter,
): Forest {
  const forest = plantForest(problem);
  const stock = [...demand.stock];
  const { direction } = rules;
  const inShelf: FirstCut = direction === "down" ? "across" : "down";
  const height = (lay: Lay): number => (direction === "down" ? lay.height : lay.width);
  const length = (lay: Lay): number => (direction === "down" ? lay.width : lay.height);
  const rest = (free: Free): number => (direction === "down" ? free.width : free.height);
  // Falling height as laid, longer ones first among equals: what first fit's guarantee rests on.
  const extents = (of: (lay: Lay) => number, all: readonly (readonly Lay[])[]): number =>
    Math.max(...all.map((lays) => lays[0]).map((lay) => (lay ? of(lay) : 0)));
  const queue = problem.kinds
    .filter((kind) => (demand.wanted[kind.index] ?? 0) > 0 && kind.fits && kind.group < 0)
    .map((kind) => ({ kind, ways: kind.lays.map((lays) => chosen(lays, rules, height)) }))
    .map(({ kind, ways }) => ({ kind, ways, tall: extents(height, ways), long: extents(length, ways) }))
    .sort((a, b) => b.tall - a.tall || b.long - a.long || a.kind.index - b.kind.index);
  const place = (free: Free, kind: number, lays: readonly Lay[], first: FirstCut): boolean => {
    for (const lay of lays) {
      meter.work++;
      if (lay.width > free.width || lay.height > free.height) continue;
      if (!canCut(problem, free, lay.width, lay.height, first)) {
        // A piece as long as its shelf, or as high as the sheet, needs one cut less.
        const other = first === "across" ? "down" : "across";
        const exact = lay.width === free.width || lay.height === free.height;
        if (!exact || !canCut(problem, free, lay.width, lay.height, other)) continue;
        cutPiece(forest, free, kind, lay, other);
        return true;
      }
      cutPiece(forest, free, kind, lay, first);
      return true;
    }
    return false;
  };
  for (const { kind, ways } of queue) {
    const laysOn = (free: Free): readonly Lay[] => ways[free.bin.sheet.index] ?? [];
    const fits = (free: Free): boolean =>
      laysOn(free).some(({ width, height }) => width <= free.width && height <= free.height);
    for (let copy = 0; copy < (demand.wanted[kind.index] ?? 0); copy++) {
      const shelves = forest.free.filter((free) => free.depth === 2 && fits(free));
      if (rules.best) shelves.sort((a, b) => rest(a) - rest(b));
      if (shelves.some((free) => place(free, kind.index, laysOn(free), inShelf))) continue;
      const sheetsWithRoom = forest.free.filter((free) => free.depth < 2 && fits(free));
      if (sheetsWithRoom.some((free) => place(free, kind.index, laysOn(free), direction))) continue;
      const opened = problem.sheets.some((sheet) => {
        if ((stock[sheet.index] ?? 0) <= 0 || !kind.lays[sheet.index]?.length) return false;
        const free = openSheet(forest, sheet);
        if (place(free, kind.index, laysOn(free), direction)) {
          stock[sheet.index] = (stock[sheet.index] ?? 0) - 1;
          return true;
        }
        forest.bins.pop();
        forest.free.pop();
        return false;
      });
      if (!opened) break;
    }
  }
  return forest;
}

/** The ways to lie, the wished one first. */
function chosen(lays: readonly Lay[], rules: ShelfRules, height: (lay: Lay) => number): readonly Lay[] {
  return [...lays].sort((a, b) => (rules.flat ? height(a) - height(b) : height(b) - height(a)));
}
