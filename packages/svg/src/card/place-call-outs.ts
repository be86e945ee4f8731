/** Gives every layer that can be seen a call-out in the left or right margin, with a leader to its visible part. */

import type { Ticks } from "@sheetwright/measure";
import {
  type Candidate,
  candidatesFor,
  leaderHeights,
  type PointedAt,
  type Side,
} from "./call-out-candidates.js";
import { orderCallOuts, type Stacked, type StackedPlace } from "./order-call-outs.js";
import { overlap, type Surface } from "./visible-part.js";

/** A surface that is to be pointed at. */
export interface CallOutWish {
  /** Its index among the surfaces. */
  readonly surface: number;
  /** What its label takes of the margin, white space included. */
  readonly height: Ticks;
}

/** A call-out in its place; lengths in ticks from the top left corner of the front. */
export interface CallOut {
  readonly surface: number;
  readonly side: Side;
  /** The end of the leader on the layer. */
  readonly x: Ticks;
  readonly y: Ticks;
  /** The middle of the label; above 0 or under the front where the margin needs more room than the front is high. */
  readonly middle: Ticks;
}

/** All call-outs, and what had to give way to them. */
export interface PlacedCallOuts {
  readonly callOuts: readonly CallOut[];
  /** Surfaces that no leader can end on without crossing another. */
  readonly unreached: readonly number[];
  /** Words that are left out of the picture, since some layer can be reached only across them. */
  readonly crossed: readonly Surface[];
}

/** Distances between leaders that are tried, in millimetres of the drawing. */
const APART = [1.8, 1.2, 0.8, 0.5, 0.3, 0.15, 0.05] as const;
/** The step that labels are placed by, in millimetres of the drawing. */
const STEP = 1;

/**
 * Places the call-outs. Where some cannot be reached and `allOrNone` is set, none is placed: that is known sooner than which
 * ones could be.
 */
export function placeCallOuts(
  pointedAt: PointedAt,
  wishes: readonly CallOutWish[],
  allOrNone = false,
): PlacedCallOuts {
  const crossed = wordsInTheWay(pointedAt, wishes);
  const drawn = { ...pointedAt, words: pointedAt.words.filter((word) => !crossed.includes(word)) };
  const heights = leaderHeights(drawn);
  const known = wishes.map(
    (wish): Known => ({
      ...wish,
      left: candidatesFor(drawn, wish.surface, "left", heights),
      right: candidatesFor(drawn, wish.surface, "right", heights),
    }),
  );
  const reached = known.filter(({ left, right }) => left.length > 0 || right.length > 0);
  const dropped: Known[] = known.filter(({ left, right }) => left.length === 0 && right.length === 0);
  for (;;) {
    const callOuts = allOrNone && dropped.length > 0 ? null : placeAll(drawn, reached);
    if (callOuts === null && allOrNone) {
      return { callOuts: [], unreached: wishes.map(({ surface }) => surface), crossed };
    }
    if (callOuts !== null) {
      const unreached = dropped.map(({ surface }) => surface).sort((a, b) => a - b);
      return { callOuts, unreached, crossed };
    }
    // The one with the fewest ways to reach it is in the way of the others.
    const fewest = reached.reduce((least, other) => (waysTo(other) < waysTo(least) ? other : least));
    reached.splice(reached.indexOf(fewest), 1);
    dropped.push(fewest);
  }
}

interface Known extends CallOutWish {
  readonly left: readonly Candidate[];
  readonly right: readonly Candidate[];
}

function waysTo({ left, right }: Known): number {
  return left.length + right.length;
}

function wordsInTheWay(pointedAt: PointedAt, wishes: readonly CallOutWish[]): readonly Surface[] {
  let words = pointedAt.words;
  const crossed: Surface[] = [];
  for (const { surface } of wishes) {
    const reaches = (among: readonly Surface[], side: Side) =>
      candidatesFor({ ...pointedAt, words: among }, surface, side);
    if (words.length === 0 || reaches(words, "right").length > 0 || reaches(words, "left").length > 0)
      continue;
    const [end] = reaches([], "right");
    const front = pointedAt.surfaces[0];
    if (end === undefined || front === undefined) continue;
    const air = pointedAt.millimetre;
    const path = { x: end.x - air, y: end.y - air, width: front.width - end.x + air, height: 2 * air };
    crossed.push(...words.filter((word) => overlap(word, path)));
    words = words.filter((word) => !overlap(word, path));
  }
  return crossed;
}

