import { formatLength } from "@sheetwright/measure";
import type { Item } from "../expansion.js";
import { itemKey } from "../item-name.js";
import type { BundleItem, Project } from "../project.js";
import type { ProjectFault } from "../project-fault.js";
import { LONGEST_ROLL } from "../project-file/read-roll-length.js";
import { checkCount } from "./check-values.js";
import { fault } from "./fault.js";

/** The most rolls, or single ones, of an item: those of a bag for each of as many bags as there may be. */
const MOST_ITEMS = 100_000 * 100_000;

/**
 * Finds what is wrong with the items that are on hand: numbers out of their range, a name that is there twice, other bags
 * than the project has, and items that cannot be what the cards call by their name: a ribbon without a length, rolls of what
 * is counted singly, one ribbon in two widths, and rolls that are shorter than what is cut of them.
 *
 * @internal
 */
export function checkItems(project: Project, used: readonly Item[]): readonly ProjectFault[] {
  const { items = [], kits } = project;
  const seen = new Set<string>();
  return items.flatMap((item) => {
    const { name, path, count, length, pack, bags } = item;
    const isTwice = seen.has(itemKey(name));
    seen.add(itemKey(name));
    const twice = isTwice
      ? [
          fault({
            code: "twice",
            path,
            found: name,
            expected: "each item once",
            message: `${name} is there twice. Put what is on hand under one of the two.`,
          }),
        ]
      : [];
    const wrong = [
      ...(length === undefined ? [] : checkCount(`${path}.length`, length, 1, LONGEST_ROLL)),
      ...(count === null ? [] : checkCount(`${path}.count`, count, 0, MOST_ITEMS)),
      ...(pack === undefined ? [] : checkCount(`${path}.pack.items`, pack.items, 1, MOST_ITEMS)),
    ];
    return [
      ...twice,
      ...wrong,
      ...(bags === undefined || bags === kits?.bags ? [] : [otherBags(item, kits?.bags)]),
      ...(wrong.length > 0 ? [] : checkUse(item, used, project)),
    ];
  });
}

function otherBags({ name, path, bags }: BundleItem, expectedBags: number | undefined): ProjectFault {
  const expected =
    expectedBags === undefined ? "no bags in a class" : `the ${expectedBags} bags of the project`;
  const message = `The rolls of ${name} go into ${bags} bags: expected ${expected}.`;
  return fault({ code: "contradiction", path, found: String(bags), expected, message });
}

function checkUse(
  { name, path, length }: BundleItem,
  used: readonly Item[],
  { cards, units: unit }: Project,
): readonly ProjectFault[] {
  const key = itemKey(name);
  const own = used.filter((one) => itemKey(one.name) === key);
  const extra = cards.flatMap(({ extras }) => extras).find((one) => itemKey(one.name) === key);
  const say = (ticks: number): string => formatLength(ticks, { unit });
  const contradiction = (at: string, found: string, expected: string, message: string): ProjectFault =>
    fault({ code: "contradiction", path: at, found, expected, message });
  const [first, ...others] = own;
  if (first !== undefined && length === undefined) {
    const message = `${name} is a ${first.kind} (${first.path}), so what is on hand are rolls. Write how long one is, such as length: 3 yd.`;
    return [contradiction(path, "no length", "how long a roll is", message)];
  }
  if (extra !== undefined && length !== undefined) {
    const message = `${name} is an extra that is counted (${extra.path}), so it has no rolls. Leave length out, or give the ribbon and the extra two names.`;
    return [contradiction(`${path}.length`, say(length), "no length", message)];
  }
  if (first === undefined || length === undefined) return [];
  const other = others.find(({ width, kind }) => width !== first.width || kind !== first.kind);
  if (other !== undefined) {
    const [one, two] = [first, other].map(({ kind, width }) => `a ${kind} ${say(width)} wide`);
    const message = `${name} is ${one} (${first.path}) and ${two} (${other.path}), and a roll is one of the two. Give them two names.`;
    return [contradiction(path, `${one} and ${two}`, "one width under one name", message)];
  }
  const longest = own.reduce((most, one) => (one.length > most.length ? one : most), first);
  if (longest.length <= length) return [];
  const message = `The ${longest.label} takes ${say(longest.length)} in one length (${longest.path}), and a roll has ${say(length)}. Lengths are never joined: write longer rolls, or use another ${longest.kind} there.`;
  return [contradiction(`${path}.length`, say(length), `at least ${say(longest.length)}`, message)];
}
