import { formatLength, type Unit } from "@sheetwright/measure";
import type { Cut } from "@sheetwright/packing";
import { unbroken } from "../text/break-lines.js";

/** How to set a cut, in words between which a line may break: `line up left edge at 4 1/4 in`. */
export function settingInWords(
  { edge, distance }: Pick<Cut, "edge" | "distance">,
  unit: Unit,
): readonly string[] {
  return ["line", "up", edge, "edge", "at", unbroken(formatLength(distance, { unit }))];
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
