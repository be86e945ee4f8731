import { expect, test } from "vitest";
import type { ComparisonJson } from "../../src/comparison/comparison-json.js";
import type { Solved } from "../../src/solve/solve-task.js";
import { solveTask } from "../../src/solve/solve-task.js";
import { bench } from "../bench-in-memory.js";
import { filesOf, MEDALS, MIXED, RIBBONS, STAMPS, TILES } from "../made-up-families.js";

const DATA = filesOf("/place/data", [TILES, RIBBONS, MEDALS, STAMPS, MIXED]);
const RATCHET = "/place/results/packing-ratchet.json";

const jsonOf = (files: ReadonlyMap<string, string>, path: string): ComparisonJson =>
  JSON.parse(files.get(path) ?? "") as ComparisonJson;

test("a run writes table, chart and JSON, and says where", async () => {
  const { code, stdout, stderr, files } = await bench("packing --data data --family tiles", DATA);
  expect(code).toBe(0);
  expect(stdout).toContain("## All families");
  expect(stdout).toContain("with 1 job on Node 20.19.0");
  const names = ["md", "svg", "json"].map((kind) => `results/packing_tiles.${kind}`);
  expect(stderr).toBe(`Written: ${names.join(", ")}\n`);
  expect(files.get("/place/results/packing_tiles.md")).toBe(stdout);
  expect(files.get("/place/results/packing_tiles.svg")).toMatch(/^<svg[\s\S]*tiles, turned/);
});

test("a run with defaults has no more in its names, whatever the jobs", async () => {
  const { files } = await bench("packing --data data --jobs 3", DATA);
  expect([...files.keys()].slice(Object.keys(DATA).length)).toEqual(
    ["md", "svg", "json"].map((kind) => `/place/results/packing.${kind}`),
  );
});

// Worked out by hand in made-up-families.ts.
test("every question is answered as worked out by hand, and every plan is verified", async () => {
  const { files } = await bench("packing --data data --effort quick --json all.json", DATA);
  const { rows } = jsonOf(files, "/place/all.json");
  const figures = rows.map(({ family, rotation, measure, sheets, measured, bestPublished, utilisation }) => [
    `${family} ${rotation ? "turned" : "fixed"}`,
    measure,
    sheets,
    measured,
    bestPublished,
    utilisation,
  ]);
  expect(figures).toEqual([
    ["medals fixed", "value", 1, 21, 21, 100],
    ["mixed fixed", "sheet area", 2, 130, null, 100],
    ["ribbons fixed", "area", 2, 140, 140, 100],
    ["ribbons turned", "area", 2, 140, null, 100],
    ["stamps fixed", "area", 1, 20, 20, 57.1],
    ["stamps turned", "area", 1, 30, 30, 85.7],
    ["tiles fixed", "sheets", 5, 5, null, 53.2],
    ["tiles turned", "sheets", 4, 4, null, 66.5],
  ]);
  expect(rows.every(({ verified }) => verified)).toBe(true);
});

test("the JSON has a row for each family, turns and effort, with the same keys for each instance", async () => {
  const { files } = await bench(
    "packing --data data --family tiles --effort standard --effort quick --seed 7 --json t.json",
    DATA,
  );
  const json = jsonOf(files, "/place/t.json");
  expect(json).toMatchObject({
    suite: "packing",
    version: 1,
    options: { families: ["tiles"], efforts: ["quick", "standard"], turns: null, seed: 7 },
    jobs: 1,
    machine: { cpu: "abacus" },
  });
  expect(json.rows.map(({ rotation, effort }) => [rotation, effort])).toEqual([
    [false, "quick"],
    [false, "standard"],
    [true, "quick"],
    [true, "standard"],
  ]);
  for (const row of json.rows) {
    expect(row).toMatchObject({ family: "tiles", solver: "sheetwright", instances: 3, verified: true });
    expect(row.details.map(({ id }) => id)).toEqual(["pair", "quad", "bar"]);
    for (const key of ["sheets", "bound", "bestPublished", "utilisation", "seconds", "verified"] as const) {
      expect(row).toHaveProperty(key);
      for (const detail of row.details) expect(detail).toHaveProperty(key);
    }
    expect(row.details.reduce((sum, { sheets }) => sum + (sheets ?? 0), 0)).toBe(row.sheets);
    expect(row.groups.map(({ group, sheets }) => [group, sheets])).toHaveLength(2);
  }
});

test("only machine, jobs and seconds differ between runs", async () => {
  const line = "packing --data data --family tiles --effort quick --json t.json";
  const timeless = ({ files }: { readonly files: ReadonlyMap<string, string> }): string =>
    JSON.stringify(jsonOf(files, "/place/t.json"), (key, value) =>
      ["seconds", "medianSeconds", "machine", "jobs"].includes(key) ? null : value,
    );
  const fast = await bench(line, DATA);
  const slow = await bench(`${line} --jobs 4`, DATA, 3);
  expect(slow.files.get("/place/t.json")).not.toBe(fast.files.get("/place/t.json"));
  expect(timeless(slow)).toBe(timeless(fast));
});

