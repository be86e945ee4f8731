/**
 * Proves that the lint of core packages finds each thing that differs from engine to engine or from place to place,
 * and lets pass what does not; and that no source switches that lint off. The lint itself runs with all others.
 */
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "./workspace.mjs";

const exact = "abs ceil floor round trunc min max sign sqrt imul clz32 PI".split(" ");
const newer = ["f16round", "sumPrecise"];
const inexact = [...Object.getOwnPropertyNames(Math), ...newer].filter((name) => !exact.includes(name));
const prototypes = [String, Number, BigInt, Array, Uint8Array, Object, Date].map((each) => each.prototype);
const locale = new Set(
  prototypes.flatMap((each) => [
    ...Object.getOwnPropertyNames(each),
    ...Object.getOwnPropertyNames(Object.getPrototypeOf(each) ?? {}),
  ]),
);

/** One statement a line; each must be found. */
const forbidden = [
  ...inexact.map((name) => `export const math_${name} = Math.${name};`),
  ...[...locale].filter((name) => /locale/i.test(name)).map((name) => `export const ${name}_ = x.${name}();`),
  "export const a = Math['sin'](x);",
  "export const b = Math;",
  "export const { cos } = Math;",
  "export const c = Math.floor(Math.max(1, Math.tan(x)));",
  "export const d = [1].map(Math.log);",
  "export const e = Math?.hypot(x, 1);",
  "export const f = x ** 2;",
  "export const g = Math.round(x ** 0.5);",
  "x **= 2;",
  "export const h = x['toLocaleString']();",
  "export const { toLocaleString } = x;",
  "export const { localeCompare: i } = 'x';",
  "export const j = ['b', 'a'].sort((p, q) => p.localeCompare(q));",
  "export const k = Date.now();",
  "export const l = new Date();",
  "export const m = new Intl.Collator();",
  "export const n = globalThis.Math.sin(x);",
  "export const o = new WeakRef({});",
  "export const p = new FinalizationRegistry(() => {});",
];

/** One statement a line; none may be found. */
const allowed = [
  ...exact.map((name) => `export const math_${name} = Math.${name};`),
  "export const a = Math.round(Math.sqrt(x * x)) * Math.PI;",
  "export const b = [1].map(Math.abs);",
  "export const c = 'Math.sin ** Date';",
  "export const d = x.toString();",
  "export const e = x * x;",
];

const place = mkdtempSync(join(tmpdir(), "exact-arithmetic-"));
try {
  for (const file of ["biome.json", ".gitignore", ".ci/exact-arithmetic.grit"]) {
    cpSync(join(root, file), join(place, file));
  }
  const core = readdirSync(join(root, "packages")).filter((name) => name !== "cli" && name !== "workbench");
  const written = core.map((name) => [
    write(`packages/${name}/src/forbidden.ts`, forbidden),
    write(`packages/${name}/src/allowed.ts`, allowed),
  ]);
  const found = lint();
  const faults = written.flat().flatMap(({ path, statements }) =>
    statements.flatMap((statement, i) => {
      const wanted = statements === forbidden;
      if (found.has(`${path}:${i + 2}`) === wanted) return [];
      return [`${path}: '${statement}' is ${wanted ? "not found" : "found"} by the lint`];
    }),
  );
  faults.push(...silenced(core));
  for (const fault of faults) console.log(fault);
  if (faults.length > 0) process.exitCode = 1;
  else
    console.log(
      `${forbidden.length} forbidden and ${allowed.length} allowed lines judged rightly in ${core.join(", ")}.`,
    );
} finally {
  rmSync(place, { recursive: true });
}

/** @param {string} path @param {string[]} statements */
function write(path, statements) {
  mkdirSync(join(place, path, ".."), { recursive: true });
  writeFileSync(join(place, path), ["let x = 1;", ...statements].join("\n"));
  return { path, statements };
}

/** @returns {Set<string>} path:line of each finding of the exact arithmetic plugin and of the denied globals */
function lint() {
  const bin = createRequire(import.meta.url).resolve("@biomejs/biome/bin/biome");
  const words = ["lint", "--reporter=json", "--max-diagnostics=none", "packages"];
  const { stdout } = spawnSync(process.execPath, [bin, ...words], { cwd: place, encoding: "utf8" });
  /** @type {{ diagnostics: { category: string, severity: string, location: { path: string, start: { line: number } } }[] }} */
  const { diagnostics } = JSON.parse(stdout);
  const ours = diagnostics.filter(
    ({ category, severity }) =>
      severity === "error" && (category === "plugin" || category === "lint/style/noRestrictedGlobals"),
  );
  return new Set(ours.map(({ location }) => `${location.path.replaceAll("\\", "/")}:${location.start.line}`));
}

/** @param {string[]} core @returns {string[]} where a comment switches the lint off */
function silenced(core) {
  return core.flatMap((name) => {
    const src = join(root, "packages", name, "src");
    return readdirSync(src, { recursive: true, encoding: "utf8" })
      .filter((file) => file.endsWith(".ts"))
      .flatMap((file) =>
        readFileSync(join(src, file), "utf8")
          .split("\n")
          .flatMap((line, i) =>
            /biome-ignore\S*\s+(lint\/plugin|plugin|lint\/style\/noRestrictedGlobals|lint\s*:)/.test(line)
              ? [
                  `packages/${name}/src/${file}:${i + 1}: switches off the lint that keeps results the same everywhere`,
                ]
              : [],
          ),
      );
  });
}
