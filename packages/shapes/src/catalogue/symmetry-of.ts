import { windowPlace } from "./frame.js";
import { middled } from "./outline-of.js";
import { scallopsOf } from "./scallops-of.js";
import type { Shape } from "./shape.js";

/** How a shape is symmetric. */
export interface Symmetry {
  /** Whether its left half is the mirror image of its right half. */
  readonly upright: boolean;
  /** Whether its lower half is the mirror image of its upper half. */
  readonly level: boolean;
  /** At how many places in a full turn it looks the same: 1 for none but the start. `any` for a circle. */
  readonly turns: number | "any";
}

const UPRIGHT: Symmetry = { upright: true, level: false, turns: 1 };
const LEVEL: Symmetry = { upright: false, level: true, turns: 1 };
const BOTH: Symmetry = { upright: true, level: true, turns: 2 };
const SQUARE: Symmetry = { upright: true, level: true, turns: 4 };
const ROUND: Symmetry = { upright: true, level: true, turns: "any" };

/**
 * How a shape is symmetric: about the upright and the level axis of its middle, and under turns about it. Halves of outlines
 * are mirror images to half a tick, turns are alike to three ticks.
 *
 * @example
 * symmetryOf({ shape: "heart", width: 81280, height: 76200 }) // => { upright: true, level: false, turns: 1 }
 * symmetryOf({ shape: "polygon", sides: 6, diameter: 81280 }) // => { upright: true, level: true, turns: 6 }
 */
export function symmetryOf(shape: Shape): Symmetry {
  switch (shape.shape) {
    case "circle":
      return ROUND;
    case "square":
    case "scalloped-square":
      return SQUARE;
    case "oval":
      return shape.width === shape.height ? ROUND : BOTH;
    case "rectangle":
    case "scalloped-rectangle":
    case "scalloped-oval":
      return shape.width === shape.height ? SQUARE : BOTH;
    case "leaf":
      return BOTH;
    case "polygon":
      return inParts(shape.sides);
    case "star":
      return inParts(shape.points ?? 5);
    case "scalloped-circle":
      return inParts(scallopsOf(shape)?.count ?? 1);
    case "banner":
      return { right: LEVEL, left: LEVEL, both: BOTH, down: UPRIGHT }[shape.tail ?? "right"];
    case "frame":
      return framed(shape.outer, shape.window, shape.at);
    default:
      return UPRIGHT;
  }
}

function inParts(count: number): Symmetry {
  return { upright: true, level: count % 2 === 0, turns: count };
}

function framed(
  outer: Shape,
  window: Shape,
  at: { readonly x: number; readonly y: number } | undefined,
): Symmetry {
  const [a, b] = [symmetryOf(outer), symmetryOf(window)];
  const middle = windowPlace(middled(outer), middled(window));
  const isCentredAcross = at === undefined || at.x === middle.x;
  const isCentredDown = at === undefined || at.y === middle.y;
  return {
    upright: a.upright && b.upright && isCentredAcross,
    level: a.level && b.level && isCentredDown,
    turns: isCentredAcross && isCentredDown ? sharedTurns(a.turns, b.turns) : 1,
  };
}

function sharedTurns(a: Symmetry["turns"], b: Symmetry["turns"]): Symmetry["turns"] {
  if (a === "any") return b;
  if (b === "any") return a;
  let [more, less] = [a, b];
  while (less > 0) [more, less] = [less, more % less];
  return more;
}
