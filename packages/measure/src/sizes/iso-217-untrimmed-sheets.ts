import type { SheetRow } from "./size-rows.js";

const ISO_217 = "ISO 217, untrimmed RA and SRA sizes (as listed in a trade glossary)";

/** Untrimmed sheets, from which the A sizes are cut after printing: RA, and SRA with room for bleed. */
export const ISO_217_UNTRIMMED_SHEETS = [
  { id: "iso-ra4", name: "ISO RA4 sheet", short: 215, long: 305, unit: "mm", source: ISO_217 },
  { id: "iso-ra3", name: "ISO RA3 sheet", short: 305, long: 430, unit: "mm", source: ISO_217 },
  { id: "iso-ra2", name: "ISO RA2 sheet", short: 430, long: 610, unit: "mm", source: ISO_217 },
  { id: "iso-ra1", name: "ISO RA1 sheet", short: 610, long: 860, unit: "mm", source: ISO_217 },
  { id: "iso-ra0", name: "ISO RA0 sheet", short: 860, long: 1220, unit: "mm", source: ISO_217 },
  { id: "iso-sra4", name: "ISO SRA4 sheet", short: 225, long: 320, unit: "mm", source: ISO_217 },
  { id: "iso-sra3", name: "ISO SRA3 sheet", short: 320, long: 450, unit: "mm", source: ISO_217 },
  { id: "iso-sra2", name: "ISO SRA2 sheet", short: 450, long: 640, unit: "mm", source: ISO_217 },
  { id: "iso-sra1", name: "ISO SRA1 sheet", short: 640, long: 900, unit: "mm", source: ISO_217 },
  { id: "iso-sra0", name: "ISO SRA0 sheet", short: 900, long: 1280, unit: "mm", source: ISO_217 },
] as const satisfies readonly SheetRow[];
