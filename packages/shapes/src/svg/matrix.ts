import type { Point } from "../outline/point.js";
import { cosineAndSine } from "../outline/sines.js";
import { Scan } from "./scan.js";

/**
 * A linear map: x' = a x + c y + e, y' = b x + d y + f, in the order of SVG's `matrix(a b c d e f)`.
 *
 * @internal
 */
export interface Matrix {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

/** @internal */
export const IDENTITY: Matrix = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/**
 * First the inner, then the outer map.
 *
 * @internal
 */
export function after(outer: Matrix, inner: Matrix): Matrix {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: outer.a * inner.e + outer.c * inner.f + outer.e,
    f: outer.b * inner.e + outer.d * inner.f + outer.f,
  };
}

/** @internal */
export function mapPoint({ a, b, c, d, e, f }: Matrix, { x, y }: Point): Point {
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

/** The way back; `null` where all is mapped onto a line. @internal */
export function inverseOf({ a, b, c, d, e, f }: Matrix): Matrix | null {
  const area = a * d - b * c;
  const inverse = {
    a: d / area,
    b: -b / area,
    c: -c / area,
    d: a / area,
    e: (c * f - d * e) / area,
    f: (b * e - a * f) / area,
  };
  return Object.values(inverse).every((number) => Number.isFinite(number)) ? inverse : null;
}

/** @internal */
export function scaling(x: number, y: number): Matrix {
  return { ...IDENTITY, a: x, d: y };
}

/** @internal */
export function shifting(x: number, y: number): Matrix {
  return { ...IDENTITY, e: x, f: y };
}

/**
 * Cosine and sine of an angle in degrees: whole turns and quarters are taken off first, exactly.
 *
 * @internal
 */
export function cosineAndSineOfDegrees(angle: number): readonly [cosine: number, sine: number] {
  const turned = angle % 360;
  const quarter = Math.round(turned / 90);
  const [c, s] = cosineAndSine(((turned - quarter * 90) * Math.PI) / 180);
  switch (((quarter % 4) + 4) % 4) {
    case 0:
      return [c, s];
    case 1:
      return [-s, c];
    case 2:
      return [-c, -s];
    default:
      return [s, -c];
  }
}

const WORD = /matrix|translateX|translateY|translate|scaleX|scaleY|scale|rotate|skewX|skewY/y;
const OPEN = /[\t\n\f\r ]*\([\t\n\f\r ]*/y;
const CLOSE = /[\t\n\f\r ]*\)/y;
const UNIT = /deg|px/y;

/** How many numbers each may have. */
const COUNTS: Readonly<Record<string, readonly number[]>> = {
  matrix: [6],
  translate: [1, 2],
  translateX: [1],
  translateY: [1],
  scale: [1, 2],
  scaleX: [1],
  scaleY: [1],
  rotate: [1, 3],
  skewX: [1],
  skewY: [1],
};

/** Far more than any program writes. */
const MOST_TRANSFORMS = 1000;

/**
 * Reads a list of transforms, of the attribute or of a style; `null` where it is none, or not of finite numbers.
 *
 * @internal
 */
export function parseTransform(text: string): Matrix | null {
  const scan = new Scan(text);
  scan.skipSpace();
  if (text.trim() === "none") return IDENTITY;
  let matrix = IDENTITY;
  for (let count = 0; !scan.isAtEnd; count += 1) {
    const word = scan.match(WORD);
    if (count >= MOST_TRANSFORMS || word === null || scan.match(OPEN) === null) return null;
    const numbers: number[] = [];
    while (scan.match(CLOSE) === null) {
      if (numbers.length > 0) scan.skipComma();
      const number = scan.number();
      if (number === null || numbers.length === 6) return null;
      scan.match(UNIT);
      numbers.push(number);
    }
    if (!(COUNTS[word] ?? []).includes(numbers.length)) return null;
    matrix = after(matrix, matrixOf(word, numbers));
    scan.skipComma();
  }
  return Object.values(matrix).every((number) => Number.isFinite(number)) ? matrix : null;
}

function matrixOf(word: string, numbers: readonly number[]): Matrix {
  const [first = 0, second, third] = numbers;
  switch (word) {
    case "matrix": {
      const [a, b, c, d, e, f] = numbers as [number, number, number, number, number, number];
      return { a, b, c, d, e, f };
    }
    case "translate":
      return shifting(first, second ?? 0);
    case "translateX":
      return shifting(first, 0);
    case "translateY":
      return shifting(0, first);
    case "scale":
      return scaling(first, second ?? first);
    case "scaleX":
      return scaling(first, 1);
    case "scaleY":
      return scaling(1, first);
    case "rotate": {
      const [c, s] = cosineAndSineOfDegrees(first);
      const turn = { a: c, b: s, c: -s, d: c, e: 0, f: 0 };
      if (second === undefined || third === undefined) return turn;
      return after(after(shifting(second, third), turn), shifting(-second, -third));
    }
    default: {
      const [c, s] = cosineAndSineOfDegrees(first);
      // Upright lines turned until they lie down: infinite, and refused.
      return word === "skewX" ? { ...IDENTITY, c: s / c } : { ...IDENTITY, b: s / c };
    }
  }
}
