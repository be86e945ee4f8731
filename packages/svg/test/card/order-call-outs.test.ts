import { expect, test } from "vitest";
import { orderCallOuts, type Stacked } from "../../src/card/order-call-outs.js";

const margin = { top: 0, bottom: 100, step: 1, apart: 3 };

/** A label 10 high whose leader may end at any height from one to another. */
function label(rank: number, from: number, to: number): Stacked {
  return {
    rank,
    height: 10,
    candidates: Array.from({ length: to - from + 1 }, (_, i) => ({ x: 50, y: from + i, cost: 0 })),
  };
}

test("follows the letters where the layers leave it free to, with level leaders", () => {
  const places = orderCallOuts([label(2, 0, 100), label(0, 0, 100), label(1, 0, 100)], margin) ?? [];
  expect(places.map(({ rank }) => rank)).toEqual([0, 1, 2]);
  for (const { middle, end } of places) expect(end.y).toBe(middle);
});

test("follows the layers where they lie in another order", () => {
  const places = orderCallOuts([label(0, 80, 85), label(1, 40, 45), label(2, 10, 15)], margin) ?? [];
  expect(places.map(({ rank }) => rank)).toEqual([2, 1, 0]);
});

test("keeps labels apart where all leaders end near each other, in the order of the leaders", () => {
  const places =
    orderCallOuts(
      [0, 1, 2, 3].map((rank) => label(rank, 50, 62)),
      margin,
    ) ?? [];
  expect(places).toHaveLength(4);
  places.slice(1).forEach(({ middle, end }, i) => {
    expect(middle - (places[i]?.middle ?? 0)).toBeGreaterThanOrEqual(10);
    expect(end.y - (places[i]?.end.y ?? 0)).toBeGreaterThanOrEqual(3);
  });
});

test("gives null where leaders cannot keep their distance", () => {
  expect(orderCallOuts([label(0, 50, 51), label(1, 50, 51)], margin)).toBe(null);
  expect(orderCallOuts([], margin)).toEqual([]);
});
