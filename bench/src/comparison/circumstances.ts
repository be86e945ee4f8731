import { type Machine, writeMachine } from "../machine.js";

/** Where, how and how long a run was measured. */
export interface Circumstances {
  readonly machine: Machine;
  readonly jobs: number;
  readonly versions: Readonly<Record<string, string>>;
  /** Of the whole run. */
  readonly seconds: number;
}

/** The circumstances as the closing line of a table. */
export function writeCircumstances({ machine, jobs, versions, seconds }: Circumstances): string {
  const packages = Object.entries(versions).map(([name, version]) => `${name} ${version}`);
  return [
    `Measured in ${seconds.toFixed(1)} s with ${jobs} ${jobs === 1 ? "job" : "jobs"} on ${writeMachine(machine)}; ${packages.join(", ")}.`,
    "Seconds are those of the searches, added up; they differ from run to run.",
  ].join("\n");
}
