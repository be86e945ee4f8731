import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { root } from "./workspace.mjs";

/**
 * A program and its words.
 * @typedef {readonly [program: string, words: readonly string[]]} Command
 */

/**
 * A tool that the workspace installed, run by this Node whatever the platform.
 * @param {string} manifest the address of the tool's package.json, as import.meta.resolve gives it
 * @param {string} command one of the commands of that package
 * @param {readonly string[]} words
 * @returns {Command}
 */
export function tool(manifest, command, words) {
  const at = fileURLToPath(manifest);
  const { bin } = JSON.parse(readFileSync(at, "utf8"));
  return [process.execPath, [join(dirname(at), bin[command]), ...words]];
}

/** npm as it came with this Node. @param {readonly string[]} words @returns {Command} */
export function npm(words) {
  const running = process.env.npm_execpath ?? "";
  if (running.endsWith("npm-cli.js")) return [process.execPath, [running, ...words]];
  return process.platform === "win32"
    ? [process.execPath, [join(dirname(process.execPath), "node_modules/npm/bin/npm-cli.js"), ...words]]
    : ["npm", words];
}

/** The pinned pnpm, which need not be installed. @param {readonly string[]} words @returns {Command} */
export function pnpm(words) {
  const { packageManager } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  return npm(["exec", "--yes", "--", packageManager, ...words]);
}

/**
 * @param {Command} command @param {string} folder to run it in
 * @returns {Promise<{ readonly status: number, readonly words: string }>} what it said on both streams
 */
export function runTool([program, words], folder) {
  return new Promise((resolve) => {
    const child = spawn(program, words, { cwd: folder, stdio: ["ignore", "pipe", "pipe"] });
    let said = "";
    child.stdout.setEncoding("utf8").on("data", (chunk) => (said += chunk));
    child.stderr.setEncoding("utf8").on("data", (chunk) => (said += chunk));
    child.on("error", (error) => resolve({ status: 1, words: error.message }));
    child.on("close", (status) => resolve({ status: status ?? 1, words: said.trimEnd() }));
  });
}

/**
 * @param {Command} command @param {string} folder to run it in
 * @returns {Promise<string>} what it said
 * @throws {Error} with what it said, when it fails
 */
export async function succeed(command, folder) {
  const { status, words } = await runTool(command, folder);
  if (status !== 0) throw new Error(`'${[command[0], ...command[1]].join(" ")}' failed:\n${words}`);
  return words;
}
