/** Goes through a drawing as a viewer would and collects the shapes that it shows. */

import type { Point } from "../outline/point.js";
import { type Appearance, inherited, isFilled, isStroked, isZero } from "./appearance.js";
import type { DrawnShape } from "./join-shapes.js";
import { after, inverseOf, type Matrix, mapPoint, parseTransform, scaling, shifting } from "./matrix.js";
import type { OutlinePlace } from "./outline-read-error.js";
import type { SvgDocument } from "./parse-document.js";
import { quoted } from "./quoted.js";
import { type ReadState, ringsOfPath } from "./rings-of-path.js";
import { badSize, commandsOf, lengthOf, lengthOfAttribute, malformed } from "./shape-commands.js";
import type { StyleProperty, StyleRules } from "./style-rules.js";
import { placeOf, type SvgElement } from "./svg-element.js";
import { fitViewBox, parseViewBox } from "./viewport.js";

/** What is handed down. */
interface Surroundings {
  /** To ticks. */
  readonly matrix: Matrix;
  /** What percentages are of, in user units. */
  readonly width: number;
  readonly height: number;
  readonly appearance: Appearance;
  readonly depth: number;
  /** The elements that `use` is drawing. */
  readonly using: readonly SvgElement[];
}

/** Shown by nothing, or only where something else asks for it. */
const NOT_DRAWN: ReadonlySet<string> = new Set(
  "clipPath color-profile cursor defs desc filter font font-face hatch linearGradient marker mask metadata pattern radialGradient script solidcolor style symbol title view".split(
    " ",
  ),
);
const ANIMATIONS: ReadonlySet<string> = new Set([
  "animate",
  "animateColor",
  "animateMotion",
  "animateTransform",
  "set",
]);
const SHAPES: ReadonlySet<string> = new Set([
  "path",
  "rect",
  "circle",
  "ellipse",
  "line",
  "polyline",
  "polygon",
]);

/** A drawing being gone through. @internal */
export class Walk {
  readonly #document: SvgDocument;
  readonly #rules: StyleRules;
  readonly #state: ReadState;
  readonly shapes: DrawnShape[] = [];
  /** Pictures made of pixels that are shown. */
  images = 0;

  constructor(document: SvgDocument, rules: StyleRules, state: ReadState) {
    this.#document = document;
    this.#rules = rules;
    this.#state = state;
  }

  /** Draws what lies in an element. */
  drawChildren(element: SvgElement, surroundings: Surroundings): void {
    for (const child of element.children) this.draw(child, surroundings);
  }

  draw(element: SvgElement, outside: Surroundings): void {
    const { name, attributes } = element;
    const { budget, notes, faults, settings } = this.#state;
    const place = placeOf(element);
    if (NOT_DRAWN.has(name)) return;
    if (ANIMATIONS.has(name)) {
      notes.add("animation-left-out", place, "An animation was left out; the drawing is read as it starts.");
      return;
    }
    budget.takeElement(place);
    budget.takeCharacters(element, place);
    budget.checkDepth(outside.depth, place);
    const style = this.#rules.styleOf(element);
    if (style.get("display") === "none" || isZero(style.get("opacity") ?? "1")) {
      notes.add("hidden-left-out", place, "It is hidden, and was left out.");
      return;
    }
    const matrix = this.#matrixOf(element, style, outside.matrix);
    if (matrix === null) return;
    this.#noteEffects(style, place);
    const appearance = inherited(outside.appearance, style);
    const inside: Surroundings = { ...outside, matrix, appearance, depth: outside.depth + 1 };
    switch (name) {
      case "g":
      case "a":
        this.drawChildren(element, inside);
        return;
      case "svg":
        this.#drawNested(element, inside, attributes.get("width"), attributes.get("height"));
        return;
      case "switch": {
        const first = element.children.find(
          (child) => !child.attributes.has("requiredExtensions") && !child.attributes.has("systemLanguage"),
        );
        if (first !== undefined) this.draw(first, inside);
        return;
      }
      case "use":
        this.#drawUsed(element, inside);
        return;
      case "image":
        this.images += 1;
        notes.add("image-left-out", place, "A picture was left out; it has no outline that can be cut.");
        return;
      case "text":
        if (settings.leaveOut.includes("text")) {
          notes.add("text-left-out", place, "Text was left out.");
          return;
        }
        faults.add("unsupported", place, {
          wrong: "Text has no outlines of its own in the file.",
          found: "text",
          expected: "paths",
          help: "Convert the text to paths in the drawing program (often called outlines or curves), or leave it out.",
        });
        return;
      case "foreignObject":
        faults.add("unsupported", place, {
          wrong: "It holds something that is no SVG.",
          found: "foreignObject",
          expected: "paths and shapes",
          help: "Save the file as plain SVG.",
        });
        return;
      default:
        if (SHAPES.has(name)) this.#drawShape(element, inside);
        else {
          notes.add(
            "unknown-element-left-out",
            place,
            `SVG draws no element <${quoted(name).slice(1, -1)}>; it was left out.`,
          );
        }
    }
  }

