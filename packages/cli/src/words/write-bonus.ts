import { formatSize, type Unit } from "@sheetwright/measure";
import type { Bonus, DesignLeft, ItemLeft, PanelBonus } from "@sheetwright/planner";
import { counted } from "./counted.js";
import { rollLength } from "./roll-length.js";
import { table } from "./table.js";
import { wrapped } from "./wrapped.js";

/** Sizes of offcuts of a paper that are listed before the rest is only counted. */
const OFFCUTS_SHOWN = 3;

/** Tells a person what can be made besides. Gives lines without a break at their end. */
export function writeBonus(bonus: Bonus): readonly string[] {
  const { title, units, left, itemsLeft, asNeeded, cards, panels } = bonus;
  const heading = [title, ""];
  const needed =
    asNeeded.length === 0
      ? []
      : ["", "Of sheets that come as needed only what the plan leaves of them is reckoned with."];
  if (left.length === 0) return [...heading, "Nothing is left that is worth keeping.", ...needed];
  return [
    ...heading,
    ...table([
      ["left of", ""],
      ...left.map((one) => [one.name, leftInWords(one, units)]),
      ...itemsLeft.map((one) => [one.item, itemInWords(one, units)]),
    ]),
    "",
    ...table([
      ["more of", "copies", "of the paper left"],
      ...cards.map(({ card, name, copies, percent }) => [
        `${card} ${name}`,
        copies === 0 ? "none" : `${copies}`,
        copies === 0 ? "" : `${percent} %`,
      ]),
    ]),
    ...(panels.length === 0
      ? []
      : [
          "",
          ...table([
            ["panel", "width x height", "number", "wanted", "of the paper left", "from"],
            ...panels.map((one) => panelRow(one, units)),
          ]).flatMap((line) => wrapped(line, "    ")),
        ]),
    "",
    "Each line is for itself: what one uses the others do not have.",
    ...needed,
  ];
}

function leftInWords({ sheets, offcuts }: DesignLeft, unit: Unit): string {
  const shown = offcuts.slice(0, OFFCUTS_SHOWN).map(({ count, width, height }) => {
    const size = formatSize(width, height, { unit });
    return count === 1 ? size : `${count} x (${size})`;
  });
  const others = offcuts.slice(OFFCUTS_SHOWN).reduce((sum, { count }) => sum + count, 0);
  const all = [
    ...(sheets === 0 ? [] : [counted(sheets, "sheet")]),
    ...shown,
    ...(others === 0 ? [] : [`${others} smaller`]),
  ];
  return all.join(", ");
}

/** `2 rolls of 3 yd`, `12`; rolls that are cut into do not count. */
function itemInWords({ length, count }: ItemLeft, unit: Unit): string {
  if (count === 0) return length === null ? "none" : "no whole roll";
  return length === null ? `${count}` : `${counted(count, "roll")} of ${rollLength(length, unit)}`;
}

function panelRow(panel: PanelBonus, unit: Unit): readonly string[] {
  const { name, width, height, count, wanted, percent, from } = panel;
  return [
    name,
    formatSize(width, height, { unit }),
    count === 0 ? "none" : `${count}`,
    `${wanted}`,
    count === 0 ? "" : `${percent} %`,
    from.map((one) => `${one.name} ${one.count}`).join(", "),
  ];
}
