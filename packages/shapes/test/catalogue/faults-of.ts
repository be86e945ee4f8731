import { clip } from "../../src/clip/clip.js";
import { boxOf, flatten, type Outline, type Point, ringsOf, spansOf } from "../../src/index.js";
import { signedAreaOf } from "../../src/measure/area.js";
import { arcOf } from "../../src/outline/arc.js";
import { findCrossing } from "../../src/outline/find-crossing.js";

/** What is found wrong with the lines of an outline. */
export function faultsOf(outline: Outline): readonly string[] {
  const faults: string[] = [];
  const rings = ringsOf(outline);
  const points = rings.flatMap((ring) =>
    ring.flatMap((edge) => ("through" in edge ? [edge.through, edge.to] : [edge.to])),
  );
  const spans = rings.flatMap(spansOf);
  if (!points.every(({ x, y }) => Number.isSafeInteger(x) && Number.isSafeInteger(y)))
    faults.push("off the grid");
  if (points.some(({ x, y }) => Object.is(x, -0) || Object.is(y, -0))) faults.push("minus nought");
  if (spans.some(({ from, to }) => from.x === to.x && from.y === to.y)) faults.push("an edge of no length");
  if (spans.some((span) => Math.abs(arcOf(span)?.turn ?? 0) > 1.05 * Math.PI))
    faults.push("an arc of more than half a circle");
  if (!(signedAreaOf(outline.outer) > 0)) faults.push("outer line the wrong way round");
  if (!outline.windows.every((window) => signedAreaOf(window) < 0)) faults.push("window the wrong way round");
  // Finer where it is small.
  const tolerance = Math.max(5, boxOf(outline).width / 20_000);
  const { outer, windows } = flatten(outline, { tolerance });
  const polygons = [outer, ...windows];
  if (findCrossing(polygons) !== null) faults.push("crosses itself");
  const united = clip("union", polygons).flatMap((part) => [part.outer, ...part.windows]);
  const [own, once] = [twiceAreaOf(polygons), twiceAreaOf(united)];
  if (own !== once) faults.push(`area ${own} by its lines, ${once} by union`);
  return faults;
}

/** Exact for whole ticks up to some metres. */
function twiceAreaOf(polygons: readonly (readonly Point[])[]): number {
  return polygons.reduce((all, polygon) => {
    const origin = polygon[0] as Point;
    return polygon.reduce((sum, { x, y }, index) => {
      const next = polygon[(index + 1) % polygon.length] as Point;
      return sum + (x - origin.x) * (next.y - origin.y) - (y - origin.y) * (next.x - origin.x);
    }, all);
  }, 0);
}
