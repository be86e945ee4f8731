import { formatSize } from "@sheetwright/measure";
import type { CheckedCard, CheckedPaper, CheckReport } from "../check/check-report.js";
import { counted } from "./counted.js";
import { block, LABEL } from "./summary-rows.js";
import { table } from "./table.js";
import { wrapped } from "./wrapped.js";
import { countFindings } from "./write-findings.js";
import { writeFinished, writeLeftOut } from "./write-finished.js";

/** Says in short what a project is. Gives lines without a break at their end. */
export function writeCheck({
  title,
  cards,
  papers,
  finished,
  units,
  findings,
}: CheckReport): readonly string[] {
  const unit = units.shown;
  const copies = cards.reduce((total, card) => total + card.copies, 0);
  const pieces = cards.reduce((total, card) => total + card.pieces * card.copies, 0);
  const cardRow = ({ number, name, format, front, copies, guests, samples, spares, pieces }: CheckedCard) => {
    const size = formatSize(front.width, front.height, { unit });
    const what = samples === 0 ? "" : ` for ${counted(guests, "guest")} and ${counted(samples, "sample")}`;
    const more = spares === undefined ? "" : `, and ${counted(spares, "spare")} wished for`;
    return [
      `${number} ${name}`,
      format === null ? size : `${size} (${format})`,
      `${counted(copies, "copy", "copies")}${what}${more}`,
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
  const found = countFindings(findings.filter(({ silenced }) => silenced === null));
  const silenced = findings.filter((one) => one.silenced !== null).length;
  const more = silenced === 0 ? "" : `; ${silenced} silenced`;
  return [
    title,
    "",
    ...block("Cards", table(cards.map(cardRow))),
    ...block("Papers", table(papers.map(paperRow))),
    ...block("Finished", [
      ...writeFinished(finished, unit).flatMap((line) => wrapped(line, "      ", LABEL)),
      ...writeLeftOut(finished, LABEL),
    ]),
    "",
    `${counted(copies, "card")} of ${counted(pieces, "piece")} in all; ${found === "" ? "nothing odd was found" : found}${more}.`,
  ];
}
