import type { Shape } from "./find-shapes.js";
import { fewestNarrowHolds, type Rest } from "./hold-rule.js";

/** One cut that can be made on the rest of a level. */
export interface PossibleCut {
  /** `first` and `last` take that part off the rest; `remainder` takes off what vanishes. */
  readonly takes: "first" | "last" | "remainder";
  /** What lies between fence and blade: the part taken, or the rest. */
  readonly holds: "part" | "rest";
  /** Width of what is held. */
  readonly distance: number;
}

/** A level before its first cut. */
export function wholeLevel(shape: Shape): Rest {
  return { first: 0, last: shape.sizes.length - 1, untrimmed: shape.remainder > 0 };
}

/** Says whether a level needs no cut any more. */
export function isCut(rest: Rest): boolean {
  return rest.first === rest.last && !rest.untrimmed;
}

/** What is left after a cut. */
export function afterCut(rest: Rest, cut: PossibleCut): Rest {
  return {
    first: cut.takes === "first" ? rest.first + 1 : rest.first,
    last: cut.takes === "last" ? rest.last - 1 : rest.last,
    untrimmed: cut.takes === "remainder" ? false : rest.untrimmed,
  };
}

/** Says whether a part lies alone, or as the last one of its level, once no more than `rest` is left to cut. */
export function isFree(rest: Rest, part: number): boolean {
  return part < rest.first || part > rest.last || isCut(rest);
}

function width(shape: Shape, first: number, last: number): number {
  return shape.starts[last]! + shape.sizes[last]! - shape.starts[first]!;
}

function allCuts(shape: Shape, { first, last, untrimmed }: Rest): PossibleCut[] {
  const cuts: PossibleCut[] = [];
  if (first < last) {
    const over = untrimmed ? shape.remainder : 0;
    cuts.push({ takes: "first", holds: "part", distance: shape.sizes[first]! });
    // With two parts left, holding the rest is holding the other part.
    if (last - first > 1 || untrimmed) {
      cuts.push({ takes: "first", holds: "rest", distance: width(shape, first + 1, last) + over });
    }
    // Equal parts that are cut alike are the same from either end.
    const mirrored = shape.alikeUpTo[first]! >= last;
    if (!untrimmed && !mirrored) {
      cuts.push({ takes: "last", holds: "part", distance: shape.sizes[last]! });
      if (last - first > 1) {
        cuts.push({ takes: "last", holds: "rest", distance: width(shape, first, last - 1) });
      }
    }
  }
  if (untrimmed) cuts.push({ takes: "remainder", holds: "rest", distance: width(shape, first, last) });
  return cuts;
}

/**
 * The cuts that can be made next on what is left of a level, each taking an end part off with one of the two sides
 * held, without those that would lead to more narrow holds than the level must have.
 */
export function findCuts(shape: Shape, rest: Rest): readonly PossibleCut[] {
  const { hold } = shape;
  const fewest = fewestNarrowHolds(hold, rest);
  return allCuts(shape, rest).filter((cut) => {
    const narrow = cut.distance < hold.narrowest ? 1 : 0;
    return narrow + fewestNarrowHolds(hold, afterCut(rest, cut)) === fewest;
  });
}
