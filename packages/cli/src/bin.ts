#!/usr/bin/env node
import { availableParallelism } from "node:os";
import { nodeFiles } from "./node-files.js";
import { run } from "./run.js";
import { loadSolver } from "./solver/load-solver.js";
import { nodeHolder } from "./stock/node-holder.js";
import { openStartThreads } from "./threads/start-threads.js";

// A reader that has seen enough, such as `head`, closes the pipe: that is no fault.
for (const stream of [process.stdout, process.stderr]) {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code !== "EPIPE") throw error;
  });
}

// The first interrupt ends the search with the best plan so far, the second one ends the process.
const signal = { aborted: false };
process.once("SIGINT", () => {
  signal.aborted = true;
});

process.exitCode = await run(process.argv.slice(2), {
  stdout: process.stdout,
  stderr: process.stderr,
  env: process.env,
  cwd: process.cwd(),
  files: nodeFiles,
  holder: nodeHolder(),
  signal,
  pause: () => new Promise((resolve) => setImmediate(resolve)),
  loadSolver,
  threads: {
    cores: availableParallelism(),
    open: (most) => openStartThreads(new URL("./start-worker.js", import.meta.url), most),
  },
});
