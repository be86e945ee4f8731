/**
 * The rule for stock that is short: complete sets first, in equal shares, then as much else as fits.
 *
 * Sets grow in rounds. A round takes the largest share of all sets that still grow (of a set of c copies the whole part of
 * c t / m, where m is the most copies that any set has, and t the largest whole number for which a plan is found), then one
 * more of each of them, one after the other in the problem's order. A set that cannot have one more grows no longer. Then,
 * of the plans with these sets, the one of the most value is looked for.
 *
 * Kinds without a set are part of what else fits; where no kind has one, all kinds form one set together if their
 * quantities have a common divisor above 1, and else there are no sets.
 *
 * Whether some sets can be had is for the search to say, so what it misses the rule misses; a set more is never tried where
 * a bound excludes it, nor searched for where the plan at hand has it already.
 */
import { lowerBounds } from "../bounds/lower-bound.js";
import type { Kind, Problem } from "../model.js";
import type { Progress } from "../progress.js";
import { compileProblem } from "./compiled-problem.js";
import { type Draft, draftOf } from "./draft.js";
import { greatestCommonDivisor } from "./greatest-common-divisor.js";

/** What a search came to. */
interface SetsFound {
  readonly best: Draft;
  readonly cancelled: boolean;
}

/** A search for all pieces of a problem, or with the aim `fill` for more value than a plan has that is known. */
export type SetSearch = (
  problem: Problem,
  known: Draft | undefined,
) => Generator<Progress, SetsFound, boolean | undefined>;

/** The best plan by the rule above; `fallback` is a plan of the same problem to begin with. */
export function* completeSets(
  problem: Problem,
  fallback: Draft,
  searchFor: SetSearch,
): Generator<Progress, SetsFound, boolean | undefined> {
  const sets = setsOf(problem);
  const whole = Math.max(0, ...[...sets.values()].map((set) => set.copies));
  let numbers: ReadonlyMap<string, number> = new Map([...sets.keys()].map((name) => [name, 0]));
  let best = fallback;
  const attempt = function* (
    next: ReadonlyMap<string, number>,
  ): Generator<Progress, "yes" | "no" | "stop", boolean | undefined> {
    const least = copiesOf(problem, sets, next);
    if (least.some((count, kind) => count > (best.placed[kind] ?? 0))) {
      const asked = withQuantities(problem, least);
      if (isOutOfReach(asked)) return "no";
      const result = yield* searchFor(asked, undefined);
      if (result.best.lacking > 0) return result.cancelled ? "stop" : "no";
      best = result.best;
    }
    numbers = next;
    return "yes";
  };
  let growing = [...sets.keys()];
  while (growing.length > 0) {
    const grown = (part: number): ReadonlyMap<string, number> => {
      const shares = growing.map((name): [string, number] => {
        const share = Math.floor(((sets.get(name)?.copies ?? 0) * part) / whole);
        return [name, Math.max(share, numbers.get(name) ?? 0)];
      });
      return new Map([...numbers, ...shares]);
    };
    let low = 0;
    let high = whole;
    while (low < high) {
      const middle = Math.floor((low + high + 1) / 2);
      const verdict = yield* attempt(grown(middle));
      if (verdict === "stop") return { best, cancelled: true };
      if (verdict === "yes") low = middle;
      else high = middle - 1;
    }
    const stillGrowing: string[] = [];
    for (const name of growing) {
      const now = numbers.get(name) ?? 0;
      if (now >= (sets.get(name)?.copies ?? 0)) continue;
      const verdict = yield* attempt(new Map([...numbers, [name, now + 1]]));
      if (verdict === "stop") return { best, cancelled: true };
      if (verdict === "yes") stillGrowing.push(name);
    }
    growing = stillGrowing;
  }
  const filling = fillProblem(problem, copiesOf(problem, sets, numbers));
  // The plan at hand was judged by what another search asked for.
  return yield* searchFor(filling, draftOf(compileProblem(filling), best.layouts));
}

interface SetDemand {
  /** Sets wanted. */
  readonly copies: number;
  /** Pieces of each kind in one set, by the kind's id. */
  readonly each: ReadonlyMap<string, number>;
}

function setsOf(problem: Problem): ReadonlyMap<string, SetDemand> {
  const named = problem.kinds.filter((kind) => kind.set !== undefined);
  const sets = new Map<string, Map<string, number>>();
  for (const kind of named) {
    const { of, each } = kind.set as NonNullable<Kind["set"]>;
    sets.set(of, (sets.get(of) ?? new Map<string, number>()).set(kind.id, each));
  }
  if (named.length === 0) {
    const wanted = problem.kinds.filter((kind) => (kind.quantity ?? 0) > 0);
    const common = wanted.reduce((all, kind) => greatestCommonDivisor(all, kind.quantity ?? 0), 0);
    if (common > 1) sets.set("", new Map(wanted.map((kind) => [kind.id, (kind.quantity ?? 0) / common])));
  }
  const quantities = new Map(problem.kinds.map((kind) => [kind.id, kind.quantity ?? 0]));
  return new Map(
    [...sets].map(([name, each]) => {
      const copies = [...each].map(([id, count]) => Math.floor((quantities.get(id) ?? 0) / count));
      return [name, { copies: Math.min(...copies), each }];
    }),
  );
}

/** By kind: the copies that some numbers of sets take. */
function copiesOf(
  problem: Problem,
  sets: ReadonlyMap<string, SetDemand>,
  numbers: ReadonlyMap<string, number>,
): readonly number[] {
  const copies = new Map<string, number>();
  for (const [name, { each }] of sets)
    for (const [id, count] of each) copies.set(id, count * (numbers.get(name) ?? 0));
  return problem.kinds.map((kind) => copies.get(kind.id) ?? 0);
}

/** The problem for so many copies of each kind. */
function withQuantities(problem: Problem, quantities: readonly number[]): Problem {
  return { ...problem, kinds: problem.kinds.map((kind, i) => ({ ...kind, quantity: quantities[i] ?? 0 })) };
}

/** Whether it is proven that the stock does not give all pieces of a problem. */
function isOutOfReach(problem: Problem): boolean {
  const first = lowerBounds(compileProblem(problem), "quick").next();
  return !first.done && first.value.aim === "all" && first.value.cost === null;
}

/** The problem with a least number of each kind. */
function fillProblem(problem: Problem, least: readonly number[]): Problem {
  return {
    ...problem,
    aim: "fill",
    kinds: problem.kinds.map((kind, i) => ({ ...kind, least: least[i] ?? 0 })),
  };
}
