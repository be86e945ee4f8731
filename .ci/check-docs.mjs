/**
 * Fails where a page says what is not so: a dependency without its reason, a dead link, a command or option that does not
 * exist, an example that gives something else. First proves that it can fail. Looks at the built packages.
 */
import { execFileSync, spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { commandFaults, dependencyFaults, exampleFaults, linkFaults } from "./documentation.mjs";
import { root, workspacePackages } from "./workspace.mjs";

/** @typedef {import("./documentation.mjs").Page} Page */

/** @param {string} text @returns {Page} */
const page = (text) => ({ path: "docs/a.md", text });

/** @param {string} text */
function linked(text) {
  const b = { path: "docs/b.md", text: "# What is b?\n## Cuts & `kerf`\n```sh\n# no heading\n```\n" };
  /** @type {[string, Page | undefined][]} */
  const files = [
    ["docs/a.md", page(text)],
    ["docs/b.md", b],
    ["LICENSE", undefined],
    ["docs/images/a.svg", undefined],
  ];
  return linkFaults(page(text), new Map(files));
}

/** @param {string} text */
function commanded(text) {
  const plan = new Set(["--out", "--help"]);
  const sheetwright = { "": new Set(["--help"]), plan };
  return commandFaults(page(text), { scripts: ["test", "demo", "sheetwright"], programs: { sheetwright } });
}

/** @param {string} text */
function explained(text) {
  const manifest = { name: "a", dependencies: { zod: "1" }, devDependencies: { ajv: "1" } };
  return dependencyFaults(page(text), [{ folder: "packages/a", manifest }]);
}

/** @param {string} code */
const run = (code) => exampleFaults(page(`\`\`\`js\n${code}\n\`\`\``), async () => ({ two: 2 }));

const zod = "## packages/a\n\n| `zod` | run-time | Checks the data. |\n";
const ajv = "| `ajv` | development | Checks the schema. |\n";

/**
 * What is judged, and words of the fault that must be found; no words where it is in order.
 * @type {[readonly string[], string?][]}
 */
const cases = [
  [linked("[b](b.md), [it](../LICENSE), [c](b.md#cuts--kerf 'kerf'), ![a](images/a.svg), [all](../docs/)")],
  [linked("[w](https://example.org/a.md), `[no](link.md)`, [top](#top)\n# Top\n```\n[no](link.md)\n```")],
  [linked("see [b](c.md)"), "docs/a.md:1: the link to c.md leads to no file"],
  [linked("[![a](images/b.svg)](b.md)"), "images/b.svg leads to no file"],
  [linked("\n[b][1]\n\n[1]: ../b.md"), "docs/a.md:4: the link to ../b.md leads to no file"],
  [linked('<img src="a.svg">'), "a.svg leads to no file"],
  [linked("[b](/docs/b.md)"), "leads to no file"],
  [linked("[b](b.md#no-heading)"), "leads to no heading"],
  [linked("[b](#what-is-b)"), "leads to no heading"],
  [commanded("```sh\nnpm test\nFC_RUNS=9 npm run -s sheetwright -- plan --out a # --no\n```")],
  [commanded("`npm run demo && sheetwright plan --out=a`, `sheetwright ...`\n\n    sheetwright --help\n")],
  [
    commanded("```sh\nnpm run sheetwright -- plan --to a\n```"),
    "docs/a.md:2: sheetwright plan has no option --to",
  ],
  [
    commanded("```sh\nsheetwright plan \\\n  --to a\n```"),
    "docs/a.md:2: sheetwright plan has no option --to",
  ],
  [commanded("say `sheetwright plan -o a`"), "sheetwright plan has no option -o"],
  [commanded("text\n\n    sheetwright --out a"), "docs/a.md:3: sheetwright has no option --out"],
  [commanded("```sh\nsheetwright nest --out a\n```"), "sheetwright has no command nest"],
  [commanded("```sh\nnpm run draw\n```"), "there is no script draw to run"],
  [explained(zod + ajv)],
  [explained(zod), "does not say what packages/a needs ajv for"],
  [explained(`${zod}## bench\n${ajv}`), "does not say what packages/a needs ajv for"],
  [explained(`${zod}${ajv}## packages/b\n${ajv}`), "packages/b is no package"],
  [explained(zod + ajv.replace("development", "run-time")), "docs/a.md:4: ajv is a development dependency"],
  [explained(zod + ajv.replace("Checks the schema.", "")), "docs/a.md:4: ajv needs a sentence"],
  [explained(`${zod}${ajv}| \`ajw\` | run-time | Checks the rest. |`), "does not depend on ajw"],
  [
    await run(
      'import { two as zwei } from "a";\nconst four = zwei +\n  zwei;\nfour // => 4\n({ four }); // => { four: 4 }',
    ),
  ],
  [await run("null.x // throws TypeError: Cannot read\nawait Promise.resolve([1]); // => [1]")],
  [await run("1 + 1 // => 3"), "docs/a.md:2: the example does not hold: 1 + 1 gives 2"],
  [await run('import { three } from "a";\nthree // => 3'), "gives undefined"],
  [await run("null.x // throws RangeError"), "throws TypeError"],
  [await run("1 // throws TypeError"), "throws nothing"],
  [await run("const a = 1;"), "checks nothing"],
  [await run("1 // => 1\nconst a ="), "ends within a statement"],
  [await run("no.thing();\n1 // => 1"), "no is not defined"],
];
const missed = cases.flatMap(([faults, words], i) => {
  if (words === undefined ? faults.length === 0 : faults.some((fault) => fault.includes(words))) return [];
  return [
    `The check itself is broken: case ${i} gives [${faults.join("; ")}], wanted ${words ?? "nothing"}.`,
  ];
});

/** @param {string} bin @param {readonly string[]} words @returns {string} */
function help(bin, words) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, bin), ...words, "--help"], {
    cwd: root,
    encoding: "utf8",
  });
  if (status === 0) return stdout;
  const reason = stderr.split("\n").find((line) => /Error/.test(line)) ?? `exit code ${status}`;
  console.log(`${[bin, ...words].join(" ")} --help does not run, so no command can be judged: ${reason}`);
  process.exit(1);
}

