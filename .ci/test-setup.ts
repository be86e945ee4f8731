import { configureGlobal } from "fast-check";
import { expect, vi } from "vitest";

// A fixed seed makes every run the same. A gate runs 1,000 cases of each property; at the desk 100 keep the tests short,
// and FC_RUNS sets any other number.
const numRuns = Number(process.env.FC_RUNS ?? (process.env.CI ? 1000 : 100));
if (!Number.isSafeInteger(numRuns) || numRuns < 1) {
  throw new RangeError(`FC_RUNS is "${process.env.FC_RUNS}"; give a whole number of cases, 1 or more.`);
}
configureGlobal({ seed: 20260101, numRuns });

// Starting a browser and drawing in it takes its time on a busy machine.
if (expect.getState().testPath?.endsWith(".browser.test.ts")) {
  vi.setConfig({ testTimeout: 300_000, hookTimeout: 300_000 });
}
