import type { SheetRow } from "./size-rows.js";

const DIN_LONG = "DIN long (as described in an encyclopaedia)";

/** What goes in the long envelopes made from A4. */
export const DIN_LONG_SHEETS = [
  {
    id: "de-dl-insert",
    name: "DIN long insert",
    short: 99,
    long: 210,
    unit: "mm",
    source: DIN_LONG,
    notes: "A third of A4; goes in env-iso-dl.",
  },
  {
    id: "de-dl-folded-letter",
    name: "DIN long folded letter",
    short: 105,
    long: 210,
    unit: "mm",
    source: DIN_LONG,
    notes: "A4 folded so that the address shows in the window of env-iso-dl or env-iso-c6-c5.",
  },
] as const satisfies readonly SheetRow[];
