import type { SheetRow } from "./size-rows.js";

const ASME = "ASME Y14.1, drawing sheet sizes (as copied in an encyclopaedia)";

/** Drawing sheets: each of A to E is two of the one before. */
export const ASME_Y14_1_SHEETS = [
  {
    id: "asme-a",
    name: "ASME A sheet",
    short: 8.5,
    long: 11,
    unit: "in",
    aliases: ["ansi-a"],
    source: ASME,
    notes: "The same size as us-letter.",
  },
  {
    id: "asme-b",
    name: "ASME B sheet",
    short: 11,
    long: 17,
    unit: "in",
    aliases: ["ansi-b"],
    source: ASME,
    notes: "The same size as us-tabloid.",
  },
  { id: "asme-c", name: "ASME C sheet", short: 17, long: 22, unit: "in", aliases: ["ansi-c"], source: ASME },
  { id: "asme-d", name: "ASME D sheet", short: 22, long: 34, unit: "in", aliases: ["ansi-d"], source: ASME },
  { id: "asme-e", name: "ASME E sheet", short: 34, long: 44, unit: "in", aliases: ["ansi-e"], source: ASME },
  {
    id: "asme-f",
    name: "ASME F sheet",
    short: 28,
    long: 40,
    unit: "in",
    aliases: ["ansi-f"],
    source: ASME,
    notes: "Not in the halving series.",
  },
] as const satisfies readonly SheetRow[];
