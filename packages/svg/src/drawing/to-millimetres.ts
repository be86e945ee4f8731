import { TICKS_PER_MM } from "@sheetwright/measure";
import type { Rectangle } from "@sheetwright/packing";
import type { Box } from "./box.js";

/** A rectangle of the plan in millimetres. */
export function toMillimetres({ x, y, width, height }: Rectangle): Box {
  return {
    x: x / TICKS_PER_MM,
    y: y / TICKS_PER_MM,
    width: width / TICKS_PER_MM,
    height: height / TICKS_PER_MM,
  };
}
