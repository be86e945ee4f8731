import type { Effort, Problem, Size } from "@sheetwright/packing";
import type { Peer } from "../peers/peer.js";
import { packByPeer } from "./pack-by-peer.js";
import { planInstance } from "./plan-instance.js";

/** An instance for `pack`. */
export interface PlanTask {
  readonly solver: "sheetwright";
  readonly problem: Problem;
  readonly effort: Effort;
  readonly seed: number;
}

/** An instance for another packer: one size of sheet, and every copy of every piece. */
export interface PeerTask {
  readonly solver: Peer;
  readonly sheet: Size;
  readonly pieces: readonly Size[];
  readonly mayTurn: boolean;
}

/** What is given to a worker; plain data. */
export type SolveTask = PlanTask | PeerTask;

/** What a solver made of an instance; plain data. */
export interface Solved {
  /** Sheets used; `null` where pieces are missing. */
  readonly sheets: number | null;
  /** Area of the sheets used, and of the pieces that come from them. */
  readonly sheetArea: number;
  readonly pieceArea: number;
  /** Value of the pieces placed, with the aim `fill`. */
  readonly value: number | null;
  /** The certified bound on sheets, sheet area or value; `null` for a solver that gives none. */
  readonly bounds: {
    readonly sheets: number | null;
    readonly sheetArea: number | null;
    readonly value: number | null;
  };
  /** True where the bound is reached. */
  readonly proven: boolean;
  /** Units of work, and steps of the search where it counts them. */
  readonly work: number | null;
  readonly steps: number | null;
  readonly seconds: number;
  /** Sheets by each try of a packer that was tried several ways. */
  readonly tries: Readonly<Record<string, number>>;
  /** What the check of the layouts found, one sentence each. */
  readonly faults: readonly string[];
}

/**
 * Solves an instance and checks the answer.
 *
 * @param now a clock in seconds.
 */
export function solveTask(task: SolveTask, now: () => number): Solved {
  return task.solver === "sheetwright" ? planInstance(task, now) : packByPeer(task, now);
}
