export { type BoundaryRounding, type Division, DivisionError, divideLength } from "./divide-length.js";
export { type FormatOptions, formatLength } from "./format-length.js";
export { formatSize } from "./format-size.js";
export { type LengthCode, LengthError, type LengthProblem } from "./length-error.js";
export type { CardFlat, CardSize, EnvelopeSize, NamedSize, SheetSize, SizeKind } from "./named-size.js";
export {
  type CardSizeId,
  cardSizes,
  type EnvelopeSizeId,
  envelopeSizes,
  findNamedSize,
  type NamedSizeId,
  namedSizes,
  type SheetSizeId,
  sheetSizes,
} from "./named-sizes.js";
export { type NearestNamesOptions, nearestNames } from "./nearest-names.js";
export { estimateCaliper, type PaperSort } from "./paper/paper-caliper.js";
export {
  GRAMS_PER_OUNCE,
  grammageOf,
  massOf,
  type PaperGrade,
  type PaperGradeSize,
  paperGrades,
  poundsOf,
} from "./paper/paper-weight.js";
export {
  type LengthResult,
  type ParseLengthOptions,
  parseLength,
  parseLengthExact,
  tryParseLength,
} from "./parse-length.js";
export {
  type ParsedSize,
  type ParseSizeOptions,
  parseSize,
  type SizeResult,
  tryParseSize,
} from "./parse-size.js";
export type { ParsedLength } from "./read-length.js";

export { roundToPrecision } from "./round-to-precision.js";
export type { Size } from "./size.js";
export { type SizeCode, SizeError, type SizeProblem } from "./size-error.js";
export { type DimensionTolerance, ISO_216_TOLERANCES, iso216Tolerance } from "./sizes/iso-216-tolerances.js";
export {
  centimetres,
  inches,
  LONGEST_LENGTH,
  millimetres,
  TICKS_PER_INCH,
  TICKS_PER_MM,
  type Ticks,
} from "./ticks.js";
export { CUTTING_PRECISION, type Unit } from "./unit.js";
