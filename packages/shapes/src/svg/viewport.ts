/** How a viewBox is laid into the width and height of a page, a nested drawing or a symbol (SVG 2, section 8.2). */

import { after, type Matrix, scaling, shifting } from "./matrix.js";
import { Scan } from "./scan.js";

/** @internal */
export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Reads four numbers; `null` where there are not four, or not finite ones. @internal */
export function parseViewBox(text: string): ViewBox | null {
  const numbers = parseNumbers(text, 4);
  if (numbers === null || numbers === "too-many" || numbers.length !== 4) return null;
  const [x, y, width, height] = numbers as [number, number, number, number];
  return { x, y, width, height };
}

/** Reads a list of finite numbers with spaces or commas; `null` where it is none. @internal */
export function parseNumbers(text: string, most: number): readonly number[] | "too-many" | null {
  const scan = new Scan(text.trim());
  const numbers: number[] = [];
  let hasComma = false;
  while (!scan.isAtEnd || hasComma) {
    const number = scan.number();
    if (number === null || !Number.isFinite(number)) return null;
    if (numbers.length >= most) return "too-many";
    numbers.push(number);
    hasComma = scan.skipComma();
  }
  return numbers;
}

const ALIGN = /^(?:defer\s+)?(?<align>none|x(?<x>Min|Mid|Max)Y(?<y>Min|Mid|Max))(?:\s+(?<fit>meet|slice))?$/;

/** How much of what is left over comes before. */
const BEFORE: Readonly<Record<string, number>> = { Min: 0, Mid: 0.5, Max: 1 };

/**
 * From the viewBox to a viewport at the origin; `null` where `preserveAspectRatio` is not what SVG says.
 *
 * @internal
 */
export function fitViewBox(
  box: ViewBox,
  size: { readonly width: number; readonly height: number },
  preserveAspectRatio = "xMidYMid",
): Matrix | null {
  const found = ALIGN.exec(preserveAspectRatio.trim())?.groups;
  if (found === undefined) return null;
  let scaleX = size.width / box.width;
  let scaleY = size.height / box.height;
  if (found.align !== "none") {
    scaleX = found.fit === "slice" ? Math.max(scaleX, scaleY) : Math.min(scaleX, scaleY);
    scaleY = scaleX;
  }
  const left = (size.width - box.width * scaleX) * (BEFORE[found.x ?? "Min"] ?? 0);
  const top = (size.height - box.height * scaleY) * (BEFORE[found.y ?? "Min"] ?? 0);
  return after(after(shifting(left, top), scaling(scaleX, scaleY)), shifting(-box.x, -box.y));
}
