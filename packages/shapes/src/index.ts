// Outlines

// Combining
export { difference, exclusion, intersection, union } from "./clip/combine.js";
// Curves
export { CURVE_TOLERANCE, type CurveFit, type CurveOptions, fitArcs } from "./curve/fit-arcs.js";
// Straight edges
export { COVER_TOLERANCE, coverOf } from "./flatten/cover.js";
export { FLATTEN_TOLERANCE, type FlatOutline, flatten, type Polygon } from "./flatten/flatten.js";
// Measuring
export { areaOf, perimeterOf } from "./measure/area.js";
export { type Box, boxOf, exactBoxOf } from "./measure/box.js";
// Growing and shrinking
export { type Offset, type OffsetOptions, offset } from "./offset/offset.js";
export { type Arc, arcOf } from "./outline/arc.js";
export { mirrored, moved, quarterTurned } from "./outline/move.js";
export {
  type ArcEdge,
  type Edge,
  type LineEdge,
  type Outline,
  type Ring,
  reversedRing,
  ringsOf,
  type Span,
  spansOf,
} from "./outline/outline.js";
export type { Point } from "./outline/point.js";
