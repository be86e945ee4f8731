import { TICKS_PER_MM } from "@sheetwright/measure";
import { describe, expect, test } from "vitest";
import { areaOf } from "../../src/measure/area.js";
import { checkOutline } from "../../src/outline/check-outline.js";
import {
  OutlineReadError,
  type OutlineReadFault,
  type OutlineReadOptions,
  readOutlines,
} from "../../src/svg/index.js";
import { badFiles, fileCount, goodFiles } from "./outline-fixtures.js";
import { pixelArea } from "./pixel-area.js";

const MM2 = TICKS_PER_MM * TICKS_PER_MM;

function faultsOf(read: () => unknown): readonly OutlineReadFault[] {
  try {
    read();
  } catch (error) {
    if (error instanceof OutlineReadError) return error.details;
    throw error;
  }
  return [];
}

const file = (body: string, attributes = 'width="60mm" height="60mm" viewBox="0 0 60 60"') =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>\n${body}\n</svg>`;
const SQUARE = '<path d="M10 10h40v40h-40z"/>';

function notesOf(svg: string, options?: OutlineReadOptions): readonly string[] {
  return readOutlines(svg, options).notes.map(({ code }) => code);
}

describe("files in test-fixtures/outlines", () => {
  test("each is good or bad", () => {
    expect(goodFiles.length + badFiles.length).toBe(fileCount);
    expect(goodFiles.length).toBeGreaterThan(40);
    expect(badFiles.length).toBeGreaterThan(30);
  });

  test.each(goodFiles)("$name: $by", ({ svg, area, parts, windows, notes, box, options }) => {
    const read = readOutlines(svg, options);
    const found = read.outlines.reduce((sum, outline) => sum + areaOf(outline), 0) / MM2;
    // Closed formulas hold to a thousandth, curves of 0.01 mm and corners of a tick included.
    expect(Math.abs(found / area - 1)).toBeLessThan(1e-3);
    expect(read.outlines.length).toBe(parts);
    expect(read.outlines.reduce((sum, outline) => sum + outline.windows.length, 0)).toBe(windows);
    expect(read.notes.map(({ code }) => code).sort()).toEqual(notes);
    if (box !== undefined) {
      const { x, y, width, height } = read.box;
      for (const [index, side] of [x, y, width, height].entries()) {
        expect(Math.abs(side - (box[index] as number) * TICKS_PER_MM)).toBeLessThanOrEqual(16);
      }
    }
    expect(read.outlines.flatMap(checkOutline)).toEqual([]);
  });

  const rendered = goodFiles.filter(({ page }) => page !== undefined);

  test.each(rendered)("$name covers the pixels that a renderer fills", ({ svg, page, options }) => {
    const { outlines } = readOutlines(svg, options);
    const found = outlines.reduce((sum, outline) => sum + areaOf(outline), 0) / MM2;
    const pixels = pixelArea(svg, page as readonly [number, number]);
    expect(Math.abs(found / pixels - 1)).toBeLessThan(5e-3);
  });

  test("most good files are rendered", () => expect(rendered.length).toBeGreaterThan(35));

  test.each(badFiles)("$name is refused", ({ svg, faults, says = "" }) => {
    const found = faultsOf(() => readOutlines(svg));
    expect(found.map(({ code, line, element }) => ({ code, line, element }))).toEqual(faults);
    expect(found.map(({ message }) => message).join("\n")).toContain(says);
    for (const { message, expected, found: what, help } of found) {
      expect(message).toMatch(/[.]$/);
      expect(message).toContain(help);
      expect(expected).not.toBe("");
      expect(what.length).toBeLessThan(120);
    }
  });
});

describe("what is read", () => {
  test("a square keeps its corners to the tick", () => {
    expect(readOutlines(file(SQUARE)).outlines).toEqual([
      {
        outer: [
          { to: { x: 80000, y: 16000 } },
          { to: { x: 80000, y: 80000 } },
          { to: { x: 16000, y: 80000 } },
          { to: { x: 16000, y: 16000 } },
        ],
        windows: [],
      },
    ]);
  });

  test("a circle becomes two arcs", () => {
    const [disc] = readOutlines(file('<circle cx="30" cy="30" r="20"/>')).outlines;
    expect(disc?.outer).toEqual([
      { to: { x: 80000, y: 48000 }, through: { x: 48000, y: 16000 } },
      { to: { x: 16000, y: 48000 }, through: { x: 48000, y: 80000 } },
    ]);
  });

  test("a finer tolerance makes more arcs, and nearer ones", () => {
    const ellipse = file('<ellipse cx="30" cy="30" rx="25" ry="10"/>');
    const [rough, fine] = [64, 4].map((tolerance) => readOutlines(ellipse, { tolerance }).outlines[0]);
    expect(fine?.outer.length).toBeGreaterThan(rough?.outer.length ?? 0);
    expect(Math.abs(areaOf(fine as never) / MM2 - Math.PI * 250)).toBeLessThan(0.05);
  });

  test("the same text gives the same result", () => {
    for (const { svg, options } of goodFiles.slice(0, 10)) {
      expect(JSON.stringify(readOutlines(svg, options))).toBe(JSON.stringify(readOutlines(svg, options)));
    }
  });

  test("units of 72 and 90 to the inch can be told", () => {
    const drawing = '<svg xmlns="http://www.w3.org/2000/svg"><rect width="72" height="90"/></svg>';
    expect(readOutlines(drawing, { unitsPerInch: 72 }).box.width).toBe(40640);
    expect(readOutlines(drawing, { unitsPerInch: 90 }).box.height).toBe(40640);
    expect(readOutlines(drawing, { unitsPerInch: 25.4 }).box).toMatchObject({
      width: 72 * 1600,
      height: 90 * 1600,
    });
  });

  test("a stated size counts, whatever a unit is taken for", () => {
    const drawing = file(SQUARE);
    expect(readOutlines(drawing, { unitsPerInch: 72 })).toEqual(readOutlines(drawing));
  });

  test("shapes of another kind beside the drawing are said", () => {
    expect(notesOf(file(`${SQUARE}<blob/><animate attributeName="x"/>`))).toEqual([
      "unknown-element-left-out",
      "animation-left-out",
    ]);
    expect(notesOf(file(`<g filter="url(#blur)">${SQUARE}</g>`))).toEqual(["filter-not-applied"]);
    expect(
      notesOf(
        file(`<style>g path, rect:hover { fill: red } @media print { path { fill: none } }</style>${SQUARE}`),
      ),
    ).toEqual(["style-rule-left-out"]);
  });

  test("what a nested drawing or a symbol cuts off is said", () => {
    const nested = (more: string) =>
      file(
        `<svg x="10" y="10" width="30" height="30" viewBox="0 0 3 3"${more}><rect x="1" y="1" width="4" height="1"/></svg>`,
      );
    expect(notesOf(nested(""))).toEqual(["clip-not-applied"]);
    expect(notesOf(nested(' overflow="visible"'))).toEqual([]);
    const symbol = (width: number) =>
      file(`<symbol id="a" viewBox="0 0 3 3"><rect width="${width}" height="3"/></symbol>
        <use href="#a" width="30" height="30" transform="translate(30 10) rotate(30) scale(.5 1)"/>`);
    expect(notesOf(symbol(3))).toEqual([]);
    expect(notesOf(symbol(4))).toEqual(["clip-not-applied"]);
  });

  test("a mark of the byte order before the file is no fault, nor are line ends of two characters", () => {
    const marked = `\uFEFF${file(SQUARE)}`.replaceAll("\n", "\r\n");
    expect(readOutlines(marked).outlines).toEqual(readOutlines(file(SQUARE)).outlines);
  });

  test("an element stands at the line where it starts", () => {
    expect(faultsOf(() => readOutlines(file('<path\n d="M0 0"\n transform="x"\n/>')))[0]?.line).toBe(2);
  });

  test("open lines are left out where that is asked for", () => {
    const { outlines, notes } = readOutlines(file(`<line x2="30"/><path d="M1 1h3"/>${SQUARE}`), {
      leaveOut: ["open-paths"],
    });
    expect(outlines.length).toBe(1);
    expect(notes).toEqual([
      {
        code: "open-path-left-out",
        line: 2,
        element: "line",
        count: 2,
        message: "A line that is not closed was left out. (So 2 times.)",
      },
    ]);
  });

  test("curves that touch within the tolerance do not cross", () => {
    // Two discs, a lens and a ring that touch each other, in one path.
    const touching = `<path d="M10 30a10 10 0 1 0 20 0a10 10 0 1 0-20 0z M30 30a10 10 0 1 0 20 0a10 10 0 1 0-20 0z
      M20 20C23 12 37 12 40 20C37 17 23 17 20 20z"/>`;
    expect(faultsOf(() => readOutlines(file(touching)))).toEqual([]);
  });

  test("cut lines that cross are joined where that is asked for, and windows stay windows", () => {
    const lines = `<g fill="none" stroke="black"><rect x="10" y="10" width="30" height="30"/>
      <rect x="20" y="20" width="30" height="30"/><circle cx="30" cy="30" r="5"/></g>`;
    const { outlines } = readOutlines(file(lines), { mergeCrossings: true });
    expect(outlines.length).toBe(1);
    expect(outlines[0]?.windows.length).toBe(1);
    expect(areaOf(outlines[0] as never) / MM2).toBeCloseTo(1400 - Math.PI * 25, 1);
  });

  test("the stronger of two style rules counts, and importance before all", () => {
    const hidden = (css: string, style = "") =>
      faultsOf(() =>
        readOutlines(file(`<style>${css}</style><path id="a" class="b c" style="${style}" d="M1 1h9v9z"/>`)),
      ).length > 0;
    expect(hidden("#a{display:inline} .b.c{display:none} path{display:none}")).toBe(false);
    expect(hidden(".b{display:inline} .b.c{display:none}")).toBe(true);
    expect(hidden(".b{display:none} .c{display:inline}")).toBe(false);
    expect(hidden("#a{display:none}", "display: inline")).toBe(false);
    expect(hidden("*{display:none!important}", "display: inline")).toBe(true);
    expect(hidden(".d, path.b {display:none}")).toBe(true);
    expect(hidden("/* .b{display:none} */ .b > path {display:none}")).toBe(false);
  });
});

describe("mistakes", () => {
  test("all are collected, the first ten are shown", () => {
    const many = file('<path d="M0 0h5"/>'.repeat(250));
    try {
      readOutlines(many);
      expect.unreachable();
    } catch (error) {
      const { code, details, message } = error as OutlineReadError;
      expect(code).toBe("open-path");
      expect(details.length).toBe(100);
      expect(message.split("\n").length).toBe(11);
      expect(message).toContain("And 90 more.");
    }
  });

  test("options that make no sense are a RangeError, no text a TypeError", () => {
    expect(() => readOutlines(file(SQUARE), { tolerance: 0 })).toThrow(RangeError);
    expect(() => readOutlines(file(SQUARE), { unitsPerInch: Number.NaN })).toThrow("Expected unitsPerInch");
    expect(() => readOutlines(undefined as never)).toThrow(TypeError);
  });
});
