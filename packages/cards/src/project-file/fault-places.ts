import type { ProjectFault } from "../project-fault.js";
import type { ReadYaml } from "./read-yaml.js";

/** Fills in where each fault stands, and puts them in the order of the file. */
export function withPlaces(
  faults: readonly ProjectFault[],
  { placeOf, keyPlaceOf }: Pick<ReadYaml, "placeOf" | "keyPlaceOf">,
): readonly ProjectFault[] {
  return faults
    .map((fault) => {
      if (fault.line !== null) return fault;
      const place = fault.code === "unknown-key" ? keyPlaceOf(fault.path) : placeOf(fault.path);
      return { ...fault, ...(place ?? { line: 1, column: 1 }) };
    })
    .sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0));
}
