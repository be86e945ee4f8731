import { spawn } from "node:child_process";
import { readdirSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { availableParallelism } from "node:os";
import { basename, join } from "node:path";
import { root, workspacePackages } from "./workspace.mjs";

/**
 * @param {string} path a file or a folder
 * @returns {number[]} the times of change of it and all that lies in it; none where it is missing
 */
function timesOfChange(path) {
  const found = statSync(path, { throwIfNoEntry: false });
  if (!found) return [];
  if (!found.isDirectory()) return [found.mtimeMs];
  const inside = readdirSync(path).flatMap((name) => timesOfChange(join(path, name)));
  // A folder's own time moves when a file is taken out of it.
  return [found.mtimeMs, ...inside];
}

/** @param {import("./workspace.mjs").Package} each */
function isStale({ folder, manifest }) {
  const at = join(root, folder);
  const entries = (manifest.tsup?.entry ?? []).map((entry) => basename(entry, ".ts"));
  const wanted = entries.map((entry) => join(at, "dist", `${entry}.js`));
  const built = wanted.map((file) => statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? 0);
  const declared = manifest.exports ? timesOfChange(join(at, "dist", "index.d.ts")) : built;
  const oldestOutput = Math.min(...built, ...(declared.length > 0 ? declared : [0]));
  const inputs = [join(at, "src"), join(at, "package.json"), join(root, "tsconfig.base.json")];
  return Math.max(...inputs.flatMap(timesOfChange)) > oldestOutput;
}

/** Every package whose dist is missing or older than its source. */
export function stalePackages() {
  return workspacePackages().filter((each) => each.manifest.tsup && isStale(each));
}

/**
 * Builds packages side by side; none needs another's dist, since their imports of each other stay imports.
 * @param {import("./workspace.mjs").Package[]} packages
 * @returns {Promise<boolean>} whether all of them were built
 */
export async function build(packages) {
  const waiting = [...packages];
  let allBuilt = true;
  async function work() {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      const { status, words } = await tsup(join(root, next.folder));
      if (status === 0) continue;
      allBuilt = false;
      const plain = words.split("\n").filter((line) => line !== "" && !/^\s+at /.test(line));
      process.stderr.write(`${next.name} was not built:\n${plain.join("\n")}\n`);
    }
  }
  await Promise.all(Array.from({ length: availableParallelism() }, work));
  return allBuilt;
}

/**
 * @param {string} folder
 * @returns {Promise<{ status: number | null, words: string }>}
 */
function tsup(folder) {
  const bin = createRequire(import.meta.url).resolve("tsup/dist/cli-default.js");
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [bin, "--silent"], {
      cwd: folder,
      stdio: ["ignore", "pipe", "pipe"],
    });
    let words = "";
    child.stdout.on("data", (chunk) => (words += chunk));
    child.stderr.on("data", (chunk) => (words += chunk));
    child.on("error", reject);
    child.on("close", (status) => resolve({ status, words }));
  });
}

if (process.argv[1] === new URL(import.meta.url).pathname) {
  const packages = workspacePackages().filter((each) => each.manifest.tsup);
  if (!(await build(packages))) process.exit(1);
  process.stderr.write(`Built ${packages.map((each) => each.name).join(", ")}.\n`);
}
