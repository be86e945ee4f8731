/** The entry of a worker thread. */
import { type LinearSolver, type StartResult, startSteps } from "@sheetwright/packing";
import { loadSolver } from "./solver/load-solver.js";
import type { SentStart } from "./threads/sent-start.js";

let loaded: Promise<LinearSolver> | undefined;

/** Makes one start after another as they are handed out, with a solver of its own where the search has one. */
export async function makeStart({ task, shared }: SentStart): Promise<StartResult> {
  let { options } = task;
  if (task.solver !== null) {
    loaded ??= loadSolver();
    options = { ...options, solver: await loaded };
  }
  const steps = startSteps({ ...task, options });
  let step = steps.next();
  while (!step.done) {
    Atomics.store(shared, 1, step.value);
    step = steps.next(Atomics.load(shared, 0) === 1);
  }
  return step.value;
}
