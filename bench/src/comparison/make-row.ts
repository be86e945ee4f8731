import type { Effort } from "@sheetwright/packing";
import { type Family, type Instance, MEASURES, type Question, type Reference } from "../instances/family.js";
import type { PublishedResults, PublishedSums } from "../instances/published-results.js";
import { percentOf } from "../percent-of.js";
import type { Solved } from "../solve/solve-task.js";
import { betterBound, gapTo } from "./gap.js";
import type { CellSums, Detail, Figures, GroupSums, Row, Sums } from "./row.js";

/** How the instances of a family were solved. */
export interface Way {
  readonly family: Family;
  readonly mayTurn: boolean;
  readonly solver: string;
  readonly effort: Effort | null;
}

/** An instance with its figures. */
interface Measured {
  readonly instance: Instance;
  readonly detail: Detail;
}

/** Instances in one published sum. */
const CELL_SIZE = 10;

/** Sums what a solver made of a family; `solved` is in the order of its instances. */
export function makeRow(
  { family, mayTurn, solver, effort }: Way,
  solved: readonly Solved[],
  published: PublishedResults,
): Row {
  const { name, question, instances } = family;
  const references = referencesOf(family, mayTurn, published);
  const measured = instances.map((instance, i): Measured => {
    const answer = solved[i];
    const reference = references[i];
    if (answer === undefined || reference === undefined) {
      throw new RangeError(`Expected an answer for each of ${instances.length} instances.`);
    }
    return { instance, detail: detailOf(instance, question, reference, answer) };
  });
  const sums = (chosen: readonly Measured[]): Sums =>
    sumOf(chosen, (cell) => published.sumsOf(name, cell, mayTurn));
  const uses = measured.map(({ detail }) =>
    detail.sheets === null ? Number.NaN : detail.pieceArea / detail.sheetArea,
  );
  const mean = uses.reduce((sum, use) => sum + use, 0) / uses.length;
  return {
    family: name,
    rotation: mayTurn,
    solver,
    effort,
    ...sums(measured),
    question,
    measure: MEASURES[question].name,
    meanUtilisation: Number.isFinite(mean) ? Math.round(mean * 10000) / 100 : null,
    bestUtilisation: published.utilisationOf(name, mayTurn),
    tries: sumTries(solved),
    groups: groupsOf(measured).map(([group, chosen]): GroupSums => ({ group, ...sums(chosen) })),
    cells: cellsOf(measured).map(([cell, chosen]): CellSums => ({ ...cell, ...sums(chosen) })),
    details: measured.map(({ detail }) => detail),
  };
}

/**
 * What is published of each instance. Where the best sum of a cell is the sum of its bounds, each of its instances is known
 * to reach its own bound.
 */
function referencesOf(
  { name, instances }: Family,
  mayTurn: boolean,
  published: PublishedResults,
): readonly Reference[] {
  const own = instances.map((instance) => (mayTurn ? instance.turned : instance.fixed));
  return instances.map(({ cell }, i): Reference => {
    const reference = own[i] ?? { best: null, bound: null };
    if (reference.best !== null || cell === null) return reference;
    const bounds = own.filter((_, k) => {
      const other = instances[k]?.cell;
      return other?.class === cell.class && other.n === cell.n;
    });
    const best = published.sumsOf(name, cell, mayTurn)?.best ?? null;
    const closed = bounds.length === CELL_SIZE && totalOf(bounds.map(({ bound }) => bound)) === best;
    return closed && best !== null ? { ...reference, best: reference.bound } : reference;
  });
}

function detailOf({ id }: Instance, question: Question, reference: Reference, solved: Solved): Detail {
  const { sheets, sheetArea, pieceArea, value, bounds } = solved;
  const key = question === "sheets" ? "sheets" : question === "sizes" ? "sheetArea" : "value";
  const whole = sheets !== null;
  const measured = whole ? { sheets, sheetArea, value }[key] : null;
  const bestBound = betterBound(question, bounds[key], reference.bound);
  return {
    id,
    sheets,
    bound: bounds[key],
    bestPublished: reference.best,
    utilisation: whole && sheetArea > 0 ? percentOf(BigInt(pieceArea), BigInt(sheetArea)) : null,
    seconds: solved.seconds,
    verified: solved.faults.length === 0,
    measured,
    publishedBound: reference.bound,
    bestBound,
    gap: gapTo(question, measured, bestBound),
    sheetArea,
    pieceArea,
    value,
    proven: solved.proven,
    work: solved.work,
    steps: solved.steps,
  };
}

type SumsOf = (cell: NonNullable<Instance["cell"]>) => PublishedSums | null;

