import { packAsync, packSpread } from "@sheetwright/packing";
import type { Packer } from "@sheetwright/planner";
import type { Io } from "../io.js";
import type { StartThreads } from "./start-threads.js";

/**
 * Runs something that packs, with a packer whose searches are spread over threads; the same bytes come out with any number
 * of them. Threads are opened for the first search that is long enough, and ended at the end.
 *
 * @param jobs threads at the same time; 1 takes none, `null` as many as there are cores.
 */
export async function withPacker<Result>(
  jobs: number | null,
  { threads }: Io,
  action: (packer: Packer) => Promise<Result>,
): Promise<Result> {
  const lanes = jobs ?? threads?.cores ?? 1;
  if (threads === undefined || lanes < 2) return action(packAsync);
  let opened: StartThreads | undefined;
  const packer: Packer = (problem, options) =>
    packSpread(problem, {
      ...options,
      lanes,
      runStart: (task, watch) => {
        opened ??= threads.open(lanes);
        return opened.run(task, watch);
      },
    });
  try {
    return await action(packer);
  } finally {
    await opened?.close();
  }
}
