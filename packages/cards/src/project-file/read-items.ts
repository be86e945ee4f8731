import { itemKey } from "../item-name.js";
import type { BundleItem, ItemPack, Kits } from "../project.js";
import type { Written } from "./check-structure.js";
import { isExcused } from "./is-excused.js";
import { readDecimal } from "./read-decimal.js";
import { readHandOut } from "./read-hand-out.js";
import { LONGEST_NAME } from "./read-paper-design.js";
import { LONGEST_ROLL, readRollLength } from "./read-roll-length.js";
import { type Reading, readText } from "./reading.js";
import { quote } from "./say-value.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";

type WrittenItems = Written<NonNullable<ProjectFile["items"]>>;
type WrittenItem = Exclude<NonNullable<WrittenItems[string]>, number | string>;

/** The most items of a project. */
const MOST_ITEMS = 200;

/** Reads the items of the bundle; `null` where nothing is said of them. `kits` is `null` in a class. */
export function readItems(
  items: WrittenItems | undefined,
  kits: Kits | null,
  reading: Reading,
): readonly BundleItem[] | null {
  if (items === undefined) return null;
  const { faults } = reading;
  const entries = Object.entries(items);
  if (entries.length > MOST_ITEMS) {
    const message = `There are ${entries.length} items, and ${MOST_ITEMS} are the most.`;
    const expected = `at most ${MOST_ITEMS} items`;
    faults.report({ code: "too-many", path: "items", found: entries.length, expected, message });
  }
  const known = new Map<string, string>();
  return entries.slice(0, MOST_ITEMS).flatMap(([key, written]): readonly BundleItem[] => {
    const path = pathTo("items", key);
    const name = readText(key, path, reading, LONGEST_NAME);
    if (name === null || written === undefined) return [];
    const before = known.get(itemKey(name));
    if (before !== undefined) {
      const message = `${quote(key)} and ${quote(before)} are one name, whatever their capitals. Put what is on hand under one of them.`;
      faults.report({ code: "twice", path, found: key, expected: "each item once", message });
      return [];
    }
    known.set(itemKey(name), key);
    return [readItem(name, typeof written === "object" ? written : { count: written }, path, kits, reading)];
  });
}

function readItem(
  name: string,
  item: WrittenItem,
  path: string,
  kits: Kits | null,
  reading: Reading,
): BundleItem {
  const at = (key: keyof WrittenItem) => pathTo(path, key);
  const read = readRollLength(item.length, at("length"), reading);
  // One that could not be read stands for some roll or other, so that the ribbon is not told to lack a length as well.
  const { faults } = reading;
  const isUnread = !faults.isSound(at("length")) || isExcused("length", path, item, faults);
  const length = read ?? (isUnread ? LONGEST_ROLL : null);
  const { bags, countsFor } = readHandOut(item, path, kits, reading, "items");
  if (length === null && kits !== null && item["hand-out"] !== undefined) {
    const message =
      "What is counted singly goes into the bags as it is, so hand-out says nothing. Leave it out; " +
      "or, if this is a ribbon or a tape, write how long a roll is behind length.";
    const expected = "no such key, or a length";
    const found = item["hand-out"];
    reading.faults.report({ code: "contradiction", path: at("hand-out"), found, expected, message });
  }
  const cost = readDecimal(item.cost, at("cost"), "itemCost", reading);
  const count = typeof item.count === "number" ? item.count * countsFor : null;
  return {
    name,
    path,
    ...(length === null ? {} : { length }),
    count,
    ...(cost === null ? {} : { cost }),
    ...readPack(item.pack, at("pack"), reading),
    ...(bags === null || length === null ? {} : { bags }),
  };
}

function readPack(pack: WrittenItem["pack"], path: string, reading: Reading): { readonly pack?: ItemPack } {
  if (pack === undefined) return {};
  if (typeof pack === "number") return { pack: { items: pack, cost: null } };
  return {
    pack: { items: pack.items ?? 1, cost: readDecimal(pack.cost, pathTo(path, "cost"), "itemCost", reading) },
  };
}
