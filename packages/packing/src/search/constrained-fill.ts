/**
 * The most valuable guillotine layout of one sheet when copies are limited, by best-first search from the bottom up: parts
 * are put beside or below each other, always those first that promise the largest layout, until no promise exceeds the best
 * layout found.
 *
 * A promise is the value of a part and an upper bound on what is cut around it ({@link outsideBound}). That bound knows no
 * limits on copies; so that it does not promise the dearest piece again and again, what is cut too often counts less, and
 * the copies within its limit are given back once ({@link reducedValues}). Of parts with equal copies only those are kept
 * that no smaller one equals. The layouts that the reduced values lead to, with copies beyond the limits exchanged for
 * others, are good ones themselves.
 *
 * Sources: K. Viswanathan, A. Bagchi, Best-first search methods for constrained two-dimensional cutting stock problems,
 * Operations Research 41 (1993); V.-D. Cung, M. Hifi, B. Le Cun, Constrained two-dimensional cutting stock problems, a
 * best-first branch-and-bound algorithm, International Transactions in Operational Research 7 (2000); N. Christofides,
 * E. Hadjiconstantinou, An exact algorithm for orthogonal 2-D cutting problems using guillotine cuts, European J.
 * Operational Research 83 (1995), limits relaxed by multipliers.
 *
 * Guarantees a layout of any problem, and says whether it is the best of all; any number of stages and cuts of any length.
 * The work grows exponentially with the pieces that a sheet holds: where it holds up to about ten it is soon done; where it
 * is not done, the layout may be far from the best.
 */
import { reducedValues } from "../bounds/reduced-values.js";
import type { CutNode, Size } from "../model.js";
import { corneredPiece } from "./cornered-piece.js";
import { bestDensity, fillRaster } from "./fill-raster.js";
import { outsideBound } from "./outside-bound.js";
import { type PartPiece, PartSearch, type PromiseRule } from "./part-search.js";
import { extentSums, PointFinder, pairsWithin, rasterPoints } from "./raster-points.js";
import { unlimitedLayoutSteps } from "./unlimited-copies.js";

/** A kind of which a limited number of copies may be cut. */
export interface ConstrainedKind {
  /** As it may lie, with what the tree says of it then. */
  readonly ways: readonly ConstrainedWay[];
  readonly value: number;
  /** Copies at most. */
  readonly most: number;
}

/** One way to lie. */
interface ConstrainedWay extends Size {
  readonly leaf: CutNode;
}

/** The best layout found. */
export interface ConstrainedLayout {
  readonly value: number;
  readonly tree: CutNode;
  /** Copies of each kind, by its place in the list. */
  readonly counts: readonly number[];
  /** True where no layout is worth more. */
  readonly exact: boolean;
  /** Work done. */
  readonly steps: number;
}

/** Points of a raster at most by points of the other axis: its bound takes 16 bytes each. */
const MOST_CELLS = 1 << 21;

/** Share of the steps for the best layout with unlimited copies, and of those of a search for its bound. */
const BOUND_SHARE = 1 / 4;

/** Share of the steps for a search by the values as they are, and the most of them: it ends soon or never. */
const PLAIN_SHARE = 4 / 5;
const MOST_PLAIN = 4_000_000;

/** Share of what is left then for reduced values; their layouts are good ones where a search does not come to its end. */
const REDUCED_SHARE = 3 / 4;

/** Reduced values are whole numbers: values times this, or a smaller power of two where sums would pass 2^52. */
const FINEST_SCALE = 1 << 10;
const MOST_SUM = 0x10_0000 * 0x1_0000_0000;

/** Steps between two pauses: about a millisecond. */
const STEPS_PER_PAUSE = 100_000;

/**
 * Finds the best layout with about as many steps as the caller affords (some tens of nanoseconds each).
 * Values are whole numbers whose sum over one sheet stays below 2^53.
 */
export function constrainedFill(
  width: number,
  height: number,
  kerf: number,
  kinds: readonly ConstrainedKind[],
  mostSteps: number,
): ConstrainedLayout {
  const run = constrainedFillSteps(width, height, kerf, kinds, mostSteps);
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
  }
}

