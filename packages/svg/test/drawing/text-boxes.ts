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
 * The box that a text takes at most in any usual font, from its attributes alone, with all lines that it has; `overhang`
 * is added at both ends.
 */
export function textBox(element: ReadElement, overhang = 0): TextBox {
  const lines = element.children.length === 0 ? [element] : element.children;
  const anchor = attributeOf(element, "text-anchor");
  const boxes = lines.map((line): TextBox => {
    const { text } = line;
    const size = numberOf(line, "font-size");
    const advance = textWidth(text, size, attributeOf(element, "font-weight") === "bold");
    const shift = anchor === "middle" ? -advance / 2 : anchor === "end" ? -advance : 0;
    return {
      text,
      size,
      x: numberOf(line, "x") + shift - overhang,
      y: numberOf(line, "y") - ascentOf(size, text),
      width: advance + 2 * overhang,
      height: lineHeightOf(size, text),
    };
  });
  const x = Math.min(...boxes.map((box) => box.x));
  const y = Math.min(...boxes.map((box) => box.y));
  const whole: TextBox = {
    text: boxes.map(({ text }) => text).join(" | "),
    size: Math.min(...boxes.map(({ size }) => size)),
    x,
    y,
    width: Math.max(...boxes.map((box) => box.x + box.width)) - x,
    height: Math.max(...boxes.map((box) => box.y + box.height)) - y,
  };
  return turned(whole, attributeOf(element, "transform"));
}

/** The only transform that a drawing uses is a quarter turn anticlockwise about a point. */
function turned(box: TextBox, transform: string): TextBox {
  if (transform === "") return box;
  const [, x, y] = transform.match(/^rotate\(-90 ([\d.]+) ([\d.]+)\)$/)?.map(Number) ?? [];
  if (x === undefined || y === undefined) throw new Error(`An unexpected transform: ${transform}`);
  // (x + a, y + b) comes to (x + b, y - a).
  return { ...box, x: x + box.y - y, y: y - (box.x + box.width - x), width: box.height, height: box.width };
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
