/** Reads a drawing made by `drawLayout` back into the boxes of its plan, from an element tree that some parser made. */

import type { Share } from "@sheetwright/packing";
import type { FoldDirection, SheetMarks } from "@sheetwright/planner";
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
  /** For each share whether the printed back shows. */
  readonly backUp: readonly boolean[];
  /** The edge at which its top is marked, or `null`. */
  readonly top: "top" | "right" | null;
}

/** A score in millimetres from the sheet's top left corner. */
export interface DrawnScore {
  /** The index of its piece. */
  readonly piece: number;
  /** The edge of the piece to line up against, and how far from it the score is, in ticks of 1/1600 mm. */
  readonly edge: "left" | "top" | "right";
  readonly distance: number;
  /** Which way the paper folds there. */
  readonly folds: FoldDirection;
  /** Its dashes in order, from top to bottom or from left to right. */
  readonly dashes: readonly {
    readonly x1: number;
    readonly y1: number;
    readonly x2: number;
    readonly y2: number;
  }[];
}

/** A slit: a cut that starts and ends inside its piece, in millimetres from the sheet's top left corner. */
export interface DrawnSlit {
  /** The index of its piece. */
  readonly piece: number;
  /** The edge of the piece to line up against, and how far from it the slit is, in ticks of 1/1600 mm. */
  readonly edge: "left" | "top" | "right";
  readonly distance: number;
  /** The edge that its ends are measured from, and how far from it they are, in ticks. */
  readonly endsFrom: "left" | "top" | "right";
  readonly ends: readonly [near: number, far: number];
  /** Its stretches in order: two where it runs over a window. */
  readonly stretches: DrawnScore["dashes"];
}

/** A line with curves, in millimetres from the sheet's top left corner. */
export interface DrawnLine {
  readonly x: number;
  readonly y: number;
  /** Where it goes on to: straight, or as a cubic curve by its two handles. */
  readonly steps: readonly {
    readonly x: number;
    readonly y: number;
    readonly handles: readonly [x1: number, y1: number, x2: number, y2: number] | null;
  }[];
  readonly closed: boolean;
}

/** What is cut out of a piece that is a die blank. */
export interface DrawnShape {
  /** The index of its piece. */
  readonly piece: number;
  /** What cuts it: a die, or a machine or scissors along the line. */
  readonly by: "die" | "machine";
  /** Its outer lines and windows. */
  readonly lines: readonly DrawnLine[];
}

/** Stitches or pricked holes of a shape. */
export interface DrawnStitches {
  /** The index of its piece. */
  readonly piece: number;
  readonly marks: "dashes" | "holes";
  readonly lines: readonly DrawnLine[];
}

/** A line along which a shape is cut straight afterwards. */
export interface DrawnStraightCut {
  /** The index of its piece. */
  readonly piece: number;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
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
  /** The sheet's id, the sheets cut like this, its size in millimetres, and its marks where it was drawn with any. */
  readonly sheet: {
    readonly id: string;
    readonly run: number;
    readonly width: number;
    readonly height: number;
    readonly marks: SheetMarks | null;
  };
  readonly pieces: readonly DrawnPiece[];
  readonly offcuts: readonly DrawnBox[];
  readonly waste: readonly DrawnBox[];
  readonly trims: readonly DrawnBox[];
  readonly windows: readonly (DrawnBox & { readonly tool: string })[];
  readonly cuts: readonly DrawnCut[];
  readonly scores: readonly DrawnScore[];
  readonly slits: readonly DrawnSlit[];
  readonly shapes: readonly DrawnShape[];
  readonly stitches: readonly DrawnStitches[];
  readonly straightCuts: readonly DrawnStraightCut[];
}

