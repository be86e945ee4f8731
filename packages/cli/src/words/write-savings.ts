import type { Saving, SavingFigures, Savings } from "@sheetwright/planner";
import { counted } from "./counted.js";
import { listed } from "./listed.js";
import { wrapped } from "./wrapped.js";
import { money } from "./write-project-summary.js";

/** Tells a person which changes would save most. Gives lines without a break at their end. */
export function writeSavings({
  title,
  currency,
  asItIs,
  savings,
  tried,
  saving,
}: Savings): readonly string[] {
  if (asItIs === null) return [title];
  const none =
    tried === 0
      ? "There is nothing to try."
      : `None of ${counted(tried, "change")} that were tried saves anything.`;
  return [
    title,
    "",
    ...wrapped(`As it is    ${takesInWords(asItIs, currency)}`, "            "),
    "",
    ...savings.flatMap((one, index) => savingLines(one, index + 1, currency)),
    ...(savings.length === 0
      ? [none]
      : [
          "",
          ...wrapped(
            `Of ${counted(tried, "change")} that were tried ${saving === 1 ? "this one saves" : `${saving} save`}. Each is for itself; what several save together is another matter.`,
          ),
        ]),
  ];
}

function savingLines(saving: Saving, number: number, currency: string | null): readonly string[] {
  const { words, path, write, takes, proven } = saving;
  const heading = `${`${number}`.padStart(2)}  ${words}: ${savedInWords(saving, currency)}`;
  const proof = proven ? "; without it these papers are planned best already, proven" : "";
  return [
    // A number stays on the line of its sign.
    ...wrapped(heading, "    ").map((line) => line.replaceAll("\u00a0", " ")),
    ...wrapped(`    at ${path}: ${write}`, "      "),
    ...wrapped(`    ${takesInWords(takes, currency)}${proof}`, "      "),
  ];
}

/** `1 sheet less, $0.40 less`; where cost is not known the part of the paper. */
function savedInWords({ costSaved, sheetsSaved, areaPercent }: Saving, currency: string | null): string {
  const words = [
    ...(sheetsSaved > 0 ? [`${counted(sheetsSaved, "sheet")} less`] : []),
    ...(sheetsSaved < 0 ? [`${counted(-sheetsSaved, "sheet")} more`] : []),
    ...(costSaved !== null && /[1-9]/.test(costSaved) ? [`${money(costSaved, currency)} less`] : []),
    ...(areaPercent > 0 ? [`${areaPercent}\u00a0% less paper`] : []),
  ];
  return words.join(", ");
}

function takesInWords({ cost, sheets, papers }: SavingFigures, currency: string | null): string {
  const all = papers.map((one) => `${one.name} ${one.sheets}`);
  const paid = cost === null ? "" : `, ${money(cost, currency)}`;
  return `${counted(sheets, "sheet")}${paid}: ${listed(all)}`;
}
