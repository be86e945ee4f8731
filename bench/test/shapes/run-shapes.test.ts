import { describe, expect, test } from "vitest";
import { bench } from "../bench-in-memory.js";

describe("the suite shapes", () => {
  test("times each operation by each package that can do it, and finds the same areas", async () => {
    const { code, stdout, files } = await bench("shapes --rounds 1", {}, 0.001);
    expect(code).toBe(0);
    for (const heading of ["## Flatten to 0.02 mm", "## Offset by 1/8 in", "## Union with itself set off"]) {
      expect(stdout).toContain(heading);
    }
    expect(stdout).toMatch(/\| +outlines .*ours ms.*clipper2-ts ms.*polygon-clipping ms/);
    expect(stdout).toMatch(/Measured in .* s, 1 rounds?, on Node/);
    const [table] = [...files.keys()].filter((name) => name.endsWith(".md"));
    expect(table).toBe("/place/results/shapes_1-rounds.md");
    const figures = JSON.parse(files.get("/place/results/shapes_1-rounds.json") ?? "") as {
      readonly rows: readonly { readonly clipper: { readonly areaOff: number } | null }[];
    };
    const differences = figures.rows.flatMap(({ clipper }) => (clipper === null ? [] : [clipper.areaOff]));
    expect(differences.length).toBeGreaterThan(10);
    for (const difference of differences) expect(Math.abs(difference)).toBeLessThan(200);
  });

  test("refuses what is no number of rounds, and measures nothing", async () => {
    const { code, stdout, stderr } = await bench("shapes --rounds 0");
    expect(code).toBe(2);
    expect(stdout).toBe("");
    expect(stderr).toContain('found "0", expected a whole number from 1 to 1000.');
  });
});
