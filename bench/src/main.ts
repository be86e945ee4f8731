import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { thisMachine } from "./machine.js";
import { runBench } from "./run-bench.js";
import { runAlone } from "./scale/run-alone.js";
import { openThreadPool } from "./solve/thread-pool.js";

// A reader that has seen enough, such as `head`, closes the pipe: that is no fault.
for (const stream of [process.stdout, process.stderr]) {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code !== "EPIPE") throw error;
  });
}

process.exitCode = await runBench(process.argv.slice(2), {
  stdout: process.stdout,
  stderr: process.stderr,
  cwd: process.cwd(),
  results: fileURLToPath(new URL("../results", import.meta.url)),
  machine: thisMachine(),
  now: () => performance.now() / 1000,
  read: (path) => readFileSync(path),
  list: (path) => readdirSync(path),
  write: (path, text) => writeFileSync(path, text),
  makeFolder: (path) => {
    mkdirSync(path, { recursive: true });
  },
  look: (path) => {
    const found = statSync(path, { throwIfNoEntry: false });
    return found === undefined ? "nothing" : found.isDirectory() ? "folder" : "file";
  },
  runAlone: (task) => runAlone(new URL("./scale-process.js", import.meta.url), task),
  openPool: (threads) => openThreadPool(new URL("./solver-worker.js", import.meta.url), threads),
});