const EDGES = ["left", "top", "right"] as const;

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
  const topByPiece = new Map(
    all("top").map((found) => [attribute(found, "data-piece"), oneOf(found, "data-edge", ["top", "right"])]),
  );
  const pieceIndex = new Map(all("piece").map(({ element }, index) => [element.attributes.id, index]));
  const pieceOf = (found: Found): number => {
    const id = attribute(found, "data-piece");
    const piece = pieceIndex.get(id);
    if (piece === undefined) throw malformed(found, "data-piece", id, "the id of a piece");
    return piece;
  };
  return {
    sheet: {
      id: attribute(sheet, "data-sheet"),
      run: wholeNumber(sheet, "data-run"),
      width: origin.width,
      height: origin.height,
      marks: sheetMarksOf(sheet),
    },
    pieces: all("piece").map((found) => {
      const shares = sharesOf(found);
      return {
        ...onSheet(found),
        number: wholeNumber(found, "data-list"),
        shares,
        backUp: shares.map((_, i) => found.element.attributes[`data-back${endOf(i)}`] === "yes"),
        top: topByPiece.get(found.element.attributes.id ?? "") ?? null,
      };
    }),
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
    scores: all("score").map((found) => ({
      piece: pieceOf(found),
      edge: oneOf(found, "data-edge", EDGES),
      distance: wholeNumber(found, "data-distance"),
      // A drawing whose scores all fold the usual way says nothing of it.
      folds:
        found.element.attributes["data-folds"] === undefined
          ? "mountain"
          : oneOf(found, "data-folds", ["mountain", "valley", "both"]),
      dashes: stepsOf(found, origin),
    })),
    slits: all("slit").map((found) => ({
      piece: pieceOf(found),
      edge: oneOf(found, "data-edge", EDGES),
      distance: wholeNumber(found, "data-distance"),
      endsFrom: oneOf(found, "data-ends-from", EDGES),
      ends: [wholeNumber(found, "data-near-end"), wholeNumber(found, "data-far-end")],
      stretches: stepsOf(found, origin),
    })),
    shapes: all("shape").map((found) => ({
      piece: pieceOf(found),
      by: oneOf(found, "data-by", ["die", "machine"]),
      lines: linesOf(found, origin),
    })),
    stitches: (["dashes", "holes"] as const).flatMap((marks) =>
      all(marks === "dashes" ? "stitches" : "holes").map((found) => ({
        piece: pieceOf(found),
        marks,
        lines: linesOf(found, origin),
      })),
    ),
    straightCuts: all("straight-cut").map((found) => {
      const dashes = stepsOf(found, origin);
      const [{ x1, y1 }, { x2, y2 }] = [dashes[0], dashes.at(-1)] as [DrawnStraightCut, DrawnStraightCut];
      return { piece: pieceOf(found), x1, y1, x2, y2 };
    }),
  };
}

const PAIR = "[\\d.]+ [\\d.]+";
const LINE = `M${PAIR}(?:L${PAIR}|C${PAIR} ${PAIR} ${PAIR})+Z?`;

/** The lines of a path of straight steps and cubic curves. */
function linesOf(found: Found, origin: DrawnBox): readonly DrawnLine[] {
  const d = attribute(found, "d");
  if (!new RegExp(`^(?:${LINE})+$`).test(d)) throw malformed(found, "d", d, "lines as M x y L x y C ... Z");
  const place = (text: string): readonly number[] =>
    text.split(" ").map((value, i) => fromOrigin(Number(value), i % 2 === 0 ? origin.x : origin.y));
  return [...d.matchAll(new RegExp(LINE, "g"))].map(([line]) => {
    const [start = "", ...steps] = line.match(/[MLC][\d. ]+/g) ?? [];
    const [x = 0, y = 0] = place(start.slice(1));
    return {
      x,
      y,
      closed: line.endsWith("Z"),
      steps: steps.map((step) => {
        const numbers = place(step.slice(1));
        const [endX = 0, endY = 0] = numbers.slice(-2);
        const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = numbers;
        return { x: endX, y: endY, handles: step.startsWith("C") ? [x1, y1, x2, y2] : null };
      }),
    };
  });
}

function sheetMarksOf(sheet: Found): SheetMarks | null {
  if (sheet.element.attributes["data-grain"] === undefined) return null;
  return {
    grain: oneOf(sheet, "data-grain", ["width", "height", "none", "unknown"]),
    ...(sheet.element.attributes["data-grain-basis"] === "assumed" ? { grainIsAssumed: true as const } : {}),
    pattern: oneOf(sheet, "data-pattern", ["none", "two-way", "one-way"]),
    colour: attribute(sheet, "data-colour"),
  };
}

/** The strokes of a path that consists of single steps. */
function stepsOf(found: Found, origin: DrawnBox): DrawnScore["dashes"] {
  const d = attribute(found, "d");
  const step = "M([\\d.]+) ([\\d.]+)L([\\d.]+) ([\\d.]+)";
  if (!new RegExp(`^(?:${step})+$`).test(d)) throw malformed(found, "d", d, "steps as M x y L x y");
  return [...d.matchAll(new RegExp(step, "g"))].map((match) => {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = match.slice(1).map(Number);
    return {
      x1: fromOrigin(x1, origin.x),
      y1: fromOrigin(y1, origin.y),
      x2: fromOrigin(x2, origin.x),
      y2: fromOrigin(y2, origin.y),
    };
  });
}

/** The end of the names of a share's attributes: nothing for the first share, `-2` for the second. */
function endOf(index: number): string {
  return index === 0 ? "" : `-${index + 1}`;
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
  for (let i = 0; ; i += 1) {
    const end = endOf(i);
    if (i > 0 && found.element.attributes[`data-kind${end}`] === undefined) return shares;
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

function oneOf<const T extends string>(found: Found, name: string, known: readonly T[]): T {
  const text = attribute(found, name);
  const value = known.find((each) => each === text);
  if (value === undefined) throw malformed(found, name, text, `one of ${known.join(", ")}`);
  return value;
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
