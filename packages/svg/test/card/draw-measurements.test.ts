import { formatLength, formatSize, type Size, TICKS_PER_MM } from "@sheetwright/measure";
import type { Card, Expansion, SurfaceName } from "@sheetwright/planner";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawMeasurements } from "../../src/card/draw-measurements.js";
import { surfaceTitle } from "../../src/card/surface-in-words.js";
import { rectBox, textBoxes } from "../drawing/text-boxes.js";
import { attributeOf, everyElement, numberOf, type ReadElement, readStrictly } from "../read-svg.js";
import { buildCard, expansion } from "./build.js";
import { papers } from "./example-papers.js";
import { type CardExample, cardExamples, workshop } from "./examples.js";
import { pageFaults, pictureFaults } from "./expect-well-pictured.js";
import { randomCard } from "./random-card.js";
import { picturesOf, readCard } from "./read-card.js";

/** Common to all printers: nothing is to stand nearer to the edge of the page than this. */
const LEAST_MARGIN = 12;
const PAGES = { in: [215.9, 279.4], mm: [210, 297] } as const;

function textsOf(page: ReadElement): readonly string[] {
  return textBoxes(page).map(({ text }) => text);
}

/** The scale that a page states under the figure whose caption begins so. */
function scaleOf(page: ReadElement, begin: string): number {
  // Captions of narrow figures are broken into lines.
  const texts = textsOf(page);
  const at = texts.findIndex((text) => text.startsWith(begin));
  const caption = texts.slice(at, at + 3).join(" ");
  const [, denominator] = /^.*?(?:true size|drawn at 1 : ([\d.]+))/.exec(caption) ?? [];
  return at < 0 ? Number.NaN : denominator === undefined ? 1 : 1 / Number(denominator);
}

function faultsOf(pages: readonly string[], card: Card, { units, pieces }: Expansion): readonly string[] {
  const read = pages.map(readStrictly);
  const faults = read.flatMap((page, i) => pageFaults(page).map((fault) => `page ${i + 1}: ${fault}`));
  for (const page of read) {
    const { width, height } = rectBox(
      everyElement(page).find((one) => attributeOf(one, "id") === "page") as ReadElement,
    );
    if (width !== PAGES[units][0] || height !== PAGES[units][1])
      faults.push(`a page is ${width} x ${height} mm`);
    for (const box of textBoxes(page)) {
      const near = Math.min(box.x, box.y, width - box.x - box.width, height - box.y - box.height);
      if (near < LEAST_MARGIN - 1) faults.push(`"${box.text}" stands ${near} mm from the edge of the page`);
    }
  }
  const [first] = read;
  if (first === undefined) return ["there is no page"];
  const base = scaleOf(first, "Base, ");
  const pictured = read.filter((page) => picturesOf(page).size > 0);
  const pictures: ReadElement = { ...first, children: pictured.flatMap(({ children }) => children) };
  const captionOf = (name: SurfaceName) => (name === "front" ? "Front, " : `${surfaceTitle(card, name)}, `);
  faults.push(
    ...pictureFaults(pictures, card, (name) => {
      const on = pictured.find((page) => picturesOf(page).has(name)) ?? first;
      return scaleOf(on, captionOf(name));
    }),
  );

  const flats = everyElement(first).filter((element) => attributeOf(element, "data-role") === "flat");
  const withRole = (role: string) =>
    everyElement(first).filter((element) => attributeOf(element, "data-role") === role);
  const scores = withRole("score");
  const slits = withRole("slit");
  for (const [i, flat] of card.flats.entries()) {
    const drawn = flats[i];
    if (drawn === undefined) return [...faults, "a flat is missing"];
    const box = rectBox(drawn);
    const near = (length: number, ticks: number) => Math.abs(length - (ticks * base) / TICKS_PER_MM) < 0.002;
    if (!near(box.width, flat.width) || !near(box.height, flat.height))
      faults.push("a flat is not to its scale");
    const side = flat.along === "width";
    for (const { at, folds } of flat.scores) {
      const score = scores.shift();
      if (score === undefined) return [...faults, "a score is missing"];
      if (!near(side ? numberOf(score, "x1") - box.x : numberOf(score, "y1") - box.y, at))
        faults.push("a score is not at its place");
      if (attributeOf(score, "data-folds") !== folds) faults.push("a score does not say which way it folds");
    }
    for (const { at, from, to } of flat.slits) {
      const slit = slits.shift();
      if (slit === undefined) return [...faults, "a slit is missing"];
      const [x1, y1, x2, y2] = ["x1", "y1", "x2", "y2"].map((name) => numberOf(slit, name)) as [
        number,
        number,
        number,
        number,
      ];
      const [along, far, across] = side
        ? [x1 - box.x, x2 - box.x, y1 - box.y]
        : [y1 - box.y, y2 - box.y, x1 - box.x];
      if (!near(along, from) || !near(far, to) || !near(across, at))
        faults.push("a slit is not at its place");
    }
  }

  const texts = read.flatMap(textsOf).join(" ");
  for (const unit of ["in", "mm"] as const) {
    for (const { width, height, scores: all, slits: cut } of card.flats) {
      for (const length of [width, height, ...[...all, ...cut].map(({ at }) => at)]) {
        if (!texts.includes(formatLength(length, { unit })))
          faults.push(`a length of the flat is not told in ${unit}`);
      }
    }
    const pieceOf = (id: string) => pieces.find((piece) => piece.id === id);
    // Of what is cut to a shape, its die blank is told, and the shape in one unit.
    const cut = card.layers.flatMap((layer): readonly Size[] =>
      pieceOf(layer.piece)?.die === undefined ? [layer] : (pieceOf(layer.piece)?.forms ?? []),
    );
    for (const { width, height } of [...card.flats, ...cut]) {
      if (!texts.includes(formatSize(width, height, { unit, mark: false })))
        faults.push(`a size is not told in ${unit}`);
    }
  }
  for (const piece of pieces.filter((one) => one.card === card.number)) {
    if (!texts.includes(piece.label)) faults.push(`${piece.label} is missing`);
  }
  return faults;
}

