/**
 * Spare copies: a wish that is answered apart, once every copy that is asked for has its pieces.
 *
 * First all spares that are wished for are tried. Where the papers do not give them, the same number of every card is
 * looked for by halving, then single cards are given more, one after another, by halving too. An attempt asks of every
 * group of papers whether it gives all pieces of the copies and the spares; a group is searched only where these are not
 * the ones of an attempt before, so one card takes as many attempts as its wish has binary digits, and one more. A group
 * with die blanks is asked again for each of a few ways to cut them in strips, until one gives everything.
 *
 * It guarantees that the copies asked for stay planned and that every spare copy has all its pieces, from papers on hand.
 * It does not promise the most spares that are possible: an attempt may fail where a longer search would not.
 */

import type { Card, Paper, Piece } from "@sheetwright/cards";
import type { Effort, Packing } from "@sheetwright/packing";
import type { GroupTask } from "../group/group-problem.js";
import { type Division, divideTask } from "../strips/divide-task.js";
import type { StripWorkshop } from "../strips/strip-forms.js";
import { type DividedPacking, isBetter, packDivided, sheetDesigns } from "./find-strips.js";
import type { GroupSearch, Search } from "./group-search.js";
import { restate } from "./restate.js";
import { alongGrain } from "./search-group.js";

/** A group of papers that gives all that is asked of it. */
export interface CompleteGroup {
  /** What is asked of it, with single blanks. */
  readonly task: GroupTask;
  readonly pieces: readonly Piece[];
  /** Ways to cut its die blanks in strips, single blanks among them. */
  readonly divisions: readonly Division[];
}

/** Spare copies by the number of the card; a card without is absent. */
export type Spares = ReadonlyMap<Card["number"], number>;

/** What was found: the spares, and what the groups that give some are now asked and planned to give, by their index. */
export interface FoundSpares {
  readonly spares: Spares;
  /** Whether the search was asked to end early; then there are none. */
  readonly cancelled: boolean;
  readonly groups: ReadonlyMap<number, { readonly task: GroupTask; readonly packing: Packing }>;
}

/** The spares that are wished for. */
export function wishedSpares(cards: readonly Card[]): Spares {
  return new Map(
    cards.flatMap(({ number, copiesFor: { spares = 0 } }): [number, number][] =>
      spares === 0 ? [] : [[number, spares]],
    ),
  );
}

function noSpares(cancelled: boolean): FoundSpares {
  return { spares: new Map(), cancelled, groups: new Map() };
}

/** Attempts take less effort than the plan itself, but for the first, which asks for all. */
const ATTEMPT_EFFORT: Readonly<Record<Effort, Effort>> = {
  quick: "quick",
  standard: "quick",
  thorough: "standard",
};

/**
 * Finds as many of the wished spares as the search can, and plans them together with the copies. Where it is asked to end
 * early it gives none, so that the plan of the copies stands.
 */