function placeAll(pointedAt: PointedAt, known: readonly Known[]): readonly CallOut[] | null {
  const front = pointedAt.surfaces[0];
  if (front === undefined) return [];
  const atLeft = sidesFor(known, front);
  for (const millimetres of APART) {
    const apart = Math.max(1, Math.round(millimetres * pointedAt.millimetre));
    // A layer that the leaders from the right leave no way to from the left is reached from the right as well.
    const left = new Set(atLeft);
    for (;;) {
      const fromRight = known.filter((wish) => !left.has(wish));
      const right = stack(pointedAt, fromRight, "right", apart, []);
      if (right === null) break;
      const fromLeft = known.filter((wish) => left.has(wish));
      const taken = right.map(({ end }) => end);
      const lost = fromLeft.filter(
        (wish) => wish.right.length > 0 && clearOf(wish.left, taken, apart).length === 0,
      );
      if (lost.length > 0) {
        for (const wish of lost) left.delete(wish);
        continue;
      }
      const others = stack(pointedAt, fromLeft, "left", apart, taken);
      if (others === null) break;
      const toCallOut =
        (side: Side) =>
        ({ rank, middle, end: { x, y } }: StackedPlace): CallOut => ({
          surface: rank,
          side,
          x,
          y,
          middle,
        });
      return [...right.map(toCallOut("right")), ...others.map(toCallOut("left"))].sort(
        (a, b) => a.surface - b.surface,
      );
    }
  }
  return null;
}

function stack(
  { surfaces, millimetre }: PointedAt,
  known: readonly Known[],
  side: Side,
  apart: Ticks,
  taken: readonly Candidate[],
): readonly StackedPlace[] | null {
  const stacked = known.map(
    (wish): Stacked => ({
      rank: wish.surface,
      height: wish.height,
      candidates: clearOf(wish[side], taken, apart),
    }),
  );
  const needed = known.reduce((sum, { height }) => sum + height, 0);
  const height = surfaces[0]?.height ?? 0;
  const step = Math.max(1, Math.round(STEP * millimetre));
  // Labels keep beside the front where they have room there; else the margin grows on both ends, mostly downwards.
  const more = Math.max(0, needed - height + 2 * known.length * step);
  return orderCallOuts(stacked, {
    top: -Math.floor(more / 3 / step) * step,
    bottom: height + more - Math.floor(more / 3 / step) * step,
    step,
    apart,
  });
}

/** Ends whose leader from the left stays clear of the leaders from the right. */
function clearOf(
  candidates: readonly Candidate[],
  taken: readonly Candidate[],
  apart: Ticks,
): readonly Candidate[] {
  return candidates.filter(
    ({ x, y }) => !taken.some((other) => Math.abs(other.y - y) < apart && other.x < x + 2 * apart),
  );
}

/**
 * The layers to be pointed at from the left: those that lie much nearer to it, and as many more as the right margin has no
 * room for.
 */
function sidesFor(known: readonly Known[], front: Surface): ReadonlySet<Known> {
  const detour = (candidates: readonly Candidate[]) =>
    candidates.reduce((least, { cost }) => Math.min(least, cost), Number.MAX_SAFE_INTEGER);
  // A twelfth of the way over the front counts, so this is a way of a quarter of the front.
  const preference = Math.round(front.width / 48);
  const gain = (wish: Known) => detour(wish.right) - detour(wish.left);
  const left = new Set(known.filter((wish) => gain(wish) > preference));
  const sum = (wishes: readonly Known[]) => wishes.reduce((all, { height }) => all + height, 0);
  const room = front.height;
  const movable = known
    .filter((wish) => !left.has(wish) && wish.left.length > 0)
    .sort((a, b) => gain(b) - gain(a) || a.surface - b.surface);
  for (const wish of movable) {
    const right = sum(known.filter((other) => !left.has(other)));
    if (right <= room || sum([...left]) + wish.height > right) break;
    left.add(wish);
  }
  return left;
}
