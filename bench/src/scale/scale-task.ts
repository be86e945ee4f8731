/** One row of the suite `scale`: what is planned in a process of its own, and what that took. */
import { inches } from "@sheetwright/measure";
import { type Effort, type Problem, pack, verify } from "@sheetwright/packing";
import { scaleSet } from "../sets/scale-set.js";

/** What is planned; plain data. */
export interface ScaleTask {
  readonly kinds: number;
  readonly copies: number;
  readonly effort: Effort;
  readonly seed: number;
}

/** What it took; plain data. */
export interface ScaleFigures {
  /** By the clock that it is given: of the processor where the process is its own. */
  readonly seconds: number;
  /** The most memory that the process has held until the plan was there, in MiB; what Node takes by itself is in it. */
  readonly peakMiB: number;
  readonly sheets: number;
  /** No plan uses fewer sheets. */
  readonly bound: number;
  /** Different layouts. */
  readonly layouts: number;
  readonly work: number;
  /** What `verify` found, one sentence each. */
  readonly faults: readonly string[];
}

/** The side of the sheets: 12 in. */
const SIDE = inches(12);

/**
 * Plans one set of pieces.
 *
 * @param now a clock in seconds, such as of the processor time.
 * @param peak the most memory held so far, in MiB.
 */
export function runScaleTask(
  { kinds, copies, effort, seed }: ScaleTask,
  now: () => number,
  peak: () => number,
): ScaleFigures {
  const problem: Problem = {
    kinds: scaleSet(kinds, copies, seed).map(({ name, width, height, quantity, turn }) => ({
      id: name,
      quantity,
      forms: [{ width, height, turns: turn ? "both" : "upright" }],
    })),
    sheets: [{ id: "sheet", width: SIDE, height: SIDE }],
    mode: "guillotine",
    aim: "all",
  };
  const began = now();
  const packing = pack(problem, { effort, seed });
  const seconds = now() - began;
  const peakMiB = peak();
  const { bound, search } = packing;
  return {
    seconds,
    peakMiB,
    sheets: packing.sheets,
    bound: bound.aim === "all" ? (bound.sheets ?? 0) : 0,
    layouts: packing.layouts.length,
    work: search.work,
    faults: verify(problem, packing).map(({ path, message }) => `${path}: ${message}`),
  };
}
