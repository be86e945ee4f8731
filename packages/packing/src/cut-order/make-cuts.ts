/**
 * Carries out an order of cuts on shapes: on every level of a shape, setting by setting. Within one setting the order
 * is free, so cuts that need no quarter turn come first, then those on larger parts.
 */

import type { Edge } from "../cutting.js";
import type { CutNode, Rectangle } from "../model.js";
import { afterCut, isCut, type PossibleCut, wholeLevel } from "./find-cuts.js";
import type { Shape } from "./find-shapes.js";
import type { Rest } from "./hold-rule.js";
import type { Step } from "./order.js";
import type { Level, LevelPart } from "./read-levels.js";
import type { Becomes, Trimmer } from "./trimmer.js";

/** What a node of a cut tree is called as a part on the trimmer. */
export function whatOf(node: CutNode): "part" | "piece" | "offcut" | "waste" {
  return node.type === "split" || node.type === "stopped" ? "part" : node.type;
}

function becomes({ x, y, width, height, node, path }: LevelPart): Becomes {
  return { x, y, width, height, what: whatOf(node), path };
}

/** A level on the trimmer: the number of the part that holds what is left of it. */
interface Work {
  readonly level: Level;
  readonly shape: Shape;
  part: number;
  rest: Rest;
}

function span(axis: "x" | "y", from: Rectangle, to: Rectangle, over: number): Rectangle {
  return axis === "x"
    ? { x: from.x, y: from.y, width: to.x + to.width + over - from.x, height: from.height }
    : { x: from.x, y: from.y, width: from.width, height: to.y + to.height + over - from.y };
}

/** What is left of a level as a part: the last of its parts by itself, or several with the cuts still between them. */
function restOf({ axis, parts, remainder }: Level, rest: Rest): Becomes {
  const first = parts[rest.first]!;
  if (isCut(rest)) return becomes(first);
  return { ...span(axis, first, parts[rest.last]!, rest.untrimmed ? remainder : 0), what: "part" };
}

function edgeHeld(axis: "x" | "y", cut: PossibleCut): Edge {
  const atStart = (cut.takes === "first") === (cut.holds === "part");
  if (axis === "x") return atStart ? "left" : "right";
  return atStart ? "top" : "bottom";
}

/** Cuts all levels; `start` is the part that the root's level is made on. */
export function makeCuts(
  trimmer: Trimmer,
  root: Level,
  start: number,
  shapes: readonly Shape[],
  steps: readonly Step[],
): void {
  const shapeOf = new Map<Level, Shape>();
  for (const shape of shapes) for (const level of shape.members) shapeOf.set(level, shape);
  const onTrimmer = new Map<Level, Work>();
  const lay = (level: Level, part: number): void => {
    const shape = shapeOf.get(level)!;
    onTrimmer.set(level, { level, shape, part, rest: wholeLevel(shape) });
  };
  lay(root, start);

  const makeCut = (work: Work, cut: PossibleCut): void => {
    const { level, rest } = work;
    const after = afterCut(rest, cut);
    const left = restOf(level, after);
    const taken = level.parts[cut.takes === "first" ? rest.first : rest.last]!;
    const off = cut.takes === "remainder" ? undefined : becomes(taken);
    const made = trimmer.cut({
      part: work.part,
      edge: edgeHeld(level.axis, cut),
      purpose: "cut",
      ...(off !== undefined && cut.holds === "part" ? { held: off, off: left } : { held: left, off }),
    });
    const [takenPart, leftPart] = cut.holds === "part" ? [made.held, made.off] : [made.off, made.held];
    work.rest = after;
    work.part = leftPart!;
    if (off !== undefined && taken.level !== undefined) lay(taken.level, takenPart!);
    const last = level.parts[after.first]!;
    if (isCut(after) && last.level !== undefined) lay(last.level, leftPart!);
  };

  const areaOf = ({ part }: Work): number => trimmer.parts[part]!.width * trimmer.parts[part]!.height;

  const makeSetting = (cutsOf: ReadonlyMap<Shape, readonly PossibleCut[]>, firstAxis: "x" | "y"): void => {
    let waiting: Level[] = [];
    for (const shape of cutsOf.keys()) waiting.push(...shape.members);
    for (let axis = trimmer.axis() ?? firstAxis; waiting.length > 0; ) {
      const ready = waiting
        .map((level) => onTrimmer.get(level))
        .filter((work): work is Work => work?.level.axis === axis)
        .sort((a, b) => areaOf(b) - areaOf(a) || a.level.index - b.level.index);
      if (ready.length === 0) axis = axis === "x" ? "y" : "x";
      for (const work of ready) for (const cut of cutsOf.get(work.shape)!) makeCut(work, cut);
      const done = new Set(ready.map(({ level }) => level));
      waiting = waiting.filter((level) => !done.has(level));
    }
  };

  for (let from = 0; from < steps.length; ) {
    const { distance } = steps[from]!.cut;
    const cutsOf = new Map<Shape, PossibleCut[]>();
    let to = from;
    for (; to < steps.length && steps[to]!.cut.distance === distance; to++) {
      const shape = shapes[steps[to]!.shape]!;
      const cuts = cutsOf.get(shape);
      if (cuts === undefined) cutsOf.set(shape, [steps[to]!.cut]);
      else cuts.push(steps[to]!.cut);
    }
    makeSetting(cutsOf, shapes[steps[from]!.shape]!.axis);
    from = to;
  }
}
