import { itemKey } from "@sheetwright/cards";
import { formatLength, type Ticks, type Unit } from "@sheetwright/measure";
import type { DesignNeed, NamedItemNeed, Need, PaperNeed } from "@sheetwright/planner";
import { counted } from "./counted.js";
import { listed } from "./listed.js";
import { nameWithKind } from "./name-with-kind.js";
import { METRE, rollLength, YARD } from "./roll-length.js";
import { table } from "./table.js";
import { wrapped } from "./wrapped.js";
import { money } from "./write-project-summary.js";

/** Tells a person what a project needs. Gives lines without a break at their end. */
export function writeNeed(need: Need, currency: string | null): readonly string[] {
  const { title, cards, designs, items, extras, unused, noPaper, kits } = need;
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
    ...(kits === undefined ? [] : ["", ...wrapped(bagInWords(kits, need.units))]),
    "",
    ...buying(need, currency),
    ...(items.length + extras.length === 0 ? [] : ["", ...table(itemRows(need))]),
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

function onHand({ onHand, sheets }: Pick<DesignNeed, "onHand" | "sheets">): string {
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

function buying({ papers, namedItems, cost, units }: Need, currency: string | null): readonly string[] {
  const sheets = papers
    .filter(({ packsToBuy }) => packsToBuy > 0)
    .map((one) => [one.name, packsOf(one), priceOf(one.cost, currency)]);
  const items = namedItems
    .filter(({ packsToBuy }) => packsToBuy > 0)
    .map((one) => [one.item, itemPacksOf(one, units), priceOf(one.cost, currency)]);
  if (sheets.length + items.length === 0) {
    const what = namedItems.length === 0 ? "the papers" : "the papers and items that are named";
    return [`Nothing has to be bought of ${what}.`];
  }
  const total = cost === null ? [] : [`In all ${money(cost, currency)}.`];
  return [...table([["to buy", "", ""], ...sheets, ...items]), ...total];
}

function priceOf(cost: string | null, currency: string | null): string {
  return cost === null ? "" : money(cost, currency);
}

/** `2 rolls of 3 yd`, `3 packs of 12 for 30`, or just `4`. */
function itemPacksOf({ length, packItems, packsToBuy, toBuy }: NamedItemNeed, unit: Unit): string {
  const all = length === null ? `${toBuy}` : `${counted(toBuy, "roll")} of ${rollLength(length, unit)}`;
  return packItems === 1 ? all : `${counted(packsToBuy, "pack")} of ${packItems} for ${all}`;
}

/** What goes whole into each bag. */
function bagInWords({ bags, perBag, itemsPerBag }: NonNullable<Need["kits"]>, unit: Unit): string {
  const all = [
    ...perBag.map(({ name, sheets }) => `${counted(sheets, "sheet")} of ${name}`),
    ...itemsPerBag.map(({ item, length, count }) =>
      length === null
        ? `${count} x ${item}`
        : `${counted(count, "roll")} of ${item} (${rollLength(length, unit)})`,
    ),
  ];
  return `For ${counted(bags, "bag")}: ${all.length === 0 ? "nothing goes out whole" : `each gets ${listed(all)}`}.`;
}

/** What is not cut from paper, and of items that the project names what they come from and what is there. */
function itemRows({ items, extras, namedItems, units: unit }: Need): readonly (readonly string[])[] {
  const namedOf = (name: string): readonly string[] => {
    const named = namedItems.find(({ item }) => itemKey(item) === itemKey(name));
    if (namedItems.length === 0) return [];
    if (named === undefined) return ["", "", ""];
    const { length, needed, atLeast } = named;
    const rolls = length === null ? "" : `${counted(needed, "roll")} of ${rollLength(length, unit)}`;
    const proof = length === null ? "" : needed === atLeast ? "fewest possible" : `at least ${atLeast}`;
    return [rolls, proof, onHand({ onHand: named.onHand, sheets: needed })];
  };
  return [
    [
      "not cut from paper",
      "number",
      "length in all",
      ...(namedItems.length === 0 ? [] : ["from", "", "on hand"]),
    ],
    ...items.map((one) => {
      const wide = `${nameWithKind(one)}, ${formatLength(one.width, { unit })} wide`;
      return [wide, `${one.count}`, lengthOf(one.length, unit), ...namedOf(one.name)];
    }),
    ...extras.map(({ name, count }) => [name, `${count}`, "", ...namedOf(name)]),
  ];
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
