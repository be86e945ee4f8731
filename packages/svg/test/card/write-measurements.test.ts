import { inches } from "@sheetwright/measure";
import type { SurfaceName } from "@sheetwright/planner";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { writeMeasurements } from "../../src/card/write-measurements.js";
import { columnsOf } from "../../src/cut-list/text-columns.js";
import { buildCard, expansion, paper } from "./build.js";
import { papers } from "./example-papers.js";
import { type CardExample, cardExamples, workshop } from "./examples.js";
import { randomCard } from "./random-card.js";

const at = (x: number, y: number, width: number, height: number) =>
  [inches(x), inches(y), inches(width), inches(height)] as const;

function expectNarrow(text: string): void {
  for (const line of text.split("\n")) expect(columnsOf(line)).toBeLessThanOrEqual(76);
}

describe("the examples", () => {
  test.each(cardExamples)("$name: is the committed text", async ({ name, source, number }: CardExample) => {
    const text = writeMeasurements(source, number);
    await expect(text).toMatchFileSnapshot(`../examples/cards/${name}.txt`);
    expectNarrow(text);
  });
});

describe("writeMeasurements", () => {
  /** A text without its line breaks. */
  const flowing = (text: string) => text.replace(/\s+/g, " ");

  test("lists every piece with its paper and its size in both units, the project's first", () => {
    const lines = writeMeasurements(workshop, 1).split("\n");
    expect(lines).toContain("  piece             paper             in             mm");
    expect(lines).toContain("  1b mat            Copper glitter    4 3/4 x 6 3/4  120.65 x 171.45");
    const metric = writeMeasurements(workshop, 1, { unit: "mm" }).split("\n");
    expect(metric).toContain("  1b mat            Copper glitter    120.65 x 171.45  4 3/4 x 6 3/4");
  });

  test("says how a base is scored and folded, for either fold where there are two", () => {
    const text = flowing(writeMeasurements(workshop, 2));
    expect(text).toContain("Score 2a base 4 1/4 in (107.95 mm) from its left edge, from top to bottom");
    expect(text).toContain("Or: Score 2a base 5 1/2 in (139.7 mm) from its top edge, from side to side");
  });

  test("cuts a die blank by its die before its shape is laid, and says the size of both", () => {
    const [card, ...others] = workshop.cards;
    const [layer] = card?.layers ?? [];
    const piece = workshop.pieces.find(({ id }) => id === layer?.piece);
    if (card === undefined || layer === undefined || piece === undefined) throw new Error("no layer");
    const blank = {
      ...piece.forms[0]!,
      width: layer.width + inches(0.5),
      height: layer.height + inches(0.5),
    };
    const die = { name: "star", cut: { width: layer.width, height: layer.height } };
    const source = {
      ...workshop,
      cards: [card, ...others],
      pieces: workshop.pieces.map((one) => (one === piece ? { ...one, forms: [blank], die } : one)),
    };
    const text = flowing(writeMeasurements(source, 1));
    expect(text).toContain(
      "1b mat Copper glitter 5 1/4 x 7 1/4 133.35 x 184.15 cut by the die star, 4 3/4 x 6 3/4 in;",
    );
    expect(text).toContain(
      "Cut 1b mat by the die star, 4 3/4 x 6 3/4 in. 3. Lay the shape of 1b mat on the front",
    );
    expect(text).toContain("Keep fingers, hair and sleeves away from the rollers");
  });

  test("lays bands in one step, and a cover on the seam that it hides", () => {
    const text = flowing(writeMeasurements(workshop, 1));
    expect(text).toContain(
      "3. Lay 1c band and 1d band edge to edge, from the top down, on 1b mat: together 1/8 in border",
    );
    expect(text).toContain("4. Lay 1e cover on 1c band and 1d band, its middle on the seam of 1c and 1d:");
  });

  test("lays a cover on each door of a gate, on the seam of that door's bands", () => {
    const door = (surface: SurfaceName, first: number) => {
      const band = (y: number, height: number) =>
        ({ purpose: "band", paper: "cream", at: at(0, y, 2.5, height), block: surface, surface }) as const;
      return [
        band(0, 4.5),
        band(4.5, 2.5),
        { purpose: "cover", paper: "night", at: at(0, 4.25, 2.5, 0.5), on: first, surface },
      ];
    };
    const note = { number: 1, name: "Gate", front: [inches(5), inches(7)] as const, base: "night" };
    const layers = [...door("left-door", 0), ...door("right-door", 3)];
    const built = buildCard({ ...note, fold: "gate", layers });
    const text = flowing(writeMeasurements(expansion(papers, [built]), 1));
    expect(text).toContain("Lay 1d cover on 1b band and 1c band, its middle on the seam of 1b and 1c:");
    expect(text).toContain("Lay 1g cover on 1e band and 1f band, its middle on the seam of 1e and 1f:");
  });

  test("says that a line of thirds was rounded, from the edge that it was measured from", () => {
    const { source, number } = cardExamples.find(({ name }) => name === "nachtlicht") as CardExample;
    // 136 mm in thirds: 90 2/3, to the nearest 0.5 mm 90.5.
    expect(flowing(writeMeasurements(source, number))).toContain(
      "7f sentiment mat is centred on a line of thirds, rounded to a mark of the ruler: its middle lies 90.5 mm from the top of 7c to 7e.",
    );
  });

  test("tells the maker's way from what is only wished for", () => {
    const { card, pieces } = buildCard({
      number: 1,
      name: "Must",
      front: [inches(5), inches(7)],
      fold: "side",
      base: "night",
      layers: [{ purpose: "mat", paper: "stars.comets", at: [inches(1), inches(1), inches(2), inches(2)] }],
    });
    const [base, mat] = pieces;
    if (base === undefined || mat === undefined) throw new Error("A card with a layer has two pieces.");
    const [form] = mat.forms;
    const along = form === undefined ? [] : [{ ...form, grainAlong: "width" as const }];
    const strict = [
      { ...base, grainNeed: "require" as const },
      { ...mat, grainNeed: "prefer" as const, forms: along },
    ];
    const text = flowing(writeMeasurements({ ...expansion(papers, []), cards: [card], pieces: strict }, 1));
    expect(text).toContain("score 5 in from the left; grain must run along the fold");
    expect(text).toContain("grain best across; pattern upright");
  });

  test("says of which papers the printed back shows", () => {
    const striped = paper({
      id: "garden",
      colour: "#88aa88",
      name: "Garden",
      material: "pad",
      designs: [{ id: "vines", colour: "#88aa88", name: "Vines" }],
      back: { colour: "#ccddcc", name: "Stripes" },
    });
    const cutFrom = (faces: readonly string[]) => {
      const { card, pieces } = buildCard({
        number: 1,
        name: "Backs",
        front: [inches(5), inches(7)],
        fold: "side",
        base: "night",
        layers: [{ purpose: "panel", paper: faces, at: [0, 0, inches(5), inches(7)] }],
      });
      return flowing(writeMeasurements(expansion([...papers, striped], [{ card, pieces }]), 1));
    };
    expect(cutFrom(["garden.vines.back"])).toMatch(/1b panel Garden: Stripes .*; printed back showing Steps/);
    expect(cutFrom(["garden.vines.back", "cream"])).toContain(
      "printed back showing where it is Stripes Steps",
    );
    expect(cutFrom(["cream", "garden.vines.back"])).toContain(
      "printed back showing where it is Stripes Steps",
    );
    expect(cutFrom(["garden.vines", "cream"])).not.toContain("printed back");
  });

  test("leaves no empty line under a piece of which nothing is to be said", () => {
    const { card, pieces } = buildCard({
      number: 1,
      name: "Postcard",
      front: [inches(6), inches(4)],
      fold: "flat",
      base: "cream",
      layers: [],
    });
    const [base] = pieces;
    if (base === undefined) throw new Error("A card has its base.");
    const plain = [{ ...base, grainNeed: "ignore" as const }];
    const text = writeMeasurements(expansion(papers, [{ card, pieces: plain }]), 1);
    expect(text).toMatch(/ {2}1a base .*\n\nSteps/);
  });

  test("explains the mark of sizes that no ruler shows, where there are such", () => {
    expect(writeMeasurements(workshop, 1)).toContain("~ is rounded: cut by the inches.");
    expect(writeMeasurements(workshop, 2)).not.toContain("~");
  });

  test("scores a valley on the inside, turned over so that the edge measured from stays where it is", () => {
    const text = flowing(writeMeasurements(workshop, 12));
    expect(text).toContain("With its outside up, score 12a base 4 1/4 in (107.95 mm) from its left edge");
    expect(text).toContain(
      "Turn it over from top to bottom and score its inside 6 3/8 in (~161.93 mm) from the left edge.",
    );
    // The ridge of a score goes inside the fold: common practice; paper-merchant pages and bookbinding handbooks.
    expect(text).toContain("The ridge that a score raises goes inside its fold.");
    expect(flowing(writeMeasurements(workshop, 15))).toContain(
      "Turn it over from left to right and score its inside",
    );
  });

  test("says how slits are cut, and what to mind with the knife", () => {
    const text = flowing(writeMeasurements(workshop, 16));
    expect(text).toContain(
      "Cut slits 1 1/2 in (38.1 mm) and 4 in (101.6 mm) from the top, from 1 3/4 in (44.45 mm) to " +
        "8 3/4 in (222.25 mm) from the left, with a craft knife along a metal ruler on a cutting mat; " +
        "start and stop at the scores.",
    );
    expect(text).toContain("With a craft knife, hold the ruler well back from its edge");
    expect(writeMeasurements(workshop, 12)).not.toContain("craft knife");
  });

  test("tells what lies on which surface, and what must not be glued to two parts of the front", () => {
    const text = flowing(writeMeasurements(workshop, 11));
    expect(text).toContain("on 11a, left door: 1/8 in border all round");
    expect(text).toContain("Lay 11f mat on the inside of 11a base");
    expect(text).toContain("Lay 11h label on the back of 11a base");
    expect(text).toContain("1 1/2 in top and bottom. Glue it to one door only, the left or the right one");
    expect(text).not.toContain("left door of 11a base: 1/8 in border all round. Glue");
    expect(flowing(writeMeasurements(workshop, 14))).toContain("Lay 14c lantern on page 1 of 14a base");
  });

  test("lists every piece of any card once, and lays each in one step", () => {
    fc.assert(
      fc.property(randomCard, ({ card, pieces }) => {
        const text = writeMeasurements(expansion(papers, [{ card, pieces }]), 1);
        const [list = "", steps = ""] = text.split("Steps, from the bottom to the top");
        for (const { id } of pieces) {
          expect(list.split("\n").filter((line) => line.startsWith(`  ${id} `))).toHaveLength(1);
          const laid = new RegExp(`Lay (\\S+ \\S+( \\S+)? and )?${id} `);
          if (id !== card.base) expect(flowing(steps)).toMatch(laid);
        }
      }),
    );
  });

  test("refuses a card that is not there", () => {
    expect(() => writeMeasurements(workshop, 0)).toThrow(RangeError);
  });

  test("stays within its columns for any card, whatever its words", () => {
    fc.assert(
      fc.property(randomCard, fc.string({ unit: "grapheme", maxLength: 120 }), ({ card, pieces }, words) => {
        const named = pieces.map((piece) => ({ ...piece, label: `${piece.id} ${words}` }));
        const layers = card.layers.map((layer) => ({ ...layer, text: words }));
        const cards = [{ ...card, name: words, layers }];
        expectNarrow(writeMeasurements({ ...expansion(papers, []), title: words, cards, pieces: named }, 1));
      }),
    );
  });
});
