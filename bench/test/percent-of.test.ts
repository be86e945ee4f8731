import { expect, test } from "vitest";
import { percentOf } from "../src/percent-of.js";

test("a share is given with one decimal, halves rounded up", () => {
  expect(percentOf(2n, 3n)).toBe(66.7);
  expect(percentOf(0n, 3n)).toBe(0);
  expect(percentOf(3n, 3n)).toBe(100);
  expect(percentOf(1n, 2000n)).toBe(0.1);
  expect(percentOf(1n, 2001n)).toBe(0);
});

test("areas beyond 2^53 lose nothing", () => {
  const sheet = 487_680n * 487_680n;
  expect(percentOf(sheet * 99_999_999n, sheet * 100_000_000n)).toBe(100);
  expect(percentOf(sheet * 99_949_999n, sheet * 100_000_000n)).toBe(99.9);
});

test("a whole of nothing is refused", () => {
  expect(() => percentOf(0n, 0n)).toThrow(RangeError);
});
