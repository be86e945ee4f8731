import { ascentOf, lineHeightOf, textWidth } from "../../src/text/text-width.js";
import { attributeOf, everyElement, numberOf, type ReadElement } from "../read-svg.js";

export interface TextBox {
  readonly text: string;
  readonly size: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * The box that a text takes at most in any usual font, from its attributes alone; `overhang` is added at both ends.
 */
export function textBox(element: ReadElement, overhang = 0): TextBox {
  const { text } = element;
  const size = numberOf(element, "font-size");
  const advance = textWidth(text, size, attributeOf(element, "font-weight") === "bold");
  const width = advance + 2 * overhang;
  const x = numberOf(element, "x");
  const y = numberOf(element, "y");
  const anchor = attributeOf(element, "text-anchor");
  const shift = (anchor === "middle" ? -advance / 2 : anchor === "end" ? -advance : 0) - overhang;
  const height = lineHeightOf(size, text);
  const transform = attributeOf(element, "transform");
  if (transform === "") return { text, size, x: x + shift, y: y - ascentOf(size, text), width, height };
  // The only transform a drawing uses is a quarter turn anticlockwise about the text's own point.
  if (transform !== `rotate(-90 ${x} ${y})`) throw new Error(transform);
  return { text, size, x: x - ascentOf(size, text), y: y - shift - width, width: height, height: width };
}

/** The boxes of all texts of a drawing. */
export function textBoxes(root: ReadElement): readonly TextBox[] {
  return everyElement(root)
    .filter(({ name }) => name === "text")
    .map((element) => textBox(element));
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** By how far two boxes overlap in the direction where they overlap least; 0 or less where they are apart. */
export function overlapOf(a: Box, b: Box): number {
  return Math.min(
    Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x),
    Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y),
  );
}

/** By how far a box sticks out of another; 0 or less where it lies inside. */
export function excessOf(inner: Box, outer: Box): number {
  return Math.max(
    outer.x - inner.x,
    outer.y - inner.y,
    inner.x + inner.width - outer.x - outer.width,
    inner.y + inner.height - outer.y - outer.height,
  );
}

/** All pairs of boxes that overlap by more than `allowed`. */
export function overlappingPairs<T extends Box>(
  boxes: readonly T[],
  allowed: number,
): readonly (readonly [T, T])[] {
  const byLeft = [...boxes].sort((a, b) => a.x - b.x);
  const pairs: (readonly [T, T])[] = [];
  byLeft.forEach((a, i) => {
    for (let j = i + 1; j < byLeft.length; j += 1) {
      const b = byLeft[j] as T;
      if (b.x >= a.x + a.width) break;
      if (overlapOf(a, b) > allowed) pairs.push([a, b]);
    }
  });
  return pairs;
}

/** The box of a rect element. */
export function rectBox(element: ReadElement): Box {
  return {
    x: numberOf(element, "x"),
    y: numberOf(element, "y"),
    width: numberOf(element, "width"),
    height: numberOf(element, "height"),
  };
}
