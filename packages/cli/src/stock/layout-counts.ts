import { quote } from "../fault.js";

/** Numbers of sheets by the name of a layout; `null` where a name stands alone. */
export type LayoutCounts = ReadonlyMap<string, number | null>;

/**
 * Reads numbers of sheets by layout: `sheet-night-1=3,sheet-cream-2`; or `none`. Gives a message for any other text.
 */
export function readLayoutCounts(text: string): LayoutCounts | string {
  const counts = new Map<string, number | null>();
  if (text.trim() === "none") return counts;
  for (const part of text.split(",").map((word) => word.trim())) {
    const { name, count } =
      /^(?<name>[a-z][a-z0-9-]*)(?:\s*=\s*(?<count>\d{1,7}))?$/.exec(part)?.groups ?? {};
    if (name === undefined) {
      const what = part === "" ? "found nothing" : `found ${quote(part)}`;
      return `${what}, expected the name of a layout and its sheets, such as sheet-night-1=3.`;
    }
    if (counts.has(name))
      return `${name} is given twice, expected once. Give the sheets of all its run so far.`;
    counts.set(name, count === undefined ? null : Number(count));
  }
  return counts;
}
