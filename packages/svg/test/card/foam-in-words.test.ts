import { inches, millimetres } from "@sheetwright/measure";
import { expect, test } from "vitest";
import { writeMeasurements } from "../../src/card/write-measurements.js";
import { buildCard, expansion } from "./build.js";
import { papers } from "./example-papers.js";

const built = buildCard({
  number: 1,
  name: "Moth",
  front: [inches(5), inches(7)],
  fold: "side",
  base: "night",
  layers: [
    { purpose: "mat", paper: "cream", at: [inches(1 / 4), inches(1 / 4), inches(4.5), inches(6.5)] },
    { purpose: "panel", paper: "night", at: [inches(1 / 2), inches(1 / 2), inches(4), inches(6)], on: 0 },
  ],
});

const textWith = (foam: number) => {
  const layers = built.card.layers.map((layer, index) => (index === 1 ? { ...layer, foam } : layer));
  const source = expansion(papers, [{ ...built, card: { ...built.card, layers } }]);
  return writeMeasurements(source, 1).replace(/\s+/g, " ");
};

test("a layer that foam lifts is laid on the foam, and the others flat", () => {
  const text = textWith(inches(1 / 16));
  expect(text).toContain("on 1/16 in of foam on 1b");
  expect(text).toContain("Lay 1c panel on 1/16 in of foam on 1b mat: 1/4 in border all round.");
  expect(text).toContain("Lay 1b mat on the front of 1a base: 1/4 in border all round.");
  expect(textWith(millimetres(2))).toContain("Lay 1c panel on ~5/64 in of foam on 1b mat");
});