// Pages and names in every script take many milliseconds each, so a quarter of the usual number of cases goes through them.
const slow = { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 4) };

describe("the examples", () => {
  test.each(cardExamples)(
    "$name: are the committed pages, well set",
    async ({ name, source, number }: CardExample) => {
      const pages = drawMeasurements(source, number);
      for (const [index, page] of pages.entries()) {
        const file = `../examples/cards/${name}.sizes${index === 0 ? "" : `-${index + 1}`}.svg`;
        await expect(page).toMatchFileSnapshot(file);
      }
      const card = source.cards.find((other) => other.number === number) as Card;
      expect(faultsOf(pages, card, source)).toEqual([]);
    },
  );
});

describe("drawMeasurements", () => {
  const pagesOf = (number: number) => drawMeasurements(workshop, number).map(readStrictly);

  test("takes one page for most cards, and numbers the pages where there are more", () => {
    expect(pagesOf(1)).toHaveLength(1);
    const pages = pagesOf(3);
    expect(pages).toHaveLength(2);
    pages.forEach((page, i) => {
      expect(textsOf(page)).toContain(`page ${i + 1} of 2`);
    });
    // A loose second page says what its first lines are.
    expect(textsOf(pages[0] as (typeof pages)[number])).not.toContain("Steps, continued");
    expect(textsOf(pages[1] as (typeof pages)[number])[0]).toBe("Steps, continued");
  });

  test("tells place, score, fold and what was rounded", () => {
    const texts = pagesOf(4).flatMap(textsOf).join(" ");
    expect(texts).toContain("on 4a: 1/8 in border all round");
    expect(texts).toContain("score 3 1/2 in from the top; grain best along the fold");
    // The ridge of a score goes inside the fold: common practice, no source.
    expect(texts).toContain(
      "fold along the score with the ridge that it raises inside. The front is the lower half.",
    );
    // 8 in in thirds, boundaries to the nearest 1/16 in: 2 2/3 is 2.667, 2 11/16 is 2.6875.
    expect(texts).toContain(
      "Thirds, rounded so that seams fall on marks of the ruler: 2 11/16, 2 5/8, 2 11/16 in for 4c to 4e.",
    );
  });

  test("names all panels, tells every score from one edge, and has a key for what is scored on the inside", () => {
    const texts = pagesOf(12).flatMap(textsOf);
    expect(texts).toEqual(expect.arrayContaining(["back", "middle", "flap", "0", "4 1/4 in", "6 3/8 in"]));
    expect(texts).toEqual(
      expect.arrayContaining([
        "scored on the outside, folds away from you",
        "scored on the inside, folds towards you",
      ]),
    );
    const gate = pagesOf(11).flatMap(textsOf);
    expect(gate).toEqual(expect.arrayContaining(["right door", "left door"]));
    expect(gate.join(" ")).not.toContain("scored on the inside");
  });

  test("draws slits as whole lines with their measures", () => {
    const [page] = pagesOf(16);
    const slits = everyElement(page as ReadElement).filter((one) => attributeOf(one, "data-role") === "slit");
    expect(slits).toHaveLength(2);
    const texts = textsOf(page as ReadElement);
    expect(texts).toEqual(
      expect.arrayContaining(["1 1/2 in", "4 in", "slit, cut with a craft knife", "page 5", "page 1"]),
    );
    expect(texts).toContain("pages 1 to 5 are on the inside of their panels");
  });

  test("draws the other surfaces that something lies on, each with its letters", () => {
    const [page] = pagesOf(17);
    expect([...picturesOf(page as ReadElement).keys()]).toEqual(["front", "inside", "inside-front", "back"]);
    expect(textsOf(page as ReadElement).join(" ")).toContain("Right inside page, drawn at 1 : 4");
  });

  test("cautions once", () => {
    for (const { number } of workshop.cards) {
      const headings = pagesOf(number)
        .flatMap(textsOf)
        .filter((text) => text === "Before you cut");
      expect(headings).toHaveLength(1);
    }
  });

  test("repeats the head of the list where the list goes on on a further page", () => {
    const many = workshop.cards.find(({ number }) => number === 3) as Card;
    const layers = Array.from({ length: 4 }, () => many.layers).flat();
    const source = {
      ...workshop,
      cards: [{ ...many, layers: layers.map((layer) => ({ ...layer, on: null })) }],
    };
    const pages = drawMeasurements(source, 3).map(readStrictly);
    expect(pages.length).toBeGreaterThan(2);
    expect(textsOf(pages[1] as ReadElement)).toEqual(
      expect.arrayContaining(["piece", "paper", "in", "mm", "place"]),
    );
  });

  test.each([12, 50, 200])("sets the pages of a card of %i bands", (count) => {
    const side = 40_640 * 8;
    const card = buildCard({
      number: 1,
      name: "Stripes",
      front: [side, side],
      fold: "side",
      base: "cream",
      layers: Array.from({ length: count }, (_, i) => {
        const [top, bottom] = [Math.floor((i * side) / count), Math.floor(((i + 1) * side) / count)];
        return { purpose: "band", paper: "night", block: "bands", at: [0, top, side, bottom - top] as const };
      }),
    });
    const pages = drawMeasurements(expansion(papers, [card]), 1).map(readStrictly);
    for (const page of pages) expect(pageFaults(page)).toEqual([]);
    const callOuts = readCard(pages[0] as ReadElement).callOuts.length;
    // So many letters have no place beside a front on a page.
    expect(callOuts).toBe(count === 200 ? 0 : count);
    expect(pages.flatMap(textsOf)).toContain(`1${count === 12 ? "m" : count === 50 ? "ay" : "gs"} band`);
  });

  test("makes the same bytes each time", () => {
    expect(drawMeasurements(workshop, 3)).toEqual(drawMeasurements(structuredClone(workshop), 3));
  });

  test("sets the pages of any card within their margins, the figures to the scales that they state", () => {
    fc.assert(
      fc.property(randomCard, fc.constantFrom("in" as const, "mm" as const), (built, unit) => {
        const source = expansion(papers, [built], unit);
        expect(faultsOf(drawMeasurements(source, 1), built.card, source)).toEqual([]);
      }),
      slow,
    );
  });
});
