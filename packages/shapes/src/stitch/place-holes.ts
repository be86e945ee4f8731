import type { Point } from "../outline/point.js";
import { rounded } from "../outline/point.js";
import type { CountedRun } from "./counted-runs.js";
import { pointAlong, type Run } from "./run.js";

/** Where holes lie along a line. */
export interface HolePlaces {
  readonly centres: readonly Point[];
  /** From hole to hole, for each run that has its own: in ticks with fractions. */
  readonly pitches: readonly number[];
  /** Runs too short for a hole of their own. */
  readonly tooShort: number;
}

/**
 * Places holes along the runs of one ring, equal ones within each. `met`: a hole at each corner, n = max(1, round(L / p))
 * steps between two. `free`: half a step from each corner.
 *
 * A run shorter than half a step has no holes of its own. Where holes at both its ends would come that near to each other
 * one in its middle takes their place.
 *
 * @internal
 */
export function placeHoles(runs: readonly CountedRun[], pitch: number, corners: "met" | "free"): HolePlaces {
  const [first] = runs;
  if (first === undefined) return { centres: [], pitches: [], tooShort: 0 };
  const places = first.run.isClosed
    ? placeRound(first, pitch)
    : corners === "free"
      ? placeFree(runs, pitch)
      : placeMet(runs, pitch);
  return places.centres.length < FEWEST_ROUND ? { centres: [], pitches: [], tooShort: runs.length } : places;
}

/** Fewer stitches or holes than this round a whole line are none. */
export const FEWEST_ROUND = 3;

function placeRound({ run, counted }: CountedRun, pitch: number): HolePlaces {
  const count = stepsOf(counted, pitch);
  const centres = Array.from({ length: count }, (_, index) => at(run, (run.length * index) / count));
  return { centres, pitches: [run.length / count], tooShort: 0 };
}

function placeFree(runs: readonly CountedRun[], pitch: number): HolePlaces {
  const long = runs.filter((each) => isLong(each, pitch));
  return {
    centres: long.flatMap(({ run, counted }) => {
      const count = stepsOf(counted, pitch);
      return Array.from({ length: count }, (_, index) => at(run, (run.length * (index + 0.5)) / count));
    }),
    pitches: long.map(({ run, counted }) => run.length / stepsOf(counted, pitch)),
    tooShort: runs.length - long.length,
  };
}

function placeMet(runs: readonly CountedRun[], pitch: number): HolePlaces {
  const centres: Point[] = [];
  const pitches: number[] = [];
  for (const [index, { run, counted }] of runs.entries()) {
    if (!isLong({ run, counted }, pitch)) continue;
    const steps = stepsOf(counted, pitch);
    pitches.push(run.length / steps);
    for (let step = 1; step < steps; step += 1) centres.push(at(run, (run.length * step) / steps));
    centres.push(...betweenRuns(runs, index, pitch));
  }
  return { centres, pitches, tooShort: runs.length - pitches.length };
}

/** The holes from the end of a run to the start of the next one that is long enough for holes. */
function betweenRuns(runs: readonly CountedRun[], index: number, pitch: number): readonly Point[] {
  const short: Run[] = [];
  let length = 0;
  let next = (index + 1) % runs.length;
  while (!isLong(runs[next] as CountedRun, pitch)) {
    const { run } = runs[next] as CountedRun;
    short.push(run);
    length += run.length;
    next = (next + 1) % runs.length;
  }
  const { run } = runs[index] as CountedRun;
  const end = at(run, run.length);
  const start = at((runs[next] as CountedRun).run, 0);
  // Where rounding left a step between them, in its middle.
  if (short.length === 0) return [rounded((end.x + start.x) / 2, (end.y + start.y) / 2)];
  if (length >= pitch / 2) return [end, start];
  let left = length / 2;
  for (const each of short) {
    if (left <= each.length) return [at(each, left)];
    left -= each.length;
  }
  return [end];
}

function isLong({ counted }: CountedRun, pitch: number): boolean {
  return counted >= pitch / 2;
}

function stepsOf(counted: number, pitch: number): number {
  return Math.max(1, Math.round(counted / pitch));
}

function at(run: Run, place: number): Point {
  const { x, y } = pointAlong(run, place);
  return rounded(x, y);
}
