import { massOf, type Size } from "@sheetwright/measure";
import { areaOf, type Outline } from "@sheetwright/shapes";
import type { Card, Expansion } from "../expansion.js";
import type { Extra } from "../project.js";
import { type Basis, weaker } from "./paper-measures.js";
import type { Stuff } from "./sheet-stuff.js";

/** What a finished card weighs, in grams, without its envelope. */
export interface CardMass {
  readonly grams: number;
  /** `estimated` at best, since glue and foam are left out. */
  readonly basis: Basis;
  /** Names of extras whose weight nobody gave; they are not counted. */
  readonly without: readonly string[];
}

/**
 * What a finished card weighs: all its pieces as cut, what is hidden of them too, ribbons by their length, and extras. Where
 * several papers will do, by the heaviest. Glue and foam are left out. What is cut to a shape weighs what its outline holds; where
 * only the size of a die is known, as much as the rectangle round its shape.
 *
 * @internal
 */
export function cardMass(
  { number, layers }: Pick<Card, "number" | "layers">,
  extras: readonly Pick<Extra, "name" | "count" | "grams">[],
  { pieces, items }: Pick<Expansion, "pieces" | "items">,
  stuffOf: (id: string) => Stuff | undefined,
): CardMass {
  const outlines = new Map(layers.map(({ piece, outline }) => [piece, outline]));
  const sheets = [
    // Of a die blank only the shape stays on the card; it is at most as heavy as the rectangle round it.
    ...pieces.map(({ id, card, forms, die }) => {
      const outline = outlines.get(id);
      if (outline !== undefined) return { id, card, sizes: [asRectangle(outline)] };
      return { id, card, sizes: die === undefined ? forms : [die.cut] };
    }),
    ...items.map(({ id, card, width, length }) => ({ id, card, sizes: [{ width, height: length }] })),
  ].filter(({ card }) => card === number);
  let grams = 0;
  let basis: Basis = "estimated";
  for (const { id, sizes } of sheets) {
    const stuff = stuffOf(id);
    if (stuff === undefined) continue;
    grams += Math.max(...sizes.map((size) => massOf(size, stuff.grammage)));
    basis = weaker(basis, stuff.grammageBasis);
  }
  for (const { count, grams: each } of extras) grams += count * (each ?? 0);
  const without = [...new Set(extras.filter((extra) => extra.grams === null).map(({ name }) => name))];
  return { grams, basis, without };
}

/** A rectangle of the same area; one side is a tick, so that the other has no rounding of its own. */
function asRectangle(outlines: readonly Outline[]): Size {
  return { width: outlines.reduce((sum, outline) => sum + areaOf(outline), 0), height: 1 };
}
