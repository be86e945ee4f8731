import type { Ticks } from "@sheetwright/measure";
import type { Along } from "../project.js";

/** Where a layer lies along one side of what carries it. */
export interface Placed {
  /** From the start (left or top) of the carrier; negative where it sticks out there. */
  readonly start: Ticks;
  /** The line of a third that was rounded; `null` where it fell on the precision or no line was asked for. */
  readonly rounding: { readonly position: Ticks; readonly by: number } | null;
}

/**
 * Places a layer of some extent along one side of its carrier, in ticks. A middle that falls between two ticks goes to
 * the earlier one.
 *
 * @internal
 */
export function placeAlong(along: Along, extent: Ticks, carrier: Ticks, precision: Ticks): Placed {
  if (along.from === "middle") return { start: Math.floor((carrier - extent) / 2), rounding: null };
  if (along.from !== "third") {
    const { from, distance } = along;
    return { start: from === "start" ? distance : carrier - extent - distance, rounding: null };
  }
  // The exact line is thirds / 3 ticks; it stays a ratio of integers until it is rounded, half up.
  const thirds = along.third * carrier;
  const position = Math.floor((2 * thirds + 3 * precision) / (6 * precision)) * precision;
  const start = position - Math.floor(extent / 2);
  const moved = 3 * position - thirds;
  return { start, rounding: moved === 0 ? null : { position, by: moved / 3 } };
}
