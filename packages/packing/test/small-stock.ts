import type { Kind, Problem, Sheet, Size } from "../src/index.js";

/** What a stock of sheets can give, found by looking at everything. Copies are counted in the order of the kinds. */
export interface SmallStock {
  /** Whether at least so many copies of each kind can be cut. */
  readonly gives: (least: readonly number[]) => boolean;
  /** The least cost of sheets from which every copy can be cut; undefined where the stock is short. */
  readonly leastCost: () => number | undefined;
  /** The most value with at least so many copies of each kind, and the least cost of sheets for that value. */
  readonly mostValue: (least: readonly number[]) => { readonly value: number; readonly cost: number };
  /** The numbers of complete sets by the rule for stock that is short, by name, in the problem's order. */
  readonly sets: () => ReadonlyMap<string, number>;
  /** The copies of each kind that those sets take. */
  readonly forSets: () => readonly number[];
}

/**
 * Looks at all that can be cut from a limited stock by edge-to-edge cuts in any number of stages: the smallest boxes for
 * every number of copies of each kind on each kind of sheet, then every choice of sheets. For some hundred such numbers of
 * copies; sheets without a stock are as many as there are copies. Trims, longest cuts and windows are left out.
 */
export function smallStock(problem: Problem): SmallStock {
  const { kinds, sheets } = problem;
  const wanted = kinds.map((kind) => kind.quantity ?? 0);
  const amounts = amountsUpTo(wanted);
  const all = amounts.list.length - 1;
  const copies = wanted.reduce((sum, count) => sum + count, 0);
  const stock = sheets.map((sheet) => Math.min(sheet.stock ?? copies, copies));
  const onOne = sheets.map((sheet) => amountsOn(problem, sheet, amounts));
  const groups = groupsOf(kinds);
  const choices = amountsUpTo(stock);
  // By choice of sheets, every amount that just these sheets can give.
  const given: (readonly number[])[] = [[0]];
  for (let choice = 1; choice < choices.list.length; choice++) {
    const used = choices.list[choice] as readonly number[];
    const last = used.findIndex((count) => count > 0);
    const before = given[choice - (choices.step[last] as number)] as readonly number[];
    given.push(sums(before, onOne[last] as readonly number[], amounts, groups));
  }
  const costOf = (choice: number): number =>
    (choices.list[choice] as readonly number[]).reduce((sum, count, s) => {
      const { cost, width, height } = sheets[s] as Sheet;
      return sum + count * (cost ?? width * height);
    }, 0);
  const most = new Set(given.flat());
  const gives = (least: readonly number[]): boolean => most.has(amounts.numberOf(least));
  const worthAt = (amount: number): number =>
    (amounts.list[amount] as readonly number[]).reduce(
      (sum, count, k) => sum + count * worthOf(kinds[k] as Kind),
      0,
    );
  const sets = (): ReadonlyMap<string, number> => setsByRule(kinds, gives);
  return {
    gives,
    leastCost: () => {
      const costs = given.flatMap((found, choice) => (found.includes(all) ? [costOf(choice)] : []));
      return costs.length === 0 ? undefined : Math.min(...costs);
    },
    mostValue: (least) => {
      let best = { value: -1, cost: 0 };
      given.forEach((found, choice) => {
        const cost = costOf(choice);
        for (const amount of found) {
          const counts = amounts.list[amount] as readonly number[];
          if (counts.some((count, k) => count < (least[k] as number))) continue;
          const value = worthAt(amount);
          if (value > best.value || (value === best.value && cost < best.cost)) best = { value, cost };
        }
      });
      return best;
    },
    sets,
    forSets: () => copiesFor(kinds, sets()),
  };
}

/** All numbers of copies up to some, each with a number of its own: the last has the most of all. */
interface Amounts {
  readonly list: readonly (readonly number[])[];
  /** What one copy of a kind adds to the number. */
  readonly step: readonly number[];
  readonly most: readonly number[];
  readonly numberOf: (counts: readonly number[]) => number;
}

function amountsUpTo(most: readonly number[]): Amounts {
  let list: (readonly number[])[] = [[]];
  const step: number[] = [];
  for (const count of most) {
    step.push(list.length);
    const shorter = list;
    list = Array.from({ length: count + 1 }, (_, i) => shorter.map((counts) => [...counts, i])).flat();
  }
  const numberOf = (counts: readonly number[]): number =>
    counts.reduce((sum, count, k) => sum + count * (step[k] as number), 0);
  return { list, step, most, numberOf };
}

/** Whether two amounts together are no more than wanted. */
function isWithin(a: readonly number[], b: readonly number[], most: readonly number[]): boolean {
  return most.every((count, k) => (a[k] as number) + (b[k] as number) <= count);
}

/** The amounts that one sheet can give. */
function amountsOn(problem: Problem, sheet: Sheet, { list, most, numberOf }: Amounts): readonly number[] {
  const kerf = problem.kerf ?? 0;
  const boxes: (readonly Size[])[] = [[]];
  const found = [0];
  for (let amount = 1; amount < list.length; amount++) {
    const counts = list[amount] as readonly number[];
    const boxesHere: Size[] = [];
    if (counts.reduce((sum, count) => sum + count, 0) === 1) {
      boxesHere.push(...waysOn(problem.kinds[counts.indexOf(1)] as Kind, sheet));
    }
    for (let part = 1; part < amount; part++) {
      const rest = counts.map((count, k) => count - ((list[part] as readonly number[])[k] as number));
      if (rest.some((count) => count < 0)) continue;
      const other = numberOf(rest);
      if (other > part) continue;
      for (const a of boxes[part] as readonly Size[]) {
        for (const b of boxes[other] as readonly Size[]) {
          boxesHere.push({ width: a.width + kerf + b.width, height: Math.max(a.height, b.height) });
          boxesHere.push({ width: Math.max(a.width, b.width), height: a.height + kerf + b.height });
        }
      }
    }
    const fitting = boxesHere.filter((box) => box.width <= sheet.width && box.height <= sheet.height);
    boxes.push(smallest(fitting));
    if (fitting.length > 0 && isWithin(counts, [...most].fill(0), most)) found.push(amount);
  }
  return found;
}

