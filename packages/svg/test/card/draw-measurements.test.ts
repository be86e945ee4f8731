import { describe, expect, test } from "vitest";
import { drawMeasurements } from "../../src/card/draw-measurements.js";
import { readStrictly } from "../read-svg.js";
import { type CardExample, cardExamples } from "./examples.js";

describe("the examples", () => {
  test.each(cardExamples)("$name: are the committed pages", async ({ name, source, number }: CardExample) => {
    const pages = drawMeasurements(source, number);
    for (const [index, page] of pages.entries()) {
      const file = `../examples/cards/${name}.sizes${index === 0 ? "" : `-${index + 1}`}.svg`;
      await expect(page).toMatchFileSnapshot(file);
      readStrictly(page);
    }
  });
});
