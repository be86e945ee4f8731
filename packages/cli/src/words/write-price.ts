import { formatLength, type Unit } from "@sheetwright/measure";
import type { CardPrice, Price, PriceKind, PricePart } from "@sheetwright/planner";
import { counted } from "./counted.js";
import { listed } from "./listed.js";
import { METRE, rollLength, YARD } from "./roll-length.js";
import { table } from "./table.js";
import { wrapped } from "./wrapped.js";
import { money } from "./write-project-summary.js";

/** Time of work is told in 1/10,000 of a minute. */
const MINUTE = 10_000;

const HEADINGS: readonly (readonly [PriceKind, string])[] = [
  ["paper", "paper"],
  ["envelopes", "envelopes"],
  ["extras", "extras"],
  ["ribbons", "ribbons"],
  ["consumables", "used up"],
  ["work", "work"],
];

/** Tells a person what the cards cost, with the numbers that lead to it. Gives lines without a break at their end. */
export function writePrice(price: Price): readonly string[] {
  const { title, units, currency, parts, cards, total, unknown, factor, guest } = price;
  const say = (amount: string): string => money(amount, currency);
  if (parts.length === 0) {
    const none = "Nothing is reckoned: the project gives no cost of anything that is used.";
    const help =
      "Write cost at papers, items, envelopes and extras, or pack, and what work costs under rates.";
    return [title, "", none, ...wrapped(`It uses ${listed(unknown)}.`), help];
  }
  const kinds = HEADINGS.filter(([kind]) => parts.some((part) => part.kind === kind));
  return [
    title,
    "",
    ...table([
      ["what", "number", "each", "cost"],
      ...parts.map((part) => [part.name, numberOf(part, units), eachOf(part, units, say), say(part.cost)]),
      ["in all", "", "", say(total)],
    ]),
    ...(unknown.length === 0
      ? []
      : ["", ...wrapped(`Not reckoned, since no cost is given: ${listed(unknown)}.`)]),
    "",
    ...table([
      ["card", "copies", ...kinds.map(([, heading]) => heading), "in all"],
      ...cards.map(({ card, name, copies, costs, total: own }) => [
        `${card} ${name}`,
        `${copies}`,
        ...kinds.map(([kind]) => say(costs[kind])),
        say(own),
      ]),
    ]),
    ...writeShares(price),
    "",
    ...cards.map((card) => `A copy of ${card.name}: ${copyOf(card, factor, say)}`),
    ...(guest === null
      ? []
      : [`A guest: ${formula(total, guest.guests, guest.cost, factor, guest.price, say, "guest")}`]),
  ];
}

/** How sheets that several cards are cut from are shared, by the area of their pieces. */
function writeShares({ parts, cards }: Price): readonly string[] {
  const names = new Map(cards.map(({ card, name }) => [card, name]));
  const shared = parts.filter(({ kind, shares }) => kind === "paper" && shares.length > 1);
  if (shared.length === 0) return [];
  return [
    "",
    "Sheets are shared by the area of the pieces, waste alike:",
    ...shared.map(({ name, shares }) => {
      const all = shares.map(({ card, percent }) => `${names.get(card) ?? card} ${percent} %`);
      return `  ${name}: ${all.join(", ")}`;
    }),
  ];
}

function copyOf(
  { total, copies, copy, price }: CardPrice,
  factor: string | null,
  say: (amount: string) => string,
): string {
  return formula(total, copies, copy, factor, price, say, "copy");
}

/** `$9.89 / 4 copies = $2.48; price $9.89 x 2.5 / 4 = $6.19`: both rounded up. */
function formula(
  total: string,
  by: number,
  cost: string,
  factor: string | null,
  price: string | null,
  say: (amount: string) => string,
  one: "copy" | "guest",
): string {
  const many = one === "copy" ? counted(by, "copy", "copies") : counted(by, "guest");
  const made = `${say(total)} / ${many} = ${say(cost)}`;
  if (factor === null || price === null) return made;
  return `${made}; price ${say(total)} x ${factor} / ${by} = ${say(price)}`;
}

function numberOf({ kind, quantity }: PricePart, unit: Unit): string {
  if (kind === "paper") return counted(quantity, "sheet");
  if (kind === "ribbons") return formatLength(quantity, { unit });
  if (kind === "consumables") return counted(quantity, "copy", "copies");
  if (kind === "work") return timeOf(quantity);
  return `${quantity}`;
}

function eachOf({ kind, each, per }: PricePart, unit: Unit, say: (amount: string) => string): string {
  const cost = say(twoDecimals(each));
  if (kind === "ribbons") {
    if (per === (unit === "in" ? YARD : METRE)) return `${cost} a ${unit === "in" ? "yard" : "metre"}`;
    return `${cost} for ${rollLength(per, unit)}`;
  }
  if (kind === "work") return `${cost} an hour`;
  return per === 1 ? cost : `${cost} for ${per}`;
}

function twoDecimals(amount: string): string {
  const [whole = "0", part = ""] = amount.split(".");
  return `${whole}.${part.padEnd(2, "0")}`;
}

/** `2 h 36 min`; parts of a minute as decimals. */
function timeOf(quantity: number): string {
  const hours = Math.floor(quantity / (60 * MINUTE));
  const rest = quantity - hours * 60 * MINUTE;
  const whole = Math.floor(rest / MINUTE);
  const part = `${rest % MINUTE}`.padStart(4, "0").replace(/0+$/, "");
  const minutes = part === "" ? `${whole}` : `${whole}.${part}`;
  if (hours === 0) return `${minutes} min`;
  return minutes === "0" ? `${hours} h` : `${hours} h ${minutes} min`;
}
