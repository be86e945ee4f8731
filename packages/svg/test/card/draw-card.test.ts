import { describe, expect, test } from "vitest";
import { drawCard } from "../../src/card/draw-card.js";
import { readStrictly } from "../read-svg.js";
import { type CardExample, cardExamples } from "./examples.js";

describe("the examples", () => {
  test.each(cardExamples)(
    "$name: is the committed drawing",
    async ({ name, source, number }: CardExample) => {
      const svg = drawCard(source, number);
      await expect(svg).toMatchFileSnapshot(`../examples/cards/${name}.svg`);
      readStrictly(svg);
    },
  );
});
