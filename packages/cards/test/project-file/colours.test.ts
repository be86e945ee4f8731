import { describe, expect, it } from "vitest";
import { readProject } from "../../src/index.js";
import { colourSaid } from "../../src/project-file/colour-words.js";
import { colourGiver } from "../../src/project-file/colours.js";
import { SMALLEST } from "./sample-projects.js";

const MATERIALS = ["cardstock", "paper", "glitter", "pad"] as const;
/** The ink of the drawings, and the contrast that WCAG 2.1, 1.4.3, asks of text. */
const INK = "#1a1a1a";
const READABLE = 4.5;

/** Relative luminance as WCAG 2.1 defines it. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const value = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

describe("the colours of papers that name none", () => {
  it("are all different, for far more papers than anybody has", () => {
    const give = colourGiver([]);
    const colours = MATERIALS.flatMap((material) => Array.from({ length: 500 }, () => give(material, "")));
    expect(new Set(colours).size).toBe(colours.length);
    for (const colour of colours) expect(colour).toMatch(/^#[0-9a-f]{6}$/);
  });

  it("can be read with dark ink on them", () => {
    const give = colourGiver([]);
    for (const material of MATERIALS) {
      for (let count = 0; count < 500; count++) {
        const contrast = (luminance(give(material, "")) + 0.05) / (luminance(INK) + 0.05);
        expect(contrast).toBeGreaterThan(READABLE);
      }
    }
  });

  it("leave out those that the file names, in whatever way it writes them", () => {
    const first = colourGiver([])("cardstock", "");
    const text = SMALLEST.replace(
      "cards:",
      `  other: { paper: us-letter, colour: "${first.toUpperCase()}" }\ncards:`,
    );
    const colours = readProject(text).project?.papers.map(({ designs }) => designs[0]?.front.colour);
    expect(colours?.[1]).toBe(first);
    expect(colours?.[0]).not.toBe(first);
  });

  it("are those that their names say, each a shade of its own, and as readable", () => {
    const give = colourGiver([]);
    const green = give("cardstock", "Fir green");
    expect(give("paper", "")).toBe(colourGiver([])("paper", ""));
    expect(green).toBe(colourSaid("GREEN"));
    const other = give("pad", "Moss-green leaves");
    expect(other).not.toBe(green);
    for (const one of [green, other]) {
      const [red = 0, middle = 0, blue = 0] = [1, 3, 5].map((at) =>
        Number.parseInt(one.slice(at, at + 2), 16),
      );
      expect(middle).toBeGreaterThan(Math.max(red, blue));
    }
    for (let count = 0; count < 300; count++) {
      const contrast = (luminance(give("glitter", "black")) + 0.05) / (luminance(INK) + 0.05);
      expect(contrast).toBeGreaterThan(READABLE);
    }
  });

  it("are found in whole words alone, the last of them first", () => {
    expect(colourSaid("Night blue")).toBe(colourSaid("blue"));
    expect(colourSaid("Gold on cream, 12 x 12")).toBe(colourSaid("cream"));
    expect(colourSaid("Evergreen")).toBeNull();
    expect(colourSaid("constructor")).toBeNull();
    expect(colourSaid("")).toBeNull();
  });

  it("are given anyway when all are taken", () => {
    const give = colourGiver([]);
    for (let count = 0; count < 5000; count++) give("glitter", "");
    expect(give("glitter", "")).toMatch(/^#[0-9a-f]{6}$/);
  });
});
