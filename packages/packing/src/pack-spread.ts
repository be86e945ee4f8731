/**
 * One search whose starts run wherever the caller likes, such as in worker threads; all else is done here, with pauses.
 */
import type { Packing, Problem } from "./model.js";
import type { PackAsyncOptions, PackOptions } from "./pack.js";
import type { Progress } from "./progress.js";
import { FIRST_SHARE } from "./search/search.js";
import { firstPlanSteps, joinSteps, type StartResult, type StartTask, startSteps } from "./spread-starts.js";
import { stepAsync } from "./step-async.js";

type Summary = NonNullable<Progress["best"]>;

/** What a start in progress tells, and is told. */
export interface StartWatch {
  /** Whether the start is to end early. */
  readonly isStopped: () => boolean;
  /** Is told the work done so far, now and then. */
  readonly onWork: (work: number) => void;
}

/** What {@link packSpread} takes besides. */
export interface PackSpreadOptions extends PackAsyncOptions {
  /** Starts that are made at the same time; at least 1. */
  readonly lanes: number;
  /** Runs {@link startSteps} to its end somewhere, and sends it `true` once `isStopped()` says so. */
  readonly runStart: (task: StartTask, watch: StartWatch) => Promise<StartResult>;
  /** Work of a start below which all starts are made here, one after the other (default 8,000,000). */
  readonly leastWork?: number | undefined;
}

/** About 300 milliseconds, more than a thread takes to start and to get as fast as this one. */
const LEAST_WORK = 8_000_000;

/**
 * Like {@link packAsync}, with its starts spread: byte for byte the same packing, whatever the number of lanes. Rejects as
 * `pack` throws, and with what `runStart` rejects with, once the other starts have ended.
 *
 * @example
 * const problem = {
 *   kinds: [{ id: "mat", quantity: 10, forms: [{ width: 5, height: 7 }] }],
 *   sheets: [{ id: "cream", width: 12, height: 12 }],
 *   mode: "guillotine",
 *   aim: "all",
 * };
 * const runStart = async ({ problem, options, start }) => packStart(problem, options, start);
 * const packing = await packSpread(problem, { lanes: 2, runStart });
 * JSON.stringify(packing) === JSON.stringify(pack(problem)) // => true
 */
export async function packSpread(problem: Problem, options: PackSpreadOptions): Promise<Packing> {
  const {
    effort,
    seed,
    narrowestHold,
    solver,
    onProgress,
    lanes,
    runStart,
    leastWork = LEAST_WORK,
  } = options;
  const plain: PackOptions = { effort, seed, narrowestHold };
  const whole: PackOptions = { ...plain, solver };
  const first = await stepAsync(firstPlanSteps(problem, whole), options, onProgress);
  const search = { problem, options: plain, solver: solver?.name ?? null, first };
  const isWorth = first.starts > 1 && first.each >= leastWork;
  const results = isWorth
    ? await runStarts(search, options, lanes, runStart)
    : await runStarts(search, options, 1, (task, { onWork }) =>
        stepAsync(startSteps({ ...task, options: whole }), options, onWork),
      );
  return stepAsync(
    joinSteps({ ...search, options: whole }, results, options.signal?.aborted),
    options,
    onProgress,
  );
}

/** Makes starts side by side, those with low numbers first, until one is proven or all are made. */
async function runStarts(
  search: Omit<StartTask, "start">,
  { signal, onProgress }: PackAsyncOptions,
  lanes: number,
  runStart: PackSpreadOptions["runStart"],
): Promise<readonly StartResult[]> {
  const { first } = search;
  const isStopped = (): boolean => signal?.aborted ?? false;
  const works = Array.from({ length: first.starts }, () => 0);
  const results: StartResult[] = [];
  let next = 0;
  let end = first.starts;
  let { best } = first;
  const tell = (): void => {
    const done = works.reduce((sum, work) => sum + Math.min(1, work / first.each), 0);
    onProgress?.({
      share: FIRST_SHARE + (1 - FIRST_SHARE) * (done / first.starts),
      startsDone: first.made + results.length,
      starts: first.made + first.starts,
      work: works.reduce((sum, work) => sum + work, first.work),
      best,
    });
  };
  const runLane = async (): Promise<void> => {
    while (next < end && !isStopped()) {
      const start = next++;
      const onWork = (work: number): void => {
        works[start] = Math.max(works[start] ?? 0, work);
        tell();
      };
      try {
        const watch: StartWatch = { isStopped: () => isStopped() || start >= end, onWork };
        const result = await runStart({ ...search, start }, watch);
        results.push(result);
        if (result.proven) end = Math.min(end, start + 1);
        if (result.best !== null && isBetter(result.best, best)) best = result.best;
        onWork(result.work);
      } catch (error) {
        end = 0;
        throw error;
      }
    }
  };
  const ended = await Promise.allSettled(Array.from({ length: Math.max(1, lanes) }, runLane));
  for (const lane of ended) if (lane.status === "rejected") throw lane.reason;
  return results;
}

function isBetter(a: Summary, b: Summary): boolean {
  return a.everything === b.everything ? a.cost < b.cost : a.everything;
}
