/** The entry of a process that plans one row of the suite `scale`: the task is its argument, the figures its output. */
import { runScaleTask, type ScaleTask } from "./scale/scale-task.js";

/** KiB in Linux, macOS and Windows alike. */
const peak = (): number => process.resourceUsage().maxRSS / 1024;

/** Time of the processor: what else runs on the machine changes it little. */
const processorSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1_000_000;
};

const task = JSON.parse(process.argv[2] ?? "") as ScaleTask;
process.stdout.write(JSON.stringify(runScaleTask(task, processorSeconds, peak)));
