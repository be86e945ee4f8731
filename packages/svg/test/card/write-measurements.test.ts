import { describe, expect, test } from "vitest";
import { writeMeasurements } from "../../src/card/write-measurements.js";
import { columnsOf } from "../../src/cut-list/text-columns.js";
import { type CardExample, cardExamples } from "./examples.js";

describe("the examples", () => {
  test.each(cardExamples)("$name: is the committed text", async ({ name, source, number }: CardExample) => {
    const text = writeMeasurements(source, number);
    await expect(text).toMatchFileSnapshot(`../examples/cards/${name}.txt`);
    for (const line of text.split("\n")) expect(columnsOf(line)).toBeLessThanOrEqual(76);
  });
});
