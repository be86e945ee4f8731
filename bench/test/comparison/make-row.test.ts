import { expect, test } from "vitest";
import { makeRow } from "../../src/comparison/make-row.js";
import { remarkableOf } from "../../src/comparison/remarkable.js";
import type { Family, Instance, Question } from "../../src/instances/family.js";
import { NOTHING_PUBLISHED, type PublishedResults } from "../../src/instances/published-results.js";
import type { Solved } from "../../src/solve/solve-task.js";

const instance = (id: string, fields: Partial<Instance> = {}): Instance => ({
  id,
  sheets: [{ width: 10, height: 10, stock: null }],
  pieces: [],
  copies: 1,
  group: null,
  cell: null,
  fixed: { best: null, bound: null },
  turned: { best: null, bound: null },
  ...fields,
});
const solved = (sheets: number | null, fields: Partial<Solved> = {}): Solved => ({
  sheets,
  sheetArea: (sheets ?? 0) * 100,
  pieceArea: (sheets ?? 0) * 75,
  value: null,
  bounds: { sheets: 1, sheetArea: 100, value: null },
  proven: sheets === 1,
  work: 10,
  steps: null,
  seconds: 0.5,
  tries: {},
  faults: [],
  ...fields,
});
const family = (instances: readonly Instance[], question: Question = "sheets"): Family => ({
  name: "f",
  question,
  instances,
});
const way = { mayTurn: false, solver: "sheetwright", effort: "quick" } as const;

test("instances add up; the gap is to the better bound of each", () => {
  const instances = [
    instance("a", { fixed: { best: 2, bound: 2 } }),
    instance("b", { fixed: { best: 1, bound: 1 } }),
    instance("c"),
  ];
  const row = makeRow(
    { family: family(instances), ...way },
    [solved(3), solved(1), solved(4)],
    NOTHING_PUBLISHED,
  );
  expect(row).toMatchObject({
    instances: 3,
    sheets: 8,
    measured: 8,
    bound: 3,
    publishedBound: null,
    bestBound: 4,
    gap: 4,
    bestPublished: null,
    utilisation: 75,
    seconds: 1.5,
    verified: true,
    proven: 1,
    known: 2,
    reached: 1,
    work: 30,
    steps: null,
  });
  expect(row.details.map(({ id, sheets, gap }) => [id, sheets, gap])).toEqual([
    ["a", 3, 1],
    ["b", 1, 0],
    ["c", 4, 3],
  ]);
});

test("a faulty layout makes its row unverified, and pieces that are not placed leave no sum", () => {
  const two = family([instance("a"), instance("b")]);
  const row = makeRow(
    { family: two, ...way },
    [solved(1, { faults: ["x"] }), solved(null)],
    NOTHING_PUBLISHED,
  );
  expect(row).toMatchObject({ verified: false, sheets: null, measured: null, gap: null, utilisation: null });
});

test("where more is better the gap is what is missing to the lower of the bounds", () => {
  const one = family([instance("a", { fixed: { best: 90, bound: 90 } })], "value");
  const answer = solved(1, { value: 80, bounds: { sheets: null, sheetArea: null, value: 95 } });
  expect(makeRow({ family: one, ...way }, [answer], NOTHING_PUBLISHED)).toMatchObject({
    sheets: 1,
    value: 80,
    measured: 80,
    bound: 95,
    bestBound: 90,
    gap: 10,
    bestPublished: 90,
    bestMethod: "optima",
  });
});

const sums = (best: number, methods: Readonly<Record<string, number>>): PublishedResults => ({
  ...NOTHING_PUBLISHED,
  sumsOf: (_, { n }) => (n === 5 ? { best, bound: 10, byMethod: new Map(Object.entries(methods)) } : null),
});
const ten = (n: number, bound: number) =>
  Array.from({ length: 10 }, (_, i) =>
    instance(`${n}-${i}`, { group: "class 1", cell: { class: 1, n }, fixed: { best: null, bound } }),
  );

test("published sums count where they cover the instances, with the method that gave them", () => {
  const answers = ten(5, 1).map((_, i) => solved(i === 0 ? 2 : 1));
  const row = makeRow({ family: family(ten(5, 1)), ...way }, answers, sums(12, { ABC: 12, DEF: 13 }));
  expect(row).toMatchObject({
    bestPublished: 12,
    bestMethod: "ABC",
    bestSingle: { method: "ABC", measured: 12 },
  });
  const several = makeRow({ family: family(ten(5, 1)), ...way }, answers, sums(12, { ABC: 13, DEF: 14 }));
  expect(several).toMatchObject({
    bestMethod: "several together",
    bestSingle: { method: "ABC", measured: 13 },
  });
  const mixed = [...ten(5, 1), ...ten(6, 1)];
  const partly = makeRow({ family: family(mixed), ...way }, [...answers, ...answers], sums(12, { ABC: 12 }));
  expect(partly.bestPublished).toBeNull();
  expect(partly.cells.map(({ n, bestPublished, measured }) => [n, bestPublished, measured])).toEqual([
    [5, 12, 11],
    [6, null, 11],
  ]);
});

test("a published sum that is the sum of its bounds tells the best of each instance", () => {
  const answers = ten(5, 1).map((_, i) => solved(i === 0 ? 2 : 1));
  const row = makeRow({ family: family(ten(5, 1)), ...way }, answers, sums(10, { ABC: 10 }));
  expect([row.known, row.reached]).toEqual([10, 9]);
  const open = makeRow({ family: family(ten(5, 1)), ...way }, answers, sums(11, { ABC: 11 }));
  expect(open.known).toBe(0);
});

test("what is better than published, or first to reach a bound, is picked out", () => {
  const answers = ten(5, 1).map((_, i) => solved(i === 0 ? 2 : 1, { proven: i > 4 }));
  const row = makeRow({ family: family(ten(5, 1)), ...way }, answers, sums(12, { ABC: 12 }));
  const found = remarkableOf(row).map(({ kind, id }) => [kind, id]);
  expect(found[0]).toEqual(["beats-best", "class 1, n = 5"]);
  expect(found.slice(1)).toEqual([
    ...[1, 2, 3, 4].map((i) => ["meets-published-bound", `5-${i}`]),
    ...[5, 6, 7, 8, 9].map((i) => ["newly-proven", `5-${i}`]),
  ]);
  const known = [
    instance("a", { fixed: { best: 3, bound: 2 } }),
    instance("b", { fixed: { best: 2, bound: 2 } }),
  ];
  const better = makeRow({ family: family(known), ...way }, [solved(2), solved(1)], NOTHING_PUBLISHED);
  expect(remarkableOf(better).map(({ kind, id }) => [kind, id])).toEqual([
    ["beats-best", "a"],
    ["beats-bound", "b"],
  ]);
});

test("an answer must be there for each instance", () => {
  expect(() => makeRow({ family: family([instance("a")]), ...way }, [], NOTHING_PUBLISHED)).toThrow(
    RangeError,
  );
});

test("half of the instances take no longer than the median", () => {
  const median = (seconds: readonly number[]): number =>
    makeRow(
      { family: family(seconds.map((_, i) => instance(`i${i}`))), ...way },
      seconds.map((each) => solved(1, { seconds: each })),
      NOTHING_PUBLISHED,
    ).medianSeconds;
  expect(median([9, 1, 4])).toBe(4);
  expect(median([8, 1, 2, 40])).toBe(5);
  expect(median([7])).toBe(7);
});
