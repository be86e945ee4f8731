import type { Polygon } from "../flatten/flatten.js";
import { cross, isSame, type Point } from "../outline/point.js";

/**
 * A closed line without the stretches along which it runs out and straight back again. They cover nothing, and the engine that
 * combines polygons loses whole parts over them where they lie level (seen with clipper2-ts 2.0.1-18).
 *
 * @internal
 */
export function withoutSpikes(polygon: Polygon): Polygon {
  const kept: Point[] = [];
  for (const point of polygon) {
    kept.push(point);
    cutBack(kept);
  }
  // Where the line starts may lie on a spike as well.
  let first = 0;
  while (kept.length - first > 2) {
    const last = kept[kept.length - 1] as Point;
    const start = kept[first] as Point;
    if (isSame(last, start) || runsBack(kept[kept.length - 2] as Point, last, start)) kept.pop();
    else if (runsBack(last, start, kept[first + 1] as Point)) first += 1;
    else break;
  }
  return kept.slice(first);
}

/** Takes off the end of a line what runs back on itself. */
function cutBack(line: Point[]): void {
  while (line.length > 1) {
    const c = line[line.length - 1] as Point;
    const b = line[line.length - 2] as Point;
    const a = line[line.length - 3];
    if (isSame(b, c)) line.pop();
    else if (a !== undefined && runsBack(a, b, c)) line.splice(line.length - 2, 1);
    else return;
  }
}

function runsBack(a: Point, b: Point, c: Point): boolean {
  return cross(a, b, c) === 0 && (b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y) < 0;
}
