import type { Demand } from "../best-fit.js";
import type { CompiledProblem } from "../compiled-problem.js";
import type { Draft } from "../draft.js";
import type { Meter } from "../meter.js";
import type { RandomStream } from "../random-stream.js";
import type { ExactLayouts } from "../repeat-layouts.js";

/** What a start that joins pieces begins with. */
export interface JoinStart {
  readonly problem: CompiledProblem;
  readonly demand: Demand;
  readonly first: Draft;
  /** Pairs looked at, at most. */
  readonly joins: number;
  /** Work of planning with blocks, or of what is left. */
  readonly work: number;
  readonly seed: number;
  readonly random: RandomStream;
  readonly meter: Meter;
  readonly exact: ExactLayouts;
  readonly isEnough: (draft: Draft) => boolean;
  readonly mixes: boolean;
}
