import { formatLength, type Unit } from "@sheetwright/measure";
import type { Cut } from "@sheetwright/packing";

/** How to set a cut: `line up left edge at 4 1/4 in`. */
export function settingInWords({ edge, distance }: Pick<Cut, "edge" | "distance">, unit: Unit): string {
  return `line up ${edge} edge at ${formatLength(distance, { unit })}`;
}

/** Cuts that follow one another with the same edge against the fence and the fence untouched. */
export function groupBySetting(cuts: readonly Cut[]): readonly (readonly Cut[])[] {
  const groups: Cut[][] = [];
  for (const cut of cuts) {
    const group = groups.at(-1);
    const before = group?.at(-1);
    const same =
      before !== undefined &&
      before.edge === cut.edge &&
      before.distance === cut.distance &&
      before.purpose === cut.purpose &&
      before.tooNarrow === cut.tooNarrow;
    if (same) group?.push(cut);
    else groups.push([cut]);
  }
  return groups;
}
