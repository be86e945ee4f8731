import { ellipsePath, polygonPath, rectanglePath } from "./basic-shapes.js";
import type { OutlinePlace } from "./outline-read-error.js";
import { type PathCommand, parsePath } from "./path-data.js";
import { quoted } from "./quoted.js";
import type { ReadState } from "./rings-of-path.js";
import { placeOf, type SvgElement } from "./svg-element.js";
import { parseSvgLength } from "./svg-length.js";
import { parseNumbers } from "./viewport.js";

/** What percentages are of, in user units. */
interface Viewport {
  readonly width: number;
  readonly height: number;
}

/** What a percentage of a length counts. */
type Side = "width" | "height" | "both";

/** A shape as path commands; `null` where nothing is drawn or a fault was found. @internal */
export function commandsOf(
  element: SvgElement,
  viewport: Viewport,
  state: ReadState,
): readonly PathCommand[] | null {
  const { name, attributes } = element;
  const place = placeOf(element);
  const length = (attribute: string, of: Side) => lengthOfAttribute(element, attribute, viewport, of, state);
  switch (name) {
    case "path":
      return readPathData(attributes.get("d") ?? "", place, state);
    case "rect": {
      const x = length("x", "width");
      const y = length("y", "height");
      const width = length("width", "width");
      const height = length("height", "height");
      const rx = radiusOf(element, "rx", "ry", viewport, state);
      const ry = radiusOf(element, "ry", "rx", viewport, state);
      if (x === null || y === null || width === null || height === null || rx === null || ry === null) {
        return null;
      }
      if (isNegative(place, { width, height, rx, ry }, state) || width === 0 || height === 0) return null;
      return rectanglePath(x, y, width, height, Math.min(rx, width / 2), Math.min(ry, height / 2));
    }
    case "circle": {
      const cx = length("cx", "width");
      const cy = length("cy", "height");
      const r = length("r", "both");
      if (cx === null || cy === null || r === null) return null;
      return isNegative(place, { r }, state) || r === 0 ? null : ellipsePath(cx, cy, r, r);
    }
    case "ellipse": {
      const cx = length("cx", "width");
      const cy = length("cy", "height");
      const rx = radiusOf(element, "rx", "ry", viewport, state);
      const ry = radiusOf(element, "ry", "rx", viewport, state);
      if (cx === null || cy === null || rx === null || ry === null) return null;
      return isNegative(place, { rx, ry }, state) || rx === 0 || ry === 0
        ? null
        : ellipsePath(cx, cy, rx, ry);
    }
    case "line": {
      const ends = [
        length("x1", "width"),
        length("y1", "height"),
        length("x2", "width"),
        length("y2", "height"),
      ];
      return ends.includes(null) ? null : polygonPath(ends as number[], false);
    }
    default: {
      const text = attributes.get("points") ?? "";
      const numbers = parseNumbers(text, 2 * state.budget.commandsLeft);
      if (numbers === "too-many") state.budget.takeCommands(state.budget.commandsLeft + 1, place);
      if (numbers === null || numbers === "too-many" || numbers.length % 2 === 1) {
        malformed(place, "points", text, "finite numbers in pairs of x and y", state);
        return null;
      }
      return polygonPath(numbers, name === "polygon");
    }
  }
}

/** A radius is as large as the other one where it is not given itself. */
function radiusOf(
  element: SvgElement,
  own: "rx" | "ry",
  other: "rx" | "ry",
  viewport: Viewport,
  state: ReadState,
): number | null {
  const isAuto = (attribute: string) => (element.attributes.get(attribute) ?? "auto").trim() === "auto";
  const attribute = isAuto(own) ? other : own;
  if (isAuto(attribute)) return 0;
  return lengthOfAttribute(element, attribute, viewport, attribute === "rx" ? "width" : "height", state);
}

