import type { PackAsyncOptions } from "./pack.js";

/** Steps (about a millisecond each) between two pauses. */
const STEPS_PER_PAUSE = 8;

/**
 * Runs a search to its end, telling of each step and pausing between them. Once the signal is aborted, every further step
 * is asked to be the last. Rejects as the search throws.
 */
export async function stepAsync<Step, Result>(
  steps: Generator<Step, Result, boolean | undefined>,
  { signal, pause }: Pick<PackAsyncOptions, "signal" | "pause">,
  onStep: ((step: Step) => void) | undefined,
): Promise<Result> {
  let stop = signal?.aborted ?? false;
  for (let count = 1; ; count++) {
    const step = count === 1 ? steps.next() : steps.next(stop);
    if (step.done) return step.value;
    onStep?.(step.value);
    if (count % STEPS_PER_PAUSE === 0) await pause?.();
    stop = signal?.aborted ?? false;
  }
}
