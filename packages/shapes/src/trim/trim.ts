/**
 * Cuts outlines by a straight line, as on a trimmer: a disc that is to stand on a strip loses its foot.
 *
 * Method: what lies on the kept side is the intersection with a rectangle that has the cut as one side and is larger than
 * the outline; then the ends of arcs are moved to where the arcs cross the cut. Level and upright flat edges lie exactly
 * on the cut; the ends of slanted ones are rounded to whole ticks.
 */

import { intersection } from "../clip/combine.js";
import { type Box, boxOf } from "../measure/box.js";
import { type Edge, type Outline, type Ring, ringsOf, spansOf } from "../outline/outline.js";
import { distance, isSame, type Point } from "../outline/point.js";
import { arcCrossings, endedAt } from "./arc-crossings.js";
import { type Cut, type CutLine, cutLineOf } from "./cut.js";

/** Which side of a cut is kept, as the eye sees it: a slanted cut has both an upper and a left or right side. */
export type KeptSide = "above" | "below" | "left" | "right";

/** What is left of a trimmed outline. */
export interface Trimmed {
  /** One for each part, none where all of it lay on the other side. */
  readonly outlines: readonly Outline[];
  /** The straight edges along the cut. */
  readonly flatEdges: readonly FlatEdge[];
}

/** A straight edge that a cut made. */
export interface FlatEdge {
  readonly from: Point;
  readonly to: Point;
  /** In ticks, with fractions where the cut is slanted. */
  readonly length: number;
}

/**
 * Cuts an outline by a straight line and keeps one side.
 *
 * Throws a RangeError for a cut that `cutLineOf` refuses, for `left` or `right` of a level cut and for `above` or `below`
 * of an upright one.
 *
 * @example
 * const disc = outlineOf({ shape: "circle", diameter: 8000 });
 * const { outlines, flatEdges } = trim(disc, { from: "bottom", distance: 1000 }, "above");
 * boxOf(outlines[0]).height // => 7000
 * flatEdges.map(({ length }) => length) // => [5292]
 */
export function trim(outline: Outline, cut: Cut, keep: KeptSide): Trimmed {
  const box = boxOf(outline);
  return cutAlong([outline], cutLineOf(cut, box), keep, box);
}

/**
 * Cuts several outlines along one line; `box` holds all of them.
 *
 * @internal
 */
export function cutAlong(outlines: readonly Outline[], line: CutLine, keep: KeptSide, box: Box): Trimmed {
  const crossings = arcCrossings(outlines, line);
  const kept = intersection(outlines, [halfPlane(line, keep, box)]).map((outline) =>
    notBeyond(
      endedAt(outline, crossings, (point) => isOn(line, point)),
      line,
      keep,
    ),
  );
  return { outlines: kept, flatEdges: flatEdgesOf(kept, line) };
}

/** The outline with corners that rounding left a tick beyond a level or upright cut put onto it. */
function notBeyond({ outer, windows }: Outline, { through, along }: CutLine, keep: KeptSide): Outline {
  const isLevel = along.y === 0;
  if (!isLevel && along.x !== 0) return { outer, windows };
  const onto = ({ x, y }: Point): Point => {
    if (isLevel) return { x, y: keep === "above" ? Math.min(y, through.y) : Math.max(y, through.y) };
    return { x: keep === "left" ? Math.min(x, through.x) : Math.max(x, through.x), y };
  };
  const ring = (edges: Ring): Ring => {
    const moved = edges.map((edge) => ({ ...edge, to: onto(edge.to) }));
    return moved.filter(({ to }, index) => !isSame(to, (moved.at(index - 1) as Edge).to));
  };
  return { outer: ring(outer), windows: windows.map(ring) };
}

/** A rectangle on the kept side of a line that reaches beyond the box. */
function halfPlane({ through, along }: CutLine, keep: KeptSide, { x, y, width, height }: Box): Outline {
  // Below is where y is greater; along points to the right, so that its right hand is below.
  const isLevel = along.y === 0;
  const isUpright = along.x === 0;
  if (
    (isLevel && (keep === "left" || keep === "right")) ||
    (isUpright && (keep === "above" || keep === "below"))
  ) {
    const sides = isLevel ? "above or below" : "left or right";
    throw new RangeError(
      `Expected ${sides} as the side to keep of ${isLevel ? "a level" : "an upright"} cut, found ${keep}.`,
    );
  }
  // How far the rectangle must reach from the point on the cut, either way.
  const reach = Math.abs(through.x - x) + Math.abs(through.y - y) + width + height + 1;
  const step = Math.ceil(reach / Math.max(Math.abs(along.x), Math.abs(along.y)));
  const dx = along.x * step;
  const dy = along.y * step;
  // Across: a quarter turn from along towards below, or to the left of an upright cut.
  const isAcross = keep === "below" || (keep === "left" ? along.y >= 0 : keep === "right" && along.y < 0);
  const side = isAcross ? 1 : -1;
  const corner = (forwards: number, across: number): Point => ({
    x: through.x + forwards * dx - across * dy,
    y: through.y + forwards * dy + across * dx,
  });
  const corners = [corner(-1, 0), corner(1, 0), corner(1, 2 * side), corner(-1, 2 * side)];
  // The other side is run round the other way.
  return { outer: (side > 0 ? corners : corners.reverse()).map((to) => ({ to })), windows: [] };
}

function isOn({ through, along }: CutLine, { x, y }: Point): boolean {
  const length = Math.sqrt(along.x * along.x + along.y * along.y);
  return Math.abs(along.x * (y - through.y) - along.y * (x - through.x)) <= ON_CUT * length;
}

/** How far an end of a flat edge may lie from the cut: three ticks by combining, and rounding. */
const ON_CUT = 4;

/** Shorter flat edges are left over from rounding where an outline only touches the cut. */
const SHORTEST = 16;

/**
 * The straight edges of outlines that lie along a line.
 *
 * @internal
 */
export function flatEdgesOf(outlines: readonly Outline[], line: CutLine): readonly FlatEdge[] {
  const edges = outlines.flatMap((outline) =>
    ringsOf(outline).flatMap((ring) =>
      spansOf(ring)
        .filter((span) => span.through === null && isOn(line, span.from) && isOn(line, span.to))
        .map(({ from, to }) => ({ from, to, length: distance(from, to) })),
    ),
  );
  return edges.filter((edge) => edge.length >= SHORTEST);
}
