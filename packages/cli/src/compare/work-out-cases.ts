import { type ComparisonCase, type ComparisonRow, compareCase } from "@sheetwright/planner";
import type { Io } from "../io.js";
import type { SearchOptions } from "../request/shared-options.js";
import type { StartThreads } from "../threads/start-threads.js";

/** How to work cases out. */
export type WorkOutOptions = Omit<SearchOptions, "ownSolver">;

/** Fewer cases than these at `quick` take about as long as threads take to open. */
const LEAST_CASES = 24;

/** How often a run that waits for threads asks whether it is to end. */
const MILLISECONDS_PER_LOOK = 10;

/**
 * Works cases out, spread over threads where there are enough of them; which thread works out which changes nothing. Where
 * it is asked to end early, the rows of the first cases come back, as far as all of them are done.
 */
export async function workOutCases(
  cases: readonly ComparisonCase[],
  options: WorkOutOptions,
  io: Io,
): Promise<readonly ComparisonRow[]> {
  const rows: ComparisonRow[] = [];
  let done = 0;
  const show = io.stderr.isTTY === true;
  const note = (index: number, row: ComparisonRow): void => {
    rows[index] = row;
    done++;
    const { name } = (cases[index] as ComparisonCase).size;
    if (show) io.stderr.write(`\rComparing: ${done} of ${cases.length}, ${name}. Ctrl-C ends early.\u001b[K`);
  };
  const lanes = Math.min(options.jobs ?? io.threads?.cores ?? 1, cases.length);
  const isWorth = cases.length >= (options.effort === "quick" ? LEAST_CASES : 2);
  if (io.threads !== undefined && lanes > 1 && isWorth)
    await inThreads(cases, options, io.threads.open(lanes), lanes, io, note);
  else await here(cases, options, io, note);
  if (show) io.stderr.write("\r\u001b[K");
  const gap = cases.findIndex((_, index) => rows[index] === undefined);
  return gap < 0 ? rows : rows.slice(0, gap);
}

type Note = (index: number, row: ComparisonRow) => void;

async function here(
  cases: readonly ComparisonCase[],
  { effort, seed }: WorkOutOptions,
  io: Io,
  note: Note,
): Promise<void> {
  for (const [index, one] of cases.entries()) {
    if (io.signal?.aborted === true) return;
    note(index, compareCase(one, { effort, seed }));
    await io.pause?.();
  }
}

async function inThreads(
  cases: readonly ComparisonCase[],
  { effort, seed }: WorkOutOptions,
  threads: StartThreads,
  lanes: number,
  { signal }: Io,
  note: Note,
): Promise<void> {
  let look: ReturnType<typeof setInterval> | undefined;
  const ended = new Promise<"ended">((resolve) => {
    look = setInterval(() => {
      if (signal?.aborted === true) resolve("ended");
    }, MILLISECONDS_PER_LOOK);
  });
  // Each lane takes the next case as soon as it is free.
  const left = cases.entries();
  const lane = async (): Promise<void> => {
    for (const [index, one] of left) {
      if (signal?.aborted === true) return;
      const row = await Promise.race([threads.compare({ one, options: { effort, seed } }), ended]);
      if (row === "ended") return;
      note(index, row);
    }
  };
  try {
    await Promise.all(Array.from({ length: lanes }, lane));
  } finally {
    clearInterval(look);
    // A case that is still at work ends with its thread.
    await threads.close();
  }
}
