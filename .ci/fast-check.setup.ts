import { configureGlobal } from "fast-check";

/** A fixed seed makes every run repeatable; FC_RUNS raises or lowers the number of cases. */
const numRuns = Number(process.env["FC_RUNS"] ?? 1000);
if (!Number.isSafeInteger(numRuns) || numRuns < 1) {
  throw new RangeError(`FC_RUNS is "${process.env["FC_RUNS"]}"; give a whole number of cases, 1 or more.`);
}

configureGlobal({ seed: 20260101, numRuns });
