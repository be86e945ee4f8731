import { afterCut, findCuts, isCut, isFree, type PossibleCut, wholeLevel } from "./find-cuts.js";
import type { Shape } from "./find-shapes.js";
import type { Rest } from "./hold-rule.js";

/** A way from one rest of a level to another. */
interface Way {
  readonly cut: PossibleCut;
  readonly to: number;
}

/** Everything that can be left of a level on the way to its end, as numbers: 0 is the whole level. */
export interface LevelGraph {
  readonly rests: readonly Rest[];
  /** For each rest, the cuts that can be made next; smaller distances first. */
  readonly ways: readonly (readonly Way[])[];
  readonly isDone: readonly boolean[];
  readonly distances: ReadonlySet<number>;
  isPartFree(rest: number, part: number): boolean;
}

/** Lists what can be left of a level; the number of rests grows with the square of its parts. */
export function levelGraph(shape: Shape): LevelGraph {
  const rests: Rest[] = [wholeLevel(shape)];
  const ways: Way[][] = [];
  const distances = new Set<number>();
  const numbers = new Map<string, number>();
  for (let i = 0; i < rests.length; i++) {
    const rest = rests[i]!;
    const cuts = [...findCuts(shape, rest)].sort((a, b) => a.distance - b.distance);
    ways.push(
      cuts.map((cut) => {
        const after = afterCut(rest, cut);
        const key = `${after.first},${after.last},${after.untrimmed}`;
        let to = numbers.get(key);
        if (to === undefined) {
          to = rests.length;
          numbers.set(key, to);
          rests.push(after);
        }
        distances.add(cut.distance);
        return { cut, to };
      }),
    );
  }
  return {
    rests,
    ways,
    isDone: rests.map(isCut),
    distances,
    isPartFree: (rest, part) => isFree(rests[rest]!, part),
  };
}

/** What a setting costs, split among the levels that can use it; divisible by every number up to 16. */
export const wholeShare = 720_720;

/**
 * The least that what is left of a level has to pay for settings, by itself, when each setting's cost is split evenly
 * among all levels that could ever use it and the fence stands at `distance` to begin with. No order pays less in all,
 * so the sum over the levels, rounded up to whole settings, is a lower bound.
 */
export type LeastShare = (rest: number, distance: number | undefined) => number;

/** The least shares of the levels of a layout. */
export function leastShares(graphs: readonly LevelGraph[]): readonly LeastShare[] {
  const users = new Map<number, number>();
  for (const { distances } of graphs) {
    for (const distance of distances) users.set(distance, (users.get(distance) ?? 0) + 1);
  }
  return graphs.map(({ ways, isDone, distances }) => {
    const known = ways.map(() => new Map<number | undefined, number>());
    const leastShare: LeastShare = (rest, distance) => {
      if (isDone[rest]!) return 0;
      const at = distance !== undefined && distances.has(distance) ? distance : undefined;
      const before = known[rest]!.get(at);
      if (before !== undefined) return before;
      let least = Number.POSITIVE_INFINITY;
      for (const { cut, to } of ways[rest]!) {
        const share = cut.distance === at ? 0 : Math.floor(wholeShare / users.get(cut.distance)!);
        least = Math.min(least, share + leastShare(to, cut.distance));
      }
      known[rest]!.set(at, least);
      return least;
    };
    return leastShare;
  });
}