test("--turns measures one way only", async () => {
  const { files } = await bench("packing --data data --turns turned --json t.json --effort quick", DATA);
  expect(new Set(jsonOf(files, "/place/t.json").rows.map(({ rotation }) => rotation))).toEqual(
    new Set([true]),
  );
});

test("published results beside the families are compared with, and what is better is listed", async () => {
  const ten = {
    family: "bw-mv",
    instances: Array.from({ length: 10 }, (_, i) => ({
      ...(TILES.instances[1] as object),
      id: `q${i}`,
      class: 1,
      n: 4,
      optRG: undefined,
    })),
  };
  const published = {
    algorithms: { ABC: "A, B & C 2001" },
    binSums: [
      { class: 1, n: 4, OG: { lb: 10, best: 11, ABC: 11 }, RG: { lb: 10, best: 10, ABC: 12, DEF: 11 } },
    ],
  };
  const { code, stdout } = await bench("packing --data data --effort quick", {
    ...filesOf("/place/data", [ten]),
    "/place/data/published-results.json": JSON.stringify(published),
  });
  expect(code).toBe(0);
  expect(stdout).toContain("Best published of bw-mv, fixed: 11 by ABC.");
  expect(stdout).toContain(
    "Best published of bw-mv, turned: 10 by several together; the best of one alone is 11 (DEF).",
  );
  expect(stdout).toContain("ABC: A, B & C 2001");
  expect(stdout).toMatch(
    /\| bw-mv +\| class 1, n = 4 +\| fixed +\| quick +\| below the best published +\| +10 \| +10 \| +10 \| +11 \|/,
  );
  expect(stdout).toMatch(
    /\| bw-mv +\| fixed +\| quick +\| sheets +\| 10 \| +10 \| +10 \| +10 \| +11 \| +-1 \|/,
  );
});

test("a first ratchet is written, an equal run passes, a worse instance fails and a better one is told", async () => {
  const first = await bench("packing --data data --effort quick --renew-ratchet", DATA);
  expect(first.code).toBe(0);
  expect(first.stderr).toContain("Written: results/packing-ratchet.json\n");
  const kept = first.files.get(RATCHET) ?? "";
  expect(JSON.parse(kept)).toMatchObject({
    version: 1,
    effort: "quick",
    seed: 1,
    measured: { "tiles fixed": { pair: 2, quad: 1, bar: 2 }, "stamps turned": { roll: 30 } },
  });

  const run = (ratchet: string) =>
    bench("packing --data data --effort quick", { ...DATA, [RATCHET]: ratchet });
  const equal = await run(kept);
  expect(equal.code).toBe(0);
  expect(equal.stderr).toContain("Ratchet: 14 instances compared, 0 worse, 0 better.\n");

  // As if fewer sheets had been found once, and less area.
  const once = JSON.parse(kept) as { measured: Record<string, Record<string, number>> };
  const changed = {
    ...once,
    measured: {
      ...once.measured,
      "tiles fixed": { pair: 1, quad: 1, bar: 3 },
      "stamps turned": { roll: 29 },
    },
  };
  const worse = await run(JSON.stringify(changed));
  expect(worse.code).toBe(1);
  expect(worse.stderr).toContain("14 instances compared, 1 worse, 2 better.");
  expect(worse.stderr).toContain(
    "Worse than the ratchet:\n  tiles fixed pair: 2, 1 in the ratchet (sheets)\n",
  );
  expect(worse.stderr).toContain("  tiles fixed bar: 2, 3 in the ratchet (sheets)\n");
  expect(worse.stderr).toContain("  stamps turned roll: 30, 29 in the ratchet (area)\n");

  const better = await run(
    JSON.stringify({ ...changed, measured: { ...changed.measured, "tiles fixed": { bar: 3 } } }),
  );
  expect(better.code).toBe(0);
  expect(better.stderr).toContain("It does not hold 2 more.");
});

test("renewing keeps what was not run, and other efforts and seeds do not look at the ratchet", async () => {
  const kept = JSON.stringify({
    version: 1,
    effort: "quick",
    seed: 1,
    measured: { "other fixed": { a: 5 } },
  });
  const given = { ...DATA, [RATCHET]: kept };
  const renewed = await bench("packing --data data --family stamps --effort quick --renew-ratchet", given);
  expect(Object.keys(JSON.parse(renewed.files.get(RATCHET) ?? "").measured)).toEqual([
    "other fixed",
    "stamps fixed",
    "stamps turned",
  ]);
  for (const options of ["--effort quick --seed 2", "--effort standard"]) {
    const { stderr } = await bench(`packing --data data --family stamps ${options}`, {
      ...DATA,
      [RATCHET]: "no",
    });
    expect(stderr).not.toContain("atchet");
  }
});

