/**
 * The most valuable guillotine layout of one sheet when copies are unlimited, by dynamic programming over raster points
 * ({@link rasterPoints}, {@link fillRaster}). Kerf is added to pieces and sheet first.
 *
 * Where the whole program takes more steps than the caller affords, first a raster from the longest extents alone is
 * filled (J. Beasley, Algorithms for unconstrained two-dimensional guillotine cutting, J. Oper. Res. Soc. 36 (1985)), which
 * may miss the best layout, and then the whole raster with good parts alone, with a limit that doubles until a layout is
 * found, which is then the best.
 *
 * Guarantees a layout of any problem, and says whether it is the best of all; any number of stages and cuts of any length.
 * For other modes it is not used.
 */
import type { CutNode, SplitPart } from "../model.js";
import { corneredPiece } from "./cornered-piece.js";
import {
  bestDensity,
  type FilledRaster,
  fillRaster,
  type Raster,
  type RasterPiece,
  type StepBudget,
} from "./fill-raster.js";
import {
  type ExtentSums,
  extentSums,
  PointFinder,
  pairsWithin,
  rasterPoints,
  sumsWithin,
} from "./raster-points.js";

/** A size that may be cut any number of times, as it lies. */
export interface UnlimitedPiece {
  readonly width: number;
  readonly height: number;
  readonly value: number;
  /** What the tree says of this piece. */
  readonly leaf: CutNode;
}

/** The best layout of one sheet. */
export interface UnlimitedLayout {
  readonly value: number;
  readonly tree: CutNode;
  /** Copies of each piece, by its place in the list. */
  readonly counts: readonly number[];
  /** True where no layout is worth more. */
  readonly exact: boolean;
  /** Work done. */
  readonly steps: number;
}

/** Parts that a raster may have at most: 64 MB. */
const MOST_PARTS = 1 << 23;

/** The first limit, as a share of what a sheet without waste would be worth; it doubles until a layout is found. */
const FIRST_LIMIT = 1 / 0x1_0000;

/** Sums an axis at most, by the square root of the steps: good parts alone take a small share of a raster. */
const SUMS_PER_ROOT = 4;

/** Share of the steps for the raster from the longest extents alone. */
const REDUCED_SHARE = 1 / 4;

/**
 * Finds the best layout with about as many steps as the caller affords (some ten nanoseconds each).
 * Values are whole numbers whose sum over one sheet stays below 2^53.
 */
export function bestUnlimitedLayout(
  width: number,
  height: number,
  kerf: number,
  pieces: readonly UnlimitedPiece[],
  mostSteps: number,
): UnlimitedLayout {
  const run = unlimitedLayoutSteps(width, height, kerf, pieces, mostSteps);
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
  }
}

/** Like {@link bestUnlimitedLayout}, yielding after fixed amounts of work. */
export function* unlimitedLayoutSteps(
  width: number,
  height: number,
  kerf: number,
  pieces: readonly UnlimitedPiece[],
  mostSteps: number,
): Generator<void, UnlimitedLayout, void> {
  const cut = pieces.map((piece) => ({
    width: piece.width + kerf,
    height: piece.height + kerf,
    value: piece.width <= width && piece.height <= height ? piece.value : 0,
  }));
  const fitting = cut.filter((piece) => piece.value > 0);
  if (fitting.length === 0) {
    return { value: 0, tree: { type: "waste" }, counts: pieces.map(() => 0), exact: true, steps: 0 };
  }
  const mostSums = Math.ceil(SUMS_PER_ROOT * Math.sqrt(mostSteps));
  const along = extentSums(
    width + kerf,
    fitting.map((piece) => piece.width),
    mostSums,
  );
  const across = extentSums(
    height + kerf,
    fitting.map((piece) => piece.height),
    mostSums,
  );
  const budget = { steps: mostSteps - along.steps - across.steps };
  const found = yield* bestFilling(along, across, cut, budget);
  const { tree, counts } = layTree(width, height, kerf, pieces, found);
  // Where not all sums are in, a part may yield more than was known of the largest raster point below it.
  const value = counts.reduce((sum, count, i) => sum + count * (pieces[i]?.value ?? 0), 0);
  return { value, tree, counts, exact: found.exact, steps: mostSteps - budget.steps };
}

interface Found {
  readonly raster: Raster;
  readonly filled: FilledRaster;
  readonly value: number;
  readonly exact: boolean;
}

