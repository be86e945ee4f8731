import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitLabel, type LabelText } from "../../src/drawing/fit-label.js";
import { SMALLEST_TEXT } from "../../src/drawing/look.js";
import { ascentOf, lineHeightOf, OVERHANG, textWidth } from "../../src/text/text-width.js";
import { excessOf } from "./text-boxes.js";

const at = (width: number, height: number) => ({ x: 10, y: 20, width, height });
const mat: LabelText = { words: ["Rooftops", "mat"], mayShorten: true, size: "4 x 5 1/4 in", number: "7" };
const texts = (label: ReturnType<typeof fitLabel>) => label?.lines.map(({ text }) => text);

describe("fitLabel", () => {
  test("sets name and size large where there is room", () => {
    const label = fitLabel(at(80, 60), mat);
    expect(texts(label)).toEqual(["Rooftops mat", "4 x 5 1/4 in"]);
    expect(label).toMatchObject({ shows: "all", upwards: false });
    expect(label?.lines[0]?.size).toBe(4.2);
  });

  test("breaks the name before it makes the text smaller", () => {
    expect(texts(fitLabel(at(30, 30), mat))).toEqual(["Rooftops", "mat", "4 x 5 1/4 in"]);
  });

  test("reads upwards in a narrow upright piece, both in one line in a strip", () => {
    expect(fitLabel(at(12, 80), mat)).toMatchObject({ upwards: true, shows: "all" });
    const strip = fitLabel(at(6.35, 100), mat);
    expect(strip).toMatchObject({ upwards: true, shows: "all" });
    expect(texts(strip)).toEqual(["Rooftops mat, 4 x 5 1/4 in"]);
  });

  test("shortens a long name behind its number", () => {
    const long = { ...mat, words: ["Straßenlaternenbeleuchtungsanlage"] };
    const label = fitLabel(at(25, 12), long);
    expect(label?.shows).toBe("short");
    expect(label?.lines[0]?.text).toMatch(/^7 Straß.*…$/);
    expect(texts(fitLabel(at(25, 12), { ...long, mayShorten: false }))).toEqual(["7"]);
  });

  test("gives way step by step: the name alone, the number, nothing", () => {
    expect(texts(fitLabel(at(14, 9), { ...mat, words: ["Mat"] }))).toEqual(["Mat"]);
    expect(texts(fitLabel(at(6.35, 6.35), mat))).toEqual(["7"]);
    expect(fitLabel(at(3, 3), mat)).toBe(null);
    expect(fitLabel(at(6.35, 6.35), { ...mat, number: null })).toBe(null);
  });

  test("stays inside its box, line below line, never under 7 pt, and says the whole or gives the number", () => {
    const word = fc.string({ minLength: 1, maxLength: 14 }).filter((text) => !/[ ,]/.test(text));
    const label = fc.record({
      words: fc.array(word, { minLength: 1, maxLength: 6 }),
      mayShorten: fc.boolean(),
      size: fc.option(fc.constantFrom("4 x 5 1/4 in", "1/4 x 1/4 in", "215.9 x 279.4 mm")),
      number: fc.option(fc.nat(200).map(String)),
    });
    const side = fc.double({ min: 0.5, max: 120, noNaN: true });
    fc.assert(
      fc.property(side, side, label, (width, height, text) => {
        const box = at(width, height);
        const found = fitLabel(box, text);
        if (found === null) return;
        expect(excessOf(found.box, box)).toBeLessThanOrEqual(1e-9);
        found.lines.forEach(({ text: line, size, down }, i) => {
          expect(size).toBeGreaterThanOrEqual(SMALLEST_TEXT);
          const along = textWidth(line, size) + 2 * OVERHANG;
          const top = down - ascentOf(size, line);
          const across = lineHeightOf(size, line);
          const lineBox = found.upwards
            ? { x: found.x + top, y: found.y - along / 2, width: across, height: along }
            : { x: found.x - along / 2, y: found.y + top, width: along, height: across };
          expect(excessOf(lineBox, found.box)).toBeLessThanOrEqual(1e-9);
          const before = found.lines[i - 1];
          // Lines of one label keep their letters apart: 0.3 em under a baseline, 0.75 em over one.
          if (before !== undefined)
            expect(down - before.down).toBeGreaterThan(0.3 * before.size + 0.75 * size);
        });
        const said = texts(found)?.join(" ");
        const name = text.words.join(" ");
        if (found.shows === "all")
          expect(said?.replace(", ", " ")).toBe(
            `${name}${text.size === null ? "" : ` ${text.size}`}`.replace(", ", " "),
          );
        if (found.shows === "name") expect(said).toBe(name);
        if (found.shows === "short") expect(said?.startsWith(`${text.number} `)).toBe(true);
        if (found.shows === "number") expect(said).toBe(text.number);
      }),
    );
  });
});
