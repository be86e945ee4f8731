/** The entry of a worker thread. */
import { type Solved, type SolveTask, solveTask } from "./solve/solve-task.js";

/** Solves one instance after another as they are handed out. */
export function solve(task: SolveTask): Solved {
  return solveTask(task, () => performance.now() / 1000);
}
