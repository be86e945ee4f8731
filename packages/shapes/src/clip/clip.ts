import { Clipper64, ClipType, FillRule, type Path64, type PolyPath64, PolyTree64 } from "clipper2-ts";
import type { FlatOutline, Polygon } from "../flatten/flatten.js";
import { rounded } from "../outline/point.js";
import { withoutSpikes } from "./without-spikes.js";

/** What is kept of the subject and of what is clipped with it. */
export type ClipOperation = "union" | "intersection" | "difference" | "exclusion";

const TYPES: Readonly<Record<ClipOperation, ClipType>> = {
  union: ClipType.Union,
  intersection: ClipType.Intersection,
  difference: ClipType.Difference,
  exclusion: ClipType.Xor,
};

/** Which points count as material, by how often the lines wind round them: more than 0, not 0, or an odd number of times. */
export type ClipRule = "positive" | "nonzero" | "evenodd";

const RULES: Readonly<Record<ClipRule, FillRule>> = {
  positive: FillRule.Positive,
  nonzero: FillRule.NonZero,
  evenodd: FillRule.EvenOdd,
};

/**
 * Combines polygons; what they enclose more often than they exclude it (positive winding) counts as material where no other
 * rule is given. Corners of the result are whole ticks: those of the input, and crossings rounded to the nearest.
 *
 * Only the sweep of clipper2-ts is used (Vatti 1992, in 64-bit integers), which does without sines and roots.
 *
 * @internal
 */
export function clip(
  operation: ClipOperation,
  subject: readonly Polygon[],
  other: readonly Polygon[] = [],
  rule: ClipRule = "positive",
): readonly FlatOutline[] {
  const clipper = new Clipper64();
  // The corners of flattened arcs must survive, so that the arcs are found again; straight runs are joined afterwards.
  clipper.preserveCollinear = true;
  clipper.addSubject(subject.map(toPath));
  if (other.length > 0) clipper.addClip(other.map(toPath));
  const tree = new PolyTree64();
  if (!clipper.execute(TYPES[operation], RULES[rule], tree)) {
    throw new Error("The polygons could not be combined. Please report the outlines.");
  }
  const found: FlatOutline[] = [];
  collect(tree, found);
  return found;
}

/** The engine writes into the points that it is given, and loses parts over level spikes. */
function toPath(polygon: Polygon): Path64 {
  return withoutSpikes(polygon).map(({ x, y }) => ({ x, y }));
}

function collect(parent: PolyPath64, found: FlatOutline[]): void {
  for (let index = 0; index < parent.count; index += 1) {
    const part = parent.child(index);
    const outer = toPolygon(part.poly);
    const windows: Polygon[] = [];
    for (let inner = 0; inner < part.count; inner += 1) {
      const window = part.child(inner);
      windows.push(toPolygon(window.poly));
      collect(window, found);
    }
    found.push({ outer, windows });
  }
}

function toPolygon(path: Path64 | null): Polygon {
  return (path ?? []).map(({ x, y }) => rounded(x, y));
}
