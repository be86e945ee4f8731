import { posix } from "node:path";
import { inspect, isDeepStrictEqual } from "node:util";

/**
 * @typedef {{ readonly path: string, readonly text: string }} Page a Markdown file and its path from the root
 * @typedef {{ readonly language: string, readonly line: number, readonly lines: readonly string[] }} Fence
 *   a block of code between fences; `line` is that of its first line of code
 * @typedef {Readonly<Record<string, ReadonlySet<string>>>} Program the options of each command of a program, those of
 *   the program itself under ""
 */

const FENCE = /^(?<indent> *)(?<mark>`{3,}|~{3,})\s*(?<language>[^\s`]*)/;

/** @param {string} text @returns {{ readonly fences: Fence[], readonly prose: string[] }} prose keeps its line numbers */
export function readMarkdown(text) {
  /** @type {Fence[]} */
  const fences = [];
  /** @type {string[]} */
  const prose = [];
  /** @type {{ mark: string, indent: number, language: string, line: number, lines: string[] } | undefined} */
  let open;
  text.split("\n").forEach((line, i) => {
    if (open) {
      if (line.trim().startsWith(open.mark)) {
        fences.push(open);
        open = undefined;
      } else open.lines.push(line.slice(open.indent));
      prose.push("");
      return;
    }
    const { mark, indent = "", language = "" } = FENCE.exec(line)?.groups ?? {};
    if (mark) open = { mark, indent: indent.length, language, line: i + 2, lines: [] };
    prose.push(mark ? "" : line);
  });
  return { fences, prose };
}

/** The anchors that a page's headings get. @param {string} text @returns {ReadonlySet<string>} */
export function anchorsOf(text) {
  const found = new Set();
  for (const line of readMarkdown(text).prose) {
    const heading = /^#{1,6}\s+(.*?)\s*#*$/.exec(line)?.[1];
    if (heading === undefined) continue;
    const plain = heading.toLowerCase().replace(/[^\p{L}\p{N}\s_-]/gu, "");
    const slug = plain.trim().replace(/\s/g, "-");
    let anchor = slug;
    for (let again = 1; found.has(anchor); again++) anchor = `${slug}-${again}`;
    found.add(anchor);
  }
  return found;
}

/**
 * Links and pictures that lead nowhere within the repository. Addresses elsewhere are not looked up.
 * @param {Page} page
 * @param {ReadonlyMap<string, Page | undefined>} files every file by its path, with its text where it is a page
 * @returns {string[]}
 */
export function linkFaults({ path, text }, files) {
  const folders = new Set([...files.keys()].flatMap(foldersOf));
  return readMarkdown(text).prose.flatMap((line, i) => {
    const plain = line.replace(/(`+)(?!`).*?\1/g, "");
    const targets = [
      ...plain.matchAll(/\]\(\s*<?([^)\s>]+)>?(?:\s+["'(][^)]*)?\s*\)/g),
      ...plain.matchAll(/^\s{0,3}\[[^\]]+\]:\s*<?([^\s>]+)/g),
      ...plain.matchAll(/\b(?:href|src)="([^"]+)"/g),
    ].map((match) => match[1] ?? "");
    return targets.flatMap((target) => {
      if (/^[a-z][a-z0-9+.-]*:/i.test(target)) return [];
      const [file = "", anchor] = target.split("#");
      const at = file === "" ? path : posix.join(posix.dirname(path), decodeURI(file)).replace(/\/$/, "");
      const fault = `${path}:${i + 1}: the link to ${target}`;
      if (file.startsWith("/") || !(files.has(at) || folders.has(at))) return [`${fault} leads to no file`];
      const landed = files.get(at)?.text;
      if (anchor === undefined || (landed !== undefined && anchorsOf(landed).has(anchor))) return [];
      return [`${fault} leads to no heading`];
    });
  });
}

/** @param {string} path @returns {string[]} the folders that it lies in, and the root */
function foldersOf(path) {
  const parts = path.split("/").slice(0, -1);
  return [".", ...parts.map((_, i) => parts.slice(0, i + 1).join("/"))];
}

/**
 * Commands that cannot be run as shown: scripts that package.json lacks, and commands and options that the program does
 * not know. Looks at `sh` fences, indented code and code in the text.
 * @param {Page} page
 * @param {{ readonly scripts: readonly string[], readonly programs: Readonly<Record<string, Program>> }} known
 *   the scripts of the root, and the programs by the script that runs them
 * @returns {string[]}
 */
