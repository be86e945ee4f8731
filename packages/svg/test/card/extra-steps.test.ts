import { inches } from "@sheetwright/measure";
import { expect, test } from "vitest";
import { extraSteps } from "../../src/card/extra-steps.js";
import { writeMeasurements } from "../../src/card/write-measurements.js";
import { buildCard, expansion } from "./build.js";
import { papers } from "./example-papers.js";

const built = buildCard({
  number: 1,
  name: "Moth",
  front: [inches(5), inches(7)],
  fold: "side",
  base: "night",
  layers: [],
});

test("what is fastened to a card comes last, surface by surface, with its number", () => {
  const extras = [
    { name: "button", count: 2, surface: "front" },
    { name: "tag", count: 1, surface: "inside" },
    { name: "knot", count: 1, surface: "front" },
  ] as const;
  const card = { ...built.card, extras };
  expect(extraSteps({ card }).map((step) => step.replaceAll("\u00a0", " "))).toEqual([
    "Fasten 2 x button and 1 x knot to the front.",
    "Fasten 1 x tag to the right inside page.",
  ]);
  const text = writeMeasurements(expansion(papers, [{ ...built, card }]), 1).replace(/\s+/g, " ");
  expect(text).toContain("Fasten 2 x button and 1 x knot to the front.");
});

test("a card without extras has no such step", () => {
  expect(extraSteps(built)).toEqual([]);
});