function smallest(boxes: readonly Size[]): readonly Size[] {
  return boxes.filter(
    (box, i) =>
      !boxes.some(
        (other, j) =>
          other.width <= box.width &&
          other.height <= box.height &&
          (other.width < box.width || other.height < box.height || j < i),
      ),
  );
}

/** The ways in which a kind may lie on a sheet. */
function waysOn(kind: Kind, sheet: Sheet): readonly Size[] {
  return kind.forms.flatMap(({ width, height, turns = "both", sheets }) => {
    const own = sheets?.find((entry) => entry.sheet === sheet.id);
    if (sheets && own === undefined) return [];
    const allowed = own?.turns ?? turns;
    return [
      ...(allowed === "turned" ? [] : [{ width, height }]),
      ...(allowed === "upright" ? [] : [{ width: height, height: width }]),
    ];
  });
}

/** The places of the kinds in each group. */
function groupsOf(kinds: readonly Kind[]): readonly (readonly number[])[] {
  const keys = new Set(kinds.flatMap((kind) => kind.together ?? []));
  return [...keys].map((key) => kinds.flatMap((kind, k) => (kind.together === key ? [k] : [])));
}

/** What one more sheet can add to what some give; of a group only one of them holds anything. */
function sums(
  before: readonly number[],
  onOne: readonly number[],
  { list, most }: Amounts,
  groups: readonly (readonly number[])[],
): readonly number[] {
  const holds = (counts: readonly number[], group: readonly number[]) =>
    group.some((k) => (counts[k] as number) > 0);
  const found = new Set<number>();
  for (const a of before) {
    for (const b of onOne) {
      const [one, other] = [list[a] as readonly number[], list[b] as readonly number[]];
      if (found.has(a + b) || !isWithin(one, other, most)) continue;
      if (groups.some((group) => holds(one, group) && holds(other, group))) continue;
      found.add(a + b);
    }
  }
  return [...found];
}

function worthOf(kind: Kind): number {
  const [first = { width: 0, height: 0 }] = kind.forms;
  return kind.value ?? first.width * first.height;
}

/** For each set how many of each kind make one, and how many are wanted; the copies of kinds without any as one set. */
function setsWanted(
  kinds: readonly Kind[],
): ReadonlyMap<string, { readonly each: readonly number[]; readonly copies: number }> {
  const names = new Set(kinds.flatMap((kind) => kind.set?.of ?? []));
  const sets = new Map<string, readonly number[]>();
  for (const name of names) {
    sets.set(
      name,
      kinds.map(({ set }) => (set?.of === name ? set.each : 0)),
    );
  }
  if (names.size === 0) {
    let common = Math.max(...kinds.map((kind) => kind.quantity ?? 0));
    while (common > 1 && kinds.some((kind) => (kind.quantity ?? 0) % common !== 0)) common--;
    if (common > 1)
      sets.set(
        "",
        kinds.map((kind) => (kind.quantity ?? 0) / common),
      );
  }
  return new Map(
    [...sets].map(([name, each]) => {
      const copies = Math.min(
        ...each.flatMap((count, k) => (count > 0 ? Math.floor((kinds[k]?.quantity ?? 0) / count) : [])),
      );
      return [name, { each, copies }];
    }),
  );
}

function copiesFor(kinds: readonly Kind[], numbers: ReadonlyMap<string, number>): readonly number[] {
  const sets = setsWanted(kinds);
  return kinds.map((_, k) =>
    [...sets].reduce((sum, [name, { each }]) => sum + (each[k] as number) * (numbers.get(name) as number), 0),
  );
}

/**
 * The rule as docs/packing.md states it, one step after the other: in each round the largest common share of the sets that
 * still grow, then each of them one more; what cannot have one more grows no longer.
 */
function setsByRule(
  kinds: readonly Kind[],
  gives: (least: readonly number[]) => boolean,
): ReadonlyMap<string, number> {
  const sets = setsWanted(kinds);
  const whole = Math.max(0, ...[...sets.values()].map(({ copies }) => copies));
  const numbers = new Map([...sets.keys()].map((name) => [name, 0]));
  let growing = [...sets.keys()];
  while (growing.length > 0) {
    for (let part = whole; part > 0; part--) {
      const next = new Map(numbers);
      for (const name of growing) {
        const share = Math.floor(((sets.get(name)?.copies ?? 0) * part) / whole);
        next.set(name, Math.max(share, numbers.get(name) as number));
      }
      if (!gives(copiesFor(kinds, next))) continue;
      for (const [name, count] of next) numbers.set(name, count);
      break;
    }
    growing = growing.filter((name) => {
      const next = new Map(numbers).set(name, (numbers.get(name) as number) + 1);
      if ((numbers.get(name) as number) >= (sets.get(name)?.copies ?? 0)) return false;
      if (!gives(copiesFor(kinds, next))) return false;
      numbers.set(name, next.get(name) as number);
      return true;
    });
  }
  return numbers;
}
