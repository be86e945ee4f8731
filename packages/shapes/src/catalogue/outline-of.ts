import { exactBoxOf } from "../measure/box.js";
import type { Outline } from "../outline/outline.js";
import type { Point } from "../outline/point.js";
import { archOutline } from "./arch.js";
import { bannerOutline } from "./banner.js";
import { circleOutline } from "./circle.js";
import { dropOutline } from "./drop.js";
import { frameOutline, type Middled } from "./frame.js";
import { halfCircleOutline } from "./half-circle.js";
import { heartOutline } from "./heart.js";
import { leafOutline } from "./leaf.js";
import { ovalOutline } from "./oval.js";
import { polygonMiddle, polygonOutline } from "./polygon.js";
import { rectangleOutline, squareOutline } from "./rectangle.js";
import { scallopedCircleMiddle, scallopedCircleOutline } from "./scalloped-circle.js";
import { scallopedOvalOutline } from "./scalloped-oval.js";
import { asRectangle, scallopedRectangleOutline } from "./scalloped-rectangle.js";
import type { Shape } from "./shape.js";
import { ShapeError } from "./shape-error.js";
import { starMiddle, starOutline } from "./star.js";
import { tagOutline } from "./tag.js";

/**
 * The outline of a shape, its box's top left corner at the origin: straight edges and arcs between whole ticks, each within
 * two ticks (0.00125 mm) of the ideal shape.
 *
 * Where a width or height is odd, points of its axis stand half a tick beside it; all others are exact mirror images.
 *
 * Throws a ShapeError (a RangeError) where a parameter makes no sense.
 *
 * @example
 * outlineOf({ shape: "circle", diameter: 80 }).outer
 * // => [{ through: { x: 80, y: 40 }, to: { x: 40, y: 80 } }, { through: { x: 0, y: 40 }, to: { x: 40, y: 0 } }]
 * const ring = { shape: "frame", outer: { shape: "circle", diameter: 81280 }, window: { shape: "circle", diameter: 60960 } };
 * outlineOf(ring).windows.length // => 1
 * outlineOf({ shape: "star", diameter: 81280, points: 2 }) // throws ShapeError: star, points: found 2
 */
export function outlineOf(shape: Shape): Outline {
  switch (shape.shape) {
    case "circle":
      return circleOutline(shape);
    case "oval":
      return ovalOutline(shape);
    case "square":
      return squareOutline(shape);
    case "rectangle":
      return rectangleOutline(shape);
    case "polygon":
      return polygonOutline(shape);
    case "star":
      return starOutline(shape);
    case "heart":
      return heartOutline(shape);
    case "arch":
      return archOutline(shape);
    case "half-circle":
      return halfCircleOutline(shape);
    case "leaf":
      return leafOutline(shape);
    case "drop":
      return dropOutline(shape);
    case "tag":
      return tagOutline(shape);
    case "banner":
      return bannerOutline(shape);
    case "scalloped-circle":
      return scallopedCircleOutline(shape);
    case "scalloped-oval":
      return scallopedOvalOutline(shape);
    case "scalloped-square":
      return scallopedRectangleOutline(asRectangle(shape));
    case "scalloped-rectangle":
      return scallopedRectangleOutline(shape);
    case "frame":
      return frameOutline(shape, middled(shape.outer), middled(shape.window));
    default:
      return unknownShape(shape);
  }
}

/**
 * The middle of a shape in the coordinates of its outline, in ticks with halves: of the circle round it for polygons, stars
 * and scalloped circles, of the outer shape for frames, of the box for all others. Windows stand middle on middle.
 *
 * @example
 * middleOf({ shape: "rectangle", width: 300, height: 101 }) // => { x: 150, y: 50.5 }
 * middleOf({ shape: "polygon", sides: 3, diameter: 20000 }) // => { x: 8660, y: 10000 }
 */
export function middleOf(shape: Shape): Point {
  switch (shape.shape) {
    case "polygon":
      return polygonMiddle(shape);
    case "star":
      return starMiddle(shape);
    case "scalloped-circle":
      return scallopedCircleMiddle(shape);
    case "frame":
      return middleOf(shape.outer);
    default: {
      // Mirrored to the tick, so that the fractions of its arcs fall out.
      const { x, y, width, height } = exactBoxOf(outlineOf(shape));
      return { x: Math.round(2 * x + width) / 2, y: Math.round(2 * y + height) / 2 };
    }
  }
}

/**
 * An outline with its middle.
 *
 * @internal
 */
export function middled(shape: Shape): Middled {
  return { outline: outlineOf(shape), middle: middleOf(shape) };
}

function unknownShape(shape: never): never {
  const { shape: found } = shape as { readonly shape?: unknown };
  throw new ShapeError({
    shape: "shape",
    key: "shape",
    found,
    expected: "the name of a shape of the catalogue",
    help: 'For example "circle"; the catalogue lists them all.',
  });
}
