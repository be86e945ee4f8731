import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type PackSpreadOptions,
  type Problem,
  type Progress,
  pack,
  packSpread,
  type StartResult,
  type StartTask,
  type StartWatch,
  startSteps,
  verify,
} from "../src/index.js";
import { anyProblem } from "./problems.js";

/** No plan for it is ever proven, so that every start has work. */
const unproven: Problem = {
  mode: "guillotine",
  aim: "fill",
  kinds: Array.from({ length: 12 }, (_, i) => ({
    id: `k${i}`,
    quantity: 1,
    forms: [{ width: 17 + ((i * 37) % 41), height: 19 + ((i * 53) % 47) }],
  })),
  sheets: [{ id: "sheet", width: 80, height: 60, stock: 1 }],
  kerf: 1,
  stages: 4,
};

const nextTurn = (): Promise<void> => new Promise((done) => setTimeout(done));

/** Runs a start as a worker would: on a copy of its task, giving way now and then. */
async function runElsewhere(
  task: StartTask,
  { isStopped, onWork }: StartWatch,
  stepsPerPause = 20,
): Promise<StartResult> {
  const steps = startSteps(JSON.parse(JSON.stringify(task)) as StartTask);
  for (let count = 1; ; count++) {
    const step = count === 1 ? steps.next() : steps.next(isStopped());
    if (step.done) return JSON.parse(JSON.stringify(step.value)) as StartResult;
    onWork(step.value);
    if (count % stepsPerPause === 0) await nextTurn();
  }
}

const spread = (lanes: number, more: Partial<PackSpreadOptions> = {}): PackSpreadOptions => ({
  effort: "standard",
  seed: 3,
  leastWork: 0,
  lanes,
  runStart: runElsewhere,
  ...more,
});

describe("a search whose starts run elsewhere", () => {
  test("gives the same bytes as pack for any number of lanes", async () => {
    const whole = pack(unproven, { effort: "standard", seed: 3 });
    expect(whole.search.steps).toBeGreaterThan(100);
    for (const lanes of [1, 2, 4]) {
      expect(JSON.stringify(await packSpread(unproven, spread(lanes)))).toBe(JSON.stringify(whole));
    }
  });

  test("gives the same bytes as pack for any problem", async () => {
    let improved = 0;
    const property = fc.asyncProperty(
      anyProblem,
      fc.nat(1000),
      fc.integer({ min: 1, max: 3 }),
      async (problem, seed, lanes) => {
        const runStart: PackSpreadOptions["runStart"] = async (task, watch) => {
          const result = await runElsewhere(task, watch);
          if (result.sheets !== null) improved++;
          return result;
        };
        const packing = await packSpread(problem, {
          effort: "standard",
          seed,
          leastWork: 0,
          lanes,
          runStart,
        });
        expect(JSON.stringify(packing)).toBe(JSON.stringify(pack(problem, { effort: "standard", seed })));
      },
    );
    await fc.assert(property, { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 10) });
    expect(improved).toBeGreaterThan(0);
  }, 120_000);

  test("makes starts of little work here", async () => {
    const runStart = (): never => {
      throw new Error("Nothing is to be sent.");
    };
    const packing = await packSpread(unproven, spread(2, { leastWork: 1e12, runStart }));
    expect(JSON.stringify(packing)).toBe(JSON.stringify(pack(unproven, { effort: "standard", seed: 3 })));
  });

  test("tells of progress that only grows, with starts side by side", async () => {
    const seen: Progress[] = [];
    let running = 0;
    let most = 0;
    const runStart: PackSpreadOptions["runStart"] = async (task, watch) => {
      most = Math.max(most, ++running);
      const result = await runElsewhere(task, watch);
      running--;
      return result;
    };
    await packSpread(unproven, spread(2, { runStart, onProgress: (progress) => seen.push(progress) }));
    expect(most).toBe(2);
    expect(seen.at(-1)).toMatchObject({ share: 1 });
    for (const [i, { share, work, startsDone, starts }] of seen.entries()) {
      const before = seen[i - 1] ?? { share: 0, work: 0, startsDone: 0 };
      expect(share).toBeGreaterThanOrEqual(before.share);
      expect(work).toBeGreaterThanOrEqual(before.work);
      expect(startsDone).toBeGreaterThanOrEqual(before.startsDone);
      expect(startsDone).toBeLessThanOrEqual(starts);
    }
  });

  test("ends with the best plan so far wherever it is cancelled", async () => {
    const ends = new Set<string>();
    for (const stopAt of [1, 5, 100, 2_000, 4_000]) {
      const signal = { aborted: false };
      let told = 0;
      const onProgress = (): void => {
        if (++told >= stopAt) signal.aborted = true;
      };
      const packing = await packSpread(unproven, spread(2, { signal, onProgress }));
      expect(verify(unproven, packing)).toEqual([]);
      ends.add(packing.search.ended);
    }
    expect(ends).toContain("cancelled");
  });

  test("does not begin further starts once it is cancelled", async () => {
    const signal = { aborted: false };
    const begun: number[] = [];
    const runStart: PackSpreadOptions["runStart"] = (task, watch) => {
      begun.push(task.start);
      signal.aborted = true;
      return runElsewhere(task, watch);
    };
    const packing = await packSpread(unproven, spread(1, { signal, runStart }));
    expect(begun).toEqual([0]);
    expect(packing.search.ended).toBe("cancelled");
    expect(verify(unproven, packing)).toEqual([]);
  });

  test("rejects with the fault of a start, once the others have ended", async () => {
    let ended = 0;
    const runStart: PackSpreadOptions["runStart"] = async (task, watch) => {
      if (task.start === 0) throw new Error("The thread is gone.");
      const result = await runElsewhere(task, watch);
      ended++;
      return result;
    };
    await expect(packSpread(unproven, spread(2, { runStart }))).rejects.toThrow("The thread is gone.");
    expect(ended).toBe(1);
  });

  test("rejects as pack throws", async () => {
    const wrong = { ...unproven, kerf: -1 };
    await expect(packSpread(wrong, spread(2))).rejects.toThrow("kerf");
  });
});
