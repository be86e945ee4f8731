import { getSystemErrorMap } from "node:util";
import { BenchFaults } from "./bench-fault.js";
import type { Machine } from "./machine.js";
import type { ScaleFigures, ScaleTask } from "./scale/scale-task.js";
import type { SolverPool } from "./solve/thread-pool.js";

/** Everything a run may touch, so that a test can stand in for all of it. */
export interface BenchIo {
  readonly stdout: { write(text: string): unknown };
  readonly stderr: { write(text: string): unknown; readonly isTTY?: boolean | undefined };
  /** Absolute path that relative paths start from. */
  readonly cwd: string;
  /** Absolute path of the folder that results go to by default. */
  readonly results: string;
  readonly machine: Machine;
  /** A clock in seconds. */
  now(): number;
  /** Throws an error of the operating system, as the next three do. */
  read(path: string): Uint8Array;
  /** Names of what lies in a folder. */
  list(path: string): readonly string[];
  write(path: string, text: string): void;
  /** Makes a folder and those above it; one that is there stays. */
  makeFolder(path: string): void;
  look(path: string): "file" | "folder" | "nothing";
  /** Opens that many worker threads, at least 1. */
  openPool(threads: number): SolverPool;
  /** Plans a row of the suite `scale` in a process of its own. */
  runAlone(task: ScaleTask): Promise<ScaleFigures>;
}

/**
 * Does something with a file. Throws BenchFaults where the operating system refuses, in plain words.
 *
 * @param where the option or path that the fault is of.
 * @param what did not work, such as `cannot be read`.
 */
export function withFile<Result>(where: string, what: string, action: () => Result): Result {
  try {
    return action();
  } catch (error) {
    if (!(error instanceof Error && "errno" in error && typeof error.errno === "number")) throw error;
    const why = getSystemErrorMap().get(error.errno)?.[1] ?? `error ${error.errno}`;
    throw new BenchFaults([{ where, message: `${what}: ${why}.` }], { cause: error });
  }
}
