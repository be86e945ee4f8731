/** Fails where a package imports what the table of imports does not allow it; first proves that it can fail. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { importFaults } from "./import-table.mjs";
import { root, workspacePackages } from "./workspace.mjs";

/** @param {string} name @param {string[]} ours @param {string[]} [others] */
function made(name, ours, others = []) {
  const all = [...ours.map((each) => `@sheetwright/${each}`), ...others];
  const dependencies = Object.fromEntries(all.map((each) => [each, "1"]));
  return { name, manifest: { name: `@sheetwright/${name}`, dependencies } };
}

/**
 * The package, what its src/a.ts says, and words of the fault that must be found; no words where it is in order.
 * @type {[ReturnType<typeof made>, string, string?][]}
 */
const cases = [
  [made("measure", []), `export * from "./sizes/sheet.js";`],
  [made("svg", ["measure", "packing"]), `import type { Packing } from "@sheetwright/packing";`],
  [made("svg", ["packing"]), `export type Drawn = import("@sheetwright/packing").Packing;`],
  [made("svg", ["packing"]), `export type { Packing } from "@sheetwright/packing";`],
  [made("planner", ["packing"]), `import { verify } from "@sheetwright/packing";`],
  [made("cards", ["shapes"]), `import { readOutline } from "@sheetwright/shapes/svg";`],
  [made("cli", ["svg"], ["zod"]), `import { readFile } from "node:fs/promises"; import { z } from "zod";`],
  [made("packing", ["measure"]), "", "packing may not depend on measure"],
  [made("packing", []), `import { ticks } from "@sheetwright/measure";`, "packing may not import measure"],
  [made("packing", []), `\n\nexport * from "@sheetwright/measure";`, "a.ts:3"],
  [
    made("nesting", []),
    `import type { Ticks } from "@sheetwright/measure";`,
    "nesting may not import measure",
  ],
  [made("svg", ["packing"]), `import { verify } from "@sheetwright/packing";`, "only types of packing"],
  [made("svg", ["packing"]), `import { type Packing } from "@sheetwright/packing";`, "only types of packing"],
  [made("svg", ["packing"]), `export * from "@sheetwright/packing";`, "only types of packing"],
  [
    made("svg", ["packing"]),
    `const { verify } = await import("@sheetwright/packing");`,
    "only types of packing",
  ],
  [made("svg", []), `import type { Packing } from "@sheetwright/packing";`, "not among the dependencies"],
  [made("cards", ["packing"]), "", "cards may not depend on packing"],
  [made("workbench", ["cli"]), `import { run } from "@sheetwright/cli";`, "workbench may not import cli"],
  [made("measure", []), `import { readFileSync } from "node:fs";`, "does without Node"],
  [made("measure", []), `import { join } from "path";`, "does without Node"],
  [made("measure", []), `/// <reference types="node" />`, "does without Node"],
  [made("measure", []), `import { z } from "zod";`, "zod is imported but is not among the dependencies"],
  [made("packing", []), `import { ticks } from "../../measure/src/ticks.js";`, "leaves the package's src"],
  [made("packing", []), `import { guillotine } from "../test/guillotine.js";`, "leaves the package's src"],
  [made("packing", []), `import { yields } from "../../../bench/src/yields.js";`, "imported by nobody"],
  [made("cli", []), `import pieces from "../../../test-fixtures/pieces.json";`, "imported by nobody"],
  [made("cli", []), `const name = "zod"; await import(name);`, "must name what it loads"],
  [made("packing", []), `import { pack } from "@sheetwright/packing";`, "imports itself"],
  [made("bundle", []), "", "has no package bundle"],
];

const missed = cases.flatMap(([each, text, words]) => {
  const faults = importFaults([each], [{ path: `packages/${each.name}/src/a.ts`, text }]);
  const asWanted = words === undefined ? faults.length === 0 : faults.some((fault) => fault.includes(words));
  if (asWanted) return [];
  return [
    `The check itself is broken: ${each.name} with '${text}' gives [${faults}], wanted ${words ?? "nothing"}.`,
  ];
});

const packages = workspacePackages()
  .filter(({ folder }) => folder.startsWith("packages/"))
  .map(({ folder, manifest }) => ({ name: folder.slice("packages/".length), manifest }));
const sources = packages.flatMap(({ name }) => {
  const src = `packages/${name}/src`;
  return readdirSync(join(root, src), { recursive: true, encoding: "utf8" })
    .map((file) => `${src}/${file.replaceAll("\\", "/")}`)
    .filter((path) => /\.[cm]?[jt]sx?$/.test(path))
    .map((path) => ({ path, text: readFileSync(join(root, path), "utf8") }));
});

const faults = [...missed, ...importFaults(packages, sources)];
for (const fault of faults) console.log(fault);
if (faults.length > 0) process.exit(1);
console.log(`${cases.length} made-up cases judged rightly; ${sources.length} files keep to the table.`);
