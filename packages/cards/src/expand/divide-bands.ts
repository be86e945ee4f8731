// Where bands meet: by ratios, rounded to the project's precision, or by widths to the tick.

import { type BoundaryRounding, DivisionError, divideLength, type Ticks } from "@sheetwright/measure";
import type { BandShares } from "../project.js";
import { type CardBuilder, sayLength } from "./card-builder.js";
import { fault } from "./fault.js";

/** Where bands begin and end, from the start of what they divide, and what of it was rounded. */
export interface DividedBands {
  /** From 0 to the whole extent: one more than there are bands. */
  readonly boundaries: readonly Ticks[];
  readonly roundings: readonly BoundaryRounding[];
}

/** What is divided. */
export interface BandsToDivide {
  readonly shares: BandShares;
  readonly extent: Ticks;
  /** Where the bands stand in the file. */
  readonly path: string;
  /** Their name for a message: `1b bands`. */
  readonly what: string;
}

/**
 * Divides an extent into bands that make it up to the tick; `null`, with a fault, where one vanishes, or where widths do
 * not add up.
 *
 * @internal
 */
export function divideBands(builder: CardBuilder, bands: BandsToDivide): DividedBands | null {
  const { shares, extent } = bands;
  if (shares.by === "width") return byWidths(builder, bands, shares.widths);
  try {
    return divideLength(extent, shares.ratios, builder.precision);
  } catch (error) {
    if (!(error instanceof DivisionError)) throw error;
    const { part } = error.details;
    const { ratios } = shares;
    const say = (ticks: Ticks) => sayLength(builder, ticks);
    builder.faults.push(
      fault({
        code: "part-vanishes",
        path: `${bands.path}.bands`,
        found: ratios.join(", "),
        expected: `shares of ${say(extent)} of at least ${say(builder.precision)} each`,
        message:
          `Band ${part + 1} of ${ratios.length} vanishes: ${bands.what} ` +
          `divide ${say(extent)} in ${ratios.join(" : ")}, and its share is less than half of ${say(builder.precision)}, ` +
          "what divisions are rounded to. Use fewer bands, a larger share for this one or a finer precision.",
      }),
    );
    return null;
  }
}

function byWidths(
  builder: CardBuilder,
  { extent, path, what }: BandsToDivide,
  widths: readonly (Ticks | "rest")[],
): DividedBands | null {
  const say = (ticks: Ticks) => sayLength(builder, ticks);
  const given = widths.reduce<Ticks>((sum, width) => sum + (width === "rest" ? 0 : width), 0);
  const left = extent - given;
  if (widths.includes("rest") ? left > 0 : left === 0) {
    const boundaries: Ticks[] = [0];
    for (const width of widths) boundaries.push((boundaries.at(-1) ?? 0) + (width === "rest" ? left : width));
    return { boundaries, roundings: [] };
  }
  const add = `The widths of ${what} add up to ${say(given)}, and they divide ${say(extent)}`;
  const at = { path: `${path}.bands.widths`, found: say(given) };
  builder.faults.push(
    widths.includes("rest")
      ? fault({
          ...at,
          code: "part-vanishes",
          expected: `less than ${say(extent)} beside the rest`,
          message: `${add}: nothing is left for the rest${left === 0 ? "" : `, and ${say(-left)} are too much`}. Make the others narrower.`,
        })
      : fault({
          ...at,
          code: "contradiction",
          expected: `widths that add up to ${say(extent)}`,
          message: `${add}: ${say(Math.abs(left))} ${left > 0 ? "are missing" : "are too much"}. Write rest for one of them, and it takes what the others leave.`,
        }),
  );
  return null;
}
