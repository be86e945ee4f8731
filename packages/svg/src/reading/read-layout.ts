/** Reads a drawing made by `drawLayout` back into the boxes of its plan, from an element tree that some parser made. */

import type { Share } from "@sheetwright/packing";
import { LayoutReadError } from "./layout-read-error.js";

/** An element as XML parsers give it as plain data, entities decoded; such as what svgson makes. */
export interface ParsedElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly ParsedElement[];
}

/** A rectangle in millimetres from the sheet's top left corner. */
export interface DrawnBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A piece, with its number in the list beside the drawing. */
export interface DrawnPiece extends DrawnBox {
  readonly number: number;
  readonly shares: readonly Share[];
}

/** A cut's line in millimetres from the sheet's top left corner. */
export interface DrawnCut {
  readonly number: number;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** What a drawing shows. Each list is in the order of the drawing. */
export interface DrawnLayout {
  /** The sheet's id, the sheets cut like this, and its size in millimetres. */
  readonly sheet: {
    readonly id: string;
    readonly run: number;
    readonly width: number;
    readonly height: number;
  };
  readonly pieces: readonly DrawnPiece[];
  readonly offcuts: readonly DrawnBox[];
  readonly waste: readonly DrawnBox[];
  readonly trims: readonly DrawnBox[];
  readonly windows: readonly (DrawnBox & { readonly tool: string })[];
  readonly cuts: readonly DrawnCut[];
}

interface Found {
  readonly element: ParsedElement;
  readonly path: string;
}

/**
 * Reads the root element of a drawing. Boxes are as exact as the drawing: to 0.001 mm. Throws a LayoutReadError where
 * the tree is no such drawing or a value is missing or malformed.
 */
export function readLayout(root: ParsedElement): DrawnLayout {
  if (root.name !== "svg" || root.attributes["data-drawing"] !== "layout") {
    throw new LayoutReadError(
      "not-a-layout",
      root.name,
      'This is no layout drawn by drawLayout: the root is not an svg element with data-drawing="layout".',
      { found: root.name },
    );
  }
  const byRole = new Map<string, Found[]>();
  collect(root, root.name, byRole);
  const all = (role: string) => byRole.get(role) ?? [];

  const [sheet] = all("sheet");
  if (sheet === undefined) {
    throw new LayoutReadError(
      "no-sheet",
      root.name,
      'The drawing has no element with data-role="sheet".',
      {},
    );
  }
  const origin = boxOf(sheet);
  const onSheet = (found: Found): DrawnBox => {
    const box = boxOf(found);
    return { ...box, x: fromOrigin(box.x, origin.x), y: fromOrigin(box.y, origin.y) };
  };
  return {
    sheet: {
      id: attribute(sheet, "data-sheet"),
      run: wholeNumber(sheet, "data-run"),
      width: origin.width,
      height: origin.height,
    },
    pieces: all("piece").map((found) => ({
      ...onSheet(found),
      number: wholeNumber(found, "data-list"),
      shares: sharesOf(found),
    })),
    offcuts: all("offcut").map(onSheet),
    waste: all("waste").map(onSheet),
    trims: all("trim").map(onSheet),
    windows: all("window").map((found) => ({ ...onSheet(found), tool: attribute(found, "data-tool") })),
    cuts: all("cut").map((found) => ({
      number: wholeNumber(found, "data-number"),
      x1: fromOrigin(number(found, "x1"), origin.x),
      y1: fromOrigin(number(found, "y1"), origin.y),
      x2: fromOrigin(number(found, "x2"), origin.x),
      y2: fromOrigin(number(found, "y2"), origin.y),
    })),
  };
}

function collect(element: ParsedElement, path: string, byRole: Map<string, Found[]>): void {
  const role = element.attributes["data-role"];
  if (role !== undefined) {
    const others = byRole.get(role);
    if (others === undefined) byRole.set(role, [{ element, path }]);
    else others.push({ element, path });
  }
  element.children.forEach((child, index) => {
    collect(child, `${path}.children[${index}]`, byRole);
  });
}

/** Both are written to thousandths, so their difference is one too. */
function fromOrigin(value: number, origin: number): number {
  return Math.round((value - origin) * 1000) / 1000;
}

function boxOf(found: Found): DrawnBox {
  return {
    x: number(found, "x"),
    y: number(found, "y"),
    width: number(found, "width"),
    height: number(found, "height"),
  };
}

function sharesOf(found: Found): readonly Share[] {
  const shares: Share[] = [];
  for (let i = 1; ; i += 1) {
    const end = i === 1 ? "" : `-${i}`;
    if (i > 1 && found.element.attributes[`data-kind${end}`] === undefined) return shares;
    const turned = attribute(found, `data-turned${end}`);
    if (turned !== "yes" && turned !== "no") throw malformed(found, `data-turned${end}`, turned, "yes or no");
    shares.push({
      kind: attribute(found, `data-kind${end}`),
      form: wholeNumber(found, `data-form${end}`),
      turned: turned === "yes",
      count: wholeNumber(found, `data-count${end}`),
    });
  }
}

function attribute({ element, path }: Found, name: string): string {
  const value = element.attributes[name];
  if (value !== undefined) return value;
  throw new LayoutReadError(
    "missing-attribute",
    `${path}.attributes.${name}`,
    `The element ${element.name} at ${path} has no attribute ${name}.`,
    { element: element.name, attribute: name },
  );
}

function number(found: Found, name: string): number {
  const text = attribute(found, name);
  if (!/^-?\d+(\.\d+)?$/.test(text)) throw malformed(found, name, text, "a decimal number");
  return Number(text);
}

function wholeNumber(found: Found, name: string): number {
  const text = attribute(found, name);
  if (!/^\d+$/.test(text)) throw malformed(found, name, text, "a whole number");
  return Number(text);
}

function malformed({ path }: Found, name: string, found: string, expected: string): LayoutReadError {
  return new LayoutReadError(
    "malformed-value",
    `${path}.attributes.${name}`,
    `${name} at ${path} is ${JSON.stringify(found)}; expected ${expected}.`,
    { attribute: name, found, expected },
  );
}
