import type { SheetRow } from "./size-rows.js";

const ISO_216 = "ISO 216, trimmed sizes of the A and B series (as copied in an encyclopaedia)";

/** The A and B series: A4 and its kin, and the sizes half way between them. */
export const ISO_216_SHEETS = [
  { id: "iso-a0", name: "ISO A0 sheet", short: 841, long: 1189, unit: "mm", source: ISO_216 },
  { id: "iso-a1", name: "ISO A1 sheet", short: 594, long: 841, unit: "mm", source: ISO_216 },
  { id: "iso-a2", name: "ISO A2 sheet", short: 420, long: 594, unit: "mm", source: ISO_216 },
  { id: "iso-a3", name: "ISO A3 sheet", short: 297, long: 420, unit: "mm", source: ISO_216 },
  { id: "iso-a4", name: "ISO A4 sheet", short: 210, long: 297, unit: "mm", source: ISO_216 },
  { id: "iso-a5", name: "ISO A5 sheet", short: 148, long: 210, unit: "mm", source: ISO_216 },
  { id: "iso-a6", name: "ISO A6 sheet", short: 105, long: 148, unit: "mm", source: ISO_216 },
  { id: "iso-a7", name: "ISO A7 sheet", short: 74, long: 105, unit: "mm", source: ISO_216 },
  { id: "iso-a8", name: "ISO A8 sheet", short: 52, long: 74, unit: "mm", source: ISO_216 },
  { id: "iso-a9", name: "ISO A9 sheet", short: 37, long: 52, unit: "mm", source: ISO_216 },
  { id: "iso-a10", name: "ISO A10 sheet", short: 26, long: 37, unit: "mm", source: ISO_216 },
  { id: "iso-b0", name: "ISO B0 sheet", short: 1000, long: 1414, unit: "mm", source: ISO_216 },
  { id: "iso-b1", name: "ISO B1 sheet", short: 707, long: 1000, unit: "mm", source: ISO_216 },
  { id: "iso-b2", name: "ISO B2 sheet", short: 500, long: 707, unit: "mm", source: ISO_216 },
  { id: "iso-b3", name: "ISO B3 sheet", short: 353, long: 500, unit: "mm", source: ISO_216 },
  { id: "iso-b4", name: "ISO B4 sheet", short: 250, long: 353, unit: "mm", source: ISO_216 },
  { id: "iso-b5", name: "ISO B5 sheet", short: 176, long: 250, unit: "mm", source: ISO_216 },
  { id: "iso-b6", name: "ISO B6 sheet", short: 125, long: 176, unit: "mm", source: ISO_216 },
  { id: "iso-b7", name: "ISO B7 sheet", short: 88, long: 125, unit: "mm", source: ISO_216 },
  { id: "iso-b8", name: "ISO B8 sheet", short: 62, long: 88, unit: "mm", source: ISO_216 },
  { id: "iso-b9", name: "ISO B9 sheet", short: 44, long: 62, unit: "mm", source: ISO_216 },
  { id: "iso-b10", name: "ISO B10 sheet", short: 31, long: 44, unit: "mm", source: ISO_216 },
] as const satisfies readonly SheetRow[];
