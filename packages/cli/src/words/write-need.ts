import { formatLength, type Ticks, type Unit } from "@sheetwright/measure";
import type { DesignNeed, Need, PaperNeed } from "@sheetwright/planner";
import { counted } from "./counted.js";
import { listed } from "./listed.js";
import { table } from "./table.js";
import { money } from "./write-project-summary.js";

/** Ticks in a yard and in a metre, which ribbon is sold by. */
const YARD: Ticks = 36 * 40_640;
const METRE: Ticks = 1_600_000;

/** Tells a person what a project needs. Gives lines without a break at their end. */
export function writeNeed(need: Need, currency: string | null): readonly string[] {
  const { title, cards, designs, papers, cost, items, extras, unused, noPaper, units, kits } = need;
  return [
    title,
    "",
    ...table([
      ["card", "copies"],
      ...cards.map(({ card, name, copies }) => [`${card} ${name}`, `${copies}`]),
    ]),
    "",
    ...table([
      ["paper", "sheets", "", "on hand", "used for"],
      ...designs.map((one) => [one.name, sheetsOf(one), boundOf(one, designs), onHand(one), usesOf(one)]),
    ]),
    ...(kits === undefined
      ? []
      : [
          "",
          `For ${counted(kits.bags, "bag")}: ${kits.perBag.length === 0 ? "nothing goes out whole" : `each gets ${listed(kits.perBag.map(({ name, sheets }) => `${counted(sheets, "sheet")} of ${name}`))}`}.`,
        ]),
    "",
    ...buying(papers, cost, currency),
    ...(items.length + extras.length === 0
      ? []
      : [
          "",
          ...table([
            ["not cut from paper", "number", "length in all"],
            ...items.map(({ kind, name, width, count, length }) => {
              const called = name.includes(kind) ? name : `${name} ${kind}`;
              return [
                `${called}, ${formatLength(width, { unit: units })} wide`,
                `${count}`,
                lengthOf(length, units),
              ];
            }),
            ...extras.map(({ name, count }) => [name, `${count}`, ""]),
          ]),
        ]),
    ...(unused.length === 0 ? [] : ["", `No card uses ${listed(unused)}.`]),
    ...(noPaper.length === 0
      ? []
      : ["", `Not reckoned, since no paper is large enough: ${listed(noPaper)}.`]),
  ];
}

function sheetsOf({ sheets, offcuts }: DesignNeed): string {
  return offcuts === 0 ? `${sheets}` : `${sheets} and ${counted(offcuts, "offcut")}`;
}

/** What is proven of a paper that is planned alone, or with others. */
function boundOf({ together, atLeast, design }: DesignNeed, designs: readonly DesignNeed[]): string {
  const own = designs.filter((one) => together.includes(one.design));
  const total = own.reduce((sum, { sheets }) => sum + sheets, 0);
  if (together.length > 1 && together[0] !== design) return "";
  const what = total === atLeast ? "fewest possible" : `at least ${atLeast}`;
  if (together.length === 1) return what;
  return `${what} of ${counted(together.length, "paper")} that can stand in for each other`;
}

function onHand({ onHand, sheets }: DesignNeed): string {
  if (onHand === null) return "as needed";
  return onHand >= sheets ? `${onHand}` : `${onHand}, ${sheets - onHand} missing`;
}

function usesOf({ uses, keptPercent, wastePercent }: DesignNeed): string {
  const all = [
    ...uses,
    { purpose: "left to keep", percent: keptPercent },
    { purpose: "waste", percent: wastePercent },
  ];
  return all
    .filter(({ percent }) => percent > 0)
    .map(({ purpose, percent }) => `${purpose} ${percent} %`)
    .join(", ");
}

function buying(
  papers: readonly PaperNeed[],
  cost: string | null,
  currency: string | null,
): readonly string[] {
  const missing = papers.filter(({ packsToBuy }) => packsToBuy > 0);
  if (missing.length === 0) return ["Nothing has to be bought of the papers."];
  const rows = missing.map((one) => [
    one.name,
    packsOf(one),
    one.cost === null ? "" : money(one.cost, currency),
  ]);
  const total = cost === null ? [] : [`In all ${money(cost, currency)}.`];
  return [...table([["to buy", "", ""], ...rows]), ...total];
}

function packsOf({ packSheets, packsToBuy, sheetsToBuy }: PaperNeed): string {
  if (packSheets === 1) return counted(sheetsToBuy, "sheet");
  return `${counted(packsToBuy, "pack")} of ${packSheets} for ${counted(sheetsToBuy, "sheet")}`;
}

/** A long length by the yard or the metre as well, rounded up to a tenth: what is asked for in a shop. */
function lengthOf(length: Ticks, unit: Unit): string {
  const whole = formatLength(length, { unit });
  const large = unit === "in" ? YARD : METRE;
  if (length < large) return whole;
  const tenths = Math.ceil((length * 10) / large);
  return `${whole}, ${Math.floor(tenths / 10)}.${tenths % 10} ${unit === "in" ? "yd" : "m"}`;
}
