import { inches, millimetres, type Size } from "@sheetwright/measure";
import { describe, expect, test } from "vitest";
import { flatsOf, foldVerdict, grainForFold, grainTurns } from "../../src/index.js";

describe("fold against the grain of the sheet", () => {
  // Sheet width x height, the side its grain runs along, the piece as it lies on the upright sheet, the score and the side
  // of the piece it divides, and whether the fold is with the grain. All rows are computed from the way the sheet is halved.
  const VECTORS = [
    ["letter, grain 11, the 11 side halved", 8.5, 11, "height", 8.5, 5.5, 4.25, 8.5, "along", "in"],
    ["letter, grain 11, the 8 1/2 side halved", 8.5, 11, "height", 4.25, 11, 5.5, 11, "across", "in"],
    ["letter, grain 8 1/2, the 11 side halved", 8.5, 11, "width", 8.5, 5.5, 4.25, 8.5, "across", "in"],
    ["letter, grain 8 1/2, the 8 1/2 side halved", 8.5, 11, "width", 4.25, 11, 5.5, 11, "along", "in"],
    ["A4, grain 297, the 297 side halved", 210, 297, "height", 210, 148.5, 105, 210, "along", "mm"],
    ["A4, grain 297, the 210 side halved", 210, 297, "height", 105, 297, 148.5, 297, "across", "mm"],
    ["A4 whole, grain 297", 210, 297, "height", 210, 297, 148.5, 297, "across", "mm"],
    ["letter whole, grain 11", 8.5, 11, "height", 8.5, 11, 5.5, 11, "across", "in"],
    ["letter, grain 11, cut to 7", 8.5, 11, "height", 8.5, 7, 3.5, 7, "across", "in"],
    ["letter, grain 8 1/2, cut to 7", 8.5, 11, "width", 8.5, 7, 3.5, 7, "along", "in"],
  ] as const;

  test.each(VECTORS)(
    "%s",
    (_, sheetWidth, sheetHeight, grain, width, height, scoreAt, scoredSide, verdict, unit) => {
      const ticks = unit === "in" ? inches : millimetres;
      const piece: Size = { width: ticks(width), height: ticks(height) };
      expect(piece.width <= ticks(sheetWidth) && piece.height <= ticks(sheetHeight)).toBe(true);
      const divides = width === scoredSide ? "width" : "height";
      const score = { along: divides, at: ticks(scoreAt) } as const;
      expect(foldVerdict(score, false, grain)).toBe(verdict);

      // The same from the card: each flat of its front, lying on the sheet as the piece does.
      const front = { ...piece, [divides]: ticks(scoreAt) };
      for (const turned of [false, true]) {
        const closed = turned ? { width: front.height, height: front.width } : front;
        const flat = flatsOf({ front: closed, fold: "either" }).find((each) =>
          turned
            ? each.width === piece.height && each.height === piece.width
            : each.width === piece.width && each.height === piece.height,
        );
        if (flat === undefined) throw new Error("No flat lies like this piece.");
        expect(foldVerdict(flat, turned, grain)).toBe(verdict);
        // The turn that the grain asks for is the one with the fold along it.
        const wanted = grainTurns(grainForFold(flat), grain);
        expect(wanted === (turned ? "turned" : "upright")).toBe(verdict === "along");
      }
    },
  );

  test("paper without a grain, or of which nobody knows it, has no verdict", () => {
    const score = { along: "width", at: 5 } as const;
    expect(foldVerdict(score, false, "none")).toBe("none");
    expect(foldVerdict(score, true, "unknown")).toBe("unknown");
  });
});
