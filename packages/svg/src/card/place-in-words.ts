/** Says where a layer lies on what carries it, by what is measured with a ruler. */

import { formatLength, type Ticks, type Unit } from "@sheetwright/measure";
import type { Sides } from "@sheetwright/planner";
import { unbroken } from "../text/break-lines.js";

/** `1/8 in border all round`, `edge to edge across, top 1 in, bottom 2 in`. */
export function placeInWords({ left, right, top, bottom }: Sides, unit: Unit): string {
  const say = (length: Ticks) => unbroken(formatLength(length, { unit }));
  if (left === right && top === bottom && left === top) {
    return left === 0 ? "covers it all" : `${say(left)} border all round`;
  }
  const across = axisInWords(["left", left], ["right", right], "edge to edge across", say);
  const down = axisInWords(["top", top], ["bottom", bottom], "edge to edge upright", say);
  return `${across}, ${down}`;
}

function axisInWords(
  [startName, start]: readonly [string, Ticks],
  [endName, end]: readonly [string, Ticks],
  whole: string,
  say: (length: Ticks) => string,
): string {
  if (start === 0 && end === 0) return whole;
  if (start === end) return `${say(start)} ${startName} and ${endName}`;
  return `${unbroken(`${startName} ${say(start)}`)}, ${unbroken(`${endName} ${say(end)}`)}`;
}

/** A length in both units, the maker's first: `5 in (127 mm)`. */
export function bothUnits(length: Ticks, unit: Unit): string {
  const other = otherUnit(unit);
  return unbroken(`${formatLength(length, { unit })} (${formatLength(length, { unit: other })})`);
}

/** The unit that is not the project's. */
export function otherUnit(unit: Unit): Unit {
  return unit === "in" ? "mm" : "in";
}
