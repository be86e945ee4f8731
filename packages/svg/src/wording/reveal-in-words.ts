import { formatLength, type Unit } from "@sheetwright/measure";
import type { Reveal } from "@sheetwright/planner";

/**
 * What a mat that the next die up cuts shows round what lies on it, with the wish where it gives more or less.
 *
 * @example
 * revealInWords({ mat: "1b", least: 5080, most: 10160, wanted: 5080 }, "in")
 * // => "shows 1/8 in to 1/4 in of 1b (1/8 in wanted)"
 */
export function revealInWords(
  { mat, least, most, wanted }: Pick<Reveal, "mat" | "least" | "most" | "wanted">,
  unit: Unit,
): string {
  const say = (length: number) => formatLength(length, { unit });
  const isEven = say(least) === say(most);
  const border = isEven ? say(least) : `${say(least)} to ${say(most)}`;
  const wish = isEven && say(wanted) === say(least) ? "" : ` (${say(wanted)} wanted)`;
  return `shows ${border} of ${mat}${wish}`;
}
