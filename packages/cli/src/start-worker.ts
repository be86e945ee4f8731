/** The entry of a worker thread. */
import { type LinearSolver, type StartResult, startSteps } from "@sheetwright/packing";
import type { ComparisonRow } from "@sheetwright/planner";
import { loadSolver } from "./solver/load-solver.js";
import type { SentCase } from "./threads/sent-case.js";
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

/** Works one case of a comparison out after another as they are handed out. */
export async function compareOne({ one, options }: SentCase): Promise<ComparisonRow> {
  // Starts of a search do without the planner, which takes longer to load than a short start takes.
  const { compareCase } = await import("@sheetwright/planner");
  return compareCase(one, options);
}
