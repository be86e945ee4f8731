/** Fails where the tree holds what does not belong: stray entries at the root, words of one machine, loose ends. */
import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./workspace.mjs";

const folders = [".ci", "packages", "docs", "bench", "test-fixtures"];
const files = [
  "README.md DEVELOPERS.md LICENSE NOTICE CHANGELOG.md package.json pnpm-workspace.yaml pnpm-lock.yaml",
  "tsconfig.json tsconfig.base.json tsconfig.core.json vitest.config.ts biome.json knip.json typedoc.json",
  ".gitignore .gitattributes .npmrc",
].flatMap((names) => names.split(" "));

// Put together from parts, so that this file does not hold what it looks for.
const place = `(^|[^\\w.~-])/(${["work", "home", "root", "Users", "tmp"].join("|")})/\\w`;
const host = ["(^|[^\\w])registry", "[a-z0-9.-]+", "[a-z]{2,}"].join("\\.");
const looseEnd = [["TO", "DO"].join(""), ["FIX", "ME"].join("")].map((word) => `\\b${word}\\b`).join("|");
const words = [
  { pattern: new RegExp(place), fault: "holds a path of one machine" },
  { pattern: new RegExp(host), fault: "holds the host of a package registry" },
  { pattern: new RegExp(looseEnd), fault: "leaves something open" },
];

/** @param {string} path @param {string} text @returns {string[]} */
function faultsOf(path, text) {
  const entry = path.split("/")[0] ?? "";
  const known = path.includes("/") ? folders.includes(entry) : files.includes(entry);
  const faults = known ? [] : [`${path}: ${entry} has no place at the root`];
  text.split("\n").forEach((line, i) => {
    for (const { pattern, fault } of words) if (pattern.test(line)) faults.push(`${path}:${i + 1}: ${fault}`);
  });
  if (path === "pnpm-lock.yaml" && /https?:/.test(text)) faults.push(`${path}: holds an address`);
  return faults;
}

/** @type {[path: string, text: string][]} */
const bad = [
  ["stray.txt", ""],
  ["src/index.ts", ""],
  ["docs/a.md", `see ${["", "home", "me", "plan.svg"].join("/")}`],
  ["docs/a.md", `from https://${["registry", "example", "org"].join(".")}`],
  ["packages/svg/src/a.ts", `// ${["TO", "DO"].join("")}: draw`],
  ["pnpm-lock.yaml", "  resolved: https://example.org"],
];
/** @type {[path: string, text: string][]} */
const good = [
  ["README.md", "see https://example.org/home/page and packages/work/src, ./tmp/, out/tmp/a"],
  ["packages/svg/src/a.ts", "export const homeOf = 1;"],
];
const missed = [
  ...bad.filter(([path, text]) => faultsOf(path, text).length === 0),
  ...good.filter(([path, text]) => faultsOf(path, text).length > 0),
].map(([path, text]) => `The check itself is broken: it misjudges ${path} with '${text}'.`);

const listed = execFileSync("git", ["ls-files", "-z"], { cwd: root, encoding: "utf8" })
  .split("\0")
  .filter((path) => path !== "" && existsSync(join(root, path)));
const faults = listed.flatMap((path) => faultsOf(path, readFileSync(join(root, path), "utf8")));
for (const fault of [...missed, ...faults]) console.log(fault);
if (missed.length + faults.length > 0) process.exit(1);
console.log(`${listed.length} files belong where they are.`);
