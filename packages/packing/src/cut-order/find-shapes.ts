import { findHoldRule, type HoldRule } from "./hold-rule.js";
import type { Level } from "./read-levels.js";

/**
 * Levels that are cut alike: the same sizes along the same axis, and the same below. All of them can wait for the last
 * one to be there and then be cut at its settings, which costs no setting more; so the search for a good order deals
 * with shapes, and its work does not grow with the number of equal strips.
 */
export interface Shape {
  readonly axis: "x" | "y";
  readonly members: readonly Level[];
  readonly sizes: readonly number[];
  /** Where each part starts, from the start of the level. */
  readonly starts: readonly number[];
  readonly remainder: number;
  /** The shape of what is cut from each part; -1 for a leaf. */
  readonly children: readonly number[];
  /** The places that must be cut free before all members are there. */
  readonly parents: readonly { readonly shape: number; readonly part: number }[];
  /** For each part, the last one of those after it that are as large and cut alike. */
  readonly alikeUpTo: readonly number[];
  readonly hold: HoldRule;
  readonly runs: Runs;
}

/** Neighbours of equal size, which repeat at one setting. */
interface Runs {
  /** The run of each part. */
  readonly of: readonly number[];
  readonly first: readonly number[];
  readonly last: readonly number[];
}

function findRuns(sizes: readonly number[]): Runs {
  const of: number[] = [];
  const first: number[] = [];
  const last: number[] = [];
  for (const [i, size] of sizes.entries()) {
    if (i === 0 || size !== sizes[i - 1]) first.push(i);
    of.push(first.length - 1);
    last[first.length - 1] = i;
  }
  return { of, first, last };
}

function alikeUpTo(sizes: readonly number[], children: readonly number[]): number[] {
  const ends: number[] = new Array(sizes.length);
  for (let i = sizes.length - 1; i >= 0; i--) {
    const alike = sizes[i] === sizes[i + 1] && children[i] === children[i + 1];
    ends[i] = alike ? ends[i + 1]! : i;
  }
  return ends;
}

/** Groups the levels of a layout by shape; the root's shape is the last one, children come before their parents. */
export function findShapes(levels: readonly Level[], kerf: number, narrowestHold: number): readonly Shape[] {
  const byKey = new Map<string, number>();
  const shapeOf: number[] = [];
  const members: Level[][] = [];
  const children: number[][] = [];
  // From the last level up, so that the shapes below are known.
  for (let i = levels.length - 1; i >= 0; i--) {
    const level = levels[i]!;
    const below = level.parts.map((part) => (part.level === undefined ? -1 : shapeOf[part.level.index]!));
    const sizes = level.parts.map((part) => (level.axis === "x" ? part.width : part.height));
    const key = `${level.axis}${level.remainder}:${sizes.join()}:${below.join()}`;
    let shape = byKey.get(key);
    if (shape === undefined) {
      shape = members.length;
      byKey.set(key, shape);
      members.push([]);
      children.push(below);
    }
    members[shape]!.push(level);
    shapeOf[i] = shape;
  }
  const parents = members.map((): { shape: number; part: number }[] => []);
  for (const [shape, below] of children.entries()) {
    for (const [part, child] of below.entries()) if (child >= 0) parents[child]!.push({ shape, part });
  }
  return members.map((group, i): Shape => {
    const level = group[0]!;
    const sizes = level.parts.map((part) => (level.axis === "x" ? part.width : part.height));
    const starts: number[] = [];
    let at = 0;
    for (const size of sizes) {
      starts.push(at);
      at += size + kerf;
    }
    return {
      axis: level.axis,
      members: group.reverse(),
      sizes,
      starts,
      remainder: level.remainder,
      children: children[i]!,
      parents: parents[i]!,
      alikeUpTo: alikeUpTo(sizes, children[i]!),
      hold: findHoldRule(sizes, starts, level.remainder, narrowestHold),
      runs: findRuns(sizes),
    };
  });
}
