// Bridges and gaps
export { smallestBridge, smallestGap, type ThinPlace, thinPlaces } from "./bridge/thin-places.js";
// The catalogue
export type { ArchShape } from "./catalogue/arch.js";
export type { BannerShape, BannerTail } from "./catalogue/banner.js";
export { catalogue } from "./catalogue/catalogue.js";
export type { CircleShape } from "./catalogue/circle.js";
export type { DropShape } from "./catalogue/drop.js";
export type { CatalogueEntry, ParameterEntry, ParameterKind } from "./catalogue/entry.js";
export type { FrameShape } from "./catalogue/frame.js";
export type { HalfCircleShape } from "./catalogue/half-circle.js";
export type { HeartShape } from "./catalogue/heart.js";
export type { LeafShape } from "./catalogue/leaf.js";
export { middleOf, outlineOf } from "./catalogue/outline-of.js";
export type { OvalShape } from "./catalogue/oval.js";
export type { PolygonShape } from "./catalogue/polygon.js";
export type { CornerCut, RectangleShape, SquareShape } from "./catalogue/rectangle.js";
export type { ScallopRow, Scallops } from "./catalogue/scallop.js";
export type { ScallopedCircleShape } from "./catalogue/scalloped-circle.js";
export type { ScallopedOvalShape } from "./catalogue/scalloped-oval.js";
export {
  SAME_PITCH,
  type ScallopedRectangleShape,
  type ScallopedSquareShape,
} from "./catalogue/scalloped-rectangle.js";
export { scallopsOf } from "./catalogue/scallops-of.js";
export type { Shape, ShapeName } from "./catalogue/shape.js";
export { ShapeError, type ShapeProblem } from "./catalogue/shape-error.js";
export { resized, type ShapeNamed, type ShapeOptions, shapeOfSize } from "./catalogue/shape-of-size.js";
export { type NominalSize, sizeOf } from "./catalogue/size-of.js";
export type { StarShape } from "./catalogue/star.js";
export { type Symmetry, symmetryOf } from "./catalogue/symmetry-of.js";
export type { TagShape } from "./catalogue/tag.js";
// Combining
export { difference, exclusion, intersection, union } from "./clip/combine.js";
// Curves
export { CURVE_TOLERANCE, type CurveFit, type CurveOptions, fitArcs } from "./curve/fit-arcs.js";
// Die sets
export { type Border, borderOf } from "./die-set/border.js";
export { type Die, type OutlineDie, outlineOfDie, type ShapeDie } from "./die-set/die.js";
export { DIE_STEP, type DieSetSizes, dieSet } from "./die-set/die-set.js";
export { type DieUnder, type NextUp, nextUp } from "./die-set/next-up.js";
// Straight edges
export { COVER_TOLERANCE, coverOf } from "./flatten/cover.js";
export { FLATTEN_TOLERANCE, type FlatOutline, flatten, type Polygon } from "./flatten/flatten.js";
// Measuring
export { areaOf, perimeterOf } from "./measure/area.js";
export { type Box, boxOf, boxOfAll, exactBoxOf } from "./measure/box.js";
export { centroidOf } from "./measure/centroid.js";
export { type Circle, enclosingCircle } from "./measure/enclosing-circle.js";
export { INSCRIBED_PRECISION, inscribedCircle } from "./measure/inscribed-circle.js";
export { isInside } from "./measure/inside.js";
export { type Distance, distanceFrom, leastDistance } from "./measure/least-distance.js";
export { mostDistance } from "./measure/most-distance.js";
// Growing and shrinking
export { type Offset, type OffsetOptions, offset } from "./offset/offset.js";
export { type Arc, arcOf } from "./outline/arc.js";
export { checkOutline, type OutlineFault, type OutlineFaultCode } from "./outline/check-outline.js";
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
// Perforating
export { discOf, type Hole } from "./perforate/hole.js";
export {
  type HoleLine,
  type HoleOptions,
  type LineEnds,
  perforateLine,
  perforateWithHoles,
  type TearLine,
  type TearOptions,
} from "./perforate/perforate-line.js";
export { type PerforationPitch, pitchOf, type StampGauge, type TeethPerInch } from "./perforate/pitch.js";
export { type StampEdge, type StampEdgeOptions, stampEdge } from "./perforate/stamp-edge.js";
// Shadow layers
export { type Shadow, type ShadowOptions, shadowOf } from "./shadow/shadow.js";
// Stitching
export type { PitchRange } from "./stitch/spacing.js";
export { type Dash, type Stitches, type StitchOptions, stitch } from "./stitch/stitch.js";
// Trimming
export { type Cut, type CutLine, cutLineOf } from "./trim/cut.js";
export { halvesOf, type Quarters, quartersOf } from "./trim/halves.js";
export { type FlatEdge, type KeptSide, type Trimmed, trim } from "./trim/trim.js";
