import type { CutNode, Size } from "../model.js";
import {
  type CompiledKind,
  type CompiledProblem,
  type CompiledSheet,
  type Lay,
  MOST_ON_SHEET,
} from "./compiled-problem.js";
import { bestUnlimitedLayout, type UnlimitedLayout } from "./unlimited-copies.js";

/** The most copies of one kind that one sheet gives, with their tree; exact for the mode of the problem. */
export interface SingleLayout {
  readonly count: number;
  readonly tree: CutNode;
}

/** Steps that the best layout of one kind may take: some tens of milliseconds. */
const SINGLE_STEPS = 8_000_000;

/**
 * Finds the best layout of one kind on one sheet: by dynamic programming in guillotine mode without limits on stages and
 * cut length, by filling homogeneous shelves in shelf mode (all pieces of a shelf lie alike without loss, since the way
 * that is lower is also longer). Undefined where the limits of the problem ask for a search.
 */
export function bestSingleLayout(
  problem: CompiledProblem,
  sheet: CompiledSheet,
  kind: CompiledKind,
): SingleLayout | undefined {
  const lays = kind.lays[sheet.index] ?? [];
  const unlimited = Math.max(sheet.width, sheet.height) <= sheet.longestCut;
  if (lays.length === 0 || !unlimited || isTooMany(sheet, lays)) return undefined;
  if (problem.shelf) return problem.stages >= 3 ? bestShelves(problem, sheet, kind, lays) : undefined;
  if (problem.stages < Number.POSITIVE_INFINITY) return undefined;
  const pieces = lays.map((lay) => ({
    width: lay.width,
    height: lay.height,
    value: 1,
    leaf: leafOf(kind, lay),
  }));
  const layout = bestUnlimitedLayout(sheet.width, sheet.height, problem.kerf, pieces, SINGLE_STEPS);
  return layout.exact ? { count: layout.value, tree: layout.tree } : undefined;
}

/** How many copies of one kind a sheet gives in plain rows and columns, all lying alike: {@link bestSingleLayout} finds no fewer. */
export function gridCount({ kerf }: CompiledProblem, sheet: CompiledSheet, kind: CompiledKind): number {
  const lays = kind.lays[sheet.index] ?? [];
  const counts = lays.map(
    ({ width, height }) => fitCount(sheet.width, width, kerf) * fitCount(sheet.height, height, kerf),
  );
  return Math.max(0, ...counts);
}

/**
 * The most valuable layout of one sheet from copies without limit of all kinds, with about so many steps at most; it says
 * whether it is the best of all. Undefined where the limits of the problem ask for a search.
 */
export function bestMixedLayout(
  problem: CompiledProblem,
  sheet: CompiledSheet,
  kinds: readonly CompiledKind[],
  mostSteps: number,
): (UnlimitedLayout & { readonly kinds: readonly number[] }) | undefined {
  const unlimited = Math.max(sheet.width, sheet.height) <= sheet.longestCut;
  if (problem.shelf || problem.stages < Number.POSITIVE_INFINITY || !unlimited) return undefined;
  const owners: number[] = [];
  const pieces = kinds.flatMap((kind) =>
    (kind.lays[sheet.index] ?? []).map((lay) => {
      owners.push(kind.index);
      return { width: lay.width, height: lay.height, value: kind.value, leaf: leafOf(kind, lay) };
    }),
  );
  if (isTooMany(sheet, pieces)) return undefined;
  const layout = bestUnlimitedLayout(sheet.width, sheet.height, problem.kerf, pieces, mostSteps);
  return { ...layout, kinds: owners };
}

/** Whether a sheet may give more pieces than a layout can hold. */
function isTooMany(sheet: Size, pieces: readonly Size[]): boolean {
  const smallest = Math.min(...pieces.map((piece) => piece.width * piece.height));
  return Math.floor((sheet.width * sheet.height) / smallest) > MOST_ON_SHEET;
}

function leafOf(kind: CompiledKind, lay: Lay): CutNode {
  return { type: "piece", shares: [{ kind: kind.id, form: lay.form, turned: lay.turned, count: 1 }] };
}

/** How many pieces of an extent fit a length, with the kerf between them. */
function fitCount(length: number, extent: number, kerf: number): number {
  return Math.floor((length + kerf) / (extent + kerf));
}

/**
 * Shelves of at most two heights: for each number of shelves of the first way to lie, as many of the second as fit.
 * Kinds with several forms may give more with three heights, so they are left to the search.
 */
function bestShelves(
  problem: CompiledProblem,
  sheet: CompiledSheet,
  kind: CompiledKind,
  lays: readonly Lay[],
): SingleLayout | undefined {
  if (lays.length > 2) return undefined;
  const { kerf } = problem;
  let best: SingleLayout = { count: 0, tree: { type: "waste" } };
  for (const axis of ["y", "x"] as const) {
    const along = axis === "y" ? sheet.width : sheet.height;
    const across = axis === "y" ? sheet.height : sheet.width;
    const high = (lay: Lay): number => (axis === "y" ? lay.height : lay.width);
    const long = (lay: Lay): number => (axis === "y" ? lay.width : lay.height);
    const [first, second] = lays as [Lay, Lay | undefined];
    for (let shelves = 0; shelves <= fitCount(across, high(first), kerf); shelves++) {
      const rest = across - shelves * (high(first) + kerf);
      const others = second && rest > 0 ? Math.max(0, fitCount(rest, high(second), kerf)) : 0;
      const count =
        shelves * fitCount(along, long(first), kerf) +
        (second ? others * fitCount(along, long(second), kerf) : 0);
      if (count <= best.count) continue;
      const parts: { size: number; node: CutNode }[] = [];
      const shelf = (lay: Lay): CutNode => {
        const pieces = Array.from({ length: fitCount(along, long(lay), kerf) }, () => ({
          size: long(lay),
          node: leafOf(kind, lay),
        }));
        return levelOf(axis === "y" ? "x" : "y", along, kerf, pieces);
      };
      for (let i = 0; i < shelves; i++) parts.push({ size: high(first), node: shelf(first) });
      for (let i = 0; second && i < others; i++) parts.push({ size: high(second), node: shelf(second) });
      best = { count, tree: levelOf(axis, across, kerf, parts) };
    }
  }
  return best;
}

/** One level of cuts with what it has left over. */
function levelOf(
  axis: "x" | "y",
  extent: number,
  kerf: number,
  parts: readonly { readonly size: number; readonly node: CutNode }[],
): CutNode {
  const used = parts.reduce((sum, part) => sum + part.size + kerf, 0);
  const only = parts[0];
  if (only && parts.length === 1 && only.size === extent) return only.node;
  const rest = extent - used;
  return {
    type: "split",
    axis,
    parts: rest > 0 ? [...parts, { size: rest, node: { type: "waste" } }] : parts,
  };
}
