import { afterCut, type PossibleCut, wholeLevel } from "./find-cuts.js";
import type { Shape } from "./find-shapes.js";
import type { Rest } from "./hold-rule.js";
import type { Step } from "./order.js";

/** The same cut with the other side held; `undefined` where the kerf takes what would be held. */
function otherSide(shape: Shape, rest: Rest, cut: PossibleCut): PossibleCut | undefined {
  if (cut.takes === "remainder") return undefined;
  const { starts, sizes, remainder } = shape;
  if (cut.holds === "rest") {
    return {
      takes: cut.takes,
      holds: "part",
      distance: sizes[cut.takes === "first" ? rest.first : rest.last]!,
    };
  }
  const after = afterCut(rest, cut);
  const width = starts[after.last]! + sizes[after.last]! - starts[after.first]!;
  return { takes: cut.takes, holds: "rest", distance: width + (after.untrimmed ? remainder : 0) };
}

/** Says whether what a cut holds is all pieces, in every member: its width is then worth measuring. */
function isExact(shape: Shape, rest: Rest, cut: PossibleCut): boolean {
  const taken = cut.takes === "first" ? rest.first : rest.last;
  const after = afterCut(rest, cut);
  const [from, to] = cut.holds === "part" ? [taken, taken] : [after.first, after.last];
  return shape.members.every(({ parts }) => {
    for (let i = from; i <= to; i++) {
      const { type } = parts[i]!.node;
      if (type === "offcut" || type === "waste") return false;
    }
    return true;
  });
}

/**
 * Where a setting serves a single cut, the same cut can be made with either side held. The side without a leftover is,
 * so that pieces get the width the fence is set to and what the paper is larger or smaller than it should be goes to
 * the leftover; else the wider side. Never holds a side that is too narrow instead of one that is not.
 */
export function chooseSides(
  shapes: readonly Shape[],
  steps: readonly Step[],
  distanceBefore: number | undefined,
): readonly Step[] {
  const rests = shapes.map(wholeLevel);
  const chosen: Step[] = [];
  for (const [i, step] of steps.entries()) {
    const shape = shapes[step.shape]!;
    const rest = rests[step.shape]!;
    rests[step.shape] = afterCut(rest, step.cut);
    const { distance } = step.cut;
    const before = chosen.at(-1)?.cut.distance ?? distanceBefore;
    const other = otherSide(shape, rest, step.cut);
    const shared = distance === before || distance === steps[i + 1]?.cut.distance;
    if (other === undefined || shared) {
      chosen.push(step);
      continue;
    }
    const narrow = (cut: PossibleCut): boolean => cut.distance < shape.hold.narrowest;
    const better =
      Number(narrow(step.cut)) - Number(narrow(other)) ||
      Number(isExact(shape, rest, other)) - Number(isExact(shape, rest, step.cut)) ||
      other.distance - distance;
    chosen.push(better > 0 ? { shape: step.shape, cut: other } : step);
  }
  return chosen;
}