  #matrixOf(element: SvgElement, style: ReadonlyMap<StyleProperty, string>, outer: Matrix): Matrix | null {
    const text = style.get("transform") ?? element.attributes.get("transform");
    if (text === undefined) return outer;
    const place = placeOf(element);
    const origin = style.get("transform-origin");
    if (origin !== undefined && !/^(?:0(?:px)?(?:\s+0(?:px)?)*)$/.test(origin)) {
      this.#state.faults.add("unsupported", place, {
        wrong: `A transform about another point than the corner (${quoted(origin)}) is not read.`,
        found: quoted(origin),
        expected: "no transform-origin",
        help: "Apply the transform to the shapes in the drawing program.",
      });
      return null;
    }
    const matrix = parseTransform(text);
    if (matrix !== null) return after(outer, matrix);
    malformed(
      place,
      "transform",
      text,
      "transforms of finite numbers, such as translate(10 20) rotate(45)",
      this.#state,
    );
    return null;
  }

  #noteEffects(style: ReadonlyMap<StyleProperty, string>, place: OutlinePlace): void {
    const { notes } = this.#state;
    const has = (property: StyleProperty) => (style.get(property) ?? "none") !== "none";
    if (has("clip-path")) {
      notes.add("clip-not-applied", place, "Its clip path was not applied: it is read whole.");
    }
    if (has("mask")) notes.add("mask-not-applied", place, "Its mask was not applied: it is read whole.");
    if (has("filter")) {
      notes.add("filter-not-applied", place, "Its filter was not applied: it is read as it is drawn.");
    }
  }

  /** A drawing in the drawing, or a symbol. */
  #drawNested(
    element: SvgElement,
    outside: Surroundings,
    widthText: string | undefined,
    heightText: string | undefined,
  ): void {
    const { attributes } = element;
    const place = placeOf(element);
    const x = element.name === "svg" ? lengthOfAttribute(element, "x", outside, "width", this.#state) : 0;
    const y = element.name === "svg" ? lengthOfAttribute(element, "y", outside, "height", this.#state) : 0;
    const width = lengthOf(place, "width", widthText ?? "100%", outside, "width", this.#state);
    const height = lengthOf(place, "height", heightText ?? "100%", outside, "height", this.#state);
    if (x === null || y === null || width === null || height === null) return;
    if (!(width > 0 && height > 0)) {
      if (width < 0 || height < 0)
        badSize(place, "width or height", String(Math.min(width, height)), this.#state);
      return;
    }
    const shifted = after(outside.matrix, shifting(x, y));
    const before = this.shapes.length;
    const text = attributes.get("viewBox");
    if (text === undefined) {
      this.drawChildren(element, { ...outside, matrix: shifted, width, height });
      this.#noteClipping(element, shifted, { width, height }, before);
      return;
    }
    const box = parseViewBox(text);
    if (box === null) {
      malformed(place, "viewBox", text, "four numbers", this.#state);
      return;
    }
    if (!(box.width > 0 && box.height > 0)) {
      badSize(place, "viewBox", quoted(text), this.#state);
      return;
    }
    const aspect = attributes.get("preserveAspectRatio");
    const fit = fitViewBox(box, { width, height }, aspect);
    if (fit === null) {
      malformed(
        place,
        "preserveAspectRatio",
        aspect ?? "",
        "a word such as xMidYMid, and meet or slice",
        this.#state,
      );
      return;
    }
    this.drawChildren(element, {
      ...outside,
      matrix: after(shifted, fit),
      width: box.width,
      height: box.height,
    });
    this.#noteClipping(element, shifted, { width, height }, before);
  }

  /** A drawing in a drawing shows nothing beyond its own edges, unless it says so. */
  #noteClipping(
    element: SvgElement,
    matrix: Matrix,
    size: { readonly width: number; readonly height: number },
    before: number,
  ): void {
    const overflow = this.#rules.styleOf(element).get("overflow");
    if (overflow === "visible" || overflow === "auto") return;
    const { tolerance } = this.#state.settings;
    // Seen from where the drawing's corner is the origin and its sides are 1 long.
    const inverse = inverseOf(after(matrix, scaling(size.width, size.height)));
    if (inverse === null) return;
    const slack = tolerance * Math.max(...[inverse.a, inverse.b, inverse.c, inverse.d].map(Math.abs)) * 2;
    const isBeyond = ({ x, y }: Point) => Math.min(x, y) < -slack || Math.max(x, y) > 1 + slack;
    const points = this.shapes
      .slice(before)
      .flatMap(({ rings }) =>
        rings.flatMap((ring) =>
          ring.flatMap((edge) => ("through" in edge ? [edge.to, edge.through] : [edge.to])),
        ),
      );
    if (points.some((point) => isBeyond(mapPoint(inverse, point)))) {
      const sentence = "It is shown cut off at its edges, but was read whole.";
      this.#state.notes.add("clip-not-applied", placeOf(element), sentence);
    }
  }

  #drawUsed(element: SvgElement, outside: Surroundings): void {
    const { attributes } = element;
    const { faults, budget } = this.#state;
    const place = placeOf(element);
    const href = (attributes.get("href") ?? "").trim();
    if (!href.startsWith("#")) {
      faults.add(href === "" ? "missing-reference" : "external-reference", place, {
        wrong:
          href === ""
            ? "It does not say what it uses."
            : `What it uses lies in another file (${quoted(href)}), which is never fetched.`,
        found: quoted(href),
        expected: "the id of an element of this file, such as #leaf",
        help: "Copy the part into this file.",
      });
      return;
    }
    const used = this.#document.ids.get(href.slice(1));
    if (used === undefined) {
      faults.add("missing-reference", place, {
        wrong: `There is no element of the id ${quoted(href.slice(1))}.`,
        found: quoted(href),
        expected: "the id of an element of this file",
        help: "Take the element out, or put back what it uses.",
      });
      return;
    }
    if (outside.using.includes(used)) {
      faults.add("circular-reference", place, {
        wrong: `It uses ${placeOf(used).element}, in which it lies itself.`,
        found: quoted(href),
        expected: "an element that does not use this one",
        help: "Take the element out.",
      });
      return;
    }
    const x = lengthOfAttribute(element, "x", outside, "width", this.#state);
    const y = lengthOfAttribute(element, "y", outside, "height", this.#state);
    if (x === null || y === null) return;
    const inside: Surroundings = {
      ...outside,
      matrix: after(outside.matrix, shifting(x, y)),
      using: [...outside.using, used],
    };
    if (used.name === "symbol") {
      budget.takeElement(place);
      budget.checkDepth(outside.depth, place);
      const style = this.#rules.styleOf(used);
      const matrix = this.#matrixOf(used, style, inside.matrix);
      if (matrix === null || style.get("display") === "none") return;
      const appearance = inherited(inside.appearance, style);
      const within = { ...inside, matrix, appearance, depth: inside.depth + 1 };
      this.#drawNested(used, within, attributes.get("width"), attributes.get("height"));
    } else this.draw(used, inside);
  }

  #drawShape(element: SvgElement, surroundings: Surroundings): void {
    const { appearance, matrix } = surroundings;
    const { notes, budget } = this.#state;
    const place = placeOf(element);
    if (appearance.visibility !== "visible") {
      notes.add("hidden-left-out", place, "It is hidden, and was left out.");
      return;
    }
    const filled = isFilled(appearance);
    const stroked = isStroked(appearance);
    if (!filled && !stroked) {
      notes.add("invisible-left-out", place, "It has neither a fill nor a stroke, and was left out.");
      return;
    }
    const commands = commandsOf(element, surroundings, this.#state);
    if (commands === null) return;
    budget.takeCommands(commands.length, place);
    if (stroked) {
      notes.add(
        "stroke-width",
        place,
        "The width of its stroke was left out: the outline is the middle of the line.",
      );
    }
    const rings = ringsOfPath(commands, matrix, place, this.#state);
    if (rings.length === 0) return;
    const fillRule = appearance.fillRule === "evenodd" ? "evenodd" : "nonzero";
    this.shapes.push({ rings, fillRule, isFilled: filled, place });
  }
}
