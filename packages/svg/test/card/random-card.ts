import { inches } from "@sheetwright/measure";
import fc from "fast-check";
import { type BuiltCard, buildCard, type LayerNote } from "./build.js";
import { papers } from "./examples.js";

const SIXTEENTH = inches(1 / 16);
const faces = papers.flatMap(({ designs }) => designs.map(({ front }) => front.id));

/** A place inside a carrier, on the grid of sixteenths: what is left on each side in shares of the room. */
const inside = fc.record({
  carrier: fc.nat(20),
  left: fc.nat(40),
  right: fc.nat(40),
  top: fc.nat(40),
  bottom: fc.nat(40),
  border: fc.boolean(),
  paper: fc.constantFrom(...faces),
  text: fc.option(fc.constantFrom("Good night", "for you", "Light the lanterns & stay a while", "*"), {
    freq: 4,
  }),
});

/** Cards of any size and fold with up to 16 layers: nested mats, panels and strips, some of them covered. */
export const randomCard: fc.Arbitrary<BuiltCard> = fc
  .record({
    width: fc.integer({ min: 32, max: 140 }),
    height: fc.integer({ min: 32, max: 140 }),
    fold: fc.constantFrom("side" as const, "top" as const, "either" as const),
    base: fc.constantFrom(...faces),
    layers: fc.array(inside, { maxLength: 16, size: "max" }),
  })
  .map(({ width, height, fold, base, layers }) => {
    const boxes: { x: number; y: number; width: number; height: number }[] = [{ x: 0, y: 0, width, height }];
    const notes: LayerNote[] = [];
    for (const { carrier, left, right, top, bottom, border, paper, text } of layers) {
      const on = carrier % boxes.length;
      const under = boxes[on];
      if (under === undefined || under.width < 6 || under.height < 6) continue;
      // Up to two fifths of a side each, so that something is left of the layer.
      const cut = (share: number, side: number) =>
        border ? Math.min(2, side >> 2) : Math.floor((share * side) / 100);
      const [x, y] = [cut(left, under.width), cut(top, under.height)];
      const box = {
        x: under.x + x,
        y: under.y + y,
        width: Math.max(2, under.width - x - cut(right, under.width)),
        height: Math.max(2, under.height - y - cut(bottom, under.height)),
      };
      boxes.push(box);
      notes.push({
        purpose: text === null ? "panel" : "sentiment",
        paper,
        at: [box.x * SIXTEENTH, box.y * SIXTEENTH, box.width * SIXTEENTH, box.height * SIXTEENTH],
        ...(on === 0 ? {} : { on: on - 1 }),
        ...(text === null ? {} : { text }),
      });
    }
    return buildCard({
      number: 1,
      name: "Any card",
      front: [width * SIXTEENTH, height * SIXTEENTH],
      fold,
      base,
      layers: notes,
    });
  });
