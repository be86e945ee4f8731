import { formatLength, formatSize, type Unit } from "@sheetwright/measure";
import { type Shape, sizeOf } from "@sheetwright/shapes";

/**
 * The size of a shape as makers call it: `3 in across` for round shapes, polygons and stars, else width x height.
 *
 * @example
 * shapeSizeInWords({ shape: "star", diameter: inches(3) }, "in") // => "3 in across"
 * shapeSizeInWords({ shape: "oval", width: inches(3), height: inches(2) }, "in") // => "3 x 2 in"
 */
export function shapeSizeInWords(shape: Shape, unit: Unit): string {
  const size = sizeOf(shape);
  return "diameter" in size
    ? `${formatLength(size.diameter, { unit })} across`
    : formatSize(size.width, size.height, { unit });
}
