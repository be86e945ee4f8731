import { TICKS_PER_MM } from "@sheetwright/measure";
import { isInside, type Outline } from "@sheetwright/shapes";
import type { Box } from "../drawing/text-boxes.js";

/** A rectangle, or what is cut to outlines that are given in `scale` of its own measure. */
export interface Painted extends Box {
  readonly outlines?: readonly Outline[];
  readonly scale?: number;
}

/** Whether a point lies on the visible part of a surface: inside it, and inside none that is painted later. */
export function seesThrough(
  surfaces: readonly Painted[],
  index: number,
  [x, y]: readonly [number, number],
): boolean {
  const inside = ({ outlines, scale = 1, ...box }: Painted) =>
    x > box.x &&
    x < box.x + box.width &&
    y > box.y &&
    y < box.y + box.height &&
    (outlines === undefined || outlines.some((outline) => isInside(outline, { x: x * scale, y: y * scale })));
  return surfaces.every((box, i) => (i < index ? true : i === index ? inside(box) : !inside(box)));
}

/** Whether anything of a surface can be seen, by looking at the middle of every cell between all edges. */
export function isShown(surfaces: readonly Painted[], index: number): boolean {
  // Shapes are looked at in a finer grid.
  const stops = ({ outlines }: Painted, from: number, length: number) =>
    outlines === undefined
      ? [from, from + length]
      : Array.from({ length: 33 }, (_, i) => from + (i * length) / 32);
  const xs = [...new Set(surfaces.flatMap((one) => stops(one, one.x, one.width)))].sort((a, b) => a - b);
  const ys = [...new Set(surfaces.flatMap((one) => stops(one, one.y, one.height)))].sort((a, b) => a - b);
  return xs.some((x, i) =>
    ys.some((y, j) => {
      const [right, bottom] = [xs[i + 1], ys[j + 1]];
      return (
        right !== undefined &&
        bottom !== undefined &&
        seesThrough(surfaces, index, [(x + right) / 2, (y + bottom) / 2])
      );
    }),
  );
}

/** Whether a point of a surface can be seen with a millimetre and a half all round it: enough to be pointed at. */
export function isShownClearly(surfaces: readonly Painted[], index: number): boolean {
  const surface = surfaces[index];
  if (surface === undefined) return false;
  const room = 1.5 * TICKS_PER_MM;
  const { x, y, width, height } = surface;
  const steps = Array.from({ length: 25 }, (_, i) => i / 24);
  const around = [
    [0, 0],
    [room, 0],
    [-room, 0],
    [0, room],
    [0, -room],
  ] as const;
  return steps.some((across) =>
    steps.some((down) =>
      around.every(([dx, dy]) =>
        seesThrough(surfaces, index, [x + across * width + dx, y + down * height + dy]),
      ),
    ),
  );
}
