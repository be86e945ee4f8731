import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Block } from "../../../src/search/joins/block.js";
import { type BlankSheet, joinBlocks } from "../../../src/search/joins/join-blocks.js";
import { randomStream } from "../../../src/search/random-stream.js";

/** Small whole sides, so that many blocks share one. */
const pieces = fc.array(
  fc.record({
    width: fc.integer({ min: 1, max: 6 }),
    height: fc.integer({ min: 1, max: 6 }),
    mayTurn: fc.boolean(),
  }),
  { minLength: 1, maxLength: 14 },
);
const sheets = fc.array(
  fc.record({
    width: fc.integer({ min: 4, max: 14 }),
    height: fc.integer({ min: 4, max: 14 }),
    count: fc.integer({ min: 0, max: 3 }),
  }),
  { minLength: 1, maxLength: 3 },
);

/** What a block measures by what it is made of, worked out anew; throws where a side is not shared whole. */
function measure(block: Block, kerf: number, sizes: readonly Block[]): { width: number; height: number } {
  const { of } = block;
  if (typeof of === "number") return sizes[of] as Block;
  const lie = (part: Block, turned: boolean): { width: number; height: number } => {
    const { width, height } = measure(part, kerf, sizes);
    if (turned && !part.mayTurn) throw new Error("What must not be turned is turned.");
    return turned ? { width: height, height: width } : { width, height };
  };
  const first = lie(of.first, of.firstTurned);
  const second = lie(of.second, of.secondTurned);
  if (of.axis === "x") {
    if (first.height !== second.height) throw new Error("Two heights differ.");
    return { width: first.width + kerf + second.width, height: first.height };
  }
  if (first.width !== second.width) throw new Error("Two widths differ.");
  return { width: first.width, height: first.height + kerf + second.height };
}

/** The kinds of all pieces that blocks are made of, in order. */
function piecesIn(blocks: readonly Block[]): readonly number[] {
  const kindsOf = ({ of }: Block): readonly number[] =>
    typeof of === "number" ? [of] : [...kindsOf(of.first), ...kindsOf(of.second)];
  return blocks.flatMap(kindsOf).sort((a, b) => a - b);
}

describe("joinBlocks", () => {
  test("keeps every piece, joins only along whole common sides, and fills sheets from edge to edge", () => {
    fc.assert(
      fc.property(pieces, sheets, fc.nat(1), fc.nat(1000), (list, blank, kerf, seed) => {
        const blocks = list.map((piece, of): Block => ({ ...piece, of }));
        const stock = blank.map((sheet, index): BlankSheet => ({ ...sheet, index }));
        const { whole, left } = joinBlocks(
          blocks,
          stock,
          kerf,
          Number.POSITIVE_INFINITY,
          randomStream(seed, 0),
        );
        const all = [...whole.map(({ block }) => block), ...left];
        expect(piecesIn(all)).toEqual(blocks.map((_, i) => i));
        for (const block of all) {
          const { width, height } = measure(block, kerf, blocks);
          expect([block.width, block.height]).toEqual([width, height]);
        }
        for (const { sheet, block, turned } of whole) {
          const { width, height } = stock[sheet] as BlankSheet;
          expect(turned ? [block.height, block.width] : [block.width, block.height]).toEqual([width, height]);
          if (turned) expect(block.mayTurn).toBe(true);
        }
        for (const { index, count } of stock) {
          expect(whole.filter(({ sheet }) => sheet === index).length).toBeLessThanOrEqual(count);
        }
      }),
    );
  });

  test("joins until no two blocks that are left fit together on a sheet", () => {
    fc.assert(
      fc.property(pieces, fc.nat(1000), (list, seed) => {
        const blocks = list.map(({ width, height }, of): Block => ({ width, height, mayTurn: false, of }));
        const sheet: BlankSheet = { index: 0, width: 12, height: 9, count: 9 };
        const { left } = joinBlocks(blocks, [sheet], 0, Number.POSITIVE_INFINITY, randomStream(seed, 0));
        const fits = (width: number, height: number): boolean => width <= 12 && height <= 9;
        for (const [i, a] of left.entries()) {
          for (const b of left.slice(i + 1)) {
            if (a.width === b.width) expect(fits(a.width, a.height + b.height)).toBe(false);
            if (a.height === b.height) expect(fits(a.width + b.width, a.height)).toBe(false);
          }
        }
      }),
    );
  });

  test("joins along no side that is longer than the tool cuts", () => {
    const block = (width: number, of: number): Block => ({ width, height: 3, mayTurn: false, of });
    const sheet: BlankSheet = { index: 0, width: 9, height: 3, count: 1 };
    const joinedAt = (longest: number): number =>
      joinBlocks([block(4, 0), block(5, 1)], [sheet], 0, longest, randomStream(1, 0)).whole.length;
    expect([joinedAt(3), joinedAt(2)]).toEqual([1, 0]);
  });
});
