import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { badgeBox, type CutLine } from "../../src/drawing/cut-number.js";
import { placeCutNumbers } from "../../src/drawing/place-cut-numbers.js";
import type { NumberedSheet } from "../../src/drawing/surroundings.js";
import { excessOf, overlapOf, overlappingPairs } from "./text-boxes.js";

const sheet = { width: 100, height: 80 };
const place = (
  cuts: readonly CutLine[],
  labels: NumberedSheet["labels"],
  size: { readonly width: number; readonly height: number },
  pieces: NumberedSheet["pieces"] = [],
) => placeCutNumbers({ ...size, cuts, labels, pieces });
const cut = (number: number, x1: number, y1: number, x2: number, y2: number): CutLine => ({
  number,
  x1,
  y1,
  x2,
  y2,
});

describe("placeCutNumbers", () => {
  test("puts a number on its own line, near where it starts", () => {
    const [number] = place([cut(1, 0, 40, 100, 40)], [], sheet);
    expect(number).toMatchObject({ number: 1, y: 40, leader: [] });
    expect(number?.x).toBeLessThan(10);
  });

  test("goes round labels on the line", () => {
    const label = { x: 0, y: 35, width: 60, height: 10 };
    const [number] = place([cut(1, 0, 40, 100, 40)], [label], sheet);
    expect(number).toMatchObject({ y: 40, leader: [] });
    expect(number?.x).toBeGreaterThan(60);
  });

  test("stands just beyond the sheet where the line ends there and is full", () => {
    const label = { x: 2, y: 35, width: 96, height: 10 };
    const [number] = place([cut(1, 0, 40, 100, 40)], [label], sheet);
    expect(number?.x).toBeLessThan(0);
    expect(number).toMatchObject({
      y: 40,
      leader: [
        [0, 40],
        [number?.x, 40],
      ],
    });
  });

  test("stands beside a short cut at the end of a leader from the cut", () => {
    const short = cut(1, 40, 40, 44, 40);
    const [number] = place([short], [{ x: 40, y: 36, width: 4, height: 3 }], sheet);
    const [[fromX, fromY] = [0, 0], end] = number?.leader ?? [];
    expect(fromX).toBeGreaterThan(40);
    expect(fromX).toBeLessThan(44);
    expect(fromY).toBe(40);
    expect(end).toEqual([number?.x, number?.y]);
    expect(Math.abs((number?.y ?? 0) - 40)).toBeLessThan(8);
  });

  test("stands beside a short cut on a leftover rather than on a piece", () => {
    const short = cut(1, 40, 40, 44, 40);
    const piece = { x: 0, y: 40, width: 100, height: 40 };
    const [number] = place([short], [], sheet, [piece]);
    expect((number?.y ?? 80) + 1.95).toBeLessThanOrEqual(40);
  });

  test("keeps clear of other lines, so that it is plain which cut it numbers", () => {
    const lines = [cut(1, 0, 40, 100, 40), cut(2, 3, 0, 3, 40), cut(3, 7, 0, 7, 40), cut(4, 11, 0, 11, 40)];
    const [number] = place(lines, [], sheet);
    expect(number).toMatchObject({ y: 40, leader: [] });
    expect(number?.x).toBeGreaterThan(11);
  });

  test("finds a place for more cuts than a sheet has room for", () => {
    const tiny = { width: 20, height: 20 };
    const cuts = Array.from({ length: 60 }, (_, i) => cut(i + 1, (i + 1) / 3, 0, (i + 1) / 3, 20));
    const numbers = place(cuts, [{ x: 0, y: 0, width: 20, height: 20 }], tiny);
    expect(overlappingPairs(numbers.map(badgeBox), 0)).toEqual([]);
  });

  test("covers neither labels nor numbers, wherever lines and labels lie, and stays with its cut", () => {
    const grid = fc.integer({ min: 0, max: 100 });
    const line = fc
      .tuple(fc.boolean(), grid, grid, grid)
      .filter(([, , from, to]) => from < to)
      .map(([level, across, from, to]) => (level ? [from, across, to, across] : [across, from, across, to]));
    const label = fc.record({
      x: grid,
      y: grid,
      width: fc.integer({ min: 4, max: 30 }),
      height: fc.integer({ min: 3, max: 8 }),
    });
    fc.assert(
      fc.property(fc.array(line, { maxLength: 14 }), fc.array(label, { maxLength: 10 }), (lines, labels) => {
        const cuts = lines.map(([x1 = 0, y1 = 0, x2 = 0, y2 = 0], i) => cut(i + 1, x1, y1, x2, y2));
        const numbers = place(cuts, labels, { width: 100, height: 100 });
        expect(numbers.map(({ number }) => number)).toEqual(cuts.map(({ number }) => number));
        const boxes = numbers.map(badgeBox);
        expect(overlappingPairs(boxes, 0)).toEqual([]);
        numbers.forEach(({ x, y, leader }, i) => {
          const own = cuts[i] as CutLine;
          const onSheet =
            excessOf(boxes[i] as (typeof boxes)[number], { x: 0, y: 0, width: 100, height: 100 }) <= 0;
          if (onSheet) expect(labels.some((box) => overlapOf(boxes[i] as typeof box, box) > 0)).toBe(false);
          const [fromX, fromY] = leader[0] ?? [x, y];
          expect(fromX).toBeGreaterThanOrEqual(own.x1);
          expect(fromX).toBeLessThanOrEqual(own.x2);
          expect(fromY).toBeGreaterThanOrEqual(own.y1);
          expect(fromY).toBeLessThanOrEqual(own.y2);
        });
      }),
    );
  });
});
