/** Everything but the tests that a change must pass. Each check stands under a heading; all run, then any fault fails. */
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { runTool, tool } from "./run-tool.mjs";
import { root } from "./workspace.mjs";

/** @param {string} file @returns {import("./run-tool.mjs").Command} */
const script = (file) => [process.execPath, [join(root, ".ci", file)]];

/** @param {string} project @returns {import("./run-tool.mjs").Command} */
const types = (project) =>
  tool(import.meta.resolve("typescript/package.json"), "tsc", ["--project", join(root, project)]);

/**
 * The longest first, so that the wait at the end is short. The packages are checked as published, hence after the build.
 * @type {readonly { heading: string, commands: readonly import("./run-tool.mjs").Command[] }[]}
 */
const checks = [
  {
    heading: "Build, then packages as published",
    commands: [script("build.mjs"), script("check-packages.mjs")],
  },
  { heading: "Types of the core packages, without Node or a page", commands: [types("tsconfig.core.json")] },
  { heading: "Types of the command", commands: [types("packages/cli")] },
  { heading: "Types of the benchmark", commands: [types("bench")] },
  { heading: "Types of the tests and of .ci", commands: [types(".")] },
  {
    heading: "Format and lint",
    commands: [tool(import.meta.resolve("@biomejs/biome/package.json"), "biome", ["ci", "--colors=off"])],
  },
  {
    heading: "Unused files, exports and dependencies",
    commands: [
      tool(new URL("../node_modules/knip/package.json", import.meta.url).href, "knip", ["--no-progress"]),
    ],
  },
  { heading: "Table of imports", commands: [script("check-imports.mjs")] },
  { heading: "Lint of exact arithmetic", commands: [script("check-exact-arithmetic.mjs")] },
  { heading: "Tree", commands: [script("check-tree.mjs")] },
];

const started = Date.now();
const waiting = [...checks];
/** @type {string[]} */
const failed = [];

async function work() {
  for (let next = waiting.shift(); next; next = waiting.shift()) {
    const { heading, commands } = next;
    const began = Date.now();
    const said = [];
    for (const command of commands) {
      const { status, words } = await runTool(command, root);
      if (words !== "") said.push(words);
      if (status === 0) continue;
      failed.push(heading);
      break;
    }
    const outcome = failed.includes(heading) ? "FAILED" : "passed";
    const seconds = ((Date.now() - began) / 1000).toFixed(1);
    process.stdout.write([`== ${heading}: ${outcome} in ${seconds} s`, ...said, ""].join("\n"));
  }
}
await Promise.all(Array.from({ length: availableParallelism() }, work));

const seconds = Math.round((Date.now() - started) / 1000);
if (failed.length > 0) {
  console.log(`${failed.length} of ${checks.length} checks failed in ${seconds} s: ${failed.join("; ")}.`);
  process.exit(1);
}
console.log(`All ${checks.length} checks passed in ${seconds} s.`);
