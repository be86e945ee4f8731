import type { SheetRow } from "./size-rows.js";

const PRACTICE = "common practice, no source";
const US_STOCK = "US stock sizes (as listed in a print-trade table)";
const PWG_5101_1 = "PWG 5101.1, standardised media names";

/** Sheets of the US stationery and craft trades. */
export const STATIONERY_SHEETS = [
  {
    id: "us-letter",
    name: "US Letter sheet",
    short: 8.5,
    long: 11,
    unit: "in",
    source: PRACTICE,
    notes: "The usual sheet for card bases in the US and Canada. The same size as asme-a.",
  },
  { id: "us-legal", name: "US Legal sheet", short: 8.5, long: 14, unit: "in", source: US_STOCK },
  {
    id: "us-tabloid",
    name: "US Tabloid sheet",
    short: 11,
    long: 17,
    unit: "in",
    aliases: ["us-ledger"],
    source: "ASME Y14.1, size B (as copied in an encyclopaedia)",
    notes: "Called ledger when it lies on its long side. The same size as asme-b.",
  },
  {
    id: "us-half-letter",
    name: "US Half Letter sheet",
    short: 5.5,
    long: 8.5,
    unit: "in",
    aliases: ["us-statement"],
    source: PWG_5101_1,
  },
  {
    id: "us-index-4x6",
    name: "US 4 x 6 index card",
    short: 4,
    long: 6,
    unit: "in",
    aliases: ["us-postcard"],
    source: PWG_5101_1,
  },
  { id: "us-5x7", name: "US 5 x 7 sheet", short: 5, long: 7, unit: "in", source: PWG_5101_1 },
  {
    id: "us-poster",
    name: "US poster board",
    short: 22,
    long: 28,
    unit: "in",
    source: PRACTICE,
    notes: "Shiny board that mats are cut from.",
  },
  {
    id: "craft-12x12",
    name: "12 x 12 craft sheet",
    short: 12,
    long: 12,
    unit: "in",
    source: PRACTICE,
    notes: "Cardstock and patterned paper.",
  },
  {
    id: "craft-12x12-strip",
    name: "12 x 12 craft sheet with maker's strip",
    short: 12,
    long: 12.25,
    unit: "in",
    source: "from memory",
    notes: "12 x 12 in is left once the printed strip along one edge is off.",
  },
  {
    id: "craft-6x6",
    name: "6 x 6 pad sheet",
    short: 6,
    long: 6,
    unit: "in",
    source: PRACTICE,
    notes: "Pads of patterned and fancy papers.",
  },
  { id: "craft-6x8", name: "6 x 8 pad sheet", short: 6, long: 8, unit: "in", source: PRACTICE },
  {
    id: "craft-a4-board",
    name: "A4 craft board",
    short: 8.27,
    long: 11.7,
    unit: "in",
    source: PRACTICE,
    notes: "A4 as craft tables round it, up to 0.2 mm larger than iso-a4; plan with iso-a4 where it counts.",
  },
] as const satisfies readonly SheetRow[];