/** Like {@link constrainedFill}, yielding after fixed amounts of work. */
export function* constrainedFillSteps(
  width: number,
  height: number,
  kerf: number,
  kinds: readonly ConstrainedKind[],
  mostSteps: number,
): Generator<void, ConstrainedLayout, void> {
  const lying = kinds.flatMap(({ ways, value, most }, kind) =>
    ways
      .filter((way) => most > 0 && value > 0 && way.width <= width && way.height <= height)
      .map((way) => ({ ...way, value, kind, most })),
  );
  const unlimited = yield* unlimitedLayoutSteps(
    width,
    height,
    kerf,
    lying,
    Math.floor(BOUND_SHARE * mostSteps),
  );
  let first: LimitedLayout = withinLimits(unlimited.tree, kerf, kinds, lying);
  const isFree = unlimited.exact && first.value === unlimited.value;
  if (isFree || lying.length === 0) return { ...first, exact: isFree, steps: unlimited.steps };
  let left = mostSteps - unlimited.steps;
  /** Searches by some promises; whether it came to its end. */
  const search = function* (promises: Reduction, own: number): Generator<void, boolean, void> {
    const found = yield* searchParts({ width, height }, kerf, kinds, lying, promises, first.value, own);
    left -= found.steps;
    if (found.layout) first = found.layout;
    return found.exact;
  };
  const plain: Reduction = { scale: 1, each: kinds.map((kind) => kind.value), back: 0 };
  const plainSteps = unlimited.exact ? Math.min(MOST_PLAIN, Math.floor(PLAIN_SHARE * left)) : left;
  let exact = yield* search(plain, plainSteps);
  if (!exact && unlimited.exact) {
    const budget = { steps: left };
    const reduced = yield* reduceValues(
      { width, height },
      kerf,
      kinds,
      lying,
      unlimited.value,
      budget,
      (tree) => {
        const layout = withinLimits(tree, kerf, kinds, lying);
        if (layout.value > first.value) first = layout;
      },
    );
    left = budget.steps;
    exact = yield* search(reduced, left);
  }
  return { ...first, exact, steps: mostSteps - left };
}

/** What {@link withinLimits} makes of a tree, and what a search for parts finds. */
interface LimitedLayout {
  readonly value: number;
  readonly tree: CutNode;
  readonly counts: readonly number[];
}

/** Searches for a layout that is worth more than some value; without one, and `exact`, there is none. */
function* searchParts(
  { width, height }: Size,
  kerf: number,
  kinds: readonly ConstrainedKind[],
  lying: readonly LyingPiece[],
  reduced: Reduction,
  atLeast: number,
  mostSteps: number,
): Generator<
  void,
  { readonly layout: LimitedLayout | undefined; readonly exact: boolean; readonly steps: number },
  void
> {
  const budget = { steps: mostSteps };
  const cut = lying.map((way) => ({
    ...way,
    width: way.width + kerf,
    height: way.height + kerf,
    reduced: reduced.each[way.kind] as number,
  }));
  const rule = yield* promiseRule(width + kerf, height + kerf, cut, reduced, budget);
  const most = kinds.map((kind) => kind.most);
  const search = new PartSearch(width + kerf, height + kerf, most, rule, atLeast);
  cut.forEach((way, index) => {
    search.offerPiece(way, index);
  });
  let nextPause = budget.steps - STEPS_PER_PAUSE;
  while (search.hasPromise() && budget.steps > 0) {
    budget.steps -= search.expand();
    if (budget.steps > nextPause) continue;
    nextPause = budget.steps - STEPS_PER_PAUSE;
    yield;
  }
  const exact = !search.hasPromise() && !search.isFull;
  const steps = mostSteps - budget.steps;
  if (search.bestPart < 0) return { layout: undefined, exact, steps };
  const layout = {
    value: search.bestValue,
    tree: search.lay(search.bestPart, { width, height }, kerf, lying),
    counts: search.countsOf(search.bestPart),
  };
  return { layout, exact, steps };
}

/** A piece as it lies. */
interface LyingPiece extends ConstrainedWay {
  readonly kind: number;
  readonly value: number;
}

/** Values for promises, as whole numbers `scale` times as large. */
interface Reduction {
  readonly scale: number;
  /** By kind. */
  readonly each: readonly number[];
  /** What the limits give back: what all copies allowed count less, together. */
  readonly back: number;
}

