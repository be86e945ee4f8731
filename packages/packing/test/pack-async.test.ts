import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Packing,
  type Problem,
  type Progress,
  pack,
  packAsync,
  packSteps,
  startCount,
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

/** What a search does, by the order in which it does it. */
type Part = "first plan" | "exact fill" | "ruin and recreate" | "last arrangement";

/** Runs a search, from the given step on with the wish that it end. */
function watch(
  given: Problem,
  stop = Number.POSITIVE_INFINITY,
): { readonly packing: Packing; readonly seen: readonly Progress[]; readonly parts: readonly Part[] } {
  const search = packSteps(given, { effort: "quick" });
  const seen: Progress[] = [];
  let step = search.next();
  while (!step.done) {
    seen.push(step.value);
    step = search.next(seen.length >= stop);
  }
  const improving = startCount(given, { effort: "quick" });
  const parts = seen.map(({ startsDone, starts, work }, i): Part => {
    if (startsDone >= starts) return "last arrangement";
    if (startsDone < starts - improving) return "first plan";
    // An exact fill counts its work at the end; ruin and recreate pauses for nothing but work done.
    return work > (seen[i - 1]?.work ?? 0) ? "ruin and recreate" : "exact fill";
  });
  return { packing: step.value, seen, parts };
}

/** A plan with everything is better than one without, and a cheaper one better than a dearer. */
function expectOnlyBetter({ aim }: Problem, seen: readonly Progress[]): void {
  for (const [i, progress] of seen.entries()) {
    const before = seen[i - 1];
    if (before === undefined) continue;
    expect(progress.work).toBeGreaterThanOrEqual(before.work);
    expect(progress.share).toBeGreaterThanOrEqual(before.share);
    expect(progress.share).toBeLessThanOrEqual(1);
    expect(progress.startsDone).toBeGreaterThanOrEqual(before.startsDone);
    if (before.best === undefined) continue;
    expect(progress.best).toBeDefined();
    if (before.best.everything) expect(progress.best?.everything).toBe(true);
    if (aim === "all" && before.best.everything && progress.best) {
      expect(progress.best.cost).toBeLessThanOrEqual(before.best.cost);
    }
  }
}

/** One sheet and limited copies without any other limit: what an exact fill is made for. */
const oneSheetToFill: fc.Arbitrary<Problem> = fc
  .array(
    fc.record({
      width: fc.integer({ min: 7, max: 30 }),
      height: fc.integer({ min: 7, max: 30 }),
      value: fc.integer({ min: 100, max: 500 }),
      quantity: fc.integer({ min: 1, max: 4 }),
    }),
    { minLength: 4, maxLength: 12 },
  )
  .map((list) => ({
    mode: "guillotine",
    aim: "fill",
    kinds: list.map(({ width, height, value, quantity }, i) => {
      return { id: `k${i}`, quantity, value, forms: [{ width, height }] };
    }),
    sheets: [{ id: "sheet", width: 70, height: 50, stock: 1 }],
  }));

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
    const stopped = { "first plan": 0, "exact fill": 0, "ruin and recreate": 0, "last arrangement": 0 };
    fc.assert(
      fc.property(fc.oneof(anyProblem, oneSheetToFill), fc.nat(), fc.nat(), (given, which, where) => {
        const whole = watch(given);
        expectOnlyBetter(given, whole.seen);
        // Some part of the search first, then a step of it, since ruin and recreate may be short.
        const parts = [...new Set(whole.parts)];
        const part = parts[which % Math.max(1, parts.length)];
        const steps = whole.parts.flatMap((own, i) => (own === part ? [i + 1] : []));
        const stop = steps[where % Math.max(1, steps.length)] ?? 1;
        const { packing, seen } = watch(given, stop);
        expect(verify(given, packing)).toEqual([]);
        expectOnlyBetter(given, seen);
        if (packing.search.ended !== "cancelled") {
          // Nothing was left to do.
          expect(JSON.stringify(packing)).toBe(JSON.stringify(whole.packing));
          return;
        }
        expect(seen.length).toBeGreaterThanOrEqual(stop);
        if (part !== undefined) stopped[part]++;
      }),
      // Each case makes two plans.
      { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 4) },
    );
    for (const count of Object.values(stopped)) expect(count).toBeGreaterThan(1);
  });
});
