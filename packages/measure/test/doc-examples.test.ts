import { describe, expect, test } from "vitest";
import * as measure from "../src/index.js";
import {
  exampleBody,
  examplesOf,
  markdownExamples,
  runDocExample,
  testDocExamples,
  testReadme,
} from "./check-doc-examples.js";

testDocExamples(new URL("../src/", import.meta.url), measure);
testReadme(new URL("../README.md", import.meta.url), measure);

describe("the check of examples", () => {
  const run = (...code: string[]) => runDocExample({ file: "a.ts", line: 1, of: "a", code }, { two: 2 });

  test("finds the code, the name and the line of an example", () => {
    const text = [
      "const a = 1;",
      "/**",
      " * Adds.",
      " *",
      " * @example",
      " * add(1,",
      " *   2) // => 3",
      " * @internal",
      " */",
      "export function add() {}",
    ].join("\n");
    expect(examplesOf("add.ts", text)).toEqual([
      { file: "add.ts", line: 5, of: "add", code: ["add(1,", "  2) // => 3"] },
    ]);
  });

  test("finds the js blocks of a README without their imports", () => {
    const text = 'Adds.\n\n```js\nimport { add } from "add";\n\nadd(1, 2) // => 3\n```\n\n```sh\nadd\n```\n';
    expect(markdownExamples("README.md", text)).toEqual([
      { file: "README.md", line: 3, of: "README.md", code: ["add(1, 2) // => 3"] },
    ]);
  });

  test("passes what is right, over several lines and with await", async () => {
    await run("const four = two +", "  two;", "four // => 4", "({ a: four", "}) // => { a: 4 }");
    await run("await Promise.resolve(two) // => two");
    await run("null.x // throws TypeError", "null.x // throws TypeError: Cannot read");
  });

  test("fails on a wrong value, a missing or a wrong error", async () => {
    await expect(run("two // => 3")).rejects.toThrow();
    await expect(run("two // throws TypeError")).rejects.toThrow();
    await expect(run("null.x // throws RangeError")).rejects.toThrow();
    await expect(run("null.x // throws TypeError: out of paper")).rejects.toThrow();
  });

  test("fails on an example that checks nothing or ends within a statement", async () => {
    await expect(run("const three = two + 1;")).rejects.toThrow("checks something");
    expect(() => exampleBody(["two +"])).toThrow("ends within a statement");
  });
});
