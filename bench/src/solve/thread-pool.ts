import { Tinypool } from "tinypool";
import type { Solved, SolveTask } from "./solve-task.js";

/** Solves instances side by side. */
export interface SolverPool {
  run(task: SolveTask): Promise<Solved>;
  close(): Promise<void>;
}

/**
 * Opens worker threads. Which of them solves an instance changes nothing but the time it takes.
 *
 * @param worker address of the built `solver-worker`.
 * @param threads worker threads; at least 1.
 */
export function openThreadPool(worker: URL, threads: number): SolverPool {
  const pool = new Tinypool({
    filename: worker.href,
    runtime: "worker_threads",
    minThreads: threads,
    maxThreads: threads,
    isolateWorkers: false,
  });
  return {
    run: (task) => pool.run(task, { name: "solve" }),
    close: () => pool.destroy(),
  };
}
