import type { Card, Flat } from "@sheetwright/planner";
import { describe, expect, test } from "vitest";
import { closedFront, glueCaution } from "../../src/card/closed-front.js";
import { foldedEdges } from "../../src/card/folded-edges.js";
import { flatOf, foldNote } from "./folded.js";

const front = { width: 400, height: 1100 };
const card = (fold: Flat["fold"], lying = false) => {
  const size = [front.width, front.height] as const;
  return { front, flats: [flatOf(size, foldNote(fold, size, lying))] };
};
const box = (x: number, y: number, width: number, height: number) => ({ x, y, width, height });

describe("closedFront", () => {
  test("shows where two doors meet, or both edges of the gap between them", () => {
    expect(closedFront(card("gate"), "in").lines).toEqual([{ upright: true, at: 200, from: 0, to: 1100 }]);
    expect(closedFront(card("gate", true), "in").lines).toEqual([
      { upright: false, at: 550, from: 0, to: 400 },
    ]);
    const [flat] = card("gate").flats as [Flat];
    const gapped = { front, flats: [{ ...flat, panels: [190, 400, 195] }] };
    expect(closedFront(gapped, "in").lines.map(({ at }) => at)).toEqual([195, 210]);
  });

  test("shows the edge of the flap of a z and an easel", () => {
    expect(closedFront(card("z"), "in")).toEqual({
      lines: [{ upright: true, at: 200, from: 0, to: 1100 }],
      note: "The left half is the flap; beside it half of the inside shows.",
    });
    expect(closedFront(card("easel"), "in").lines).toEqual([{ upright: false, at: 550, from: 0, to: 400 }]);
  });

  test("tells of a layer over all of the front, and not of what cannot be seen for it", () => {
    const layer = { piece: "3b", surface: "front", on: null, ...box(0, 0, 400, 1100) } as const;
    const noteWith = (fold: Flat["fold"], over: object) => {
      const layers = [{ ...layer, ...over }] as unknown as Card["layers"];
      return closedFront({ ...card(fold), layers }, "in").note;
    };
    expect(noteWith("easel", {})).toBe(
      "3b covers all of the front; what it is glued to, the upper half, is the flap.",
    );
    expect(noteWith("z", {})).toContain("the left half, is the flap.");
    expect(noteWith("easel", { width: 399 })).toContain("below it half of the inside shows");
    expect(noteWith("easel", { surface: "back" })).toContain("below it half of the inside shows");
  });

  test("shows the slits of a shutter, and between them where its halves meet", () => {
    expect(closedFront(card("shutter"), "in").lines).toEqual([
      { upright: true, at: 200, from: 300, to: 800 },
      { upright: false, at: 300, from: 0, to: 400 },
      { upright: false, at: 800, from: 0, to: 400 },
    ]);
  });

  test("shows nothing on a front that is one panel", () => {
    for (const fold of ["flat", "side", "top", "tri", "roll", "accordion", "double-parallel"] as const)
      expect(closedFront(card(fold), "in")).toEqual({ lines: [], note: null });
  });
});

// Common practice, no source: what lies over a part that moves is glued to one part only.
describe("glueCaution", () => {
  test("warns of what would keep a gate from opening, and of nothing on one door", () => {
    expect(glueCaution(card("gate"), box(100, 0, 200, 400))).toBe(
      "Glue it to one door only, the left or the right one: glued to both, the card would not open.",
    );
    expect(glueCaution(card("gate"), box(0, 0, 200, 400))).toBeNull();
    expect(glueCaution(card("gate"), box(200, 0, 200, 400))).toBeNull();
    expect(glueCaution(card("gate"), box(199, 0, 2, 400))).not.toBeNull();
  });

  test("has a layer over a z or an easel glued to the flap, one beside the flap to the inside", () => {
    expect(glueCaution(card("z"), box(0, 0, 400, 400))).toBe(
      "Glue it to the flap only, the left half, so that the card opens.",
    );
    expect(glueCaution(card("z"), box(20, 0, 180, 400))).toBeNull();
    expect(glueCaution(card("z"), box(200, 0, 200, 400))).toContain("beside the flap, on the right half");
    expect(glueCaution(card("easel"), box(0, 0, 400, 1100))).toContain("the flap only, the upper half");
    expect(glueCaution(card("easel"), box(0, 600, 400, 100))).toContain("on the lower half");
  });

  test("warns of a layer over several strips or both halves of a shutter", () => {
    expect(glueCaution(card("shutter"), box(0, 0, 400, 300))).toBeNull();
    expect(glueCaution(card("shutter"), box(0, 300, 200, 500))).toBeNull();
    expect(glueCaution(card("shutter"), box(100, 400, 200, 100))).toContain("strip or half only");
    expect(glueCaution(card("shutter"), box(0, 200, 100, 200))).toContain("strip or half only");
  });

  test("says nothing where the front is one panel", () => {
    for (const fold of ["flat", "side", "top", "tri", "accordion"] as const)
      expect(glueCaution(card(fold), box(0, 0, 400, 1100))).toBeNull();
  });
});

describe("foldedEdges", () => {
  const edges = (fold: Flat["fold"], surface: Parameters<typeof foldedEdges>[1], lying = false) =>
    foldedEdges(card(fold, lying), surface).map(({ edge }) => edge);

  test("finds the fold of each page of a card that is folded once", () => {
    expect(["front", "inside", "inside-front", "back"].map((name) => edges("side", name as "front"))).toEqual(
      [["left"], ["left"], ["right"], ["right"]],
    );
    expect(["front", "inside", "inside-front", "back"].map((name) => edges("top", name as "front"))).toEqual([
      ["top"],
      ["top"],
      ["bottom"],
      ["top"],
    ]);
  });

  test("finds the folds of doors, flaps and pages", () => {
    expect(edges("gate", "inside")).toEqual(["left", "right"]);
    expect(edges("gate", "front", true)).toEqual(["top", "bottom"]);
    expect([edges("tri", "inside-front"), edges("tri", "inside"), edges("tri", "inside-flap")]).toEqual([
      ["right"],
      ["left", "right"],
      ["left"],
    ]);
    expect(edges("tri", "flap")).toEqual(["right"]);
    expect([1, 2, 4].map((page) => edges("accordion", `page-${page}`))).toEqual([
      ["right"],
      ["left", "right"],
      ["left"],
    ]);
    expect(edges("flat", "front")).toEqual([]);
  });
});
