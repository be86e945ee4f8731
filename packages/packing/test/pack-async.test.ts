import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Packing,
  type Problem,
  type Progress,
  pack,
  packAsync,
  packSteps,
  verify,
} from "../src/index.js";
import { anyProblem } from "./problems.js";

const problem: Problem = {
  mode: "guillotine",
  aim: "all",
  kinds: Array.from({ length: 14 }, (_, i) => ({
    id: `k${i}`,
    quantity: 1 + (i % 5),
    forms: [{ width: 17 + 7 * i, height: 61 - 3 * i }],
  })),
  sheets: [{ id: "sheet", width: 120, height: 90 }],
};

/** Runs the generator and asks it to end at the given step. */
function stopAt(given: Problem, stop: number): { packing: Packing; steps: number } {
  const search = packSteps(given, { effort: "quick" });
  let steps = 0;
  let step = search.next();
  while (!step.done) {
    steps++;
    step = search.next(steps >= stop);
  }
  return { packing: step.value, steps };
}

describe("packAsync", () => {
  test("gives the same bytes as pack, however often it pauses", async () => {
    const expected = JSON.stringify(pack(problem, { effort: "quick", seed: 7 }));
    let pauses = 0;
    const pause = async (): Promise<void> => {
      pauses++;
      await new Promise((done) => setTimeout(done));
    };
    expect(JSON.stringify(await packAsync(problem, { effort: "quick", seed: 7, pause }))).toBe(expected);
    expect(JSON.stringify(await packAsync(problem, { effort: "quick", seed: 7 }))).toBe(expected);
    expect(pauses).toBeGreaterThan(0);
  });

  test("reports progress that only gets better", async () => {
    const seen: Progress[] = [];
    await packAsync(problem, { effort: "quick", onProgress: (progress) => void seen.push(progress) });
    expect(seen.length).toBeGreaterThan(3);
    for (const [i, progress] of seen.entries()) {
      const before = seen[i - 1];
      if (before === undefined) continue;
      expect(progress.work).toBeGreaterThanOrEqual(before.work);
      expect(progress.share).toBeGreaterThanOrEqual(before.share);
      expect(progress.startsDone).toBeGreaterThanOrEqual(before.startsDone);
      if (before.best && progress.best) expect(progress.best.cost).toBeLessThanOrEqual(before.best.cost);
    }
  });

  test("returns the best plan so far when it is cancelled, and says so", async () => {
    const signal = { aborted: false };
    let steps = 0;
    const onProgress = (): void => {
      steps++;
      if (steps === 20) signal.aborted = true;
    };
    const packing = await packAsync(problem, { effort: "standard", signal, onProgress });
    expect(packing.search.ended).toBe("cancelled");
    expect(packing.outcome).toBe("complete");
    expect(verify(problem, packing)).toEqual([]);
    expect(steps).toBeLessThan(40);
  });

  test("still makes one whole plan when it is cancelled before it began", async () => {
    const packing = await packAsync(problem, { signal: { aborted: true } });
    expect(packing).toMatchObject({ outcome: "complete", search: { ended: "cancelled" } });
    expect(verify(problem, packing)).toEqual([]);
  });

  test("rejects with the error that pack throws", async () => {
    const broken = { ...problem, kerf: -1 };
    expect(() => pack(broken)).toThrow("kerf");
    await expect(packAsync(broken)).rejects.toThrow("kerf");
  });

  test("returns a plan that verifies wherever it is stopped (promise 5)", () => {
    fc.assert(
      fc.property(anyProblem, fc.integer({ min: 1, max: 60 }), (given, stop) => {
        const { packing, steps } = stopAt(given, stop);
        expect(verify(given, packing)).toEqual([]);
        if (packing.search.ended === "cancelled") expect(steps).toBeGreaterThanOrEqual(stop);
        else expect(JSON.stringify(packing)).toBe(JSON.stringify(pack(given, { effort: "quick" })));
      }),
    );
  });
});
