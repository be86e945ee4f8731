import { arcOf } from "../outline/arc.js";
import { type Edge, type Outline, type Ring, ringsOf, spansOf } from "../outline/outline.js";
import { distance, type Point, rounded } from "../outline/point.js";
import { angleOf, TURN } from "../outline/sines.js";
import type { CutLine } from "./cut.js";

/**
 * Where the arcs of outlines cross a line, rounded to whole ticks.
 *
 * @internal
 */
export function arcCrossings(outlines: readonly Outline[], { through, along }: CutLine): readonly Point[] {
  const length = Math.sqrt(along.x * along.x + along.y * along.y);
  const x = along.x / length;
  const y = along.y / length;
  const found: Point[] = [];
  for (const span of outlines.flatMap(ringsOf).flatMap(spansOf)) {
    const arc = arcOf(span);
    if (arc === null) continue;
    const { centre, radius, turn } = arc;
    const off = x * (centre.y - through.y) - y * (centre.x - through.x);
    const square = (radius - off) * (radius + off);
    if (square < 0) continue;
    for (const reach of [-Math.sqrt(square), Math.sqrt(square)]) {
      // From the centre to the crossing.
      const toX = y * off + x * reach;
      const toY = -x * off + y * reach;
      const fromX = span.from.x - centre.x;
      const fromY = span.from.y - centre.y;
      const on = angleOf(fromX * toX + fromY * toY, (fromX * toY - fromY * toX) * Math.sign(turn));
      if ((on < -1e-6 ? on + TURN : on) <= Math.abs(turn) + 1e-6) {
        found.push(rounded(centre.x + toX, centre.y + toY));
      }
    }
  }
  return found;
}

/** How far the end of a flat edge may lie from where its arc crosses the cut, since arcs are cut as chords: 0.02 mm. */
const NEAR = 32;

/**
 * Moves the ends of the arcs that a cut made to where the arcs cross it exactly. Ends that are not near to a crossing, or
 * of arcs as short as that, stay.
 *
 * @internal
 */
export function endedAt(
  outline: Outline,
  crossings: readonly Point[],
  isOn: (point: Point) => boolean,
): Outline {
  const { outer, windows } = outline;
  return {
    outer: endedRing(outer, crossings, isOn),
    windows: windows.map((ring) => endedRing(ring, crossings, isOn)),
  };
}

function endedRing(ring: Ring, crossings: readonly Point[], isOn: (point: Point) => boolean): Ring {
  return ring.map((edge, index): Edge => {
    const next = ring[(index + 1) % ring.length] as Edge;
    const isArc = "through" in edge;
    const isCutEnd = isOn(edge.to) && isArc !== "through" in next;
    const arc = isArc ? edge : next;
    if (!isCutEnd || !("through" in arc) || distance(arc.through, edge.to) < 2 * NEAR) return edge;
    let to = edge.to;
    let least = NEAR;
    for (const crossing of crossings) {
      const away = distance(crossing, edge.to);
      if (away < least) {
        to = crossing;
        least = away;
      }
    }
    return { ...edge, to };
  });
}