export function* findSpares(
  groups: readonly CompleteGroup[],
  wished: Spares,
  papers: readonly Paper[],
  workshop: StripWorkshop,
  effort: Effort,
  search: (group: number) => GroupSearch,
): Search<FoundSpares> {
  let stopped = false;
  const known = new Map<string, { readonly found: DividedPacking; readonly effort: Effort }>();
  const packOf = function* (
    group: number,
    spares: Spares,
    division: Division,
    by: Effort,
  ): Search<{ readonly found: DividedPacking; readonly effort: Effort }> {
    const own = groups[group]!;
    const key = JSON.stringify([group, ownSpares(own, spares), ...division]);
    const before = known.get(key);
    if (before !== undefined) return before;
    const one = search(group);
    const divided = divideTask(withSpares(own.task, own.pieces, spares), own.pieces, division, workshop);
    const found = yield* packDivided(divided, division, one, "spares", by);
    stopped ||= one.isStopped();
    const packed = { found, effort: by };
    known.set(key, packed);
    return packed;
  };

  const attempt = function* (spares: Spares, by: Effort): Search<boolean> {
    for (const [group, { pieces, divisions }] of groups.entries()) {
      if (!hasSpares(pieces, spares)) continue;
      let isComplete = false;
      for (const division of divisions) {
        if (stopped) return false;
        if (isComplete) break;
        const { found } = yield* packOf(group, spares, division, by);
        isComplete = found.packing.outcome === "complete";
      }
      if (!isComplete) return false;
    }
    return !stopped;
  };

  const spares = yield* mostSpares(wished, attempt, effort);
  if (stopped || spares.size === 0) return noSpares(stopped);

  const planned = new Map<number, { readonly task: GroupTask; readonly packing: Packing }>();
  for (const [group, { task, pieces, divisions }] of groups.entries()) {
    if (!hasSpares(pieces, spares)) continue;
    const sheets = sheetDesigns(task);
    let best: { readonly found: DividedPacking; readonly effort: Effort } | null = null;
    // Single blanks stand unless strips are better.
    for (const division of [...divisions].sort((a, b) => a.size - b.size)) {
      const packed = yield* packOf(group, spares, division, ATTEMPT_EFFORT[effort]);
      const { packing } = packed.found;
      if (packing.outcome !== "complete") continue;
      if (best === null || isBetter(sheets, packing, best.found.packing)) best = packed;
    }
    const { found, effort: by } = best!;
    const one = search(group);
    const { problem } = found.task;
    const again =
      by === effort
        ? found.packing
        : (yield* packDivided(found, found.division, one, "spares", effort)).packing;
    // A longer search may still fall short of a shorter one.
    const isNoWorse = again.outcome === "complete" && BigInt(again.cost) <= BigInt(found.packing.cost);
    const layouts = isNoWorse ? again.layouts : found.packing.layouts;
    const searches = again === found.packing ? [again] : [again, found.packing];
    const free = restate(problem, layouts, again.bound, searches);
    const packing = yield* alongGrain(found.task, free, found.cuts, papers, one);
    if (stopped || one.isStopped()) return noSpares(true);
    planned.set(group, { task: found.task, packing });
  }
  return { spares, cancelled: false, groups: planned };
}

/** The most spares for which the attempt succeeds: all, or as many of each card, then more of single ones. */
export function* mostSpares(
  wished: Spares,
  attempt: (spares: Spares, by: Effort) => Search<boolean>,
  effort: Effort,
): Search<Spares> {
  if (yield* attempt(wished, effort)) return wished;
  const by = ATTEMPT_EFFORT[effort];
  const most = Math.max(...wished.values());
  const each = (level: number): Spares =>
    withoutZeros(new Map([...wished].map(([card, wish]) => [card, Math.min(wish, level)])));
  const level = yield* largest(0, most - 1, (count) => attempt(each(count), by));
  let spares = each(level);
  if (wished.size === 1) return spares;
  for (const [card, wish] of wished) {
    const now = spares.get(card) ?? 0;
    const others = spares;
    const more = (count: number): Spares => withoutZeros(new Map([...others, [card, count]]));
    spares = more(yield* largest(now, wish, (count) => attempt(more(count), by)));
  }
  return spares;
}

/** The largest number up to `high` that holds, when all from `low`, which is known to, to it do. */
function* largest(low: number, high: number, holds: (count: number) => Search<boolean>): Search<number> {
  let most = low;
  for (let limit = high; most < limit; ) {
    const middle = Math.floor((most + limit + 1) / 2);
    if (yield* holds(middle)) most = middle;
    else limit = middle - 1;
  }
  return most;
}

function withoutZeros(spares: Spares): Spares {
  return new Map([...spares].filter(([, count]) => count > 0));
}

function hasSpares(pieces: readonly Piece[], spares: Spares): boolean {
  return pieces.some(({ card }) => spares.has(card));
}

/** The spares of a group's own cards: all that its problem hangs on. */
function ownSpares({ pieces }: CompleteGroup, spares: Spares): readonly (readonly [number, number])[] {
  const cards = new Set(pieces.map(({ card }) => card));
  return [...spares].filter(([card]) => cards.has(card)).sort(([a], [b]) => a - b);
}

/** The task of a group with the pieces of spare copies among those that must be there. */
export function withSpares(task: GroupTask, pieces: readonly Piece[], spares: Spares): GroupTask {
  const cards = new Map(pieces.map(({ id, card }) => [id, card]));
  const more = (id: string): number => spares.get(cards.get(id) ?? 0) ?? 0;
  const { problem } = task;
  return {
    ...task,
    problem: {
      ...problem,
      kinds: problem.kinds.map((kind) => ({ ...kind, quantity: (kind.quantity ?? 0) + more(kind.id) })),
    },
  };
}
