import { seal } from "../folder/seal.js";
import { exactSize } from "./exact-size.js";
import type { StockData } from "./stock-data.js";

/** Writes a stock as the text of its file, sealed: the same bytes for the same stock. */
export function writeStockText({ revision, units, papers, booked }: StockData): string {
  const file = {
    sheetwright: "stock",
    version: 1,
    revision,
    // Filled in below; it must stay above anything that a name or a title could imitate.
    seal: "",
    units,
    papers: Object.fromEntries(
      papers.map(({ design, name, sheet, grain, sheets, offcuts }) => [
        design,
        {
          name,
          sheet: exactSize(sheet, units),
          grain,
          sheets: sheets ?? "as needed",
          offcuts: Object.fromEntries(offcuts.map(({ count, ...size }) => [exactSize(size, units), count])),
        },
      ]),
    ),
    booked,
  };
  return seal(`${JSON.stringify(file, null, 2)}\n`);
}
