import type { BenchIo } from "../bench-io.js";
import type { Instance } from "../instances/family.js";
import type { PublishedResults } from "../instances/published-results.js";
import type { Solved, SolveTask } from "../solve/solve-task.js";
import { makeRow, type Way } from "./make-row.js";
import type { Row } from "./row.js";

/** A way to solve a family, and what is handed to a worker for one of its instances. */
export interface TaskedWay extends Way {
  taskOf(instance: Instance): SolveTask;
}

/** Rows, and what the checks of layouts found. */
export interface MeasuredWays {
  readonly rows: readonly Row[];
  readonly faults: readonly string[];
  /** Of the whole run. */
  readonly seconds: number;
}

/** Solves every family every way, spread over worker threads. All figures but seconds are the same for any number of jobs. */
export async function measureWays(
  ways: readonly TaskedWay[],
  jobs: number,
  published: PublishedResults,
  io: BenchIo,
): Promise<MeasuredWays> {
  const total = ways.reduce((sum, { family }) => sum + family.instances.length, 0);
  const began = io.now();
  let done = 0;
  const pool = io.openPool(Math.min(jobs, Math.max(total, 1)));
  try {
    const solved = await Promise.all(
      ways.map((way) =>
        Promise.all(
          way.family.instances.map(async (instance) => {
            const answer = await solveOne(way, instance, (task) => pool.run(task));
            done += 1;
            if (io.stderr.isTTY) io.stderr.write(`\r\u001b[K${done} of ${total}: ${nameOf(way, instance)}`);
            return answer;
          }),
        ),
      ),
    );
    return {
      rows: ways.map((way, i) => makeRow(way, solved[i] ?? [], published)),
      faults: ways.flatMap((way, i) =>
        way.family.instances.flatMap((instance, k) =>
          (solved[i]?.[k]?.faults ?? []).map((fault) => `${nameOf(way, instance)}: ${fault}`),
        ),
      ),
      seconds: io.now() - began,
    };
  } finally {
    if (io.stderr.isTTY) io.stderr.write("\r\u001b[K");
    await pool.close();
  }
}

/** A fault of a program says on which instance. */
async function solveOne(
  way: TaskedWay,
  instance: Instance,
  run: (task: SolveTask) => Promise<Solved>,
): Promise<Solved> {
  try {
    return await run(way.taskOf(instance));
  } catch (error) {
    throw new Error(`${nameOf(way, instance)} could not be solved.`, { cause: error });
  }
}

function nameOf({ family, mayTurn, solver, effort }: Way, { id }: Instance): string {
  return `${family.name} ${id}, ${mayTurn ? "turned" : "fixed"}, ${effort ?? solver}`;
}
