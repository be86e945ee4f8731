import type { Ticks } from "@sheetwright/measure";
import { intersection, union } from "../clip/combine.js";
import { type Box, boxOf } from "../measure/box.js";
import { distanceFrom, leastDistance } from "../measure/least-distance.js";
import { offset } from "../offset/offset.js";
import type { Outline } from "../outline/outline.js";
import { distance, type Point, rounded } from "../outline/point.js";

/**
 * Joins parts that lie nearer to each other than `reach` by necks where they are nearest, the nearest parts first, and
 * none for parts that hang together already (Kruskal 1956). No two parts that are left lie nearer than the reach.
 *
 * A neck is what a line drawn between the two parts would be with its border: `width` to both sides, round at its ends,
 * and these lie as deep inside the parts as it is wide.
 *
 * @internal
 */
export function joinNear(parts: readonly Outline[], reach: Ticks, width: Ticks): readonly Outline[] {
  if (reach === 0 || parts.length < 2) return parts;
  const groups = parts.map((_, index) => index);
  const necks: Outline[] = [];
  for (const { one, other, gap } of nearPairs(parts, reach)) {
    const from = groups[one];
    const to = groups[other];
    if (from === to) continue;
    for (const [index, group] of groups.entries()) if (group === from) groups[index] = to as number;
    necks.push(neckBetween(parts[one] as Outline, parts[other] as Outline, gap, width));
  }
  return necks.length === 0 ? parts : union([...parts, ...necks]);
}

interface Pair {
  readonly one: number;
  readonly other: number;
  readonly gap: number;
}

/** Nearest first. */
function nearPairs(parts: readonly Outline[], reach: Ticks): readonly Pair[] {
  const boxes = parts.map(boxOf);
  const pairs: Pair[] = [];
  for (const [other, right] of parts.entries()) {
    for (let one = 0; one < other; one += 1) {
      if (areApart(boxes[one] as Box, boxes[other] as Box, reach)) continue;
      const gap = leastDistance(parts[one] as Outline, right).distance;
      if (gap < reach) pairs.push({ one, other, gap });
    }
  }
  return pairs.sort((a, b) => a.gap - b.gap || a.other - b.other || a.one - b.one);
}

function areApart(a: Box, b: Box, reach: Ticks): boolean {
  const across = Math.max(a.x, b.x) - Math.min(a.x + a.width, b.x + b.width);
  const down = Math.max(a.y, b.y) - Math.min(a.y + a.height, b.y + b.height);
  return Math.max(across, down) > reach;
}

/** What belongs to the nearest place, though it is a little farther apart: 0.01 mm. */
const AS_NEAR = 16;

function neckBetween(a: Outline, b: Outline, gap: number, width: Ticks): Outline {
  // Where both are as near, as between two stems, the neck lies in the middle of it.
  const half = Math.ceil(gap / 2) + AS_NEAR;
  const [near] = intersection(offset([a], half).outlines, offset([b], half).outlines);
  const place = leastDistance(a, b);
  const middle = near === undefined ? place.from : middleOf(boxOf(near));
  const from = near === undefined ? place.from : distanceFrom(a, middle).to;
  const to = near === undefined ? place.to : distanceFrom(b, middle).to;
  return capsule(from, to, width);
}

function middleOf({ x, y, width, height }: Box): Point {
  return { x: x + width / 2, y: y + height / 2 };
}

/** Everything nearer than `width` to the line between two points that is longer by `width` at both ends. */
function capsule(from: Point, to: Point, width: Ticks): Outline {
  const length = distance(from, to);
  // Parts that touch at a point have no direction between them: any will do.
  const x = length === 0 ? width : ((to.x - from.x) * width) / length;
  const y = length === 0 ? 0 : ((to.y - from.y) * width) / length;
  const at = (point: Point, along: number, across: number) =>
    rounded(point.x + along * x - across * y, point.y + along * y + across * x);
  return {
    outer: [
      { to: at(to, 1, -1) },
      { to: at(to, 1, 1), through: at(to, 2, 0) },
      { to: at(from, -1, 1) },
      { to: at(from, -1, -1), through: at(from, -2, 0) },
    ],
    windows: [],
  };
}