export function commandFaults({ path, text }, known) {
  const { fences, prose } = readMarkdown(text);
  const shown = [
    ...fences
      .filter(({ language }) => ["sh", "bash", "console"].includes(language))
      .flatMap(({ line, lines }) => lines.map((words, i) => ({ words, line: line + i }))),
    ...prose.flatMap((words, i) => {
      const inText = [...words.matchAll(/(`+)(?!`)(.*?)\1/g)].map((match) => match[2] ?? "");
      return (words.startsWith("    ") ? [words] : inText).map((each) => ({ words: each, line: i + 1 }));
    }),
  ];
  return shown.flatMap(({ words, line }, i) => {
    // What goes on after a backslash belongs to the line above.
    if (shown[i - 1]?.words.endsWith("\\")) return [];
    let whole = words;
    for (let next = i + 1; whole.endsWith("\\") && shown[next]; next++)
      whole = whole.slice(0, -1) + shown[next]?.words;
    return whole
      .replace(/(^|\s)#.*$/, "")
      .split(/&&|;|\|/)
      .flatMap((command) => commandFault(command, known))
      .map((fault) => `${path}:${line}: ${fault}`);
  });
}

/** @param {string} command @param {Parameters<typeof commandFaults>[1]} known @returns {string[]} */
function commandFault(command, { scripts, programs }) {
  const words = command
    .trim()
    .split(/\s+/)
    .filter((word) => word !== "$" && !/^[A-Z_]+=/.test(word));
  /** @type {readonly string[]} */
  let rest = words;
  let name = words[0] ?? "";
  if (name === "npm") {
    const split = words.includes("--") ? words.indexOf("--") : words.length;
    const [verb, script] = words.slice(1, split).filter((word) => !word.startsWith("-"));
    if (verb !== "run" && verb !== "test") return [];
    name = verb === "test" ? verb : (script ?? "");
    if (!scripts.includes(name)) return [`there is no script ${name} to run`];
    rest = words.slice(split + 1);
  } else rest = words.slice(1);
  const program = Object.hasOwn(programs, name) ? programs[name] : undefined;
  if (program === undefined) return [];
  const wanted = rest[0]?.startsWith("-") ? "" : (rest[0] ?? "");
  const options = program[wanted];
  // A lone name, or one before words in capitals or dots that stand for others, is not a command line.
  if (options === undefined) return /^[a-z-]+$/.test(wanted) ? [`${name} has no command ${wanted}`] : [];
  return rest
    .map((word) => /^(--?[A-Za-z][\w-]*)/.exec(word)?.[1])
    .filter((option) => option !== undefined && !options.has(option))
    .map((option) => `${[name, wanted].join(" ").trim()} has no option ${option}`);
}

/**
 * Dependencies that the page does not explain, and lines of the page that explain none. The page has a heading a package
 * (its folder; `The root` for the root) and below it a table: name, run-time or development, and a sentence.
 * @param {Page} page
 * @param {readonly { readonly folder: string, readonly manifest: import("./workspace.mjs").Manifest }[]} packages
 * @returns {string[]}
 */
export function dependencyFaults({ path, text }, packages) {
  /** @type {Map<string, Map<string, { when: string, why: string, line: number }>>} */
  const sections = new Map();
  let rows = new Map();
  readMarkdown(text).prose.forEach((line, i) => {
    const heading = /^##\s+`?(.*?)`?\s*$/.exec(line)?.[1];
    if (heading !== undefined) {
      rows = new Map();
      sections.set(heading, rows);
    }
    const [name, when = "", why = ""] = line
      .split("|")
      .slice(1, -1)
      .map((cell) => cell.trim());
    if (name?.startsWith("`")) rows.set(name.replaceAll("`", ""), { when, why, line: i + 1 });
  });
  /** @type {string[]} */
  const faults = [];
  for (const { folder, manifest } of packages) {
    const section = sections.get(folder) ?? new Map();
    sections.delete(folder);
    /** @type {Readonly<Record<string, string>>} */
    const wanted = {
      ...Object.fromEntries(Object.keys(manifest.devDependencies ?? {}).map((name) => [name, "development"])),
      ...Object.fromEntries(Object.keys(manifest.peerDependencies ?? {}).map((name) => [name, "run-time"])),
      ...Object.fromEntries(Object.keys(manifest.dependencies ?? {}).map((name) => [name, "run-time"])),
    };
    for (const [name, when] of Object.entries(wanted)) {
      const row = section.get(name);
      if (!row) faults.push(`${path}: does not say what ${folder} needs ${name} for`);
      else if (row.when !== when)
        faults.push(`${path}:${row.line}: ${name} is a ${when} dependency of ${folder}`);
      else if (!/^\S+ \S+ \S.*\.$/.test(row.why))
        faults.push(`${path}:${row.line}: ${name} needs a sentence`);
    }
    for (const [name, { line }] of section)
      if (!(name in wanted)) faults.push(`${path}:${line}: ${folder} does not depend on ${name}`);
  }
  for (const [heading, section] of sections)
    if (section.size > 0) faults.push(`${path}: ${heading} is no package`);
  return faults;
}

const RESULT = /^(?<code>.*?);?\s*\/\/ (?:=> (?<value>.*)|throws (?<error>\w+)(?:: (?<words>.*))?)$/;
const IMPORT = /import\s*\{([^}]*)\}\s*from\s*("[^"]+");/g;

