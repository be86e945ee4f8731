import type { Ring } from "../outline/outline.js";
import { type Run, runsOf } from "./run.js";

/** A smooth stretch of a line, and the length that the number of its stitches is chosen for. */
export interface CountedRun {
  readonly run: Run;
  readonly counted: number;
}

/** Lengths that differ by less than this, 0.005 mm, were meant to be the same. */
const SAME = 8;

/**
 * The smooth stretches of each ring. Those whose lengths differ by rounding alone are counted as the shortest of their
 * like, so that both sides of a symmetric line get the same number of stitches.
 *
 * @internal
 */
export function countedRuns(rings: readonly Ring[]): readonly (readonly CountedRun[])[] {
  const runs = rings.map(runsOf);
  const counted = new Map<Run, number>();
  let before: { readonly length: number; readonly counted: number } | undefined;
  for (const run of runs.flat().sort((a, b) => a.length - b.length)) {
    const { length } = run;
    before = {
      length,
      counted: before !== undefined && length - before.length < SAME ? before.counted : length,
    };
    counted.set(run, before.counted);
  }
  return runs.map((ofRing) => ofRing.map((run) => ({ run, counted: counted.get(run) ?? run.length })));
}
