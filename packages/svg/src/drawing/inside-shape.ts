import type { Rectangle } from "@sheetwright/packing";
import { ringsOf } from "@sheetwright/shapes";
import type { LyingShape } from "../layout/lying-shape.js";
import type { Box } from "./box.js";
import { toMillimetres } from "./to-millimetres.js";

/** Of the box of a shape, what lies inside the lines of most shapes: about the square in a circle; then less, for stars. */
const SHARES = [0.68, 0.5];

type Place = Pick<Rectangle, "x" | "y">;

/**
 * Where words may stand on a shape, in millimetres on the sheet: the middle of its box, the larger part first; none where only
 * the size of the shape is known, or where the part does not lie in `free`.
 */
export function insideShape(shape: LyingShape, piece: Place, free: Box): readonly Box[] {
  if (shape.outlines.length === 0) return [];
  const { x, y, width, height } = shape.box;
  return SHARES.map((share) =>
    toMillimetres({
      x: piece.x + x + (width * (1 - share)) / 2,
      y: piece.y + y + (height * (1 - share)) / 2,
      width: width * share,
      height: height * share,
    }),
  ).filter(
    (inside) =>
      inside.x >= free.x &&
      inside.y >= free.y &&
      inside.x + inside.width <= free.x + free.width &&
      inside.y + inside.height <= free.y + free.height,
  );
}

/** Whether a corner of the outline or a stitch of a shape lies in a box, in millimetres on the sheet. */
export function meetsShape(shape: LyingShape, piece: Place, box: Box): boolean {
  const { outlines, stitches } = shape;
  const points = [
    ...outlines.flatMap(ringsOf).flatMap((ring) => ring.map(({ to }) => to)),
    ...stitches.dashes.flat(),
    ...stitches.holes.map(({ centre }) => centre),
  ];
  return points.some((point) => {
    const { x, y } = toMillimetres({ x: piece.x + point.x, y: piece.y + point.y, width: 0, height: 0 });
    return x > box.x && y > box.y && x < box.x + box.width && y < box.y + box.height;
  });
}
