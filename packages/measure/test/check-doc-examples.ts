// Runs the `@example` blocks of a package's doc comments and the js blocks of its README, so that no example is
// wrong. In a block,
//
//     const thirds = divideLength(inches(3), [1, 1, 1], 1);   runs as it stands
//     thirds.parts.length // => 3                             is compared with toEqual
//     parseLength("8,5", { unit: "in" }) // throws LengthError: Write 8.5
//
// are the three kinds of statement; the text after `throws NAME:` must occur in the message. A statement ends
// at a semicolon or at its comment and may run over several lines. All exports of the package are in scope.

import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";

/** One `@example` block: the file and line it starts at, what it documents, and its lines of code. */
export interface DocExample {
  readonly file: string;
  readonly line: number;
  readonly of: string;
  readonly code: readonly string[];
}

/** The functions that a test of examples puts into the scope of the code that it runs. */
interface Checks {
  readonly equal: (found: unknown, expected: unknown) => void;
  readonly throws: (run: () => unknown, name: string, message: string) => Promise<void>;
}

const DOC_COMMENT =
  /\/\*\*(?<body>[\s\S]*?)\*\/\s*(?:export\s+)?(?:declare\s+)?(?:async\s+)?(?<declared>[^\n]*)/g;
const DECLARED_NAME = /^(?:function\*?|const|class|interface|type)\s+(?<name>[\w$]+)/;
const RESULT = /^(?<code>.*?)\s*\/\/ (?:=> (?<value>.*)|throws (?<error>\w+)(?:: (?<message>.*))?)$/;

/** Reads the examples of all source files of a folder, sub-folders included, by file name and line. */
function readDocExamples(sources: URL): readonly DocExample[] {
  const folder = fileURLToPath(sources);
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ts"))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()
    .flatMap((path) => examplesOf(relative(folder, path), readFileSync(path, "utf8")));
}

/** Finds the examples in the text of one source file. */
export function examplesOf(file: string, text: string): readonly DocExample[] {
  return [...text.matchAll(DOC_COMMENT)].flatMap((comment) => {
    const { body = "", declared = "" } = comment.groups ?? {};
    const of = DECLARED_NAME.exec(declared)?.groups?.name ?? file;
    const firstLine = text.slice(0, comment.index).split("\n").length;
    const lines = body.split("\n").map((line) => line.replace(/^\s*\*? ?/, "").trimEnd());
    const starts = lines.flatMap((line, index) => (line.startsWith("@example") ? [index] : []));
    return starts.map((start) => {
      const next = lines.findIndex((line, index) => index > start && line.startsWith("@"));
      const code = lines.slice(start + 1, next < 0 ? undefined : next).filter((line) => line.trim() !== "");
      return { file, line: firstLine + start, of, code };
    });
  });
}

/** Turns the lines of an example into the body of an async function that calls `checks`. */
export function exampleBody(code: readonly string[]): string {
  const body: string[] = [];
  let statement: string[] = [];
  for (const line of code) {
    const result = RESULT.exec(line)?.groups;
    statement.push(result?.code ?? line);
    if (result === undefined) {
      if (line.endsWith(";")) body.push(...statement.splice(0));
      continue;
    }
    const expression = statement.join("\n").replace(/;$/, "");
    statement = [];
    if (result.error === undefined) body.push(`checks.equal((${expression}), (${result.value}));`);
    else {
      const wanted = [result.error, result.message ?? ""].map((part) => JSON.stringify(part));
      body.push(`await checks.throws(async () => (${expression}), ${wanted.join(", ")});`);
    }
  }
  if (statement.length > 0)
    throw new SyntaxError(`The example ends within a statement: ${statement.join("\n")}`);
  return body.join("\n");
}

/** Runs one example with the exports of the package in scope; rejects where it is wrong or checks nothing. */
export async function runDocExample(example: DocExample, exports: Readonly<Record<string, unknown>>) {
  const body = exampleBody(example.code);
  expect(body, "the example checks something").toMatch(/checks\.(equal|throws)\(/);
  const checks: Checks = {
    equal: (found, expected) => expect(found).toEqual(expected),
    throws: async (run, name, message) => {
      const error = await Promise.resolve()
        .then(run)
        .then(
          () => undefined,
          (reason: unknown) => reason,
        );
      expect(error, `an error of the name ${name} is thrown`).toBeInstanceOf(Error);
      expect((error as Error).name).toBe(name);
      expect((error as Error).message).toContain(message);
    },
  };
  // The code comes from our own source files; an example is only tested if it runs as it is printed.
  const AsyncFunction = (async () => {}).constructor as new (
    ...source: string[]
  ) => (...values: unknown[]) => Promise<void>;
  await new AsyncFunction("checks", ...Object.keys(exports), body)(checks, ...Object.values(exports));
}

/**
 * Declares one test for each example in the sources, and one that every exported function and every exported
 * error class is shown in an example of its own.
 */
export function testDocExamples(sources: URL, exports: Readonly<Record<string, unknown>>): void {
  const examples = readDocExamples(sources);
  describe("examples in doc comments", () => {
    test.each(examples.map((example) => ({ at: `${example.file}:${example.line}`, ...example })))(
      "$of at $at gives what it says",
      (example) => runDocExample(example, exports),
    );
    test("every exported function has an example", () => {
      const shown = new Set(examples.map(({ of }) => of));
      const functions = Object.keys(exports).filter((name) => typeof exports[name] === "function");
      expect(functions.filter((name) => !shown.has(name))).toEqual([]);
    });
  });
}

/** Finds the js blocks of a Markdown text; their imports are left out, since all exports are in scope. */
export function markdownExamples(file: string, text: string): readonly DocExample[] {
  return [...text.matchAll(/^```js\n([\s\S]*?)^```$/gm)].map((block) => ({
    file,
    line: text.slice(0, block.index).split("\n").length,
    of: file,
    code: (block[1] ?? "")
      .replace(/^import [\s\S]*?;$/gm, "")
      .split("\n")
      .filter((line) => line.trim() !== ""),
  }));
}

/** Declares one test for each js block of a README, and requires that there is one. */
export function testReadme(readme: URL, exports: Readonly<Record<string, unknown>>): void {
  const examples = markdownExamples("README.md", readFileSync(readme, "utf8"));
  describe("README.md", () => {
    test("has an example", () => expect(examples).not.toEqual([]));
    test.each(examples)("example at line $line gives what it says", (example) =>
      runDocExample(example, exports),
    );
  });
}
