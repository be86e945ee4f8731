/**
 * The most valuable guillotine layout of one sheet when copies are limited, by best-first search from the bottom up: parts
 * are put beside or below each other, always those first that promise the largest layout, until no promise exceeds the best
 * layout found.
 *
 * A promise is the value of a part and an upper bound on what is cut around it ({@link outsideBound}). Of parts with equal
 * copies only those are kept that no smaller one equals.
 *
 * Sources: K. Viswanathan, A. Bagchi, Best-first search methods for constrained two-dimensional cutting stock problems,
 * Operations Research 41 (1993); V.-D. Cung, M. Hifi, B. Le Cun, Constrained two-dimensional cutting stock problems, a
 * best-first branch-and-bound algorithm, International Transactions in Operational Research 7 (2000).
 *
 * Guarantees a layout of any problem, and says whether it is the best of all; any number of stages and cuts of any length.
 * The work grows exponentially with the pieces that a sheet holds: where it holds up to about ten it is soon done; where it
 * is not done, the layout may be far from the best.
 */
import type { CutNode, Size } from "../model.js";
import { bestDensity, fillRaster } from "./fill-raster.js";
import { type OutsideBound, outsideBound } from "./outside-bound.js";
import { type PartPiece, PartSearch } from "./part-search.js";
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

/** Share of the steps for the best layout with unlimited copies, and again for the bound. */
const BOUND_SHARE = 1 / 4;

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
  const unlimited = yield* unlimitedLayoutSteps(width, height, kerf, lying, BOUND_SHARE * mostSteps);
  const first = withinLimits(unlimited.tree, kinds, lying);
  const isFree = unlimited.exact && first.value === unlimited.value;
  if (isFree || lying.length === 0) return { ...first, exact: isFree, steps: unlimited.steps };
  const budget = { steps: mostSteps - unlimited.steps };
  const cut = lying.map((way) => ({ ...way, width: way.width + kerf, height: way.height + kerf }));
  const bound = yield* boundFor(width + kerf, height + kerf, cut, budget);
  const most = kinds.map((kind) => kind.most);
  const search = new PartSearch(width + kerf, height + kerf, most, bound, first.value);
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
  if (search.bestPart < 0) return { ...first, exact, steps };
  return {
    value: search.bestValue,
    tree: search.lay(search.bestPart, { width, height }, kerf, lying),
    counts: search.countsOf(search.bestPart),
    exact,
    steps,
  };
}

/** What may be cut around a part: by filling a raster where that is affordable, else by area alone. */
function* boundFor(
  width: number,
  height: number,
  cut: readonly PartPiece[],
  budget: { steps: number },
): Generator<void, OutsideBound, void> {
  const density = bestDensity(cut);
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
    return (w, h) => Math.ceil(density * (width * height - w * h) * (1 + 4 * Number.EPSILON));
  }
  // The pairs of the bound are taken both ways round.
  budget.steps -= 2 * steps;
  const filled = yield* fillRaster(raster, cut, density, Number.POSITIVE_INFINITY, budget);
  if (filled === undefined) throw new RangeError("A raster that was affordable must be filled.");
  return outsideBound(raster, filled);
}

/** The layout with unlimited copies, without the copies beyond the limits. */
function withinLimits(
  tree: CutNode,
  kinds: readonly ConstrainedKind[],
  lying: readonly { readonly leaf: CutNode; readonly kind: number }[],
): { readonly value: number; readonly tree: CutNode; readonly counts: readonly number[] } {
  const kindOf = new Map(lying.map(({ leaf, kind }) => [leaf, kind]));
  const counts = kinds.map(() => 0);
  let value = 0;
  const visit = (node: CutNode): CutNode => {
    if (node.type === "split") {
      return { ...node, parts: node.parts.map((part) => ({ ...part, node: visit(part.node) })) };
    }
    const kind = kindOf.get(node);
    const entry = kind === undefined ? undefined : kinds[kind];
    if (kind === undefined || entry === undefined) return node;
    if ((counts[kind] ?? 0) >= entry.most) return { type: "waste" };
    counts[kind] = (counts[kind] ?? 0) + 1;
    value += entry.value;
    return node;
  };
  return { tree: visit(tree), value, counts };
}
