import { formatSize, type Unit } from "@sheetwright/measure";
import type { PlanCosts } from "@sheetwright/planner";
import type { GroupProof } from "../project-plan/group-proof.js";
import type {
  CardSummary,
  ItemSummary,
  PaperSummary,
  ProjectPlanSummary,
} from "../project-plan/project-plan-summary.js";
import { counted } from "./counted.js";
import { isItemShort } from "./item-use-in-words.js";
import { listed } from "./listed.js";
import { rollLength } from "./roll-length.js";
import { block, row } from "./summary-rows.js";
import { table } from "./table.js";
import { writeNotes } from "./write-notes.js";

/** Leftover sizes of a paper that are listed before the rest is only counted. */
const LEFTOVERS_SHOWN = 4;

const ENOUGH: Readonly<Record<ProjectPlanSummary["enough"], string>> = {
  yes: "yes, every piece of every copy is planned",
  no: "no, proven",
  "not-found": "not found, and nothing proves that it cannot be done",
};

/** Sums a project's plan up for a person. Gives lines without a break at their end. */
export function writeProjectSummary(summary: ProjectPlanSummary): readonly string[] {
  const { pieces, layouts, cost, costs } = summary;
  const cut = pieces.cut === pieces.wanted ? `all ${pieces.cut}` : `${pieces.cut} of ${pieces.wanted}`;
  const before = pieces.cutAlready === undefined ? "" : `, and ${pieces.cutAlready} are cut already`;
  const lines = [
    summary.title,
    "",
    row("Enough", `${ENOUGH[summary.enough]}${writeSpares(summary)}`),
    ...writeBags(summary),
    ...block("Cards", table(summary.cards.map(cardRow))),
    row("Pieces", `${cut}${before}`),
    ...block("Papers", writePapers(summary)),
    ...block("Items", table(writeItemRows(summary))),
  ];
  if (layouts.length > 0) {
    const runs = (which: boolean) =>
      layouts
        .filter(({ offcut }) => offcut === which)
        .reduce((total, { run, bags = 1 }) => total + run * bags, 0);
    const [sheets, offcuts] = [runs(false), runs(true)];
    const lying = [
      ...(sheets > 0 || offcuts === 0 ? [counted(sheets, "sheet")] : []),
      ...(offcuts > 0 ? [counted(offcuts, "offcut")] : []),
    ];
    const settings = `${counted(summary.settings, "setting")} of the trimmer`;
    const sign = costs?.currency ?? null;
    if (cost !== null) lines.push(row("Cost", `${money(cost, sign)} for the sheets used`));
    if (costs !== undefined) lines.push(...writeWork(costs).map((words) => row("Work", words)));
    lines.push(
      row("Layouts", `${layouts.length} for ${listed(lying)}`),
      row("Cuts", `${summary.cuts} on all sheets, with ${settings}`),
      ...block("Folds", writeFolds(summary)),
      ...block("Leftovers", writeLeftovers(summary)),
    );
  }
  const notes = writeNotes(summary, { hold: "narrowest-hold", longestCut: "longest-cut in the project" });
  if (summary.units.shown === "in" && lines.some((line) => line.includes("~"))) {
    return [
      ...lines,
      ...notes,
      "",
      "~ marks a length rounded to 1/64 in; with units: mm all are in millimetres.",
    ];
  }
  return [...lines, ...notes];
}

/** Whether one bag makes every card, since all are alike. */
function writeBags({ kits, cards }: ProjectPlanSummary): readonly string[] {
  if (kits === undefined) return [];
  const { bags, makeEveryCard } = kits;
  const short = cards.filter(({ complete, wanted }) => complete < wanted);
  const lacking = short.map(({ name, wanted, complete }) =>
    complete % bags === 0 ? `${complete / bags} of ${wanted / bags} ${name}` : name,
  );
  const verdict = makeEveryCard
    ? "each makes every card"
    : `not each makes every card: ${lacking.join(", ")}`;
  return [row("Bags", `${bags}, all alike; ${verdict}`)];
}

/** `2 h 39 min on 13 copies: $48.10; with the sheets $51.45`; nothing where no minutes are known. */
function writeWork({ currency, copies, minutes, work, total }: PlanCosts): readonly string[] {
  if (minutes === null) return [];
  const [whole = "0", part] = minutes.split(".");
  const hours = Math.floor(Number(whole) / 60);
  const rest = `${Number(whole) % 60}${part === undefined ? "" : `.${part}`}`;
  const time = hours === 0 ? `${rest} min` : rest === "0" ? `${hours} h` : `${hours} h ${rest} min`;
  const price = work === null ? "" : `: ${money(work, currency)}`;
  const all = total === null ? "" : `; with the sheets ${money(total, currency)}`;
  return [`${time} on ${counted(copies, "card")}${price}${all}`];
}

/** An amount with its currency: a sign stands before it, a word behind. */
export function money(amount: string, currency: string | null): string {
  if (currency === null) return amount;
  return /\p{L}/u.test(currency) ? `${amount} ${currency}` : `${currency}${amount}`;
}

/** `, and 1 of 2 spares`; nothing where none are wished for, or where there is not even enough without. */
function writeSpares({ enough, cards }: ProjectPlanSummary): string {
  const wishes = cards.flatMap(({ spares }) => (spares === undefined ? [] : [spares]));
  if (wishes.length === 0 || enough !== "yes") return "";
  const total = (which: "wished" | "made"): number => wishes.reduce((sum, one) => sum + one[which], 0);
  return `, and ${sparesInWords({ wished: total("wished"), made: total("made") })}`;
}

function sparesInWords({ wished, made }: NonNullable<CardSummary["spares"]>): string {
  return made === wished ? counted(made, "spare") : `${made} of ${counted(wished, "spare")}`;
}

