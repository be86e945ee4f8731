import { describe, expect, test } from "vitest";
import { type CardSize, cardSizes, findNamedSize, formatSize, millimetres } from "../../src/index.js";

const card = (id: string): CardSize => {
  const size = findNamedSize(id, "card");
  if (size === undefined) throw new Error(`There is no card ${id}.`);
  return size;
};

describe("cards", () => {
  test("every flat is scored in its middle", () => {
    for (const flat of cardSizes.flatMap(({ flats }) => flats)) {
      const side = flat.scoreAlong === "width" ? flat.width : flat.height;
      expect(2 * flat.scoreAt, flat.id).toBe(side);
      expect(flat.width, flat.id).toBeLessThanOrEqual(flat.height);
    }
  });

  test("every flat folds to its card: a side fold halves the width, a top fold the height", () => {
    for (const { id, width, height, flats } of cardSizes) {
      for (const flat of flats) {
        const across = flat.scoreAlong === "width" ? flat.height : flat.width;
        const folded = flat.fold === "side" ? [flat.scoreAt, across] : [across, flat.scoreAt];
        // A5 folded from A4 comes out half a millimetre wider than the standard says.
        const slack = id === "card-iso-a5" ? millimetres(0.5) : 0;
        expect([folded[0], folded[1]], flat.id).toEqual([width + slack, height]);
      }
    }
  });

  test("every flat has an id of its own", () => {
    const ids = cardSizes.flatMap(({ flats }) => flats.map(({ id }) => id));
    expect(new Set(ids).size).toBe(ids.length);
  });

  test("every card goes in its envelopes with room both ways", () => {
    for (const { id, width, height, envelopes } of cardSizes) {
      for (const name of envelopes) {
        const envelope = findNamedSize(name, "envelope");
        expect(envelope?.width, `${id} in ${name}`).toBeGreaterThan(width);
        expect(envelope?.height, `${id} in ${name}`).toBeGreaterThan(height);
      }
    }
    const without = cardSizes.filter(({ envelopes }) => envelopes.length === 0).map(({ id }) => id);
    expect(without).toEqual(["sq-135mm", "sq-145mm"]);
  });

  test("US A2 comes from half a letter sheet in two ways", () => {
    expect(card("us-a2").flats.map((flat) => formatSize(flat.width, flat.height, { unit: "in" }))).toEqual([
      "5 1/2 x 8 1/2 in",
      "4 1/4 x 11 in",
    ]);
    const letter = findNamedSize("us-letter");
    for (const { width, height } of card("us-a2").flats) {
      expect(2 * width * height).toBe(letter.width * letter.height);
    }
  });

  // Common practice; A7 and A8 are printed in US envelope size charts as well.
  test.each([
    ["us-a1", "3 1/2 x 4 7/8 in"],
    ["us-a2", "4 1/4 x 5 1/2 in"],
    ["us-a6", "4 1/2 x 6 1/4 in"],
    ["us-a7", "5 x 7 in"],
    ["us-a8", "5 1/4 x 7 7/8 in"],
    ["us-a9", "5 1/2 x 8 1/2 in"],
    ["us-a10", "5 3/4 x 9 1/4 in"],
    ["us-10", "3 7/8 x 9 1/4 in"],
    ["us-slimline", "3 1/2 x 8 1/2 in"],
    ["mini-slim-3x6", "3 x 6 in"],
    ["sq-5", "5 x 5 in"],
    ["card-iso-a6", "105 x 148 mm"],
    ["card-iso-dl", "99 x 210 mm"],
    ["sq-145mm", "145 x 145 mm"],
  ])("%s is %s", (id, size) => {
    const found = card(id);
    expect(formatSize(found.width, found.height, found)).toBe(size);
  });
});
