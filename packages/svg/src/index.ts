// Printable sheets

// Pictures of the cards
export type { CardOptions, CardSource } from "./card/card-facts.js";
export { drawCard } from "./card/draw-card.js";
export { drawMeasurements } from "./card/draw-measurements.js";
export { writeMeasurements } from "./card/write-measurements.js";
// Sizes of sheets compared
export { type ComparisonChartOptions, drawComparison } from "./comparison/draw-comparison.js";
// Cut lists
export { type CutListOptions, writeCutList } from "./cut-list/write-cut-list.js";
// Cutter files
export type { Edges } from "./cutter/cut-paths.js";
export { type CutterFileOptions, drawCutterFile } from "./cutter/draw-cutter-file.js";
export type { CutterOperation, CutterUnit } from "./cutter/operations.js";
export type { ScoreStyle } from "./cutter/score-paths.js";
export { drawLayout, type LayoutDrawingOptions } from "./drawing/draw-layout.js";
// Reading a drawing back
export { type LayoutReadCode, LayoutReadError } from "./reading/layout-read-error.js";
export {
  type DrawnBox,
  type DrawnCut,
  type DrawnLayout,
  type DrawnLine,
  type DrawnPiece,
  type DrawnScore,
  type DrawnShape,
  type DrawnSlit,
  type DrawnStitches,
  type DrawnStraightCut,
  type ParsedElement,
  readLayout,
} from "./reading/read-layout.js";
// Shapes
export { type CatalogueOptions, drawCatalogue } from "./shape/draw-catalogue.js";
export { drawShape, type ShapeDrawingOptions, type ShapeOperation } from "./shape/draw-shape.js";
// Words
export { type DieInWords, dieInPlainWords } from "./wording/die-in-words.js";
export { paperInWords } from "./wording/paper-in-words.js";
export { revealInWords } from "./wording/reveal-in-words.js";
export { shapeSizeInWords } from "./wording/shape-in-words.js";
