import { expect, test } from "vitest";
import type { ComparisonJson } from "../../src/comparison/comparison-json.js";
import { bench } from "../bench-in-memory.js";
import { filesOf, MEDALS, RIBBONS, TILES } from "../made-up-families.js";

const DATA = filesOf("/place/data", [TILES, RIBBONS, MEDALS]);

test("other packers stand beside our three efforts, each where it can pack", async () => {
  const { code, stdout, stderr, files } = await bench("peers --data data", DATA);
  expect(code).toBe(0);
  expect(stderr).toBe(
    `Written: ${["md", "svg", "json"].map((kind) => `results/peers.${kind}`).join(", ")}\n`,
  );
  const { suite, rows, versions } = JSON.parse(
    files.get("/place/results/peers.json") ?? "",
  ) as ComparisonJson;
  expect(suite).toBe("peers");
  const ours = ["quick", "standard", "thorough"].map((effort) => `sheetwright ${effort}`);
  const solvers = (family: string, rotation: boolean) =>
    rows
      .filter((row) => row.family === family && row.rotation === rotation)
      .map(({ solver, effort }) => (effort === null ? solver : `${solver} ${effort}`));
  expect(solvers("tiles", false)).toEqual([...ours, "maxrects-packer", "@mapbox/shelf-pack"]);
  expect(solvers("tiles", true)).toEqual([...ours, "maxrects-packer"]);
  expect(solvers("ribbons", false)).toEqual([...ours, "potpack", "bin-pack"]);
  expect(solvers("ribbons", true)).toEqual(ours);
  expect(solvers("medals", false)).toEqual([]);
  expect(Object.keys(versions)).toEqual([
    "@sheetwright/packing",
    "maxrects-packer",
    "@mapbox/shelf-pack",
    "potpack",
    "bin-pack",
  ]);
  expect(stdout).toMatch(/maxrects-packer \d+\.\d+\.\d+, @mapbox\/shelf-pack \d/);
  expect(files.get("/place/results/peers.svg")).toContain("one sheet or square, fixed");
});

// Worked out by hand in made-up-families.ts.
test("sheets of every packer are as worked out by hand, and rows have the keys of ours", async () => {
  const { files } = await bench("peers --data data --effort quick --json p.json", DATA);
  const { rows } = JSON.parse(files.get("/place/p.json") ?? "") as ComparisonJson;
  const sheets = rows
    .filter(({ family }) => family === "tiles")
    .map(({ solver, rotation, sheets: used }) => [solver, rotation, used]);
  expect(sheets).toEqual([
    ["sheetwright", false, 5],
    ["maxrects-packer", false, 5],
    ["@mapbox/shelf-pack", false, 5],
    ["sheetwright", true, 4],
    ["maxrects-packer", true, 4],
  ]);
  const halves = rows.filter(({ family, rotation }) => family === "ribbons" && !rotation);
  // Two pieces of 5 x 8 lie in a square of 10 x 10; three of 10 x 2 too.
  expect(
    halves.map(({ solver, details }) => [solver, ...details.map(({ utilisation }) => utilisation)]),
  ).toEqual([
    ["sheetwright", 100, 100],
    ["potpack", 80, 60],
    ["bin-pack", 80, 60],
  ]);
  const [first] = rows;
  for (const row of rows) expect(Object.keys(row)).toEqual(Object.keys(first ?? {}));
});

test("families of other questions alone leave nothing to compare", async () => {
  const { code, stderr } = await bench("peers --data data --family medals", DATA);
  expect(code).toBe(2);
  expect(stderr).toBe(
    "--family: found medals, expected a family of equal sheets or of strips, which other packers can pack too.\n",
  );
});
