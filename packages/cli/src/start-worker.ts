/** The entry of a worker thread. */
import { type StartResult, startSteps } from "@sheetwright/packing";
import type { SentStart } from "./threads/sent-start.js";

/** Makes one start after another as they are handed out. */
export function makeStart({ task, shared }: SentStart): StartResult {
  const steps = startSteps(task);
  let step = steps.next();
  while (!step.done) {
    Atomics.store(shared, 1, step.value);
    step = steps.next(Atomics.load(shared, 0) === 1);
  }
  return step.value;
}
