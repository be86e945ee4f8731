import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { type ReadProject, readProject } from "../../src/index.js";
import { EVERY_KEY, SMALLEST } from "./sample-projects.js";

const schema: unknown = JSON.parse(
  readFileSync(new URL("../../schema/project.schema.json", import.meta.url), "utf8"),
);
const accepts = new Ajv2020({ strict: true, strictRequired: false, allowUnionTypes: true }).compile(
  schema as Record<string, unknown>,
);

/** What holds of whatever the reader gives. */
function expectSense(text: string, { project, faults }: ReadProject): void {
  expect(project === null).toBe(faults.length > 0);
  const lines = text.split("\n").length;
  let last = 0;
  for (const { code, line, column, message, expected } of faults) {
    expect(line).toBeGreaterThanOrEqual(Math.max(1, last));
    expect(line).toBeLessThanOrEqual(lines);
    expect(column).toBeGreaterThanOrEqual(1);
    expect(code).not.toBe("");
    expect(message).toMatch(/[.?]$/);
    expect(message).not.toMatch(/undefined|\[object|Invalid/);
    expect(expected).not.toBe("");
    last = line ?? last;
  }
}

/** Values that stand where something else should, many of them the sort that programs trip over. */
const oddValue = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    true,
    false,
    0,
    -1,
    -0,
    0.1,
    1.5,
    1e-7,
    1e21,
    2 ** 53,
    "",
    " ",
    "x",
    "1/8",
    "1/0",
    "-1/8",
    "5 x 7",
    "us-a2",
    "us-letter",
    "night",
    "stars.comets",
    "stars.back",
    "back",
    "none",
    "across",
    "long",
    "#22304f",
    "constructor",
    "__proto__",
    "toString",
    "hasOwnProperty",
    "as needed",
    "\u0000",
    "\ud800",
    "é".repeat(300),
  ),
  fc.string({ maxLength: 12 }),
  fc.double(),
  fc.jsonValue({ maxDepth: 2 }),
);

const oddKey = fc.oneof(
  fc.constantFrom(
    "border",
    "size",
    "mat",
    "panel",
    "grain",
    "count",
    "constructor",
    "toString",
    "a.b",
    "a[0]",
    "",
    "x y",
  ),
  fc.string({ maxLength: 6 }),
);

type Holder = Record<string | number, unknown>;

/** Every place in the data that holds something. */
function holders(data: unknown): readonly Holder[] {
  if (typeof data !== "object" || data === null) return [];
  return [data as Holder, ...Object.values(data).flatMap(holders)];
}

const change = fc.record({
  where: fc.nat(),
  which: fc.nat(),
  how: fc.constantFrom("replace", "remove", "rename", "add", "copy"),
  value: oddValue,
  key: oddKey,
});

function changed(
  data: unknown,
  { where, which, how, value, key }: typeof change extends fc.Arbitrary<infer T> ? T : never,
) {
  const all = holders(data);
  const holder = all[where % all.length];
  if (holder === undefined) return;
  const keys = Object.keys(holder);
  const own = keys[which % Math.max(1, keys.length)];
  const list = Array.isArray(holder) ? holder : null;
  if (how === "add") {
    if (list === null) holder[key] = value;
    else list.push(value);
    return;
  }
  if (own === undefined) return;
  if (how === "replace") holder[own] = value;
  else if (how === "copy") holder[own] = structuredClone(all[which % all.length]);
  else if (list !== null) list.splice(Number(own), 1);
  else {
    if (how === "rename") holder[key] = holder[own];
    delete holder[own];
  }
}

const mutated = fc.array(change, { minLength: 1, maxLength: 4 }).map((changes) => {
  const data: unknown = parse(EVERY_KEY);
  for (const one of changes) changed(data, one);
  return data;
});

describe("files that were changed at random", () => {
  it("never throw, and give a project or faults with places, in the order of the file", () => {
    fc.assert(
      fc.property(mutated, (data) => {
        const text = JSON.stringify(data, null, 1);
        expectSense(text, readProject(text));
      }),
    );
  });

  it("say the same as JSON and as YAML, and the same each time", () => {
    fc.assert(
      fc.property(mutated, (data) => {
        const plain: unknown = JSON.parse(JSON.stringify(data));
        const json = readProject(JSON.stringify(plain));
        const yaml = readProject(stringify(plain, { lineWidth: 0, aliasDuplicateObjects: false }));
        expect(yaml.project).toEqual(json.project);
        const told = ({ faults }: ReadProject) =>
          faults.map(({ code, path, message }) => `${code} ${path} ${message}`).sort();
        expect(told(yaml)).toEqual(told(json));
        expect(JSON.stringify(readProject(JSON.stringify(plain)))).toBe(JSON.stringify(json));
      }),
      // Each is read three times.
      { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 3) },
    );
  });

  it("are refused wherever the published schema refuses them", () => {
    fc.assert(
      fc.property(mutated, (data) => {
        const plain: unknown = JSON.parse(JSON.stringify(data));
        if (readProject(JSON.stringify(plain)).project !== null) expect(accepts(plain)).toBe(true);
      }),
    );
  });

  it("never throw where characters were changed", () => {
    const spoilt = fc.tuple(
      fc.constantFrom(SMALLEST, EVERY_KEY, JSON.stringify(parse(EVERY_KEY), null, 2)),
      fc.array(
        fc.record({
          at: fc.nat(),
          take: fc.nat({ max: 12 }),
          put: fc.oneof(
            fc.constantFrom(
              "",
              "\t",
              "\n",
              " ",
              "{",
              "}",
              "[",
              "]",
              ":",
              "- ",
              "#",
              '"',
              "'",
              "&a ",
              "*a",
              "!!x ",
              "<<: ",
              "---\n",
              "|",
              ">",
              "%",
              "? ",
              ",",
            ),
            fc.string({ maxLength: 4 }),
          ),
        }),
        { minLength: 1, maxLength: 3 },
      ),
    );
    fc.assert(
      fc.property(spoilt, ([text, edits]) => {
        const result = edits.reduce((before, { at, take, put }) => {
          const start = at % (before.length + 1);
          return before.slice(0, start) + put + before.slice(start + take);
        }, text);
        expectSense(result, readProject(result));
      }),
    );
  });

  it("never throw where the text is anything at all", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 60 }), (text) => {
        expectSense(text, readProject(text));
      }),
    );
  });
});
