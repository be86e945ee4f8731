import { expect, test } from "vitest";
import { problemOf } from "../../src/instances/problem-of.js";
import { readFamily } from "../../src/instances/read-family.js";
import { MEDALS, MIXED, RIBBONS, STAMPS, TILES } from "../made-up-families.js";

const read = (document: unknown) => {
  const result = readFamily(document, "data/f.json");
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.family;
};
const faultsOf = (document: unknown): readonly string[] => {
  const result = readFamily(document, "data/f.json");
  return result.ok ? [] : result.faults.map(({ where, message }) => `${where}: ${message}`);
};
const one = (fields: object) => ({
  family: "f",
  instances: [{ id: "a", sheet: [10, 10], pieces: [[5, 5, 1]], ...fields }],
});

test("what is asked is read from the fields", () => {
  const questions = [TILES, MIXED, STAMPS, MEDALS, RIBBONS].map((each) => read(each).question);
  expect(questions).toEqual(["sheets", "sizes", "unlimited", "value", "strip"]);
});

test("an instance without values stands in a family of values with the areas of its pieces", () => {
  const family = read({
    family: "f",
    instances: [...one({ values: [7] }).instances, ...one({ id: "b" }).instances],
  });
  expect(family.question).toBe("value");
  expect(family.instances.map(({ pieces }) => pieces[0]?.value)).toEqual([7, 25]);
});

test("equal sheets are a problem for all pieces from as many sheets as needed", () => {
  const family = read(TILES);
  const [pair] = family.instances;
  if (pair === undefined) throw new Error("no instance");
  expect(pair).toMatchObject({ group: "class 1", cell: { class: 1, n: 2 }, copies: 2 });
  expect([pair.fixed, pair.turned]).toEqual([
    { best: 2, bound: 2 },
    { best: null, bound: 2 },
  ]);
  expect(problemOf(pair, family.question, false)).toEqual({
    kinds: [
      { id: "1", quantity: 1, forms: [{ width: 6, height: 6, turns: "upright" }] },
      { id: "2", quantity: 1, forms: [{ width: 6, height: 5, turns: "upright" }] },
    ],
    sheets: [{ id: "1", width: 10, height: 10, stock: null }],
    mode: "guillotine",
    aim: "all",
  });
});

test("a strip is one sheet of its width and best height; it has a best only where that is proven for edge-to-edge cuts", () => {
  const family = read({
    ...RIBBONS,
    instances: RIBBONS.instances.map((each) => ({ ...each, sheet: [each.sheet[0], 99] })),
  });
  const [halves, rows] = family.instances;
  expect(halves?.sheets).toEqual([{ width: 10, height: 8, stock: 1 }]);
  expect([halves?.turned, rows?.fixed, rows?.turned]).toEqual([
    { best: 80, bound: 80 },
    { best: 60, bound: 60 },
    { best: null, bound: 60 },
  ]);
});

test("values, any number of copies and several sizes reach the problem", () => {
  const problem = (document: unknown) => {
    const family = read(document);
    const [instance] = family.instances;
    if (instance === undefined) throw new Error("no instance");
    return problemOf(instance, family.question, true);
  };
  expect(problem(MEDALS)).toMatchObject({ aim: "fill", kinds: [{ quantity: 2, value: 10 }, {}, {}] });
  expect(problem(STAMPS)).toMatchObject({
    aim: "fill",
    kinds: [{ quantity: null, forms: [{ turns: "both" }] }],
    sheets: [{ stock: 1 }],
  });
  expect(problem(STAMPS).kinds[0]).not.toHaveProperty("value");
  expect(problem(MIXED)).toMatchObject({ aim: "all", sheets: [{ stock: 1 }, { width: 6, stock: 3 }] });
});

test.each<[string, unknown, RegExp]>([
  ["no object", [], /^data\/f\.json: found \[\], expected an object\.$/],
  [
    "no instances",
    { family: "f", instances: [] },
    /^data\/f\.json, instances: found \[\], expected 1 entries or more\.$/,
  ],
  [
    "a nameless family",
    { instances: one({}).instances },
    /^data\/f\.json, family: found nothing, expected text\.$/,
  ],
  [
    "a length that is no whole number",
    one({ sheet: [10, 2.5] }),
    /, instances\[0\]\.sheet\[1\]: found 2\.5, expected a whole number\.$/,
  ],
  [
    "a length of nothing",
    one({ sheet: [10, 0] }),
    /, instances\[0\]\.sheet\[1\]: found 0, expected 1 or more\.$/,
  ],
  [
    "a length beyond all sheets",
    one({ sheet: [10, 9e6] }),
    /\.sheet\[1\]: found 9000000, expected 1000000 at most\.$/,
  ],
  [
    "a piece of two figures",
    one({ pieces: [[5, 5]] }),
    /, instances\[0\]\.pieces\[0\]\S*: found (\[5,5\]|nothing), expected .+\.$/,
  ],
  [
    "no copies of a piece",
    one({ pieces: [[5, 5, 0]] }),
    /\.pieces\[0\]\[2\]: found 0, expected 1 or more\.$/,
  ],
  [
    "a size without stock",
    one({ sheet: undefined, sheets: [[5, 5]] }),
    /\.sheets\[0\]: found \[5,5\], expected \[width, height, stock or null\]/,
  ],
  [
    "no sheet",
    one({ sheet: undefined }),
    /, instances\[0\]: found neither sheet nor sheets, expected one of the two\.$/,
  ],
  [
    "sheet and sheets",
    one({ sheets: [[5, 5, 1]] }),
    /, instances\[0\]: found both sheet and sheets, expected one of the two\.$/,
  ],
  [
    "too few values",
    one({ values: [] }),
    /\.values: found 0 values, expected 1, one for each of the pieces\.$/,
  ],
  ["a bound in words", one({ lbOG: "two" }), /\.lbOG: found "two", expected a whole number\.$/],
  [
    "an id given twice",
    { family: "f", instances: [...one({}).instances, ...one({}).instances] },
    /, instances\[1\]\.id: found "a", which is the id of instances\[0\] as well\. Give each its own\.$/,
  ],
  [
    "a strip among sheets",
    { family: "f", instances: [...one({ optHeight: 5 }).instances, ...one({ id: "b" }).instances] },
    /, instances\[1\]: found no optHeight, which instances\[0\] has\. All instances of a family ask the same\.$/,
  ],
])("%s is refused: where, what was found, what is expected", (_, document, expected) => {
  const faults = faultsOf(document);
  expect(faults).toHaveLength(1);
  expect(faults[0]).toMatch(expected);
});
