import type { ItemUse, Plan } from "../plan-model.js";
import { firstDifference } from "./first-difference.js";
import type { PlanReport } from "./plan-finding.js";
import type { ProjectFacts } from "./project-facts.js";
import { type Lengths, takesAtLeast } from "./prove-rolls.js";

/** What items say of a plan as a whole. */
export interface ItemCount {
  /** Cards that need an item of which there is too little, so that fewer copies may be complete than have their pieces. */
  readonly limited: ReadonlySet<number>;
  /** Whether there is too little of some item, and whether that is proven. */
  readonly lacks: boolean;
  readonly isProven: boolean;
}

/**
 * Checks what a plan says of ribbons, tapes and extras on hand: that it tells of each item of the project, what copies take of
 * it, that the cuts of rolls give just that and fit the rolls, that no more is used than there is, and that no fewer rolls do.
 */
export function checkItemUse(
  plan: Plan,
  spares: ReadonlyMap<number, number>,
  facts: ProjectFacts,
  report: PlanReport,
): ItemCount {
  const items = facts.project.items ?? [];
  const said = plan.itemUse ?? [];
  const wrong = (path: string, message: string): void => report("wrong-items", path, message);
  const names = firstDifference(
    plan.itemUse?.map(({ item, onHand, bags }) => ({ item, onHand, bags })),
    facts.project.items?.map(({ name, count, bags }) => ({ item: name, onHand: count, bags })),
    "itemUse",
  );
  if (names !== null) {
    wrong(names.path, `${names.path} is ${names.found}, but the project makes it ${names.expected}.`);
    return { limited: new Set(), lacks: false, isProven: false };
  }
  const complete = new Map(plan.complete.map((one) => [one.card, one.complete]));
  const asked = new Map(
    facts.expansion.cards.map(({ number, copies }) => [number, copies + (spares.get(number) ?? 0)]),
  );
  const limited = new Set<number>();
  let lacks = false;
  let isProven = false;
  for (const [i, item] of items.entries()) {
    const use = said[i];
    if (use === undefined) continue;
    const takes = takesOf(item.name, facts);
    const isShort = item.count !== null && use.needed > item.count;
    lacks ||= isShort;
    isProven ||= item.count !== null && use.atLeast > item.count;
    if (isShort) for (const { card } of takes) limited.add(card);
    const told = (key: keyof ItemUse, message: string): void => wrong(`itemUse[${i}].${key}`, message);
    const own = { use, takes, bags: item.bags ?? 1, asked, dealt: isShort ? complete : asked, told };
    if (item.length === undefined) checkSingles(own);
    else checkRolls(own, item.length, isShort);
    if (item.count !== null && use.used > item.count)
      told("used", `${use.used} of ${item.name} are used; there are ${item.count}.`);
  }
  return { limited, lacks, isProven };
}

/** What one copy of a card takes: a length, or so many. */
interface Take {
  readonly card: number;
  readonly amount: number;
}

interface OwnUse {
  readonly use: ItemUse;
  readonly takes: readonly Take[];
  readonly bags: number;
  /** Copies that are asked for and spares, and those that what is used is for. */
  readonly asked: ReadonlyMap<number, number>;
  readonly dealt: ReadonlyMap<number, number>;
  readonly told: (key: keyof ItemUse, message: string) => void;
}

function takesOf(name: string, { expansion, project }: ProjectFacts): readonly Take[] {
  const same = (other: string): boolean => other.trim().toLowerCase() === name.trim().toLowerCase();
  const lengths = expansion.items
    .filter((one) => same(one.name))
    .map(({ card, length: amount }) => ({ card, amount }));
  const extras = project.cards.flatMap(({ number: card, extras: own }) =>
    own.filter((one) => same(one.name)).map(({ count: amount }) => ({ card, amount })),
  );
  return [...lengths, ...extras];
}

function checkSingles({ use, takes, asked, dealt, told }: OwnUse): void {
  const sum = (copies: ReadonlyMap<number, number>): number =>
    takes.reduce((all, { card, amount }) => all + amount * (copies.get(card) ?? 0), 0);
  const { needed, atLeast, used, cuts, withMore } = use;
  const expected = { needed: sum(asked), atLeast: sum(asked), used: sum(dealt) };
  const difference = firstDifference({ needed, atLeast, used, cuts, withMore }, expected, "");
  if (difference === null) return;
  const { path, found, expected: should } = difference;
  const [key = "needed"] = path.split(/[.[]/);
  told(
    key as keyof ItemUse,
    `${use.item} is counted singly: ${path} is ${found}, but copies make it ${should}.`,
  );
}

function checkRolls({ use, takes, bags, asked, dealt, told }: OwnUse, roll: number, isShort: boolean): void {
  const lengthsFor = (copies: ReadonlyMap<number, number>): Lengths => {
    const counts = new Map<number, number>();
    for (const { card, amount } of takes) {
      const all = copies.get(card) ?? 0;
      const inOne = (all - (all % bags)) / bags + (all % bags > 0 ? 1 : 0);
      if (inOne > 0) counts.set(amount, (counts.get(amount) ?? 0) + inOne);
    }
    return counts;
  };
  const check = (key: "cuts" | "withMore", copies: ReadonlyMap<number, number>, rolls: number): void => {
    const cuts = use[key];
    if (cuts === undefined) {
      told(key, `Rolls of ${use.item} are cut, but ${key} does not say how.`);
      return;
    }
    const given = new Map<number, number>();
    let all = 0;
    for (const { rolls: alike, lengths } of cuts) {
      all += alike;
      const taken = lengths.reduce((sum, { length, count }) => sum + length * count, 0);
      if (taken > roll) told(key, `Lengths of ${taken} ticks are cut from a roll of ${roll} of ${use.item}.`);
      for (const { length, count } of lengths) given.set(length, (given.get(length) ?? 0) + count * alike);
    }
    const order = (some: Lengths): unknown =>
      [...some].filter(([, count]) => count > 0).sort(([a], [b]) => a - b);
    const difference = firstDifference(order(given), order(lengthsFor(copies)), "lengths");
    if (difference !== null)
      told(key, `The cuts of ${use.item} give ${difference.found}, but copies take ${difference.expected}.`);
    if (all * bags !== rolls) told(key, `The cuts take ${all * bags} rolls of ${use.item}, not ${rolls}.`);
  };
  check("cuts", dealt, use.used);
  if (isShort) check("withMore", asked, use.needed);
  else if (use.withMore !== undefined) told("withMore", `There is enough of ${use.item} without more.`);
  else if (use.needed !== use.used)
    told(
      "needed",
      `${use.needed} rolls of ${use.item} are needed and ${use.used} used, though there is enough.`,
    );
  const ofOne = use.atLeast / bags;
  if (use.atLeast > use.needed || use.atLeast % bags !== 0 || !takesAtLeast(ofOne, lengthsFor(asked), roll))
    told("atLeast", `It is not proven that copies take at least ${use.atLeast} rolls of ${use.item}.`);
}