/** In user units, 0 where it is not given; `null` after a fault. @internal */
export function lengthOfAttribute(
  element: SvgElement,
  attribute: string,
  viewport: Viewport,
  of: Side,
  state: ReadState,
): number | null {
  return lengthOf(placeOf(element), attribute, element.attributes.get(attribute) ?? "0", viewport, of, state);
}

/** In user units; `null` after a fault. @internal */
export function lengthOf(
  place: OutlinePlace,
  attribute: string,
  text: string,
  { width, height }: Viewport,
  of: Side,
  state: ReadState,
): number | null {
  const length = parseSvgLength(text, state.settings.unitsPerInch);
  if (typeof length === "string") {
    faultOfLength(place, attribute, text, length, state);
    return null;
  }
  if ("units" in length) return length.units;
  if (of === "both") return length.part * Math.sqrt((width * width + height * height) / 2);
  return length.part * (of === "width" ? width : height);
}

/** @internal */
export function faultOfLength(
  place: OutlinePlace,
  attribute: string,
  text: string,
  why: "not-a-length" | "unknown-unit" | "too-far",
  { faults }: Pick<ReadState, "faults">,
): void {
  const found = quoted(text);
  const story = { found, expected: "a number, or one with px, mm, cm, in, pt or pc" };
  if (why === "unknown-unit") {
    const wrong = `Its ${attribute} is ${found}, in a unit without a fixed size.`;
    faults.add(why, place, { ...story, wrong, help: "Give it in px, mm, cm, in, pt or pc." });
  } else if (why === "too-far") {
    const wrong = `Its ${attribute} is ${found}, more than a number can hold.`;
    faults.add(why, place, { ...story, wrong, help: "Check the number." });
  } else {
    const wrong = `Its ${attribute} is ${found}, which is no length.`;
    const help = "Write a number, or one with px, mm, cm, in, pt or pc.";
    faults.add("malformed-value", place, { ...story, wrong, help });
  }
}

function isNegative(
  place: OutlinePlace,
  lengths: Readonly<Record<string, number>>,
  state: ReadState,
): boolean {
  const negative = Object.entries(lengths).find(([, length]) => length < 0);
  if (negative === undefined) return false;
  badSize(place, negative[0], String(negative[1]), state);
  return true;
}

/** @internal */
export function badSize(
  place: OutlinePlace,
  what: string,
  found: string,
  { faults }: Pick<ReadState, "faults">,
): void {
  faults.add("bad-size", place, {
    wrong: `Its ${what} is ${found}; sizes have to be more than 0.`,
    found,
    expected: "more than 0",
    help: "Draw it anew, or mend the number.",
  });
}

/** @internal */
export function malformed(
  place: OutlinePlace,
  attribute: string,
  text: string,
  expected: string,
  { faults }: Pick<ReadState, "faults">,
): void {
  faults.add("malformed-value", place, {
    wrong: `The attribute ${attribute} is ${quoted(text)}; expected: ${expected}.`,
    found: quoted(text),
    expected,
    help: "Save the file again from the program that made it, or mend the attribute.",
  });
}

/** Path data as commands; `null` where there are none or after a fault. @internal */
export function readPathData(
  text: string,
  place: OutlinePlace,
  { budget, faults }: ReadState,
): readonly PathCommand[] | null {
  if (/^\s*(?:none\s*)?$/.test(text)) return null;
  const { commands, fault } = parsePath(text, budget.commandsLeft);
  if (fault === null) return commands;
  // One more than is left ends the reading.
  if (fault === "too-many") budget.takeCommands(budget.commandsLeft + 1, place);
  else {
    const found = fault.found === "" ? "nothing more" : quoted(fault.found);
    faults.add(fault.isTooLarge ? "too-far" : "malformed-path", place, {
      wrong: `The path data stop making sense at character ${fault.at}: expected ${fault.expected}, found ${found}.`,
      found,
      expected: fault.expected,
      help: "Save the file again from the program that made it, or mend the path there.",
    });
  }
  return null;
}
