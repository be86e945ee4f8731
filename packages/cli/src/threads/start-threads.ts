import type { StartResult, StartTask, StartWatch } from "@sheetwright/packing";
import type { ComparisonRow } from "@sheetwright/planner";
import { Tinypool } from "tinypool";
import { COMPARE_FUNCTION, type SentCase } from "./sent-case.js";
import { type SentStart, START_FUNCTION } from "./sent-start.js";

/** Threads that search: they make starts of one search, or work out cases of a comparison. */
export interface StartThreads {
  /** Makes a start in some thread. Rejects where the start throws or its thread ends. */
  readonly run: (task: StartTask, watch: StartWatch) => Promise<StartResult>;
  /** Works a case out in some thread. Rejects where that throws or the thread ends, or the threads are ended. */
  readonly compare: (sent: SentCase) => Promise<ComparisonRow>;
  /** Ends all threads. */
  readonly close: () => Promise<void>;
}

/** How often a start in a thread is asked how far it is, and told to end: about as often as a step would tell it here. */
const MILLISECONDS_PER_LOOK = 10;

/**
 * Opens threads, each once there is work for it. Which of them makes a start changes nothing but the time it takes.
 *
 * @param worker address of the built `start-worker`.
 * @param most threads at the same time; at least 1.
 */
export function openStartThreads(worker: URL, most: number): StartThreads {
  const pool = new Tinypool({
    runtime: "worker_threads",
    minThreads: 1,
    maxThreads: most,
    isolateWorkers: false,
    // A thread that has nothing to do waits for the next search of the plan.
    idleTimeout: 60_000,
  });
  // A thread that fails between two starts fails the next ones, and does not end the process.
  const failed = new Promise<never>((_, reject) => pool.on("error", reject));
  failed.catch(() => undefined);
  // Named with each task, so that a worker that cannot be read fails the task.
  const inThread = async (name: string, sent: SentStart | SentCase): Promise<unknown> => {
    try {
      return await Promise.race([pool.run(sent, { filename: worker.href, name }), failed]);
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      throw new Error(`A thread of the search failed: ${reason} With --jobs 1 the search takes no threads.`, {
        cause: error,
      });
    }
  };
  return {
    run: async (task, { isStopped, onWork }) => {
      const sent: SentStart = { task, shared: new Int32Array(new SharedArrayBuffer(8)) };
      const look = setInterval(() => {
        if (isStopped()) Atomics.store(sent.shared, 0, 1);
        onWork(Atomics.load(sent.shared, 1));
      }, MILLISECONDS_PER_LOOK);
      try {
        return (await inThread(START_FUNCTION, sent)) as StartResult;
      } finally {
        clearInterval(look);
      }
    },
    compare: async (sent) => (await inThread(COMPARE_FUNCTION, sent)) as ComparisonRow,
    close: () => pool.destroy(),
  };
}
