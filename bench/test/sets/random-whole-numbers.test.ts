import { expect, test } from "vitest";
import { randomWholeNumbers } from "../../src/sets/random-whole-numbers.js";

const draw = (text: string, least: number, most: number, count: number): number[] => {
  const random = randomWholeNumbers(text);
  return Array.from({ length: count }, () => random(least, most));
};

// Recorded, and the same from FNV-1a and Mulberry32 written out in another language: were they to change, old and new
// results would not be of the same pieces.
test("a text gives the same numbers for ever", () => {
  expect(draw("1 192x192 strips 1", 1, 1000, 8)).toEqual([885, 544, 128, 945, 408, 768, 620, 495]);
});

test("another text gives other numbers", () => {
  expect(draw("a", 0, 1_000_000, 20)).not.toEqual(draw("b", 0, 1_000_000, 20));
});

test("every number of the range comes, about as often as any other, and none beyond it", () => {
  const counts = new Map<number, number>();
  for (const number of draw("dice", 1, 13, 13_000)) counts.set(number, (counts.get(number) ?? 0) + 1);
  expect([...counts.keys()].sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13]);
  // 1000 each; four standard deviations are 122.
  for (const count of counts.values()) expect(Math.abs(count - 1000)).toBeLessThan(122);
});
