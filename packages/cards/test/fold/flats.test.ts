import { type CardSizeId, cardSizes, inches, millimetres } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flatsOf, formatFront } from "../../src/index.js";

// Trade folds: finished short x long, flat short x long, score and the side it divides. All common practice except where
// the row says otherwise.
const TRADE_FOLDS = [
  ["us-a1", "side", 3.5, 4.875, 4.875, 7, 3.5, 7],
  ["us-a2", "side", 4.25, 5.5, 5.5, 8.5, 4.25, 8.5],
  ["us-a2", "top", 4.25, 5.5, 4.25, 11, 5.5, 11],
  ["us-a6", "side", 4.5, 6.25, 6.25, 9, 4.5, 9],
  // Common practice and published US envelope size charts.
  ["us-a7", "side", 5, 7, 7, 10, 5, 10],
  ["us-a8", "side", 5.25, 7.875, 7.875, 10.5, 5.25, 10.5],
  ["us-a9", "side", 5.5, 8.5, 8.5, 11, 5.5, 11],
  // Published US envelope size charts.
  ["us-a10", "side", 5.75, 9.25, 9.25, 11.5, 5.75, 11.5],
  ["us-10", "side", 3.875, 9.25, 7.75, 9.25, 3.875, 7.75],
  ["us-slimline", "side", 3.5, 8.5, 7, 8.5, 3.5, 7],
  // Computed from the size of the card.
  ["us-slimline", "top", 3.5, 8.5, 3.5, 17, 8.5, 17],
  ["mini-slim-3x6", "side", 3, 6, 6, 6, 3, 6],
  ["mini-slim-3.5x6", "side", 3.5, 6, 6, 7, 3.5, 7],
  ["us-4x6", "side", 4, 6, 6, 8, 4, 8],
  ["sq-3", "side", 3, 3, 3, 6, 3, 6],
  ["sq-4", "side", 4, 4, 4, 8, 4, 8],
  ["sq-4.25", "side", 4.25, 4.25, 4.25, 8.5, 4.25, 8.5],
  ["sq-5", "side", 5, 5, 5, 10, 5, 10],
  ["sq-5.5", "side", 5.5, 5.5, 5.5, 11, 5.5, 11],
  ["sq-6", "side", 6, 6, 6, 12, 6, 12],
  ["us-4x5.5", "side", 4, 5.5, 5.5, 8, 4, 8],
  ["us-4x5.5", "top", 4, 5.5, 4, 11, 5.5, 11],
  ["card-iso-a6", "side", 105, 148, 148, 210, 105, 210],
  ["card-a4-quarter", "side", 105, 148.5, 148.5, 210, 105, 210],
  ["card-a4-quarter", "top", 105, 148.5, 105, 297, 148.5, 297],
  // Its finished width is said to be 148 mm; what the score leaves of an A4 sheet is 148.5 mm.
  ["card-iso-a5", "side", 148.5, 210, 210, 297, 148.5, 297],
  ["card-iso-dl", "side", 99, 210, 198, 210, 99, 198],
  ["sq-145mm", "side", 145, 145, 145, 290, 145, 290],
  ["sq-135mm", "side", 135, 135, 135, 270, 135, 270],
] as const;

function namedCard(wanted: CardSizeId) {
  const card = cardSizes.find(({ id }) => id === wanted);
  if (card === undefined) throw new Error(`No card is called ${wanted}.`);
  return card;
}

