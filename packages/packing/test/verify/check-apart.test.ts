import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findMeetings, isWithin } from "../../src/verify/check-apart.js";
import type { PlacedPiece } from "../../src/verify/walk.js";

const piece = (path: string, x: number, y: number, width: number, height: number): PlacedPiece => ({
  path,
  x,
  y,
  width,
  height,
});

/** The definition: apart along x or along y. */
const areApart = (a: PlacedPiece, b: PlacedPiece, clearance: number): boolean =>
  a.x + a.width + clearance <= b.x ||
  b.x + b.width + clearance <= a.x ||
  a.y + a.height + clearance <= b.y ||
  b.y + b.height + clearance <= a.y;

const pairsOf = (pieces: readonly PlacedPiece[], clearance: number) =>
  findMeetings(pieces, clearance).map(({ first, second }) => `${first.path} ${second.path}`);

const sides = fc.tuple(
  fc.integer({ min: 0, max: 24 }),
  fc.integer({ min: 0, max: 24 }),
  fc.integer({ min: 1, max: 9 }),
  fc.integer({ min: 1, max: 9 }),
);
const somePieces = fc
  .array(sides, { maxLength: 9 })
  .map((list) => list.map(([x, y, width, height], index) => piece(`${index}`, x, y, width, height)));

describe("the sweep over the places of pieces", () => {
  it("finds a piece that lies on the one above it, and on the one below it", () => {
    expect(pairsOf([piece("wide", 0, 0, 9, 4), piece("late", 3, 3, 2, 2)], 0)).toEqual(["wide late"]);
    expect(pairsOf([piece("wide", 0, 3, 9, 4), piece("late", 3, 0, 2, 4)], 0)).toEqual(["wide late"]);
    expect(pairsOf([piece("wide", 0, 3, 9, 4), piece("late", 3, 0, 2, 3)], 0)).toEqual([]);
  });

  it("finds nothing between pieces that touch, unless a kerf must lie between them", () => {
    const touching = [piece("a", 0, 0, 4, 4), piece("b", 4, 0, 4, 4), piece("c", 0, 4, 8, 4)];
    expect(pairsOf(touching, 0)).toEqual([]);
    expect(pairsOf(touching, 1)).toEqual(["a c", "a b"]);
  });

  it("finds something exactly where any two of the pieces meet, and names only such pairs", () => {
    let apart = 0;
    let all = 0;
    fc.assert(
      fc.property(somePieces, fc.integer({ min: 0, max: 3 }), (pieces, clearance) => {
        const meetings = findMeetings(pieces, clearance);
        for (const { first, second } of meetings) expect(areApart(first, second, clearance)).toBe(false);
        const isApart = pieces.every((a, index) =>
          pieces.slice(index + 1).every((b) => areApart(a, b, clearance)),
        );
        expect(meetings.length === 0).toBe(isApart);
        all += 1;
        if (isApart) apart += 1;
      }),
    );
    expect(apart / all).toBeGreaterThan(0.1);
    expect(apart / all).toBeLessThan(0.9);
  });

  it("finds one piece pushed by one tick onto another in a full grid", () => {
    fc.assert(
      fc.property(fc.nat(99), fc.nat(3), (which, side) => {
        const grid = Array.from({ length: 100 }, (_, index) =>
          piece(`${index}`, 5 * (index % 10), 7 * Math.floor(index / 10), 5, 7),
        );
        expect(findMeetings(grid, 0)).toEqual([]);
        const moved = grid[which] as PlacedPiece;
        const [dx, dy] = [
          [-1, 0],
          [1, 0],
          [0, -1],
          [0, 1],
        ][side] as [number, number];
        grid[which] = { ...moved, x: moved.x + dx, y: moved.y + dy };
        const isPushedOut = !isWithin(grid[which], { x: 0, y: 0, width: 50, height: 70 });
        expect(findMeetings(grid, 0).length > 0).toBe(!isPushedOut);
      }),
    );
  });
});