test("a plan that fails its check is told with exit code 1, and renews no ratchet", async () => {
  const broken = {
    openPool: () => ({
      run: (task: Parameters<typeof solveTask>[0]): Promise<Solved> =>
        Promise.resolve({ ...solveTask(task, () => 0), faults: ["layouts[0]: a piece lies over another"] }),
      close: () => Promise.resolve(),
    }),
  };
  const line = "packing --data data --family medals --effort quick --renew-ratchet --json t.json";
  const { code, stderr, files } = await bench(line, DATA, 0.25, broken);
  expect(code).toBe(1);
  expect(stderr).toContain(
    "A plan failed its check: medals gold, fixed, quick: layouts[0]: a piece lies over another\n",
  );
  expect(files.has(RATCHET)).toBe(false);
  expect(jsonOf(files, "/place/t.json").rows[0]).toMatchObject({ verified: false });
});

test("pieces that the stock cannot give are told with exit code 1", async () => {
  const short = {
    family: "short",
    instances: [{ id: "s", sheets: [[10, 10, 1]], pieces: [[10, 10, 2]] }],
  };
  const { code, stderr, stdout } = await bench(
    "packing --data data --effort quick",
    filesOf("/place/data", [short]),
  );
  expect(code).toBe(1);
  expect(stderr).toContain("short s, fixed, quick: not all pieces were placed on the sheets in stock.\n");
  expect(stdout).toMatch(/\| short +\| fixed +\| quick +\| sheet area +\| +1 \| +- \|/);
});

test.each([["packing"], ["peers"]])(
  "%s without data says what is missing and where it is published",
  async (suite) => {
    for (const line of [suite, `${suite} --data nowhere`, `${suite} --data empty`]) {
      const { code, stdout, stderr, files } = await bench(line, { "/place/empty/readme.txt": "" });
      expect(code).toBe(2);
      expect(stderr).toMatch(
        /^--data: (is missing|there is no folder nowhere|empty holds no file of instances)\. Expected/,
      );
      expect(stderr).toContain("Martello & Vigo, Management Science 44 (1998)");
      expect(stderr).toContain("bench/README.md describes the fields");
      expect([stdout, files.size]).toEqual(["", 1]);
    }
  },
);

test.each([
  [
    "an unknown family",
    "--family tile",
    /^--family: found "tile", expected one of medals, mixed, ribbons, stamps, tiles\.\n$/,
  ],
  ["a family given twice", "--family tiles --family tiles", /^--family: tiles is given twice/],
  ["an unknown effort", "--effort fast", /^--effort: found "fast", expected quick, standard, thorough\.\n$/],
  ["an effort given twice", "--effort quick --effort quick", /^--effort: quick is given twice/],
  ["no jobs", "--jobs 0", /^--jobs: found "0", expected a whole number from 1 to 256\.\n$/],
  ["unknown turns", "--turns both", /^--turns: found "both", expected fixed or turned\.\n$/],
  ["a seed that is no number", "--seed one", /^--seed: found "one", expected a whole number from 0/],
  ["a second folder", "--data other", /^--data: given 2 times, expected once/],
  [
    "a ratchet at another effort",
    "--renew-ratchet",
    /^--renew-ratchet: found effort standard and seed 1, expected --effort quick and seed 1/,
  ],
  [
    "a ratchet with another seed",
    "--renew-ratchet --effort quick --seed 2",
    /^--renew-ratchet: found effort quick and seed 2/,
  ],
  ["a JSON file in no folder", "--json no/x.json", /^--json: there is no folder no\.\n$/],
])("%s ends with exit code 2 in plain words, and nothing is written", async (_, options, expected) => {
  const { code, stdout, stderr, files } = await bench(`packing --data data ${options}`, DATA);
  expect(code).toBe(2);
  expect(stderr).toMatch(expected);
  expect([stdout, files.size]).toEqual(["", Object.keys(DATA).length]);
});

test.each<[string, Readonly<Record<string, string>>, RegExp]>([
  ["no JSON", { "/place/data/a.json": "{" }, /^data\/a\.json: is no JSON: .+\.\n$/],
  [
    "a faulty instance",
    filesOf("/place/data", [
      { family: "a", instances: [{ id: "x", sheet: [10], pieces: [[1, 1, 1]] }] } as { family: string },
    ]),
    /^data\/a\.json, instances\[0\]\.sheet/,
  ],
  [
    "a family in two files",
    { ...DATA, "/place/data/z.json": JSON.stringify(TILES) },
    /^--data: two files of data hold the family tiles/,
  ],
  [
    "no ratchet where it should be",
    { ...DATA, [RATCHET]: "[]" },
    /^results\/packing-ratchet\.json: holds no ratchet of this version\. Restore it/,
  ],
])("%s is told with its file, and nothing is measured", async (_, given, expected) => {
  const { code, stderr, stdout } = await bench("packing --data data --effort quick", given);
  expect([code, stdout]).toEqual([2, ""]);
  expect(stderr).toMatch(expected);
});

test("a fault in the file of another family does not keep one from being measured", async () => {
  const given = { ...DATA, "/place/data/a.json": JSON.stringify({ family: "a", instances: [] }) };
  expect((await bench("packing --data data --family stamps --effort quick", given)).code).toBe(0);
  expect((await bench("packing --data data --effort quick", given)).code).toBe(2);
});
