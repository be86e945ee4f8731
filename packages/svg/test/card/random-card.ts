import { inches } from "@sheetwright/measure";
import type { CardLayer, Flat } from "@sheetwright/planner";
import { outlineOf, type Shape } from "@sheetwright/shapes";
import fc from "fast-check";
import { type BuiltCard, buildCard, type LayerNote } from "./build.js";
import { papers } from "./example-papers.js";
import { foldNote, surfacesOf } from "./folded.js";

const SIXTEENTH = inches(1 / 16);
const faces = papers.flatMap(({ designs }) => designs.map(({ front }) => front.id));
const FOLDS: readonly Flat["fold"][] = [
  "flat",
  "side",
  "top",
  "gate",
  "double-gate",
  "z",
  "tri",
  "roll",
  "double-parallel",
  "accordion",
  "easel",
  "shutter",
  "own",
];

/** A place inside a carrier, on the grid of sixteenths: what is left on each side in shares of the room. */
const inside = fc.record({
  carrier: fc.nat(20),
  left: fc.nat(40),
  right: fc.nat(40),
  top: fc.nat(40),
  bottom: fc.nat(40),
  border: fc.boolean(),
  /** Which surface it lies on; most often the front. */
  surface: fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, { weight: 2, arbitrary: fc.nat(12) }),
  paper: fc.constantFrom(...faces),
  text: fc.option(fc.constantFrom("Good night", "for you", "Light the lanterns & stay a while", "*"), {
    freq: 4,
  }),
});

/**
 * Cards of any size and fold with up to 16 layers on any of their surfaces: nested mats, panels and strips, some of them
 * covered. Half of the cards are folded once, as most are.
 */
export const randomCard: fc.Arbitrary<BuiltCard> = fc
  .record({
    width: fc.integer({ min: 32, max: 140 }),
    height: fc.integer({ min: 32, max: 140 }),
    fold: fc.oneof(
      fc.constantFrom("side" as const, "top" as const, "either" as const),
      fc.constantFrom(...FOLDS),
    ),
    lying: fc.boolean(),
    panels: fc.integer({ min: 2, max: 9 }),
    base: fc.constantFrom(...faces),
    layers: fc.array(inside, { maxLength: 16, size: "max" }),
  })
  .map(({ width, height, fold, lying, panels, base, layers }) => {
    const front = [width * SIXTEENTH, height * SIXTEENTH] as const;
    const folded = fold === "either" ? foldNote("side", front) : foldNote(fold, front, lying, panels);
    const surfaces = surfacesOf(front, folded);
    const boxes = new Map(
      surfaces.map(({ name, ...size }) => [
        name,
        [
          {
            index: -1,
            x: 0,
            y: 0,
            width: Math.floor(size.width / SIXTEENTH),
            height: Math.floor(size.height / SIXTEENTH),
          },
        ],
      ]),
    );
    const notes: LayerNote[] = [];
    for (const { carrier, left, right, top, bottom, border, surface, paper, text } of layers) {
      const { name } = surfaces[surface % surfaces.length] ?? { name: "front" as const };
      const own = boxes.get(name) ?? [];
      const under = own[carrier % own.length];
      if (under === undefined || under.width < 6 || under.height < 6) continue;
      // Up to two fifths of a side each, so that something is left of the layer.
      const cut = (share: number, side: number) =>
        border ? Math.min(2, side >> 2) : Math.floor((share * side) / 100);
      const [x, y] = [cut(left, under.width), cut(top, under.height)];
      const box = {
        index: notes.length,
        x: under.x + x,
        y: under.y + y,
        width: Math.max(2, under.width - x - cut(right, under.width)),
        height: Math.max(2, under.height - y - cut(bottom, under.height)),
      };
      own.push(box);
      notes.push({
        purpose: text === null ? "panel" : "sentiment",
        paper,
        at: [box.x * SIXTEENTH, box.y * SIXTEENTH, box.width * SIXTEENTH, box.height * SIXTEENTH],
        ...(name === "front" ? {} : { surface: name }),
        ...(under.index < 0 ? {} : { on: under.index }),
        ...(text === null ? {} : { text }),
      });
    }
    const built = buildCard({
      number: 1,
      name: "Any card",
      front,
      fold: fold === "either" ? fold : folded,
      base,
      layers: notes,
    });
    return { ...built, card: { ...built.card, layers: built.card.layers.map(cutSome) } };
  });

/** Cuts some layers to ovals, and some of these with a window. */
function cutSome(layer: CardLayer): CardLayer {
  const { x, y, width, height, text } = layer;
  const isFar = Math.max(width, height) > 8 * Math.min(width, height);
  if (text !== null || isFar || (x / SIXTEENTH + y / SIXTEENTH) % 3 !== 1) return layer;
  const oval: Shape = { shape: "oval", width, height };
  const isRing = (width / SIXTEENTH) % 3 === 1 && Math.min(width, height) > 8 * SIXTEENTH;
  const window: Shape = { shape: "oval", width: Math.floor(width / 2), height: Math.floor(height / 2) };
  const shape: Shape = isRing ? { shape: "frame", outer: oval, window } : oval;
  return { ...layer, outline: [outlineOf(shape)] };
}
