import type { Shape } from "./find-shapes.js";
import { leastShares, levelGraph, wholeShare } from "./level-graph.js";
import type { Order, Setup, Step } from "./order.js";

interface State {
  /** One character a shape: the number of what is left of it. */
  readonly rests: string;
  readonly distance: number | undefined;
  readonly axis: "x" | "y" | undefined;
  readonly settings: number;
  readonly quarterTurns: number;
  readonly before: State | undefined;
  readonly step: Step | undefined;
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
 * method of Hart, Nilsson & Raphael (1968) with the bound of {@link leastShares} and one bucket for each cost. Complete
 * unless it meets more than `mostStates` states. For small layouts: at most 65,536 rests a level.
 */
export function exactOrder(
  shapes: readonly Shape[],
  setup: Setup,
  toBeat: Order,
  mostStates: number,
): ExactResult {
  const graphs = shapes.map(levelGraph);
  const shares = leastShares(graphs);
  const turnsUpTo = shapes.reduce((sum, { sizes }) => sum + sizes.length, 2);
  const costOf = (settings: number, quarterTurns: number): number => settings * turnsUpTo + quarterTurns;
  const limit = costOf(toBeat.settings, toBeat.quarterTurns);
  const buckets: State[][] = [];
  const known = new Map<string, number>();
  const keyOf = ({ rests, distance, axis }: State): string => `${rests}${axis}${distance}`;
  const meet = (state: State): void => {
    const cost = costOf(state.settings, state.quarterTurns);
    let share = 0;
    for (let i = 0; i < shapes.length; i++) share += shares[i]!(state.rests.charCodeAt(i), state.distance);
    const bound = cost + costOf(Math.ceil(share / wholeShare), 0);
    if (bound >= limit) return;
    const key = keyOf(state);
    const best = known.get(key);
    if (best !== undefined && best <= cost) return;
    known.set(key, cost);
    while (buckets.length <= bound) buckets.push([]);
    buckets[bound]!.push(state);
  };
  const goOn = (state: State): boolean => {
    const { rests, settings, quarterTurns } = state;
    let open = false;
    for (const [i, { axis, parents }] of shapes.entries()) {
      const rest = rests.charCodeAt(i);
      if (graphs[i]!.isDone[rest]!) continue;
      open = true;
      const isThere = parents.every((at) =>
        graphs[at.shape]!.isPartFree(rests.charCodeAt(at.shape), at.part),
      );
      if (!isThere) continue;
      // The bucket gives back the last state first, so the larger distances come last.
      for (const { cut, to } of graphs[i]!.ways[rest]!) {
        meet({
          rests: rests.slice(0, i) + String.fromCharCode(to) + rests.slice(i + 1),
          distance: cut.distance,
          axis,
          settings: settings + (cut.distance === state.distance ? 0 : 1),
          quarterTurns: quarterTurns + (state.axis === undefined || axis === state.axis ? 0 : 1),
          before: state,
          step: { shape: i, cut },
        });
      }
    }
    return open;
  };
  meet({
    rests: "\0".repeat(shapes.length),
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
      const { settings, quarterTurns } = state;
      if (known.get(keyOf(state))! < costOf(settings, quarterTurns)) continue;
      if (!goOn(state)) return { order: { steps: stepsTo(state), settings, quarterTurns }, proven: true };
    }
  }
  return { proven: true };
}
