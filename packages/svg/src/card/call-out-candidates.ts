/** Where the leader of a call-out may end: points on the visible part of a layer that a level line reaches from a side. */

import type { Ticks } from "@sheetwright/measure";
import { edgeHeights, isVisible, overlap, type Surface, visibleAt } from "./visible-part.js";

/** The margin that a call-out stands in. */
export type Side = "left" | "right";

/** The end of a leader, and what speaks against it in ticks of detour. */
export interface Candidate {
  readonly x: Ticks;
  readonly y: Ticks;
  readonly cost: Ticks;
}

/** A picture whose layers are to be pointed at. */
export interface PointedAt {
  /** The front, then its layers in painting order. */
  readonly surfaces: readonly Surface[];
  /** Parts of the front that no leader may cross. */
  readonly words: readonly Surface[];
  /** Heights that no leader from that side may pass at, because something stands beside the front there. */
  readonly taken: Readonly<Record<Side, { readonly from: Ticks; readonly to: Ticks } | null>>;
  /** A millimetre of the drawing in ticks of the front. */
  readonly millimetre: Ticks;
}

/** Heights a leader is tried at: every half millimetre, and some between any two edges. */
const STEP = 0.5;
const BETWEEN_EDGES = 8;
/** Half the square that the dot at the end of a leader takes, with a little air. */
const DOT = 0.8;
/** A dot is better set with so much of its layer over and under it. */
const AIRY = [1.5, 3, 5] as const;
/** How far inside the layer a leader ends. */
const INSIDE = 2;
/** Distance kept between a leader and words. */
const AIR = 0.5;

/** All ends for the leaders to one surface from one side, from top to bottom; empty where it cannot be seen from there. */
export function candidatesFor(
  pointedAt: PointedAt,
  index: number,
  side: Side,
  heights: readonly Ticks[] = leaderHeights(pointedAt),
): readonly Candidate[] {
  const { surfaces, words, taken: takenAt, millimetre } = pointedAt;
  const [front] = surfaces;
  if (front === undefined) return [];
  const dot = Math.round(DOT * millimetre);
  const found: Candidate[] = [];
  for (const y of heights) {
    const stretches = visibleAt(surfaces, index, y);
    const outwards = side === "right" ? [...stretches].reverse() : stretches;
    // The first that is wide enough for a dot is pointed at; where none is, the widest.
    const wide = outwards.find(({ from, to }) => to - from >= 2 * dot);
    const stretch = wide ?? [...outwards].sort((a, b) => b.to - b.from - (a.to - a.from))[0];
    if (stretch === undefined) continue;
    const inside = Math.min(Math.round(INSIDE * millimetre), Math.floor((stretch.to - stretch.from) / 2));
    const x = side === "right" ? stretch.to - inside : stretch.from + inside;
    const path = pathOf(front, x, y, side, millimetre);
    if (words.some((word) => overlap(word, path))) continue;
    const taken = takenAt[side];
    if (taken !== null && y > taken.from - millimetre && y < taken.to + millimetre) continue;

    const roomAround = (up: Ticks) =>
      isVisible(surfaces, index, { x: x - dot, y: y - up, width: 2 * dot, height: 2 * up });
    const crowded =
      (roomAround(dot) ? 0 : 6 * millimetre) +
      AIRY.filter((up) => !roomAround(Math.round(up * millimetre))).length * millimetre;
    const along = runsAlongEdge(surfaces, path, y, millimetre) ? 2 * millimetre : 0;
    const length = side === "right" ? front.width - x : x;
    found.push({ x, y, cost: Math.round(crowded + along + length / 12) });
  }
  return found;
}

/** The room that the part of a leader over the front takes. */
function pathOf(front: Surface, x: Ticks, y: Ticks, side: Side, millimetre: Ticks): Surface {
  const air = Math.round(AIR * millimetre);
  const from = side === "right" ? x - air : 0;
  const to = side === "right" ? front.width : x + air;
  return { x: from, y: y - air, width: to - from, height: 2 * air };
}

/** Whether a leader would be taken for the edge of a layer. */
function runsAlongEdge(surfaces: readonly Surface[], path: Surface, y: Ticks, millimetre: Ticks): boolean {
  return surfaces.some((surface) => {
    if (surface.x >= path.x + path.width || path.x >= surface.x + surface.width) return false;
    const above = Math.abs(surface.y - y);
    const below = Math.abs(surface.y + surface.height - y);
    return Math.min(above, below) < 0.6 * millimetre;
  });
}

/** The heights that leaders are tried at, in order, each once. */
export function leaderHeights({ surfaces, millimetre }: PointedAt): readonly Ticks[] {
  const [front] = surfaces;
  const heights = new Set<Ticks>();
  const step = Math.max(1, Math.round(STEP * millimetre));
  for (let y = step; y < (front?.height ?? 0); y += step) heights.add(y);
  const edges = edgeHeights(surfaces);
  edges.forEach((edge, i) => {
    const next = edges[i + 1];
    if (next === undefined || next - edge > BETWEEN_EDGES * step) return;
    for (let part = 1; part < BETWEEN_EDGES; part += 1) {
      heights.add(Math.round(edge + ((next - edge) * part) / BETWEEN_EDGES));
    }
  });
  return [...heights].sort((a, b) => a - b);
}
