import { describe, expect, test } from "vitest";
import { runAlone } from "../../src/scale/run-alone.js";
import type { ScaleFigures, ScaleTask } from "../../src/scale/scale-task.js";
import { bench } from "../bench-in-memory.js";
import { all, read, textOf } from "../chart/read-svg.js";

interface Figures {
  readonly rows: readonly (ScaleTask &
    ScaleFigures & { readonly growing: string; readonly verified: boolean })[];
}

/** What a row would take where time grows with the root of the copies. */
const made = ({ kinds, copies }: ScaleTask): Promise<ScaleFigures> =>
  Promise.resolve({
    seconds: Math.sqrt(copies) / 10,
    peakMiB: 60 + kinds / 10,
    sheets: Math.ceil(copies / 15),
    bound: Math.ceil(copies / 16),
    layouts: 3,
    work: 10 * copies,
    faults: [],
  });

describe("the suite scale", () => {
  test("plans each row, proves it, and gives table, chart and figures", async () => {
    const { code, stdout, stderr, files } = await bench("scale --effort quick --grow copies --most 100");
    expect(code).toBe(0);
    expect(stdout).toContain("# Time and memory against copies and kinds");
    expect(stdout).toContain("## More copies of 20 kinds");
    expect(stdout).not.toContain("## More kinds");
    expect(stderr).toContain("Written: results/scale_quick_copies_at-most-100.md");
    const { rows } = JSON.parse(
      files.get("/place/results/scale_quick_copies_at-most-100.json") ?? "",
    ) as Figures;
    expect(rows.map(({ kinds, copies }) => [kinds, copies])).toEqual([
      [20, 1],
      [20, 10],
      [20, 100],
    ]);
    for (const { growing, effort, seconds, peakMiB, sheets, bound, verified } of rows) {
      expect({ growing, effort, peakMiB, verified }).toEqual({
        growing: "copies",
        effort: "quick",
        peakMiB: 64,
        verified: true,
      });
      expect(seconds).toBe(0.25);
      expect(sheets).toBeGreaterThanOrEqual(bound);
      expect(bound).toBeGreaterThan(0);
    }
  });

  test("runs one row after another, all of them at each effort", async () => {
    const tasks: ScaleTask[] = [];
    let running = 0;
    const { stdout, files } = await bench("scale", {}, 0.25, {
      runAlone: async (task) => {
        expect(++running).toBe(1);
        tasks.push(task);
        const figures = await made(task);
        running--;
        return figures;
      },
    });
    expect(tasks).toHaveLength(28);
    expect(tasks.filter(({ kinds }) => kinds === 20).map(({ copies }) => copies)).toContain(100_000);
    expect(tasks.map(({ kinds }) => kinds)).toContain(2_000);
    expect(stdout).toContain(
      "100,000 copies take as long as 1,000: 10.00 times at quick, 10.00 times at standard.",
    );
    const texts = all(read(files.get("/place/results/scale.svg") ?? ""), "text").map(textOf);
    expect(texts).toEqual(expect.arrayContaining(["Seconds by copies of 20 kinds", "100,000", "31.62"]));
  });

  test("tells a plan that fails its check, by the exit code too", async () => {
    const { code, stderr } = await bench("scale --effort quick --grow kinds --most 10", {}, 0.25, {
      runAlone: async (task) => ({
        ...(await made(task)),
        faults: ["layouts[0]: one piece lies on another"],
      }),
    });
    expect(code).toBe(1);
    expect(stderr).toContain("A plan failed its check: layouts[0]: one piece lies on another");
  });

  test("refuses what it cannot measure", async () => {
    const { code, stdout, stderr } = await bench("scale --grow paper --most 0 --effort slow");
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    for (const found of ['found "paper"', 'found "0"', 'found "slow"']) expect(stderr).toContain(found);
  });

  test("says what a process of its own failed with", async () => {
    const task: ScaleTask = { kinds: 20, copies: 1, effort: "quick", seed: 1 };
    await expect(runAlone(new URL("./nowhere.js", import.meta.url), task)).rejects.toThrow("nowhere.js");
  });
});
