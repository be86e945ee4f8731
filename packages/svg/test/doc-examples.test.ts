import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import * as measure from "@sheetwright/measure";
import * as packing from "@sheetwright/packing";
import * as shapes from "@sheetwright/shapes";
import * as reading from "@sheetwright/shapes/svg";
import { expect, test } from "vitest";
import { examplesOf, runDocExample, testReadme } from "../../measure/test/check-doc-examples.js";
import * as svg from "../src/index.js";

const source = fileURLToPath(new URL("../src/", import.meta.url));
const examples = readdirSync(source, { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(".ts"))
  .sort()
  .flatMap((file) => examplesOf(file, readFileSync(join(source, file), "utf8")))
  .filter(({ of }) => Object.hasOwn(svg, of));

test.each(examples)("the example of $of gives what it says", (example) =>
  runDocExample(example, { ...measure, ...shapes, ...reading, ...svg }),
);

testReadme(new URL("../README.md", import.meta.url), { ...measure, ...packing, ...shapes, ...svg });

test("shapes are shown in examples", () => {
  expect(examples.map(({ of }) => of)).toContain("drawShape");
});