/** What a program says that it knows. @param {string} bin @returns {import("./documentation.mjs").Program} */
function programOf(bin) {
  /** @param {string} text */
  const optionsIn = (text) => new Set([...text.matchAll(/^ +(--[a-z-]+)/gm)].map((match) => match[1] ?? ""));
  const overview = help(bin, []);
  const list = overview.slice(overview.indexOf("Commands:"));
  const commands = [...list.matchAll(/^ {2}([a-z]+(?:-[a-z]+)*)/gm)].map((match) => match[1] ?? "");
  const own = commands.filter((name) => name !== "help").map((name) => [name, optionsIn(help(bin, [name]))]);
  return Object.fromEntries([["", optionsIn(overview)], ["help", new Set()], ...own]);
}

const listed = execFileSync("git", ["ls-files", "-z", "--cached", "--others", "--exclude-standard"], {
  cwd: root,
  encoding: "utf8",
});
const paths = listed.split("\0").filter((path) => path !== "" && existsSync(join(root, path)));
/** @type {Map<string, Page | undefined>} */
const files = new Map(
  paths.map((path) => {
    if (!path.endsWith(".md")) return [path, undefined];
    return [path, { path, text: readFileSync(join(root, path), "utf8") }];
  }),
);
const pages = [...files.values()].filter((each) => each !== undefined);

const packages = workspacePackages();
/** @type {import("./workspace.mjs").Manifest & { readonly scripts: Record<string, string> }} */
const manifest = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
const known = {
  scripts: Object.keys(manifest.scripts),
  programs: {
    sheetwright: programOf("packages/cli/dist/bin.js"),
    bench: programOf("bench/dist/main.js"),
  },
};

/** @param {string} name @returns {Promise<Record<string, unknown>>} */
function load(name) {
  const from = packages.find((each) => `${name}/`.startsWith(`${each.name}/`));
  if (!from) return import(name);
  // A package, or a part of it such as @sheetwright/shapes/svg.
  const part = name.slice(from.name.length + 1);
  return import(pathToFileURL(join(root, from.folder, "dist", part, "index.js")).href);
}

const dependencies = files.get("docs/dependencies.md") ?? { path: "docs/dependencies.md", text: "" };
const faults = [
  ...missed,
  ...pages.flatMap((each) => [...linkFaults(each, files), ...commandFaults(each, known)]),
  ...dependencyFaults(dependencies, [{ folder: "The root", manifest }, ...packages]),
  ...(await Promise.all(pages.map((each) => exampleFaults(each, load)))).flat(),
];
for (const fault of faults) console.log(fault);
if (faults.length > 0) process.exit(1);
console.log(`${cases.length} made-up cases judged rightly; ${pages.length} pages say what is so.`);
