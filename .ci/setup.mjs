/**
 * Makes a fresh clone ready: run before `npm test`, `npm run demo` and the like, needs nothing but Node and npm.
 * Installs where the lock file is newer than what is installed; with --build also builds what is older than its
 * source. Says nothing when there is nothing to do, and talks only to stderr, so that data on stdout stays clean.
 * Written in plain old syntax: an old Node must get as far as the sentence that says it is too old.
 */
import { spawnSync } from "node:child_process";
import { readFileSync, statSync, utimesSync } from "node:fs";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const installed = "node_modules/.modules.yaml";

/** @param {string} message */
function leave(message) {
  process.stderr.write(`${message}\n`);
  process.exit(1);
}

/** @param {string} path seen from the root */
function timeOfChange(path) {
  try {
    return statSync(root + path).mtimeMs;
  } catch {
    return 0;
  }
}

function demandNode() {
  const found = process.versions.node;
  const [major = 0, minor = 0] = found.split(".").map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  leave(
    `Sheetwright needs Node 20.19 or newer; this is Node ${found}. Install a newer one, then run this again.`,
  );
}

function install() {
  const pnpm = JSON.parse(readFileSync(`${root}package.json`, "utf8")).packageManager;
  process.stderr.write(
    `Installing what the project needs with ${pnpm}; the first time takes about half a minute.\n`,
  );
  const words = ["--yes", pnpm, "install", "--frozen-lockfile"];
  const env = { ...process.env };
  delete env.NODE_ENV; // "production" would leave the development tools out
  /** @type {import("node:child_process").SpawnSyncOptions} */
  const options = { cwd: root, env, stdio: ["ignore", 2, 2] };
  // The npm that runs this script brings its own npx, so that none has to be found on the PATH.
  const npm = process.env.npm_execpath || "";
  const { status, error } = npm.endsWith("npm-cli.js")
    ? spawnSync(process.execPath, [npm.replace(/npm-cli\.js$/, "npx-cli.js"), ...words], options)
    : spawnSync("npx", words, { ...options, shell: process.platform === "win32" });
  if (error)
    leave(
      `npx could not be started (${error.message}). It comes with npm; install npm, then run this again.`,
    );
  if (status !== 0)
    leave("The install failed, as told above. It needs a network; run this again once that is mended.");
  // pnpm leaves the file alone when nothing changed; its time is what the next run compares.
  utimesSync(root + installed, new Date(), new Date());
}

async function buildWhatIsStale() {
  const { build, stalePackages } = await import("./build.mjs");
  const stale = stalePackages();
  if (stale.length === 0) return;
  process.stderr.write(`Building ${stale.map((each) => each.name).join(", ")}.\n`);
  if (!(await build(stale))) leave("The build failed, as told above.");
}

demandNode();
if (timeOfChange(installed) < timeOfChange("pnpm-lock.yaml")) install();
if (process.argv.includes("--build")) buildWhatIsStale();