describe("flats of named cards", () => {
  test.each(TRADE_FOLDS)(
    "%s with a %s fold, upright and lying",
    (id, fold, short, long, flatShort, flatLong, scoreAt, scoredSide) => {
      const card = namedCard(id);
      const ticks = card.unit === "in" ? inches : millimetres;
      const upright = formatFront(card, "upright").front;
      expect(upright).toEqual({ width: ticks(short), height: ticks(long) });

      for (const stand of ["upright", "lying"] as const) {
        const { front } = formatFront(card, stand);
        // What is a side fold of the upright card is a top fold of the same card lying.
        const turned = stand === "lying" && short !== long;
        const wish = turned ? (fold === "side" ? "top" : "side") : fold;
        const flats = flatsOf({ front, fold: wish });
        expect(flats).toHaveLength(1);
        const [flat] = flats;
        if (flat === undefined) throw new Error("No flat.");
        expect([flat.width, flat.height].sort((a, b) => a - b)).toEqual([ticks(flatShort), ticks(flatLong)]);
        expect(flat.scores.map(({ at }) => at)).toEqual([ticks(scoreAt)]);
        expect(flat[flat.along]).toBe(ticks(scoredSide));
        expect(flat.fold).toBe(wish);
      }
    },
  );

  test("a named card folds as its first flat does, a quarter turn away where it lies", () => {
    for (const card of cardSizes) {
      const [first] = card.flats;
      expect(formatFront(card, "upright").fold).toBe(first?.fold);
      const square = card.width === card.height;
      expect(formatFront(card, "lying").fold === first?.fold).toBe(square);
    }
  });

  test("the default flat of every named card is its first one", () => {
    for (const card of cardSizes) {
      const [flat] = flatsOf(formatFront(card, "upright"));
      const [first] = card.flats;
      if (flat === undefined || first === undefined) throw new Error("No flat.");
      expect([flat.width, flat.height].sort((a, b) => a - b)).toEqual([first.width, first.height]);
      expect(flat.scores.map(({ at }) => at)).toEqual([first.scoreAt]);
    }
  });

  // Common practice: a slimline card that lies is folded along its top, from 8 1/2 x 7.
  test("a slimline card that lies has a top fold", () => {
    const { front, fold } = formatFront(namedCard("us-slimline"), "lying");
    expect(front).toEqual({ width: inches(8.5), height: inches(3.5) });
    expect(flatsOf({ front, fold })).toEqual([
      {
        fold: "top",
        width: inches(8.5),
        height: inches(7),
        along: "height",
        panels: [inches(3.5), inches(3.5)],
        scores: [{ along: "height", at: inches(3.5), folds: "mountain" }],
        slits: [],
      },
    ]);
  });

  // Common practice: a US A2 card comes from 5 1/2 x 8 1/2 or from 4 1/4 x 11.
  test("a US A2 card that may be folded either way has both of its flats", () => {
    const { front } = formatFront(namedCard("us-a2"), "upright");
    expect(flatsOf({ front, fold: "either" })).toEqual([
      {
        fold: "side",
        width: inches(8.5),
        height: inches(5.5),
        along: "width",
        panels: [inches(4.25), inches(4.25)],
        scores: [{ along: "width", at: inches(4.25), folds: "mountain" }],
        slits: [],
      },
      {
        fold: "top",
        width: inches(4.25),
        height: inches(11),
        along: "height",
        panels: [inches(5.5), inches(5.5)],
        scores: [{ along: "height", at: inches(5.5), folds: "mountain" }],
        slits: [],
      },
    ]);
  });
});

test("every flat is two fronts with the score between them", () => {
  const side = fc.integer({ min: 1, max: 1 << 22 });
  const size = fc.record({ width: side, height: side });
  fc.assert(
    fc.property(size, fc.constantFrom("side", "top", "either"), (front, fold) => {
      const flats = flatsOf({ front, fold });
      expect(flats).toHaveLength(fold === "either" ? 2 : 1);
      for (const flat of flats) {
        const across = flat.along === "width" ? "height" : "width";
        expect(flat.scores).toEqual([{ along: flat.along, at: front[flat.along], folds: "mountain" }]);
        expect(flat[flat.along]).toBe(2 * front[flat.along]);
        expect(flat[across]).toBe(front[across]);
        expect(flat.along === "width").toBe(flat.fold === "side");
      }
    }),
  );
});