function sumOf(chosen: readonly Measured[], publishedOf: SumsOf): Sums {
  const details = chosen.map(({ detail }) => detail);
  const sheetArea = details.reduce((sum, detail) => sum + detail.sheetArea, 0);
  const pieceArea = details.reduce((sum, detail) => sum + detail.pieceArea, 0);
  const total = (key: keyof Figures): number | null =>
    totalOf(details.map((detail) => detail[key] as number | null));
  const known = details.filter(({ bestPublished }) => bestPublished !== null);
  const sheets = total("sheets");
  return {
    instances: details.length,
    sheets,
    bound: total("bound"),
    ...bestOf(chosen, publishedOf),
    utilisation: sheets === null || sheetArea === 0 ? null : percentOf(BigInt(pieceArea), BigInt(sheetArea)),
    seconds: total("seconds") ?? 0,
    verified: details.every(({ verified }) => verified),
    measured: total("measured"),
    publishedBound: total("publishedBound"),
    bestBound: total("bestBound"),
    gap: total("gap"),
    sheetArea,
    pieceArea,
    value: total("value"),
    proven: details.filter(({ proven }) => proven).length,
    medianSeconds: medianOf(details.map(({ seconds }) => seconds)),
    known: known.length,
    reached: known.filter(({ measured, bestPublished }) => measured === bestPublished).length,
    work: total("work"),
    steps: total("steps"),
  };
}

/** The best published of several instances: from published sums where these cover them, else one by one. */
function bestOf(
  chosen: readonly Measured[],
  publishedOf: SumsOf,
): Pick<Sums, "bestPublished" | "bestMethod" | "bestSingle"> {
  const cells = cellsOf(chosen);
  const sums = cells.map(([cell, inside]) => (inside.length === CELL_SIZE ? publishedOf(cell) : null));
  const found = sums.filter((sum) => sum !== null);
  const inCells = cells.reduce((count, [, inside]) => count + inside.length, 0);
  if (found.length > 0 && found.length === sums.length && inCells === chosen.length) {
    const best = found.reduce((sum, cell) => sum + cell.best, 0);
    const singles = [...(found[0]?.byMethod.keys() ?? [])].flatMap((method) => {
      const measured = totalOf(found.map(({ byMethod }) => byMethod.get(method) ?? null));
      return measured === null ? [] : [{ method, measured }];
    });
    const bestSingle = singles.reduce<Sums["bestSingle"]>(
      (least, each) => (least === null || each.measured < least.measured ? each : least),
      null,
    );
    const alone = singles.filter(({ measured }) => measured === best).map(({ method }) => method);
    const bestMethod =
      alone.length === 0
        ? "several together"
        : alone.length > 2
          ? `${alone.length} methods`
          : alone.join(", ");
    return { bestPublished: best, bestMethod, bestSingle };
  }
  const best = totalOf(chosen.map(({ detail }) => detail.bestPublished));
  return { bestPublished: best, bestMethod: best === null ? null : "optima", bestSingle: null };
}

function sumTries(solved: readonly Solved[]): Readonly<Record<string, number>> {
  const names = Object.keys(solved[0]?.tries ?? {});
  return Object.fromEntries(
    names.map((name) => [name, solved.reduce((sum, { tries }) => sum + (tries[name] ?? 0), 0)]),
  );
}

/** The middle one, or the mean of the two in the middle; 0 of none. */
function medianOf(figures: readonly number[]): number {
  const sorted = [...figures].sort((a, b) => a - b);
  const half = sorted.length / 2;
  const [low = 0, high = low] = sorted.slice(Math.ceil(half) - 1, Math.floor(half) + 1);
  return (low + high) / 2;
}

/** The sum, or `null` where a part is missing. */
function totalOf(parts: readonly (number | null)[]): number | null {
  return parts.reduce<number | null>((sum, part) => (sum === null || part === null ? null : sum + part), 0);
}

function groupsOf(
  measured: readonly Measured[],
): readonly (readonly [group: string, chosen: readonly Measured[]])[] {
  const groups = new Map<string, Measured[]>();
  for (const each of measured) {
    const { group } = each.instance;
    if (group !== null) groups.set(group, [...(groups.get(group) ?? []), each]);
  }
  return [...groups];
}

function cellsOf(
  measured: readonly Measured[],
): readonly (readonly [cell: NonNullable<Instance["cell"]>, chosen: readonly Measured[]])[] {
  const cells = new Map<string, [NonNullable<Instance["cell"]>, Measured[]]>();
  for (const each of measured) {
    const { cell } = each.instance;
    if (cell === null) continue;
    const key = `${cell.class} ${cell.n}`;
    const found = cells.get(key);
    if (found) found[1].push(each);
    else cells.set(key, [cell, [each]]);
  }
  return [...cells.values()];
}