/** Reduces the values, as far as a share of the budget goes; `tryTree` sees each layout on the way. */
function* reduceValues(
  { width, height }: Size,
  kerf: number,
  kinds: readonly ConstrainedKind[],
  lying: readonly LyingPiece[],
  unlimited: number,
  budget: { steps: number },
  tryTree: (tree: CutNode) => void,
): Generator<void, Reduction, void> {
  const all = kinds.reduce((sum, kind) => sum + kind.value * kind.most, unlimited);
  let scale = FINEST_SCALE;
  while (scale > 1 && scale * all > MOST_SUM) scale /= 2;
  const values = Float64Array.from(kinds, (kind) => scale * kind.value);
  const limits = Float64Array.from(kinds, (kind) => kind.most);
  const none = { scale, each: [...values], back: 0 };
  if (scale * all > MOST_SUM) return none;
  let left = Math.floor(REDUCED_SHARE * budget.steps);
  const found = yield* reducedValues(values, limits, function* (prices, chosen) {
    if (left <= 0) return undefined;
    const pieces = lying.map((way) => ({ ...way, value: Math.round(prices[way.kind] as number) }));
    const layout = yield* unlimitedLayoutSteps(width, height, kerf, pieces, left);
    left -= layout.steps;
    budget.steps -= layout.steps;
    tryTree(layout.tree);
    layout.counts.forEach((count, i) => {
      const kind = lying[i]?.kind as number;
      chosen[kind] = (chosen[kind] as number) + count;
    });
    return layout.exact ? layout.value : undefined;
  });
  if (found === undefined) return none;
  const each = Array.from(found, Math.round);
  const back = each.reduce(
    (sum, value, kind) => sum + ((values[kind] as number) - value) * (limits[kind] as number),
    0,
  );
  return { scale, each, back };
}

/** What may be cut around a part: by filling a raster where that is affordable, else by area alone. */
function* promiseRule(
  width: number,
  height: number,
  cut: readonly PartPiece[],
  { scale, back }: Reduction,
  budget: { steps: number },
): Generator<void, PromiseRule, void> {
  const pieces = cut.map((way) => ({ width: way.width, height: way.height, value: way.reduced }));
  const density = bestDensity(pieces);
  const mostSteps = BOUND_SHARE * budget.steps;
  const mostSums = Math.ceil(Math.sqrt(mostSteps));
  const along = extentSums(
    width,
    cut.map((way) => way.width),
    mostSums,
  );
  const across = extentSums(
    height,
    cut.map((way) => way.height),
    mostSums,
  );
  budget.steps -= along.steps + across.steps;
  const raster = {
    x: new PointFinder(rasterPoints(along, along.sums.length)),
    y: new PointFinder(rasterPoints(across, across.sums.length)),
  };
  const columns = raster.x.points.length;
  const rows = raster.y.points.length;
  const steps =
    4 * columns * rows + pairsWithin(raster.x.points) * rows + pairsWithin(raster.y.points) * columns;
  const isSmall = columns * rows <= MOST_CELLS && 3 * steps <= mostSteps;
  if (!along.complete || !across.complete || !isSmall) {
    // Rounded up, so that what rounding takes never hides a layout.
    const around = (w: number, h: number) =>
      back + Math.ceil(density * (width * height - w * h) * (1 + 4 * Number.EPSILON));
    return { scale, around };
  }
  // The pairs of the bound are taken both ways round.
  budget.steps -= 2 * steps;
  const filled = yield* fillRaster(raster, pieces, density, Number.POSITIVE_INFINITY, budget);
  if (filled === undefined) throw new RangeError("A raster that was affordable must be filled.");
  const outside = outsideBound(raster, filled);
  return { scale, around: (w, h) => back + outside(w, h) };
}

/** The layout with unlimited copies, with the copies beyond the limits exchanged for the dearest others that fit there. */
function withinLimits(
  tree: CutNode,
  kerf: number,
  kinds: readonly ConstrainedKind[],
  lying: readonly LyingPiece[],
): LimitedLayout {
  const wayOf = new Map(lying.map((way) => [way.leaf, way]));
  const counts = kinds.map(() => 0);
  let value = 0;
  const take = ({ kind, ...way }: LyingPiece): boolean => {
    if ((counts[kind] as number) >= (kinds[kind]?.most ?? 0)) return false;
    counts[kind] = (counts[kind] as number) + 1;
    value += way.value;
    return true;
  };
  const visit = (node: CutNode, change: (leaf: CutNode) => CutNode): CutNode =>
    node.type === "split"
      ? { ...node, parts: node.parts.map((part) => ({ ...part, node: visit(part.node, change) })) }
      : change(node);
  const beyond = new Map<CutNode, LyingPiece>();
  const kept = visit(tree, (leaf) => {
    const way = wayOf.get(leaf);
    if (way === undefined || take(way)) return leaf;
    const mark: CutNode = { type: "waste" };
    beyond.set(mark, way);
    return mark;
  });
  const dearest = [...lying].sort((a, b) => b.value - a.value);
  const exchanged = visit(kept, (leaf) => {
    const place = beyond.get(leaf);
    const other =
      place && dearest.find((way) => way.width <= place.width && way.height <= place.height && take(way));
    return place && other ? corneredPiece(place, kerf, other, other.leaf) : leaf;
  });
  return { tree: exchanged, value, counts };
}
