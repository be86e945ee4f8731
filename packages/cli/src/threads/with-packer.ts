import {
  type Effort,
  type LinearSolver,
  type Problem,
  packAsync,
  packSpread,
  wantsSolver,
} from "@sheetwright/packing";
import type { Packer } from "@sheetwright/planner";
import type { Io } from "../io.js";
import type { SharedOptions } from "../request/shared-options.js";
import type { StartThreads } from "./start-threads.js";

/**
 * Runs something that packs, with a packer whose searches are spread over threads; the same bytes come out with any number
 * of them. Threads are opened for the first search that is long enough, and ended at the end. A solver is loaded for the
 * first problem that wants one; where that fails, searches do without.
 */
export async function withPacker<Result>(
  { jobs, ownSolver }: Pick<SharedOptions, "jobs" | "ownSolver">,
  { threads, loadSolver }: Io,
  action: (packer: Packer) => Promise<Result>,
): Promise<Result> {
  const lanes = jobs ?? threads?.cores ?? 1;
  let loaded: Promise<LinearSolver | undefined> | undefined;
  const solverFor = async (problem: Problem, effort: Effort): Promise<LinearSolver | undefined> => {
    if (ownSolver || loadSolver === undefined || !wantsSolver(problem, effort)) return undefined;
    loaded ??= loadSolver().catch(() => undefined);
    return await loaded;
  };
  let opened: StartThreads | undefined;
  const packer: Packer = async (problem, options) => {
    const own = { ...options, solver: await solverFor(problem, options.effort ?? "standard") };
    if (threads === undefined || lanes < 2) return packAsync(problem, own);
    return packSpread(problem, {
      ...own,
      lanes,
      runStart: (task, watch) => {
        opened ??= threads.open(lanes);
        return opened.run(task, watch);
      },
    });
  };
  try {
    return await action(packer);
  } finally {
    await opened?.close();
  }
}
