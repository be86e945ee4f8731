import { formatSize } from "@sheetwright/measure";
import type { MeasuredSheet } from "./measure-waste.js";

/** What a reader sees of a sheet: its size, and the name before it where it has one. */
export function sheetLabel({ id, name, width, height, unit }: MeasuredSheet): string {
  const size = formatSize(width, height, { unit });
  return id === size ? size : `${name}, ${size}`;
}
