import { execFile } from "node:child_process";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import type { ScaleFigures, ScaleTask } from "./scale-task.js";

const run = promisify(execFile);

/**
 * Plans a task in a process of its own, so that its time and memory are its own. Rejects where the process fails.
 *
 * @param entry address of the built `scale-process`.
 */
export async function runAlone(entry: URL, task: ScaleTask): Promise<ScaleFigures> {
  const { stdout } = await run(process.execPath, [fileURLToPath(entry), JSON.stringify(task)]);
  return JSON.parse(stdout) as ScaleFigures;
}
