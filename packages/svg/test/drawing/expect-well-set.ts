import { expect } from "vitest";
import { OVERHANG } from "../../src/text/text-width.js";
import { attributeOf, byId, everyElement, numberOf, type ReadElement } from "../read-svg.js";
import { type Box, excessOf, overlapOf, overlappingPairs, rectBox, textBox } from "./text-boxes.js";

/** Coordinates are written to 0.001 mm, so boxes built from them are off by at most that. */
const WRITTEN = 0.002;
/** 7 pt in millimetres. */
export const SEVEN_POINTS = (7 * 25.4) / 72;

/** The rules that every drawing keeps, whatever it shows: all faults are told at once. */
export function expectWellSet(root: ReadElement): void {
  expect(faultsOf(root)).toEqual([]);
}

function faultsOf(root: ReadElement): readonly string[] {
  const faults: string[] = [];
  const page = rectBox(byId(root, "page"));
  if (attributeOf(root, "viewBox") !== `0 0 ${page.width} ${page.height}`)
    faults.push("viewBox is not the page");
  if (attributeOf(root, "width") !== `${page.width}mm`) faults.push("width is not the page's");
  if (attributeOf(root, "height") !== `${page.height}mm`) faults.push("height is not the page's");

  const elements = everyElement(root);
  const ids = elements.map((element) => attributeOf(element, "id")).filter((id) => id !== "");
  if (new Set(ids).size !== ids.length) faults.push("an id comes twice");
  faults.push(...ids.filter((id) => !/^[a-z0-9-]+$/.test(id)).map((id) => `the id ${id} is not plain ASCII`));

  const texts = elements.filter(({ name }) => name === "text").map((element) => textBox(element));
  for (const text of texts) {
    if (!(text.size >= SEVEN_POINTS)) faults.push(`"${text.text}" is smaller than 7 pt`);
    if (excessOf(text, page) > 0) faults.push(`"${text.text}" leaves the page`);
  }
  for (const [a, b] of overlappingPairs(texts, WRITTEN)) faults.push(`"${a.text}" overlaps "${b.text}"`);

  for (const element of elements) {
    if (element.name === "rect" && excessOf(rectBox(element), page) > WRITTEN)
      faults.push("a rect leaves the page");
    if (element.name === "line") {
      const xs = [numberOf(element, "x1"), numberOf(element, "x2")];
      const ys = [numberOf(element, "y1"), numberOf(element, "y2")];
      if (!(Math.min(...xs, ...ys) >= 0 && Math.max(...xs) <= page.width && Math.max(...ys) <= page.height)) {
        faults.push("a line leaves the page");
      }
    }
  }

  const badges = elements
    .filter((element) => /^cut-number-\d+$/.test(attributeOf(element, "id")))
    .flatMap(({ children }) => children.filter(({ name }) => name === "rect").map(rectBox));
  if (overlappingPairs(badges, 0).length > 0) faults.push("a cut number covers another");
  faults.push(...labelFaults(root, elements, badges));
  return faults;
}

function labelFaults(
  root: ReadElement,
  elements: readonly ReadElement[],
  badges: readonly Box[],
): readonly string[] {
  const faults: string[] = [];
  const sheet = rectBox(byId(root, "sheet-1"));
  const homes = new Map(elements.map((element) => [attributeOf(element, "id"), element]));
  for (const group of elements.filter((element) => attributeOf(element, "data-of") !== "")) {
    const home = rectBox(homes.get(attributeOf(group, "data-of")) as ReadElement);
    // Browsers may round the ends of a label outwards.
    for (const line of group.children
      .filter(({ name }) => name === "text")
      .map((text) => textBox(text, OVERHANG))) {
      if (excessOf(line, home) > 0) faults.push(`"${line.text}" leaves its piece`);
      if (excessOf(line, sheet) > 0) faults.push(`"${line.text}" leaves the sheet`);
      if (badges.some((badge) => overlapOf(badge, line) > 0))
        faults.push(`a cut number covers "${line.text}"`);
    }
  }
  return faults;
}
