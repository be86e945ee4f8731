import type { Ticks } from "@sheetwright/measure";
import type { FrameShape } from "./frame.js";
import type { Shape, ShapeName } from "./shape.js";
import { ShapeError } from "./shape-error.js";
import { type NominalSize, sizeOf } from "./size-of.js";

/** The shape of a name. */
export type ShapeNamed<Name extends ShapeName> = Extract<Shape, { readonly shape: Name }>;

/** The parameters of a shape but its size. */
export type ShapeOptions<Name extends ShapeName> = Omit<
  ShapeNamed<Name>,
  "shape" | "diameter" | "side" | "width" | "height"
>;

type SizeKeys = "diameter" | "side" | "sides";

const SIZE_KEYS: Readonly<Record<Exclude<ShapeName, "frame">, SizeKeys>> = {
  circle: "diameter",
  oval: "sides",
  square: "side",
  rectangle: "sides",
  polygon: "diameter",
  star: "diameter",
  heart: "sides",
  arch: "sides",
  "half-circle": "diameter",
  leaf: "sides",
  drop: "sides",
  tag: "sides",
  banner: "sides",
  "scalloped-circle": "diameter",
  "scalloped-oval": "sides",
  "scalloped-square": "side",
  "scalloped-rectangle": "sides",
};

/**
 * The shape of a name in a nominal size, a diameter or width by height; one number is a diameter, or width and height alike.
 *
 * Throws a ShapeError where the name is none of the catalogue, or where a round shape or a square is asked for with two
 * different sides. Other parameters are checked where the outline is made.
 *
 * @example
 * shapeOfSize("star", 81280, { points: 6 }) // => { shape: "star", diameter: 81280, points: 6 }
 * shapeOfSize("oval", { width: 81280, height: 60960 }) // => { shape: "oval", width: 81280, height: 60960 }
 * shapeOfSize("square", { width: 2, height: 3 }) // throws ShapeError: square, size: found 2 x 3
 */
export function shapeOfSize<Name extends Exclude<ShapeName, "frame">>(
  name: Name,
  size: Ticks | NominalSize,
  ...options: Partial<ShapeOptions<Name>> extends ShapeOptions<Name>
    ? [options?: ShapeOptions<Name>]
    : [options: ShapeOptions<Name>]
): ShapeNamed<Name> {
  // The keys are those of the name, by the table above.
  return { shape: name, ...sizeParameters(name, size), ...options[0] } as unknown as ShapeNamed<Name>;
}

/**
 * The same shape in another nominal size. Its other lengths stay: corners, scallops, holes. A frame keeps its border: the
 * window grows by as much as the outer shape.
 *
 * Throws a ShapeError where a round shape or a square is asked for with two different sides.
 *
 * @example
 * resized({ shape: "rectangle", width: 300, height: 200, radius: 50 }, { width: 400, height: 300 })
 * // => { shape: "rectangle", width: 400, height: 300, radius: 50 }
 * const ring = { shape: "frame", outer: { shape: "circle", diameter: 9000 }, window: { shape: "circle", diameter: 3000 } };
 * resized(ring, 9500).window // => { shape: "circle", diameter: 3500 }
 */
export function resized<Of extends Shape>(shape: Of, size: Ticks | NominalSize): Of;
export function resized(shape: Shape, size: Ticks | NominalSize): Shape {
  if (shape.shape === "frame") return resizedFrame(shape, size);
  return { ...shape, ...sizeParameters(shape.shape, size) } as Shape;
}

function resizedFrame(frame: FrameShape, size: Ticks | NominalSize): FrameShape {
  const outer = resized(frame.outer, size);
  const before = sidesOf(sizeOf(frame.outer));
  const after = sidesOf(sizeOf(outer));
  const window = sidesOf(sizeOf(frame.window));
  const wider = after.width - before.width;
  const higher = after.height - before.height;
  const isFree = "width" in sizeOf(frame.window) && !("side" in frame.window);
  const grown = isFree
    ? { width: window.width + wider, height: window.height + higher }
    : window.width + Math.min(wider, higher);
  return { ...frame, outer, window: resized(frame.window, grown) };
}

function sidesOf(size: NominalSize): { readonly width: Ticks; readonly height: Ticks } {
  return "diameter" in size ? { width: size.diameter, height: size.diameter } : size;
}

function sizeParameters(
  name: Exclude<ShapeName, "frame">,
  size: Ticks | NominalSize,
): Readonly<Record<string, Ticks>> {
  if (!Object.hasOwn(SIZE_KEYS, name)) {
    throw new ShapeError({
      shape: "shape",
      key: "name",
      found: name,
      expected: `one of ${Object.keys(SIZE_KEYS).join(", ")}`,
      help: "A frame is given by its two shapes.",
    });
  }
  const sides = typeof size === "number" ? { width: size, height: size } : sidesOf(size);
  const keys = SIZE_KEYS[name];
  if (keys === "sides") return sides;
  if (sides.width !== sides.height) {
    const found = `${sides.width} x ${sides.height} ticks`;
    const help = `Give one number, or take ${keys === "side" ? "a rectangle" : "another shape"}.`;
    throw new ShapeError({ shape: name, key: "size", found, expected: "one size", help });
  }
  return { [keys]: sides.width };
}
