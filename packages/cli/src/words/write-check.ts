import { formatSize } from "@sheetwright/measure";
import type { CheckedCard, CheckedPaper, CheckReport } from "../check/check-report.js";
import { counted } from "./counted.js";
import { block } from "./summary-rows.js";
import { table } from "./table.js";

/** Says in short what a project is. Gives lines without a break at their end. */
export function writeCheck({ title, cards, papers, units, noPaper, advice }: CheckReport): readonly string[] {
  const unit = units.shown;
  const copies = cards.reduce((total, card) => total + card.copies, 0);
  const pieces = cards.reduce((total, card) => total + card.pieces * card.copies, 0);
  const cardRow = ({ number, name, format, front, copies, guests, samples, pieces }: CheckedCard) => {
    const size = formatSize(front.width, front.height, { unit });
    const what = samples === 0 ? "" : ` for ${counted(guests, "guest")} and ${counted(samples, "sample")}`;
    return [
      `${number} ${name}`,
      format === null ? size : `${size} (${format})`,
      `${counted(copies, "copy", "copies")}${what}`,
      `${counted(pieces, "piece")} each`,
    ];
  };
  const paperRow = ({ name, sheet, sheetName, count, pieces }: CheckedPaper) => {
    const size = formatSize(sheet.width, sheet.height, { unit });
    return [
      name,
      sheetName === null ? size : `${sheetName}, ${size}`,
      count === null ? "as many sheets as needed" : `${counted(count, "sheet")} on hand`,
      pieces === 0 ? "for no piece" : `for ${counted(pieces, "piece")}`,
    ];
  };
  const found = [
    ...(noPaper.length === 0
      ? []
      : [`${counted(noPaper.length, "kind of piece fits no paper", "kinds of pieces fit no paper")}`]),
    ...(advice.length === 0 ? [] : [counted(advice.length, "note")]),
  ];
  return [
    title,
    "",
    ...block("Cards", table(cards.map(cardRow))),
    ...block("Papers", table(papers.map(paperRow))),
    "",
    `${counted(copies, "card")} of ${counted(pieces, "piece")} in all; ${found.length === 0 ? "nothing odd was found" : found.join(" and ")}.`,
  ];
}
