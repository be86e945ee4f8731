import type { CardSize, Size } from "@sheetwright/measure";
import type { Flat } from "../project.js";

/** The fold a maker asks for: along the left edge of the front, along its top edge, or as the plan finds best. */
export type FoldWish = Flat["fold"] | "either";

/**
 * The flats that give a front (ticks, as the card stands): twice as wide for a side fold, twice as high for a top fold,
 * scored in the middle. `either` gives both, the more usual first: the fold along the longer edge, the side where the
 * edges are equal.
 *
 * @example
 * const inch = 40640;
 * flatsOf({ front: { width: 4 * inch, height: 6 * inch }, fold: "side" }) // => [{ fold: "side", width: 8 * inch, height: 6 * inch, score: { along: "width", at: 4 * inch } }]
 * flatsOf({ front: { width: 4 * inch, height: 6 * inch }, fold: "either" }).map(({ fold }) => fold) // => ["side", "top"]
 * flatsOf({ front: { width: 6 * inch, height: 4 * inch }, fold: "either" }).map(({ fold }) => fold) // => ["top", "side"]
 */
export function flatsOf({ front, fold }: { readonly front: Size; readonly fold: FoldWish }): readonly Flat[] {
  if (fold === "side") return [sideFlat(front)];
  if (fold === "top") return [topFlat(front)];
  const first = usualFold(front);
  return first === "side" ? [sideFlat(front), topFlat(front)] : [topFlat(front), sideFlat(front)];
}

/**
 * The fold of a front that no format says it for: along its longer edge, and along the side where the edges are equal.
 *
 * @example
 * usualFold({ width: 5, height: 7 }) // => "side"
 * usualFold({ width: 7, height: 5 }) // => "top"
 * usualFold({ width: 5, height: 5 }) // => "side"
 */
export function usualFold(front: Size): Flat["fold"] {
  return front.width <= front.height ? "side" : "top";
}

/**
 * The front (ticks) of a named card the way it stands, and its usual fold: those of the format's first flat. The front
 * is what the score leaves of that flat, which for A5 from a whole A4 sheet is half a millimetre wider than its name
 * says. Lying is a quarter turn from upright, so that a side fold becomes a top fold; a square stays as it is.
 *
 * @example
 * const a5 = cardSizes.find(({ id }) => id === "card-iso-a5");
 * const { front, fold } = formatFront(a5, "upright");
 * [front.width / 1600, front.height / 1600, fold] // => [148.5, 210, "side"]
 */
export function formatFront(
  card: CardSize,
  stand: "upright" | "lying",
): { readonly front: Size; readonly fold: Flat["fold"] } {
  const [flat] = card.flats;
  if (flat === undefined) throw new RangeError(`Expected a card with a flat, found none for "${card.id}".`);
  const across = flat.scoreAlong === "width" ? flat.height : flat.width;
  const upright =
    flat.fold === "side" ? { width: flat.scoreAt, height: across } : { width: across, height: flat.scoreAt };
  if (stand === "upright" || upright.width === upright.height) return { front: upright, fold: flat.fold };
  return {
    front: { width: upright.height, height: upright.width },
    fold: flat.fold === "side" ? "top" : "side",
  };
}

function sideFlat({ width, height }: Size): Flat {
  return { fold: "side", width: 2 * width, height, score: { along: "width", at: width } };
}

function topFlat({ width, height }: Size): Flat {
  return { fold: "top", width, height: 2 * height, score: { along: "height", at: height } };
}
