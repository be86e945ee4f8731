import { TICKS_PER_MM } from "@sheetwright/measure";
import { exactBoxOf, type Outline } from "@sheetwright/shapes";
import { outlinesOfPath } from "@sheetwright/shapes/svg";
import { type Box, rectBox, type TextBox, textBox } from "../drawing/text-boxes.js";
import { attributeOf, everyElement, numberOf, type ReadElement } from "../read-svg.js";

/** A leader: from its end on the layer to the label, in millimetres on the page. */
interface DrawnLeader {
  readonly of: string;
  readonly points: readonly (readonly [x: number, y: number])[];
}

interface DrawnCallOut {
  readonly of: string;
  readonly piece: string;
  readonly texts: readonly TextBox[];
  readonly samples: readonly Box[];
}

/** A picture of a surface as read back from the drawing alone; boxes of layers from the surface's top left corner. */
export interface DrawnCard {
  readonly front: Box & { readonly piece: string; readonly id: string };
  /** In painting order. */
  readonly layers: readonly (Box & {
    readonly piece: string;
    readonly on: string;
    readonly id: string;
    /** Of what is cut to a shape: its outlines in ticks of the page. */
    readonly outlines?: readonly Outline[];
  })[];
  /** Words on layers, on the page. */
  readonly words: readonly { readonly of: string; readonly box: TextBox }[];
  readonly leaders: readonly DrawnLeader[];
  readonly callOuts: readonly DrawnCallOut[];
  /** The edges that the card is folded along, with the lines of each; a surface has the word at one of them. */
  readonly folds: readonly {
    readonly fold: string;
    readonly edge: string;
    readonly lines: readonly Box[];
    readonly word: TextBox | null;
  }[];
  /** What is seen of layers on another surface, from the surface's corner. */
  readonly glimpses: readonly (Box & { readonly piece: string })[];
  /** Edges of paper that show on the front. */
  readonly lines: readonly Box[];
}

/** The outlines of a path in millimetres, in ticks of the page. */
function outlinesOf(path: ReadElement): readonly Outline[] {
  return outlinesOfPath(attributeOf(path, "d"), { unitsPerInch: 25.4, fillRule: "evenodd" }).outlines;
}

/** Their box in millimetres on the page. */
function boxOfAll(outlines: readonly Outline[]): Box {
  const boxes = outlines.map(exactBoxOf);
  const x = Math.min(...boxes.map((box) => box.x));
  const y = Math.min(...boxes.map((box) => box.y));
  return {
    x: x / TICKS_PER_MM,
    y: y / TICKS_PER_MM,
    width: (Math.max(...boxes.map((box) => box.x + box.width)) - x) / TICKS_PER_MM,
    height: (Math.max(...boxes.map((box) => box.y + box.height)) - y) / TICKS_PER_MM,
  };
}

/** The groups that hold a picture of a surface, by its name; the front first. */
export function picturesOf(root: ReadElement): ReadonlyMap<string, ReadElement> {
  const groups = everyElement(root).filter((element) => /^picture(-|$)/.test(attributeOf(element, "id")));
  return new Map(
    groups.map((group) => [attributeOf(group, "id").replace(/^picture-?/, "") || "front", group]),
  );
}

function lineBox(line: ReadElement): Box {
  return {
    x: numberOf(line, "x1"),
    y: numberOf(line, "y1"),
    width: numberOf(line, "x2") - numberOf(line, "x1"),
    height: numberOf(line, "y2") - numberOf(line, "y1"),
  };
}

export function readCard(root: ReadElement): DrawnCard {
  const elements = everyElement(root);
  const withRole = (role: string) => elements.filter((element) => attributeOf(element, "data-role") === role);
  const ids = new Map<ReadElement, string>();
  for (const group of elements) for (const child of group.children) ids.set(child, attributeOf(group, "id"));
  const [front, ...others] = [...withRole("front"), ...withRole("surface")];
  if (front === undefined || others.length > 0) throw new Error("A picture has one surface.");
  const origin = rectBox(front);
  return {
    front: { ...origin, piece: attributeOf(front, "data-piece"), id: ids.get(front) ?? "" },
    layers: withRole("layer").map((element) => {
      const outlines = element.name === "path" ? outlinesOf(element) : undefined;
      const box = outlines === undefined ? rectBox(element) : boxOfAll(outlines);
      return {
        ...box,
        x: box.x - origin.x,
        y: box.y - origin.y,
        ...(outlines === undefined ? {} : { outlines }),
        piece: attributeOf(element, "data-piece"),
        on: attributeOf(element, "data-on"),
        id: ids.get(element) ?? "",
      };
    }),
    words: withRole("words").map((element) => ({
      of: attributeOf(element, "data-of"),
      box: textBox(element.children[0] as ReadElement),
    })),
    leaders: withRole("leader").map((element) => ({
      of: attributeOf(element, "data-of"),
      points: attributeOf(element, "points")
        .split(" ")
        .map((point) => point.split(",").map(Number) as [number, number]),
    })),
    callOuts: withRole("call-out").map((element) => ({
      of: attributeOf(element, "data-of"),
      piece: attributeOf(element, "data-piece"),
      texts: element.children.filter(({ name }) => name === "text").map((text) => textBox(text)),
      samples: element.children.filter(({ name }) => name === "rect").map(rectBox),
    })),
    folds: withRole("fold").map((element) => ({
      fold: attributeOf(element, "data-fold"),
      edge: attributeOf(element, "data-edge"),
      lines: element.children.filter(({ name }) => name === "line").map(lineBox),
      word: element.children.filter(({ name }) => name === "text").map((text) => textBox(text))[0] ?? null,
    })),
    glimpses: withRole("glimpse").map((element) => {
      const box = element.name === "path" ? boxOfAll(outlinesOf(element)) : rectBox(element);
      return { ...box, x: box.x - origin.x, y: box.y - origin.y, piece: attributeOf(element, "data-piece") };
    }),
    lines: withRole("front-line").map(lineBox),
  };
}
