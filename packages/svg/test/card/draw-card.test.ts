import { Resvg } from "@resvg/resvg-js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawCard } from "../../src/card/draw-card.js";
import { drawMeasurements } from "../../src/card/draw-measurements.js";
import { textBoxes } from "../drawing/text-boxes.js";
import {
  attributeOf,
  byId,
  everyElement,
  numberOf,
  type ReadElement,
  readStrictly,
  readWithSvgson,
} from "../read-svg.js";
import { buildCard, expansion } from "./build.js";
import { papers } from "./example-papers.js";
import { type CardExample, cardExamples, workshop } from "./examples.js";
import { expectWellPictured, pageFaults } from "./expect-well-pictured.js";
import { randomCard } from "./random-card.js";
import { picturesOf, readCard } from "./read-card.js";

function cardOf({ source, number }: CardExample) {
  const card = source.cards.find((other) => other.number === number);
  if (card === undefined) throw new Error("An example names a card of its source.");
  return card;
}

// Pages and names in every script take many milliseconds each, so a quarter of the usual number of cases goes through them.
const slow = { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 4) };

describe("the examples", () => {
  test.each(cardExamples)(
    "$name: is the committed drawing, true in size and well set",
    async (example: CardExample) => {
      const svg = drawCard(example.source, example.number);
      await expect(svg).toMatchFileSnapshot(`../examples/cards/${example.name}.svg`);
      readWithSvgson(svg);
      expectWellPictured(readStrictly(svg), cardOf(example));
    },
  );
});

