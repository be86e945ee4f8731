import { afterCut, findCuts, isCut, isFree, wholeLevel } from "./find-cuts.js";
import type { Shape } from "./find-shapes.js";
import type { Rest } from "./hold-rule.js";
import type { Order, Setup, Step } from "./order.js";

/** What a setting costs, split among the shapes that can use it; divisible by every number up to 16. */
const wholeShare = 720_720;

/**
 * The least that what is left of a level has to pay for settings, by itself, when each setting's cost is split evenly
 * among all shapes that could ever use it and the fence stands at `distance` to begin with. No order pays less in all,
 * so the sum over the levels, rounded up to whole settings, is a lower bound.
 */
type LeastShare = (rest: Rest, distance: number | undefined) => number;

function distancesOf(shape: Shape): ReadonlySet<number> {
  const distances = new Set<number>();
  const met = new Set<string>();
  const ahead = [wholeLevel(shape)];
  for (let rest = ahead.pop(); rest !== undefined; rest = ahead.pop()) {
    const key = `${rest.first},${rest.last},${rest.untrimmed}`;
    if (met.has(key)) continue;
    met.add(key);
    for (const cut of findCuts(shape, rest)) {
      distances.add(cut.distance);
      ahead.push(afterCut(rest, cut));
    }
  }
  return distances;
}

function leastShares(shapes: readonly Shape[]): LeastShare[] {
  const users = new Map<number, number>();
  for (const shape of shapes) {
    for (const distance of distancesOf(shape)) users.set(distance, (users.get(distance) ?? 0) + 1);
  }
  return shapes.map((shape) => {
    const known = new Map<string, number>();
    const leastShare: LeastShare = (rest, distance) => {
      if (isCut(rest)) return 0;
      const key = `${distance},${rest.first},${rest.last},${rest.untrimmed}`;
      const before = known.get(key);
      if (before !== undefined) return before;
      let least = Number.POSITIVE_INFINITY;
      for (const cut of findCuts(shape, rest)) {
        const share = cut.distance === distance ? 0 : Math.floor(wholeShare / users.get(cut.distance)!);
        least = Math.min(least, share + leastShare(afterCut(rest, cut), cut.distance));
      }
      known.set(key, least);
      return least;
    };
    return leastShare;
  });
}

interface State {
  readonly rests: readonly Rest[];
  readonly distance: number | undefined;
  readonly axis: "x" | "y" | undefined;
  readonly settings: number;
  readonly quarterTurns: number;
  readonly before: State | undefined;
  readonly step: Step | undefined;
}

function keyOf(state: State): string {
  let key = `${state.axis}${state.distance}`;
  for (const { first, last, untrimmed } of state.rests) key += `${untrimmed ? "," : ";"}${first},${last}`;
  return key;
}

function stepsTo(state: State): Step[] {
  const steps: Step[] = [];
  for (let at: State | undefined = state; at?.step !== undefined; at = at.before) steps.push(at.step);
  return steps.reverse();
}

/** What an exact search found out. */
export interface ExactResult {
  /** An order better than the one to beat; absent where there is none, or none was found. */
  readonly order?: Order;
  /** True where the search ended by itself: the order given, or else the one to beat, is the best there is. */
  readonly proven: boolean;
}

/**
 * Searches for the order with the fewest settings, and among these the fewest quarter turns, that is better than one
 * already known: a shortest path over the states 'what is left of each level, and how the trimmer is set', by the A*
 * method of Hart, Nilsson & Raphael (1968) with the bound of {@link LeastShare} and one bucket for each cost. Complete
 * unless it meets more than `mostStates` states.
 */
export function exactOrder(
  shapes: readonly Shape[],
  setup: Setup,
  toBeat: Order,
  mostStates: number,
): ExactResult {
  const turnsUpTo = shapes.reduce((sum, { sizes }) => sum + sizes.length, 2);
  const costOf = (settings: number, quarterTurns: number): number => settings * turnsUpTo + quarterTurns;
  const limit = costOf(toBeat.settings, toBeat.quarterTurns);
  const shares = leastShares(shapes);
  const buckets: State[][] = [];
  const known = new Map<string, number>();
  const meet = (state: State): void => {
    const cost = costOf(state.settings, state.quarterTurns);
    if (cost >= limit) return;
    const key = keyOf(state);
    const best = known.get(key);
    if (best !== undefined && best <= cost) return;
    known.set(key, cost);
    let share = 0;
    for (const [shape, rest] of state.rests.entries()) share += shares[shape]!(rest, state.distance);
    const bound = cost + costOf(Math.ceil(share / wholeShare), 0);
    if (bound >= limit) return;
    while (buckets.length <= bound) buckets.push([]);
    buckets[bound]!.push(state);
  };
  meet({
    rests: shapes.map(wholeLevel),
    distance: setup.distance,
    axis: setup.axis,
    settings: 0,
    quarterTurns: 0,
    before: undefined,
    step: undefined,
  });
  for (let bound = 0; bound < buckets.length; bound++) {
    const bucket = buckets[bound]!;
    for (let state = bucket.pop(); state !== undefined; state = bucket.pop()) {
      if (known.size > mostStates) return { proven: false };
      const { rests, settings, quarterTurns } = state;
      if (known.get(keyOf(state))! < costOf(settings, quarterTurns)) continue;
      if (rests.every(isCut))
        return { order: { steps: stepsTo(state), settings, quarterTurns }, proven: true };
      for (const [shape, rest] of rests.entries()) {
        const { axis, parents } = shapes[shape]!;
        if (isCut(rest) || !parents.every((parent) => isFree(rests[parent.shape]!, parent.part))) continue;
        // The bucket gives back the last one first, so the larger distances come last.
        const cuts = [...findCuts(shapes[shape]!, rest)].sort((a, b) => a.distance - b.distance);
        for (const cut of cuts) {
          meet({
            rests: rests.with(shape, afterCut(rest, cut)),
            distance: cut.distance,
            axis,
            settings: settings + (cut.distance === state.distance ? 0 : 1),
            quarterTurns: quarterTurns + (state.axis === undefined || axis === state.axis ? 0 : 1),
            before: state,
            step: { shape, cut },
          });
        }
      }
    }
  }
  return { proven: true };
}
