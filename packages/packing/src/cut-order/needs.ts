import { afterCut, findCuts, isCut, type PossibleCut } from "./find-cuts.js";
import type { Shape } from "./find-shapes.js";
import type { Rest } from "./hold-rule.js";

/**
 * The settings that what is left of a level needs, seen by itself: one for each size, and one for each part too narrow
 * to be held, which comes off while the rest is held. One size that stands alone needs none, since the last part of a
 * level is free once the others are off.
 */
export interface Needs {
  /** Parts of each size. */
  readonly counts: ReadonlyMap<number, number>;
  /** The size that is left to the end, if one can be. */
  readonly spared: number | undefined;
  /** Worth of the size that could be left to the end instead; 0 where there is none. */
  readonly nextWorth: number;
}

/** What a setting for this size is worth to one of the levels that need it: the fewer they are, the more. */
export type WorthOf = (size: number) => number;

/** Worth of a setting that serves one level only; divisible by every number up to 16, so that shares stay whole. */
export const wholeWorth = 720_720;

function isNarrow({ hold }: Shape, size: number): boolean {
  return hold.least === 1 && size < hold.narrowest;
}

/** What is left of a level, with the size spared that is worth most. */
export function needsOf(shape: Shape, rest: Rest, worthOf: WorthOf): Needs {
  const counts = new Map<number, number>();
  const { runs, sizes } = shape;
  if (isCut(rest)) return { counts, spared: undefined, nextWorth: 0 };
  for (let run = runs.of[rest.first]!; run <= runs.of[rest.last]!; run++) {
    const count = Math.min(runs.last[run]!, rest.last) - Math.max(runs.first[run]!, rest.first) + 1;
    const size = sizes[runs.first[run]!]!;
    counts.set(size, (counts.get(size) ?? 0) + count);
  }
  let spared: number | undefined;
  let worth = 0;
  let nextWorth = 0;
  // While a remainder has to come off, even the last part needs a setting.
  if (!rest.untrimmed) {
    for (const [size, count] of counts) {
      const narrow = isNarrow(shape, size);
      if (count > 1 && !narrow) continue;
      const its = narrow ? wholeWorth : worthOf(size);
      if (its > worth) {
        nextWorth = worth;
        spared = size;
        worth = its;
      } else if (its > nextWorth) nextWorth = its;
    }
  }
  return { counts, spared, nextWorth };
}

/** The same kind of cut, repeated as often as one setting allows. */
export interface Offer {
  readonly distance: number;
  readonly cuts: readonly PossibleCut[];
  readonly after: Rest;
}

function repeatCut(shape: Shape, rest: Rest, cut: PossibleCut): Offer {
  const cuts: PossibleCut[] = [];
  let after = rest;
  for (let next: PossibleCut | undefined = cut; next !== undefined; ) {
    cuts.push(next);
    after = afterCut(after, next);
    next = undefined;
    if (cut.holds === "part" && !isCut(after)) {
      // The remainder comes off with the last part of a run, at the run's own setting.
      next = findCuts(shape, after).find(
        ({ takes, holds, distance }) =>
          distance === cut.distance && (holds === "part" || takes === "remainder"),
      );
    }
  }
  return { distance: cut.distance, cuts, after };
}

/** What can be done next to a level, one offer a cut. */
export function findOffers(shape: Shape, rest: Rest): readonly Offer[] {
  return findCuts(shape, rest).map((cut) => repeatCut(shape, rest, cut));
}

/** The worth of the settings that a level needs no more after an offer. */
export function gainOf(shape: Shape, rest: Rest, needs: Needs, offer: Offer, worthOf: WorthOf): number {
  let gain = 0;
  const countGone = (size: number, gone: number): void => {
    const left = needs.counts.get(size)! - gone;
    const isSpared = size === needs.spared;
    if (isNarrow(shape, size)) gain += wholeWorth * (isSpared && left === 0 ? gone - 1 : gone);
    else if (left === 0 && !isSpared) gain += worthOf(size);
    // Another size can be left to the end instead.
    if (isSpared && left === 0 && !isCut(offer.after)) gain += needs.nextWorth;
  };
  if (isCut(offer.after)) {
    for (const [size, count] of needs.counts) countGone(size, count);
    return gain;
  }
  const gone = new Map<number, number>();
  for (let i = rest.first; i < offer.after.first; i++) {
    gone.set(shape.sizes[i]!, (gone.get(shape.sizes[i]!) ?? 0) + 1);
  }
  for (let i = rest.last; i > offer.after.last; i--) {
    gone.set(shape.sizes[i]!, (gone.get(shape.sizes[i]!) ?? 0) + 1);
  }
  for (const [size, count] of gone) countGone(size, count);
  if (rest.untrimmed && !offer.after.untrimmed) {
    const { spared } = needsOf(shape, offer.after, worthOf);
    if (spared !== undefined) gain += isNarrow(shape, spared) ? wholeWorth : worthOf(spared);
  }
  return gain;
}