describe("drawCard", () => {
  const texts = (number: number, unit?: "in" | "mm") =>
    textBoxes(readStrictly(drawCard(workshop, number, unit === undefined ? {} : { unit }))).map(
      ({ text }) => text,
    );

  test("says name, format, closed size, fold and copies", () => {
    expect(texts(1)).toEqual(
      expect.arrayContaining([
        "1 Rooftops",
        "US A7 card, upright, 5 x 7 in closed, fold at the left",
        "13 copies: 12 for guests, 1 sample",
      ]),
    );
  });

  test("tells each piece with its size and paper", () => {
    expect(texts(1)).toEqual(
      expect.arrayContaining(["1b mat", "4 3/4 x 6 3/4 in, Copper glitter", "10 x 7 in flat, Night blue"]),
    );
    expect(texts(2).join(" ")).toContain("8 1/2 x 5 1/2 or 4 1/4 x 11 in flat, Cream");
    expect(texts(5)).toContain("5 x 5 in, any of Star pad");
  });

  test("writes lengths in the unit asked for and draws the same front", () => {
    expect(texts(1, "mm")).toContain("120.65 x 171.45 mm, Copper glitter");
    const fronts = (["in", "mm"] as const).map((unit) =>
      readCard(readStrictly(drawCard(workshop, 1, { unit }))),
    );
    expect(fronts[0]?.layers).toEqual(fronts[1]?.layers);
  });

  test("draws words in their strip, and says them in the call-out where they do not go in", () => {
    expect(readCard(readStrictly(drawCard(workshop, 1))).words.map(({ box }) => box.text)).toEqual([
      "Good night",
    ]);
    const narrow = buildCard({
      number: 1,
      name: "Sliver",
      front: [203_200, 203_200],
      fold: "side",
      base: "cream",
      layers: [
        { purpose: "sentiment", paper: "night", at: [40_640, 40_640, 81_280, 5080], text: "Good night" },
      ],
    });
    const root = readStrictly(drawCard(expansion(papers, [narrow]), 1));
    expect(readCard(root).words).toEqual([]);
    expect(textBoxes(root).map(({ text }) => text)).toContain("2 x 1/8 in, Night blue, “Good night”");
  });

  test("names below the picture what cannot be seen on it", () => {
    expect(texts(10)).toContain("Covered, not to be seen here: 10b panel, 2 x 2 in, Cream");
  });

  test("marks both edges of a card that may be folded along either", () => {
    const { folds } = readCard(readStrictly(drawCard(workshop, 2)));
    expect(folds.map(({ fold, word }) => [fold, word?.text])).toEqual([
      ["side", "fold"],
      ["top", "or fold"],
    ]);
  });

  test("draws each other surface that something lies on, under its name", () => {
    const pictures = (number: number) => [...picturesOf(readStrictly(drawCard(workshop, number))).keys()];
    expect(pictures(1)).toEqual(["front"]);
    expect(pictures(17)).toEqual(["front", "inside", "inside-front", "back"]);
    expect(texts(17)).toEqual(
      expect.arrayContaining(["Front", "Right inside page", "Left inside page", "Back", "17d insert"]),
    );
    expect(texts(1)).not.toContain("Front");
    expect(pictures(14)).toEqual(["front", "page-1", "page-2", "page-3", "page-4", "page-5"]);
  });

  test("shows the doors of a gate on its front, each with its layers, and where they meet", () => {
    const pictures = picturesOf(readStrictly(drawCard(workshop, 11)));
    expect([...pictures.keys()]).toEqual(["front", "inside", "back"]);
    const { front, layers, lines } = readCard(pictures.get("front") as ReadElement);
    expect(layers.map(({ piece }) => piece)).toEqual(["11b", "11c", "11d", "11e"]);
    // 4 1/4 in: the right door begins at 2 1/8 in, and its panel 1/8 in further right.
    expect(layers[1]?.x).toBeCloseTo(2.25 * 25.4, 2);
    expect(lines).toHaveLength(1);
    expect((lines[0]?.x ?? 0) - front.x).toBeCloseTo(2.125 * 25.4, 2);
    expect(texts(11)).toContain("Front: Two doors that meet in the middle.");
  });

  test("shows beside the flap of a z what lies on the inside there", () => {
    const { glimpses, callOuts } = readCard(
      picturesOf(readStrictly(drawCard(workshop, 12))).get("front") as ReadElement,
    );
    expect(glimpses.map(({ piece }) => piece)).toEqual(["12f"]);
    expect(callOuts.map(({ piece }) => piece)).not.toContain("12f");
  });

  test("draws the check ruler 100 mm and 4 in long", () => {
    const root = readStrictly(drawCard(workshop, 6));
    const length = (id: string) => numberOf(byId(root, id), "x2") - numberOf(byId(root, id), "x1");
    expect(length("ruler-100-mm")).toBeCloseTo(100, 9);
    expect(length("ruler-4-in")).toBeCloseTo(101.6, 9);
  });

  test("is painted true in size by a renderer that is no browser (resvg)", () => {
    const svg = drawCard(workshop, 1);
    const { front } = readCard(readStrictly(svg));
    // Ten pixels a millimetre; the row lies in the dark border of the base, and the fold's lines are left out.
    const image = new Resvg(svg, {
      dpi: 254,
      background: "#ffffff",
      font: { loadSystemFonts: false },
    }).render();
    const { pixels, width } = image;
    const row = Math.round((front.y + front.height - 1.5) * 10) * width;
    const dark: number[] = [];
    for (let x = Math.round((front.x - 0.5) * 10); x < width; x += 1) {
      if ((pixels[4 * (row + x)] ?? 255) < 100) dark.push(x);
    }
    expect(Math.abs(Math.min(...dark) / 10 - front.x)).toBeLessThan(0.2);
    expect(Math.abs((Math.max(...dark) + 1) / 10 - front.x - 127)).toBeLessThan(0.6);
    expect(dark.length / 10).toBeGreaterThan(126);
  });

  test("is flat: no gradients, filters, patterns, masks, styles or scripts, and nothing from elsewhere", () => {
    for (const { source, number } of cardExamples) {
      const names = new Set(everyElement(readStrictly(drawCard(source, number))).map(({ name }) => name));
      expect([...names].sort()).toEqual(
        ["circle", "g", "line", "path", "polyline", "rect", "svg", "text", "title", "tspan"].filter((name) =>
          names.has(name),
        ),
      );
    }
  });

  test("keeps any text of a project safe", () => {
    const hostile = `</text><script>"&'\u0000\u202e${"x".repeat(60)}`;
    const card = buildCard({
      number: 1,
      name: hostile,
      front: [203_200, 203_200],
      fold: "side",
      base: "cream",
      layers: [{ purpose: hostile, paper: "night", at: [8128, 8128, 160_000, 60_000], text: hostile }],
    });
    const root = readStrictly(drawCard(expansion(papers, [card]), 1));
    expect(everyElement(root).map(({ name }) => name)).not.toContain("script");
    expectWellPictured(root, card.card);
  });

  test("sets any names and words, in any script", () => {
    fc.assert(
      fc.property(randomCard, fc.string({ unit: "grapheme", maxLength: 60 }), ({ card, pieces }, words) => {
        const layers = card.layers.map((layer) => ({ ...layer, text: layer.text === null ? null : words }));
        const named = {
          title: words,
          units: "in" as const,
          papers: papers.map((paper) => ({ ...paper, name: words })),
          cards: [{ ...card, name: words, layers }],
          pieces: pieces.map((piece) => ({ ...piece, label: `${piece.id} ${words}` })),
          items: [],
        };
        expectWellPictured(readStrictly(drawCard(named, 1)), { ...card, layers });
        for (const page of drawMeasurements(named, 1)) expect(pageFaults(readStrictly(page))).toEqual([]);
      }),
      slow,
    );
  });

  test("refuses a card that is not there, and pieces and faces that are not", () => {
    expect(() => drawCard(workshop, 99)).toThrow("there is no card 99; the cards are 1, 2, 3");
    expect(() => drawCard({ ...workshop, pieces: [] }, 1)).toThrow(
      "cards[0].base: no piece of the cut list has the id 1a.",
    );
    expect(() => drawCard({ ...workshop, papers: [] }, 1)).toThrow(RangeError);
  });

  test.each(["across", "upright"] as const)("points at each of fifty bands that run %s", (runs) => {
    const card = buildCard({
      number: 1,
      name: "Fifty",
      front: [254_000, 254_000],
      fold: "side",
      base: "cream",
      layers: Array.from({ length: 50 }, (_, i) => ({
        purpose: "band",
        paper: i % 2 === 0 ? "night" : "copper",
        block: "bands",
        at: runs === "across" ? [0, i * 5080, 254_000, 5080] : [i * 5080, 0, 5080, 254_000],
      })),
    });
    const root = readStrictly(drawCard(expansion(papers, [card]), 1));
    expectWellPictured(root, card.card);
    expect(readCard(root).callOuts).toHaveLength(50);
  });

  test("makes the same bytes each time", () => {
    expect(drawCard(workshop, 3)).toBe(drawCard(structuredClone(workshop), 3));
  });

  test("draws any card true in size, with call-outs that meet nothing and point at what they name", () => {
    fc.assert(
      fc.property(randomCard, (built) => {
        const svg = drawCard(expansion(papers, [built]), 1);
        const root = readStrictly(svg);
        expectWellPictured(root, built.card);
        expect(attributeOf(root, "data-card")).toBe("1");
      }),
    );
  });
});
