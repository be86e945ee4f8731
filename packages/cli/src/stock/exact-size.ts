import { formatSize, type Size, TICKS_PER_MM, tryParseSize, type Unit } from "@sheetwright/measure";

/**
 * Writes a size so that it reads back to the very tick: in the unit where it lies on that one's grid, else in the other, else
 * in millimetres with as many decimals as it takes.
 */
export function exactSize({ width, height }: Size, unit: Unit): string {
  for (const one of [unit, "in", "mm"] as const) {
    const text = formatSize(width, height, { unit: one });
    if (!text.includes("~")) return text;
  }
  return `${decimal(width)} x ${decimal(height)} mm`;
}

/** A tick is 0.000625 mm, so six decimals are enough. */
function decimal(ticks: number): string {
  const whole = Math.floor(ticks / TICKS_PER_MM);
  const millionths = (ticks % TICKS_PER_MM) * (1_000_000 / TICKS_PER_MM);
  return `${whole}.${String(millionths).padStart(6, "0")}`.replace(/\.?0+$/, "");
}

/** Reads what {@link exactSize} wrote, or what a person did; `null` where it is no size or none of whole ticks. */
export function readExactSize(text: string, unit: Unit): Size | null {
  const read = tryParseSize(text, { unit, kind: "sheet" });
  return read.ok && read.exact ? { width: read.width, height: read.height } : null;
}
