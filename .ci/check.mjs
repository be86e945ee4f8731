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
 * The build stands alone at the start: the others look at what it made. Then the longest first, so that the wait at
 * the end is short.
 * @typedef {{ readonly heading: string, readonly command: import("./run-tool.mjs").Command }} Check
 */

/** @type {Check} */
const build = { heading: "Build", command: script("build.mjs") };

/** @type {readonly Check[]} */
const checks = [
  { heading: "Packages as published", command: script("check-packages.mjs") },
  { heading: "Types of the core packages, without Node or a page", command: types("tsconfig.core.json") },
  { heading: "Types of the command", command: types("packages/cli") },
  { heading: "Types of the benchmark", command: types("bench") },
  { heading: "Types of the tests and of .ci", command: types(".") },
  {
    heading: "Format and lint",
    command: tool(import.meta.resolve("@biomejs/biome/package.json"), "biome", ["ci", "--colors=off"]),
  },
  {
    heading: "Unused files, exports and dependencies",
    command: tool(new URL("../node_modules/knip/package.json", import.meta.url).href, "knip", [
      "--no-progress",
    ]),
  },
  { heading: "Table of imports", command: script("check-imports.mjs") },
  { heading: "Lint of exact arithmetic", command: script("check-exact-arithmetic.mjs") },
  { heading: "Tree", command: script("check-tree.mjs") },
  { heading: "Documentation", command: script("check-docs.mjs") },
];

const started = Date.now();
const waiting = [...checks];
/** @type {string[]} */
const failed = [];

/** @param {Check} check */
async function run({ heading, command }) {
  const began = Date.now();
  const { status, words } = await runTool(command, root);
  if (status !== 0) failed.push(heading);
  const outcome = status === 0 ? "passed" : "FAILED";
  const seconds = ((Date.now() - began) / 1000).toFixed(1);
  process.stdout.write(`== ${heading}: ${outcome} in ${seconds} s\n${words === "" ? "" : `${words}\n`}`);
}

async function work() {
  for (let next = waiting.shift(); next; next = waiting.shift()) await run(next);
}

await run(build);
await Promise.all(Array.from({ length: availableParallelism() }, work));

const total = checks.length + 1;
const seconds = Math.round((Date.now() - started) / 1000);
if (failed.length > 0) {
  console.log(`${failed.length} of ${total} checks failed in ${seconds} s: ${failed.join("; ")}.`);
  process.exit(1);
}
console.log(`All ${total} checks passed in ${seconds} s.`);
