import { join } from "node:path";
import { expect, test } from "vitest";
import type { WasteJson } from "../src/waste/waste-json.js";
import { bench } from "./bench-in-memory.js";

const LIST = "name,width,height,quantity,turn\nmat,4,5 1/4,12,yes\nbase,7,10,3,no\n";

test("a run writes table, chart and JSON, and says where", async () => {
  const { code, stdout, stderr, files } = await bench("waste --sheet 6x6in --sets 1");
  expect(code).toBe(0);
  expect(stdout).toContain("### Mixed pieces, sheets used");
  expect(stdout).toContain("on Node 20.19.0");
  const names = ["md", "svg", "json"].map((kind) => join("results", `waste_6-x-6-in_1-sets.${kind}`));
  expect(stderr).toBe(`Written: ${names.join(", ")}\n`);
  expect([...files.keys()]).toEqual(names.map((name) => `/place/${name}`));
});

test("table and chart depend on the request alone; the JSON differs in machine and seconds only", async () => {
  const fast = (await bench("waste --sheet 5x7in --sets 1", {}, 0.25)).files;
  const slow = (await bench("waste --sheet 5x7in --sets 1", {}, 4)).files;
  const timeless = (text: string): string =>
    JSON.stringify(JSON.parse(text), (key, value) => (key === "seconds" || key === "machine" ? null : value));
  for (const [path, text] of fast) {
    const other = slow.get(path) ?? "";
    if (!path.endsWith(".json")) expect(other).toBe(text);
    else {
      expect(other).not.toBe(text);
      expect(timeless(other)).toBe(timeless(text));
    }
  }
});

test("the JSON holds suite, version, options, yields and a row for each sheet, family and way of cutting", async () => {
  const { files } = await bench("waste --sheet 6x6in --sets 2 --json figures.json");
  const json = JSON.parse(files.get("/place/figures.json") ?? "") as WasteJson;
  expect(Object.keys(json)).toEqual(["suite", "version", "options", "machine", "yields", "rows"]);
  expect([json.suite, json.version]).toEqual(["waste", 1]);
  expect(json.options).toMatchObject({ seed: 1, effort: "quick", sets: 2, pieces: null });
  expect(json.yields).toHaveLength(1);
  expect(json.yields[0]?.pieces[0]).toEqual({
    piece: "2 x 3 in",
    width: 81280,
    height: 121920,
    counts: { guillotine: 6, shelf: 6, firstFitShelves: 6, bestGrid: 6, area: 6 },
    usePercent: 100,
    exact: true,
    verified: true,
  });
  expect(json.rows).toHaveLength(4 * 4);
  for (const row of json.rows) {
    const ours = row.solver === "sheetwright";
    expect(Object.keys(row)).toEqual(ROW_KEYS);
    expect(row).toMatchObject({ sheet: "6 x 6 in", instances: 2, verified: ours ? true : null });
    expect([row.mode !== null, row.effort !== null, row.proven !== null]).toEqual([ours, ours, ours]);
    expect(row.details).toHaveLength(2);
    expect(row.details.reduce((sum, { sheets }) => sum + (sheets ?? 0), 0)).toBe(row.sheets);
    expect(row.bound).toBeLessThanOrEqual(row.sheets ?? 0);
  }
});

const ROW_KEYS = [
  ...["sheet", "family", "solver", "mode", "effort", "instances", "kinds", "copies", "sheets", "bound"],
  ...["utilisation", "proven", "verified", "seconds", "details"],
];

test("a list takes the place of the seeded sets, and only its file's name is kept", async () => {
  const { code, files, stdout } = await bench("waste --sheet 12x12in --pieces lists/lantern.csv", {
    "/place/lists/lantern.csv": LIST,
  });
  expect(code).toBe(0);
  const json = JSON.parse(files.get("/place/results/waste_12-x-12-in_lantern.json") ?? "") as WasteJson;
  expect(json.options).toMatchObject({ sets: null, pieces: "lantern.csv" });
  expect(new Set(json.rows.map(({ family }) => family))).toEqual(new Set(["lantern.csv"]));
  expect(json.rows[0]).toMatchObject({ kinds: 2, copies: 15, instances: 1 });
  expect(stdout).toContain("the list lantern.csv");
  for (const [path, text] of files) if (path.includes("results")) expect(text).not.toMatch(/\/place|lists\//);
});

test("a list that a sheet cannot give is told with exit code 1, and the rest is still written", async () => {
  const { code, stderr, files } = await bench("waste --sheet 6x6in --pieces a.csv", { "/place/a.csv": LIST });
  expect(code).toBe(1);
  expect(stderr).toContain(
    "a.csv cannot be cut whole from 6 x 6 in; too large for it: base (7 x 10 in, not to be turned). Take a larger sheet.",
  );
  expect(files.get("/place/results/waste_6-x-6-in_a.md")).toContain("| a.csv");
});

test.each([
  ["an unknown suite", "wast", /unknown command 'wast'\n\(Did you mean waste\?\)/],
  ["an unknown option", "waste --sheets 6x6", /unknown option '--sheets'\n\(Did you mean --sheet\?\)/],
  ["a missing value", "waste --seed", /option '--seed <number>' argument missing/],
  ["a stray word", "waste 12x12in", /too many arguments/],
  ["no suite", "", /Usage: bench <suite>/],
  ["a bad sheet and a bad seed", "waste --sheet 12 --seed x", /^--sheet: .*\n--seed: found "x"/],
  [
    "a list that is not there",
    "waste --pieces b.csv",
    /^b\.csv: cannot be read: no such file or directory\.\n$/,
  ],
  ["a faulty list", "waste --pieces a.csv", /^a\.csv:1: found "name" as the header/],
  ["a JSON file in no folder", "waste --json no/x.json", /^--json: there is no folder no\.\n$/],
  ["a JSON file that is a folder", "waste --json ../place", /^--json: \. is a folder, expected a file\.\n$/],
  ["a file as the folder", "waste --out a.csv", /^--out: a\.csv cannot be made: file already exists\.\n$/],
])("%s ends with exit code 2 in plain words, and nothing is written", async (_, line, expected) => {
  const { code, stdout, stderr, files } = await bench(line, { "/place/a.csv": "name\n" });
  expect(code).toBe(2);
  expect(stderr).toMatch(expected);
  expect(stderr).not.toMatch(/^\s+at /m);
  expect(stdout).toBe("");
  expect(files.size).toBe(1);
});

test.each([["--help"], ["help"], ["waste --help"], ["help waste"]])(
  "bench %s prints help with exit code 0",
  async (line) => {
    const { code, stdout, stderr } = await bench(line);
    expect([code, stderr]).toEqual([0, ""]);
    expect(stdout).toContain("Usage: bench");
    expect(stdout).toContain("Exit codes: 0 done");
  },
);
