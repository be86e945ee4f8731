/** The options of the suite `packing`. */
import type { Effort } from "@sheetwright/packing";
import { Option } from "commander";
import { type BenchFault, BenchFaults } from "../bench-fault.js";
import {
  type ComparisonOptions,
  comparisonOptions,
  readComparisonOptions,
} from "../comparison/comparison-options.js";
import type { WrittenOptions } from "../written-options.js";

/** What the suite is asked. */
export interface PackingOptions extends ComparisonOptions {
  /** Whether the ratchet is written anew instead of compared with. */
  readonly renewRatchet: boolean;
}

const DEFAULT_EFFORTS: readonly Effort[] = ["standard"];

/** What the ratchet is measured at. */
export const RATCHET = { effort: "quick", seed: 1 } as const;

/** The options in the order of the help. */
export function packingOptions(): readonly Option[] {
  return [
    ...comparisonOptions(DEFAULT_EFFORTS),
    new Option("--renew-ratchet", "write the ratchet anew from this run; needs --effort quick and seed 1"),
  ];
}

/** Reads the options. Throws BenchFaults where there are any. */
export function readPackingOptions(written: WrittenOptions, cores: number): PackingOptions {
  const faults: BenchFault[] = [];
  const options = readComparisonOptions(written, DEFAULT_EFFORTS, cores, faults);
  const renewRatchet = written.renewRatchet === true;
  if (renewRatchet && !isRatchetRun(options)) {
    const found = `found effort ${options.efforts.join(", ")} and seed ${options.seed}`;
    faults.push({
      where: "--renew-ratchet",
      message: `${found}, expected --effort ${RATCHET.effort} and seed ${RATCHET.seed}, which the ratchet is measured at.`,
    });
  }
  if (faults.length > 0) throw new BenchFaults(faults);
  return { ...options, renewRatchet };
}

/** Whether a run measures what the ratchet holds. */
export function isRatchetRun({ efforts, seed }: Pick<ComparisonOptions, "efforts" | "seed">): boolean {
  return efforts.includes(RATCHET.effort) && seed === RATCHET.seed;
}