function cardRow({
  number,
  name,
  wanted,
  complete,
  guests,
  samples,
  spares,
}: CardSummary): readonly string[] {
  const asked =
    complete === wanted
      ? counted(wanted, "copy", "copies")
      : `${complete} of ${counted(wanted, "copy", "copies")}`;
  const copies = spares === undefined ? asked : `${asked} and ${sparesInWords(spares)}`;
  const what = samples === 0 ? "" : `for ${counted(guests, "guest")} and ${counted(samples, "sample")}`;
  return [`${number} ${name}`, copies, what];
}

/** Sheets of every paper, with what is proven: beside a paper that is planned alone, else below those it is planned with. */
function writePapers({ papers, proofs }: ProjectPlanSummary): readonly string[] {
  const alone = new Map(
    proofs.filter(({ designs }) => designs.length === 1).map((one) => [one.designs[0], one]),
  );
  const rows = papers.map((paper) => {
    const proof = alone.get(paper.design);
    return [paper.name, sheetsOf(paper), proof === undefined ? "" : writeProof(proof)];
  });
  const together = proofs
    .filter(({ designs }) => designs.length > 1)
    .map((proof) => ({ proof, words: writeProof(proof) }))
    .filter(({ words }) => words !== "");
  return [
    ...table(rows),
    ...together.map(({ proof, words }) => {
      const names = papers.filter(({ design }) => proof.designs.includes(design)).map(({ name }) => name);
      return `${listed(names)} together: ${words}`;
    }),
  ];
}

/** What is taken of each item that some copy needs; that others are not used, a check tells. */
function writeItemRows({ items = [], units }: ProjectPlanSummary): readonly (readonly string[])[] {
  return items.filter(({ needed }) => needed > 0).map((one) => itemRow(one, units.shown));
}

/** `1 of 2 rolls of 3 yd`, or `18 of 19` and that 30 are needed. */
function itemRow(one: ItemSummary, unit: Unit): readonly string[] {
  const { item, roll, onHand, needed, atLeast, used } = one;
  const isCut = roll !== null;
  const number = onHand === null ? used : onHand;
  const what = isCut ? ` ${number === 1 ? "roll" : "rolls"} of ${rollLength(roll, unit)}` : "";
  const taken = onHand === null ? `${used}${what}` : `${used} of ${onHand}${what}`;
  const proof = needed === atLeast ? "fewest possible, proven" : `at least ${atLeast}, proven`;
  const words = isItemShort(one) ? `${needed} needed for all` : isCut ? proof : "";
  return [item, taken, words];
}

function sheetsOf({ used, onHand, offcutsUsed }: PaperSummary): string {
  const sheets = onHand === null ? counted(used, "sheet") : `${used} of ${counted(onHand, "sheet")}`;
  return offcutsUsed === 0 ? sheets : `${sheets}, and ${counted(offcutsUsed, "offcut")}`;
}

function writeProof({ proven, above, measure }: GroupProof): string {
  const what = measure === "cost" ? "cost" : "paper";
  switch (proven) {
    case "fewest":
      return "fewest possible, proven";
    case "least":
      return `least ${what} possible, proven`;
    case "sheets":
      return `at most ${above} more than the fewest possible`;
    case "percent":
      return `at most ${above} % above the least ${what} possible`;
    case "nothing":
      return "";
  }
}

/** The first letter of a card is its base's. */
function isBase(piece: string): boolean {
  return /^\d+a$/.test(piece);
}

function writeFolds({ folds, grainAssumed }: ProjectPlanSummary): readonly string[] {
  const total = (which: "along" | "across" | "unknown" | "none"): number =>
    folds.reduce((sum, fold) => sum + fold[which], 0);
  const bases = total("along") + total("across") + total("unknown") + total("none");
  if (bases === 0) return [];
  // Inserts are folded too.
  const all = folds.every(({ piece }) => isBase(piece))
    ? counted(bases, "base")
    : counted(bases, "base and insert", "bases and inserts");
  const assumed =
    grainAssumed.length === 0 || total("along") + total("across") === 0
      ? []
      : [`the grain of ${listed(grainAssumed)} is assumed`];
  if (total("along") === bases) return [`with the grain on all ${all}`, ...assumed];
  const some = (which: "across" | "unknown" | "none"): string =>
    folds
      .filter((fold) => fold[which] > 0)
      .map((fold) => `${fold[which]} of ${fold.label}`)
      .join(", ");
  return [
    ...(total("along") > 0 ? [`with the grain on ${total("along")} of ${all}`] : []),
    ...(total("across") > 0 ? [`across the grain: ${some("across")}`] : []),
    ...(total("unknown") > 0 ? [`grain not known: ${some("unknown")}`] : []),
    ...(total("none") > 0 ? [`paper without grain: ${some("none")}`] : []),
    ...assumed,
  ];
}

function writeLeftovers({ papers, leftovers, units }: ProjectPlanSummary): readonly string[] {
  const lines = papers.flatMap(({ design, name }) => {
    const kept = leftovers.filter((one) => one.design === design && one.keep);
    if (kept.length === 0) return [];
    const sizes = kept
      .slice(0, LEFTOVERS_SHOWN)
      .map(({ count, width, height }) => `${count} of ${formatSize(width, height, { unit: units.shown })}`);
    const rest = kept.slice(LEFTOVERS_SHOWN).reduce((total, one) => total + one.count, 0);
    return [`${name}: ${sizes.join(", ")}${rest > 0 ? `, and ${rest} smaller` : ""}`];
  });
  return lines.length === 0 ? ["none worth keeping"] : lines;
}
