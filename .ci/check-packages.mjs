/**
 * Packs every published package as it would be published, lets two linters judge the tarballs, then installs them
 * in an empty folder and uses them there as a stranger would: the command, import, require, and strict types.
 */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { publint } from "publint";
import { formatMessage } from "publint/utils";
import { npm, pnpm, runTool, succeed, tool } from "./run-tool.mjs";
import { root, workspacePackages } from "./workspace.mjs";

const published = workspacePackages().filter((each) => !each.manifest.private);
const place = mkdtempSync(join(tmpdir(), "packages-"));
/** @type {string[]} */
const faults = [];
try {
  const tarballs = await pack();
  await Promise.all([...tarballs.map(lint), useAsStranger(tarballs)]);
} catch (error) {
  faults.push(error instanceof Error ? error.message : String(error));
} finally {
  rmSync(place, { recursive: true });
}
for (const fault of faults) console.log(fault);
if (faults.length > 0) process.exit(1);
console.log(`${published.map((each) => each.name).join(", ")} work from their tarballs.`);

/** @typedef {import("./workspace.mjs").Package & { tarball: string }} Packed */

/** @returns {Promise<Packed[]>} */
async function pack() {
  const folder = join(place, "tarballs");
  mkdirSync(folder);
  const filters = published.map((each) => `--filter=${each.name}`);
  await succeed(pnpm([...filters, "--recursive", "pack", "--pack-destination", folder]), root);
  return published.map((each) => {
    const { name, version } = JSON.parse(readFileSync(join(root, each.folder, "package.json"), "utf8"));
    return { ...each, tarball: join(folder, `${name.slice(1).replace("/", "-")}-${version}.tgz`) };
  });
}

/** @param {Packed} packed */
async function lint({ name, tarball }) {
  const bytes = readFileSync(tarball);
  const copy = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
  const { messages, pkg } = await publint({ pack: { tarball: copy }, strict: true });
  for (const message of messages)
    faults.push(`${name}: ${formatMessage(message, /** @type {any} */ (pkg), { color: false })}`);
  const { status, words } = await runTool(
    tool(import.meta.resolve("@arethetypeswrong/cli/package.json"), "attw", [
      tarball,
      "--profile",
      "esm-only",
      "--no-color",
      "--no-emoji",
    ]),
    root,
  );
  if (status !== 0) faults.push(`${name}: its types resolve wrongly:\n${words}`);
}

/** @param {Packed[]} packed */
async function useAsStranger(packed) {
  const folder = join(place, "stranger");
  mkdirSync(folder);
  writeFileSync(join(folder, "package.json"), JSON.stringify({ private: true, type: "module" }));
  await succeed(npm(["install", "--no-audit", "--no-fund", ...packed.map((each) => each.tarball)]), folder);
  const libraries = packed.filter((each) => each.manifest.exports).map((each) => each.name);
  await Promise.all([
    load(folder, libraries),
    typeCheck(folder, libraries),
    askForHelp(folder, packed),
    planInThreads(folder),
  ]);
}

/** Both ways of loading must give the same, and something. @param {string} folder @param {string[]} libraries */
async function load(folder, libraries) {
  const script = `
    import { createRequire } from "node:module";
    const require = createRequire(import.meta.url);
    for (const name of ${JSON.stringify(libraries)}) {
      const imported = Object.keys(await import(name)).sort();
      const required = Object.keys(require(name)).filter((key) => key !== "__esModule").sort();
      if (imported.length === 0) throw new Error(name + " exports nothing");
      if (String(imported) !== String(required)) throw new Error(name + " gives require() another face");
    }`;
  writeFileSync(join(folder, "load.mjs"), script);
  await succeed([process.execPath, ["load.mjs"]], folder);
}

/** The published declarations stand on their own, without Node or a page. @param {string} folder @param {string[]} libraries */
async function typeCheck(folder, libraries) {
  const compilerOptions = {
    strict: true,
    skipLibCheck: false,
    exactOptionalPropertyTypes: true,
    noUncheckedIndexedAccess: true,
    module: "nodenext",
    target: "es2022",
    lib: ["es2023"],
    types: [],
    noEmit: true,
  };
  const core = libraries.filter((name) => !["@sheetwright/cli", "@sheetwright/workbench"].includes(name));
  const lines = core.map((name, i) => `import * as library${i} from "${name}";\nexport { library${i} };`);
  writeFileSync(join(folder, "use.ts"), lines.join("\n"));
  writeFileSync(join(folder, "tsconfig.json"), JSON.stringify({ compilerOptions, files: ["use.ts"] }));
  await succeed(tool(import.meta.resolve("typescript/package.json"), "tsc", ["--project", folder]), folder);
}

/** @param {string} folder @param {Packed[]} packed */
async function askForHelp(folder, packed) {
  for (const command of packed.flatMap((each) => Object.keys(each.manifest.bin ?? {}))) {
    const words = await succeed(npm(["exec", "--offline", "--", command, "--help"]), folder);
    if (!words.includes(command))
      faults.push(`${command} --help does not name the command; it says:\n${words}`);
  }
}

/** Threads find their worker in the package, and change nothing. @param {string} folder */
async function planInThreads(folder) {
  // Sizes of which no plan in strips is proven, in so many copies that threads are worth it.
  const rows = Array.from({ length: 11 }, (_, i) => [17 + ((i * 37) % 41), 19 + ((i * 53) % 47), 9 + i]);
  const list = rows.map(([width, height, copies], i) => `piece ${i + 1},${width},${height},${copies},no`);
  writeFileSync(join(folder, "pieces.csv"), ["name,width,height,quantity,turn", ...list].join("\n"));
  const plans = await Promise.all(
    ["1", "2"].map(async (jobs) => {
      const words = [
        "--pieces",
        "pieces.csv",
        "--sheet",
        "110x80mm",
        "--unit",
        "mm",
        "--mode",
        "shelf",
        "--jobs",
        jobs,
      ];
      const out = `jobs-${jobs}`;
      await succeed(npm(["exec", "--offline", "--", "sheetwright", "plan", ...words, "--out", out]), folder);
      return readFileSync(join(folder, out, "plan.json"), "utf8");
    }),
  );
  if (!/"ended": *"finished"/.test(plans[0] ?? ""))
    faults.push("the plan over threads is too easy for threads");
  if (plans[0] !== plans[1]) faults.push("a plan over two threads differs from that without");
}