/** An import as a statement that a function body may hold. @type {(all: string, names: string, from: string) => string} */
const loading = (_, names, from) => `const {${names.replace(/ as /g, ": ")}} = await load(${from});`;

/**
 * Runs the `js` blocks of a page. `code // => value` must give the value and `code // throws Name: words` such an error,
 * as in the packages' doc comments.
 * @param {Page} page
 * @param {(name: string) => Promise<Record<string, unknown>>} load gives what a package exports
 * @returns {Promise<string[]>} a sentence a block that is wrong
 */
export async function exampleFaults({ path, text }, load) {
  /** @type {string[]} */
  const faults = [];
  for (const { language, line, lines } of readMarkdown(text).fences) {
    if (language !== "js") continue;
    try {
      await runExample(lines, load);
    } catch (error) {
      faults.push(
        `${path}:${line}: the example does not hold: ${error instanceof Error ? error.message : error}`,
      );
    }
  }
  return faults;
}

/** @param {readonly string[]} lines @param {Parameters<typeof exampleFaults>[1]} load */
async function runExample(lines, load) {
  let checked = 0;
  /** @type {string[]} */
  const body = [];
  /** @type {string[]} */
  const statement = [];
  for (const line of lines.join("\n").replace(IMPORT, loading).split("\n")) {
    const { code, value, error, words = "" } = RESULT.exec(line)?.groups ?? {};
    statement.push(code ?? line);
    if (code === undefined) {
      if (line.endsWith(";")) body.push(...statement.splice(0));
      continue;
    }
    const expression = statement.splice(0).join("\n");
    const shown = JSON.stringify(expression);
    body.push(
      error === undefined
        ? `equal(${shown}, (${expression}\n), (${value}));`
        : `await throws(${shown}, async () => (${expression}\n), ${JSON.stringify([error, words])});`,
    );
  }
  if (statement.join("").trim() !== "") throw new Error(`it ends within a statement: ${statement.join(" ")}`);
  /** @param {string} code @param {unknown} found @param {unknown} expected */
  const equal = (code, found, expected) => {
    checked += 1;
    if (isDeepStrictEqual(found, expected)) return;
    throw new Error(
      `${code.trim()} gives ${inspect(found, { breakLength: Number.POSITIVE_INFINITY, depth: 9 })}`,
    );
  };
  /** @param {string} code @param {() => Promise<unknown>} run @param {readonly [string, string]} wanted */
  const throws = async (code, run, [name, words]) => {
    checked += 1;
    const thrown = await run().then(
      () => undefined,
      (/** @type {unknown} */ reason) => reason,
    );
    if (thrown instanceof Error && thrown.name === name && thrown.message.includes(words)) return;
    throw new Error(`${code.trim()} ${thrown === undefined ? "throws nothing" : `throws ${thrown}`}`);
  };
  const AsyncFunction = /** @type {FunctionConstructor} */ ((async () => {}).constructor);
  await new AsyncFunction("equal", "throws", "load", body.join("\n"))(equal, throws, load);
  if (checked === 0) throw new Error("it checks nothing");
}
