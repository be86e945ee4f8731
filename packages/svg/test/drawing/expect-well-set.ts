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
  faults.push(...markFaults(elements, badges));
  return faults;
}

/** Scores and tops: nothing is written over them, and no cut number covers them. */
function markFaults(elements: readonly ReadElement[], badges: readonly Box[]): readonly string[] {
  const faults: string[] = [];
  const groups = elements.filter((element) => attributeOf(element, "data-of") !== "");
  const written = groups.flatMap((group) =>
    group.children.filter(({ name }) => name === "text").map((text) => textBox(text, OVERHANG)),
  );
  const scores = elements.filter((element) => attributeOf(element, "data-role") === "score").flatMap(linesOf);
  for (const line of scores) {
    for (const text of written) {
      if (runsThrough(line, text)) faults.push(`a score runs through "${text.text}"`);
    }
    if (badges.some((badge) => runsThrough(line, badge))) faults.push("a cut number covers a score");
  }
  const dimensions = groups.flatMap(({ children }) => children.filter(({ name }) => name === "line"));
  for (const dimension of dimensions) {
    const line: Line = [
      numberOf(dimension, "x1"),
      numberOf(dimension, "y1"),
      numberOf(dimension, "x2"),
      numberOf(dimension, "y2"),
    ];
    const crossed = written.filter((text) => runsThrough(line, text));
    faults.push(...crossed.map(({ text }) => `a dimension runs through "${text}"`));
    if (badges.some((badge) => runsThrough(line, badge))) faults.push("a cut number covers a dimension");
  }
  for (const top of elements.filter((element) => attributeOf(element, "data-role") === "top")) {
    const home = elements.find((element) => attributeOf(element, "id") === attributeOf(top, "data-piece"));
    const box = pathBox(top);
    if (home === undefined || excessOf(box, rectBox(home)) > WRITTEN) faults.push("a top leaves its piece");
    if (written.some((text) => overlapOf(box, text) > 0)) faults.push("a top covers a label");
    if (badges.some((badge) => overlapOf(box, badge) > 0)) faults.push("a cut number covers a top");
  }
  return faults;
}

type Line = readonly [x1: number, y1: number, x2: number, y2: number];

/** The lines that dashes make out: dashes with no more than a gap between them are one. */
function linesOf(score: ReadElement): readonly Line[] {
  const dashes = [...attributeOf(score, "d").matchAll(/M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)/g)].map(
    (match) => match.slice(1).map(Number) as unknown as Line,
  );
  return dashes.map(([x1, y1, x2, y2], i) => {
    const [nextX, nextY] = dashes[i + 1] ?? [x2, y2];
    return nextX - x2 + nextY - y2 < 2 ? [x1, y1, nextX, nextY] : [x1, y1, x2, y2];
  });
}

/** Whether a level or upright line runs through the inside of a box. */
function runsThrough([x1, y1, x2, y2]: Line, { x, y, width, height }: Box): boolean {
  return (
    Math.max(x1, x2) > x &&
    Math.min(x1, x2) < x + width &&
    Math.max(y1, y2) > y &&
    Math.min(y1, y2) < y + height
  );
}

/** The box of a path of M, L and Z. */
function pathBox(path: ReadElement): Box {
  const numbers = (attributeOf(path, "d").match(/[\d.]+/g) ?? []).map(Number);
  const xs = numbers.filter((_, i) => i % 2 === 0);
  const ys = numbers.filter((_, i) => i % 2 === 1);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
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