function* bestFilling(
  along: ExtentSums,
  across: ExtentSums,
  cut: readonly RasterPiece[],
  budget: StepBudget,
): Generator<void, Found, void> {
  const density = bestDensity(cut);
  const whole = rasterWithin(along, across, Number.POSITIVE_INFINITY);
  const isFull = along.complete && across.complete && whole.isAll;
  const fits = stepsFor(whole.raster) <= budget.steps;
  const { raster } = fits ? whole : rasterWithin(along, across, REDUCED_SHARE * budget.steps);
  const filled = yield* fillWithoutLimit(raster, cut, density, budget);
  if (fits) return { ...filled, exact: isFull };
  let best: Found = { ...filled, exact: false };
  const perfect = density * lastOf(whole.raster.x) * lastOf(whole.raster.y);
  for (let limit = perfect * FIRST_LIMIT; budget.steps > 0; limit *= 2) {
    // What falls short by more is worth less than what is known.
    const enough = Math.min(limit, perfect - best.value);
    const passed = yield* fillRaster(whole.raster, cut, density, enough, budget);
    if (passed?.value === undefined) {
      if (passed === undefined || enough < limit) break;
      continue;
    }
    const isSettled = perfect - passed.value <= enough;
    const exact = isFull && isSettled;
    best =
      passed.value > best.value
        ? { raster: whole.raster, filled: passed, value: passed.value, exact }
        : { ...best, exact };
    if (isSettled || enough < limit) break;
  }
  return best;
}

/** Is not stopped by the budget: where nothing is small enough, the smallest raster is filled. */
function* fillWithoutLimit(
  raster: Raster,
  cut: readonly RasterPiece[],
  density: number,
  budget: StepBudget,
): Generator<void, Omit<Found, "exact">, void> {
  const own = { steps: Number.MAX_SAFE_INTEGER };
  const filled = yield* fillRaster(raster, cut, density, Number.POSITIVE_INFINITY, own);
  budget.steps -= Number.MAX_SAFE_INTEGER - own.steps;
  if (filled?.value === undefined) throw new RangeError("A raster without a limit must give a layout.");
  return { raster, filled, value: filled.value };
}

/**
 * A raster from sums of the longest extents, as many as memory and steps allow, at least of one piece; and whether all
 * sums are in.
 */
function rasterWithin(
  along: ExtentSums,
  across: ExtentSums,
  mostSteps: number,
): { readonly raster: Raster; readonly isAll: boolean } {
  for (let most = Math.max(along.sums.length, across.sums.length); ; most = Math.floor((most * 3) / 4)) {
    const i = sumsWithin(along, most);
    const j = sumsWithin(across, most);
    const raster = {
      x: new PointFinder(rasterPoints(along, i)),
      y: new PointFinder(rasterPoints(across, j)),
    };
    const parts = raster.x.points.length * raster.y.points.length;
    if (most <= 2 || (parts <= MOST_PARTS && stepsFor(raster) <= mostSteps)) {
      return { raster, isAll: i === along.sums.length && j === across.sums.length };
    }
  }
}

/** The most steps that a raster can take: every division of every part. */
function stepsFor({ x, y }: Raster): number {
  const columns = x.points.length;
  const rows = y.points.length;
  return pairsWithin(x.points) * rows + pairsWithin(y.points) * columns + 4 * columns * rows;
}

function lastOf({ points }: PointFinder): number {
  return points[points.length - 1] as number;
}

function layTree(
  width: number,
  height: number,
  kerf: number,
  pieces: readonly UnlimitedPiece[],
  { raster, filled }: Found,
): { readonly tree: CutNode; readonly counts: readonly number[] } {
  const counts = pieces.map(() => 0);
  const lay = (w: number, h: number): CutNode => {
    const division = filled.divide(raster.x.atMost(w + kerf), raster.y.atMost(h + kerf));
    if (division.type === "none") return { type: "waste" };
    if (division.type === "piece") {
      const piece = pieces[division.piece] as UnlimitedPiece;
      counts[division.piece] = (counts[division.piece] ?? 0) + 1;
      return corneredPiece({ width: w, height: h }, kerf, piece, piece.leaf);
    }
    const { axis, at } = division;
    const first = (raster[axis].points[at] as number) - kerf;
    const rest = (axis === "x" ? w : h) - first - kerf;
    const parts: SplitPart[] = [
      { size: first, node: axis === "x" ? lay(first, h) : lay(w, first) },
      { size: rest, node: axis === "x" ? lay(rest, h) : lay(w, rest) },
    ];
    return { type: "split", axis, parts };
  };
  const tree = lay(width, height);
  return { tree, counts };
}
