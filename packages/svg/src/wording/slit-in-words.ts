import { formatLength, type Unit } from "@sheetwright/measure";
import type { LyingSlit } from "../layout/lying-marks.js";
import { unbroken } from "../text/break-lines.js";
import { listed } from "./score-in-words.js";

/**
 * Where to cut slits: `at 1 1/2 in and 4 in from its top edge, from 1 3/4 in to 8 3/4 in from its left edge`; copies that
 * lie turned are spoken of apart.
 */
export function slitsInWords(
  {
    upright,
    turned,
  }: { readonly upright: readonly LyingSlit[] | null; readonly turned: readonly LyingSlit[] | null },
  unit: Unit,
  whose: "the" | "its",
): string {
  const [first, second] = [upright, turned].map((slits) =>
    slits === null ? "" : placesInWords(slits, unit, whose),
  ) as [string, string];
  if (first === "" || second === "" || first === second) return first === "" ? second : first;
  return `${first}; where it lies turned, ${second}`;
}

/** Slits with the same ends in one go. */
function placesInWords(slits: readonly LyingSlit[], unit: Unit, whose: "the" | "its"): string {
  const say = (length: number) => unbroken(formatLength(length, { unit }));
  const endsInWords = ({ ends: [near, far], endsFrom }: LyingSlit) =>
    `from ${say(near)} to ${say(far)} from ${whose} ${endsFrom} edge`;
  const groups = new Map<string, LyingSlit[]>();
  for (const slit of slits) {
    const key = `${slit.edge} ${endsInWords(slit)}`;
    groups.set(key, [...(groups.get(key) ?? []), slit]);
  }
  return [...groups.values()]
    .map((group) => {
      const [first] = group as [LyingSlit];
      const distances = group.map(({ distance }) => distance).sort((a, b) => a - b);
      return `at ${listed(distances.map(say))} from ${whose} ${first.edge} edge, ${endsInWords(first)}`;
    })
    .join("; ");
}
