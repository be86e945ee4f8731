/**
 * One set of pieces for any number of kinds and of copies, so that a plan can be measured against each while the other stays.
 * The first kinds are the same however many there are, and the shares of the copies too.
 */
import { TICKS_PER_INCH } from "@sheetwright/measure";
import type { ListedPiece } from "../listed-piece.js";
import { randomWholeNumbers } from "./random-whole-numbers.js";

const SIXTEENTH = TICKS_PER_INCH / 16;

/** The least and the longest side in sixteenths of an inch: up to half of a 12 in sheet. */
const LEAST_SIDE = 16;
const LONGEST_SIDE = 96;

/** A kind has up to so many times the copies of another one. */
const MOST_SHARES = 13;

/**
 * Makes so many kinds with so many copies in all; kinds that get none are left out. Every third kind or so may not turn.
 * Throws a RangeError where there is less than one kind or copy.
 */
export function scaleSet(kinds: number, copies: number, seed: number): readonly ListedPiece[] {
  if (kinds < 1 || copies < 1)
    throw new RangeError(`Expected kinds and copies, found ${kinds} and ${copies}.`);
  const drawn = Array.from({ length: kinds }, (_, index) => {
    const random = randomWholeNumbers(`${seed} scale ${index + 1}`);
    const width = random(LEAST_SIDE, LONGEST_SIDE) * SIXTEENTH;
    const height = random(LEAST_SIDE, LONGEST_SIDE) * SIXTEENTH;
    return {
      name: `piece ${index + 1}`,
      width,
      height,
      shares: random(1, MOST_SHARES),
      turn: random(1, 3) > 1,
    };
  });
  const all = drawn.reduce((sum, { shares }) => sum + shares, 0);
  let before = 0;
  return drawn
    .map(({ shares, ...piece }): ListedPiece => {
      // Shares of the copies as far as this kind, rounded down, so that they add up to the copies.
      const from = Math.floor((before * copies) / all);
      before += shares;
      return { ...piece, quantity: Math.floor((before * copies) / all) - from };
    })
    .filter(({ quantity }) => quantity > 0);
}
