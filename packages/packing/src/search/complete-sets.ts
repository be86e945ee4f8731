import type { Kind, Problem } from "../model.js";
import type { Progress } from "../progress.js";
import type { Draft } from "./draft.js";
import { greatestCommonDivisor } from "./greatest-common-divisor.js";

/** A search with the aim `fill` for one number of sets. */
export type SetSearch = (
  problem: Problem,
) => Generator<Progress, { readonly best: Draft; readonly cancelled: boolean }, boolean | undefined>;

/**
 * When stock is short: as many complete sets as the search finds, the same share of every kind of set, then single sets
 * more, then as much else as fits. Kinds without a set form one set together where their quantities have a common
 * divisor; else the plan that places most stays as it is.
 */
export function* completeSets(
  problem: Problem,
  fallback: Draft,
  searchFor: SetSearch,
): Generator<Progress, { readonly best: Draft; readonly cancelled: boolean }, boolean | undefined> {
  const sets = setsOf(problem);
  const most = Math.max(0, ...[...sets.values()].map((set) => set.copies));
  if (most <= 1 && sets.size <= 1) return { best: fallback, cancelled: false };
  let best = fallback;
  let found: ReadonlyMap<string, number> = new Map();
  const attempt = function* (
    counts: ReadonlyMap<string, number>,
  ): Generator<Progress, "yes" | "no" | "stop", boolean | undefined> {
    const result = yield* searchFor(fillProblem(problem, sets, counts));
    if (result.best.lacking === 0) {
      best = result.best;
      found = counts;
    }
    return result.cancelled ? "stop" : result.best.lacking === 0 ? "yes" : "no";
  };
  let low = 0;
  let high = most;
  while (low < high) {
    const middle = Math.floor((low + high + 1) / 2);
    const verdict = yield* attempt(share(sets, middle, most));
    if (verdict === "stop") return { best, cancelled: true };
    if (verdict === "yes") low = middle;
    else high = middle - 1;
  }
  if (found.size === 0) found = share(sets, 0, most);
  for (const [name, set] of sets) {
    const now = found.get(name) ?? 0;
    if (sets.size === 1 || now >= set.copies) continue;
    const verdict = yield* attempt(new Map([...found, [name, now + 1]]));
    if (verdict === "stop") return { best, cancelled: true };
  }
  return { best, cancelled: false };
}

interface SetDemand {
  readonly copies: number;
  readonly each: ReadonlyMap<string, number>;
}

function share(
  sets: ReadonlyMap<string, SetDemand>,
  part: number,
  whole: number,
): ReadonlyMap<string, number> {
  return new Map([...sets].map(([name, set]) => [name, Math.floor((set.copies * part) / whole)]));
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
  return new Map(
    [...sets].map(([name, each]) => {
      const copies = Math.min(
        ...[...each].map(([id, count]) =>
          Math.floor((problem.kinds.find((k) => k.id === id)?.quantity ?? 0) / count),
        ),
      );
      return [name, { copies, each }];
    }),
  );
}

function fillProblem(
  problem: Problem,
  sets: ReadonlyMap<string, SetDemand>,
  counts: ReadonlyMap<string, number>,
): Problem {
  const least = new Map<string, number>();
  for (const [name, set] of sets)
    for (const [id, each] of set.each) least.set(id, each * (counts.get(name) ?? 0));
  return {
    ...problem,
    aim: "fill",
    kinds: problem.kinds.map((kind) => ({ ...kind, least: least.get(kind.id) ?? 0 })),
  };
}
