import type { CardSize, Size, Ticks } from "@sheetwright/measure";
import type { Flat, FoldDirection, FoldKind, Score, Slit } from "../project.js";
import { type FoldMeasures, frontOfFlat, type NamedFold, type Panels, panelsOf } from "./fold-panels.js";

/** How a maker wants a card folded: a word for the usual measures, or the word with measures of its own. */
export type FoldWish = NamedFold | "either" | NamedFoldWish | OwnFold;

/** A named fold with measures of its own. */
export interface NamedFoldWish extends FoldMeasures {
  readonly kind: NamedFold | "either";
  /** The side of the flat that the scores divide (default: the height for `top` and `easel`, else the width). */
  readonly along?: "width" | "height" | undefined;
}

/** A fold panel by panel. */
export interface OwnFold {
  readonly kind: "own";
  readonly along: "width" | "height";
  /** From the left or top, outside up. */
  readonly widths: readonly Ticks[];
  /** One fewer than widths. */
  readonly folds: readonly FoldDirection[];
}

/** Shutters: a strip of 1 1/2 in on a card of 5 1/2 in is freed on both long edges (common practice, no source). */
const SHUTTER_SHARE = { parts: 3, of: 11 } as const;

/**
 * The flats that give a front (ticks, as the card stands): twice as wide for a side fold, twice as high for a top fold,
 * scored in the middle, and so on for each kind. `either` gives the side and the top fold, the more usual first: along the
 * longer edge, the side where the edges are equal.
 *
 * @example
 * const inch = 40640;
 * const front = { width: 4 * inch, height: 6 * inch };
 * const [side] = flatsOf({ front, fold: "side" });
 * [side.width / inch, side.height / inch] // => [8, 6]
 * side.scores // => [{ along: "width", at: 4 * inch, folds: "mountain" }]
 * flatsOf({ front, fold: "either" }).map(({ fold }) => fold) // => ["side", "top"]
 * flatsOf({ front: { width: 6 * inch, height: 4 * inch }, fold: "either" }).map(({ fold }) => fold) // => ["top", "side"]
 * const [gate] = flatsOf({ front, fold: { kind: "gate", gap: inch / 8 } });
 * gate.panels.map((ticks) => ticks / inch) // => [1.9375, 4, 1.9375]
 */
export function flatsOf({ front, fold }: { readonly front: Size; readonly fold: FoldWish }): readonly Flat[] {
  const wish = typeof fold === "string" ? { kind: fold } : fold;
  if (wish.kind === "own") return [flatOf("own", front, wish.along, wish)];
  const { kind } = wish;
  if (kind === "either") {
    const first = usualFold(front);
    return [first, first === "side" ? ("top" as const) : ("side" as const)].map((one) =>
      namedFlat(front, { ...wish, kind: one }),
    );
  }
  return [namedFlat(front, { ...wish, kind })];
}

/**
 * The front and the flat of a card that is folded from a piece of a given size (ticks, as it lies with the outside up and
 * the front upright). The panels make up the piece to the tick.
 *
 * @example
 * const inch = 40640;
 * const { front, flat } = frontOfPiece({ width: 11 * inch, height: 8.5 * inch }, { kind: "tri" });
 * flat.panels.map((ticks) => ticks / inch) // => [3.625, 3.6875, 3.6875]
 * front.width / inch // => 3.6875
 */
export function frontOfPiece(
  piece: Size,
  fold: NamedFoldWish & { readonly kind: NamedFold },
): { readonly front: Size; readonly flat: Flat } {
  const along = alongOf(fold);
  const width = frontOfFlat(fold.kind, piece[along], fold);
  const front = { ...piece, [along]: width };
  const { widths, folds } = panelsOf(fold.kind, width, fold);
  // The innermost panel stands first.
  const spare = piece[along] - widths.reduce((sum, one) => sum + one, 0);
  const panels = { widths: widths.map((one, index) => (index === 0 ? one + spare : one)), folds };
  return { front, flat: flatOf(fold.kind, front, along, panels) };
}

/**
 * The fold of a front that no format says it for: along its longer edge, and along the side where the edges are equal.
 *
 * @example
 * usualFold({ width: 5, height: 7 }) // => "side"
 * usualFold({ width: 7, height: 5 }) // => "top"
 * usualFold({ width: 5, height: 5 }) // => "side"
 */
export function usualFold(front: Size): "side" | "top" {
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
): { readonly front: Size; readonly fold: "side" | "top" } {
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

function alongOf({ kind, along }: NamedFoldWish): "width" | "height" {
  if (kind === "side") return "width";
  if (kind === "top" || kind === "easel") return "height";
  return along ?? "width";
}

function namedFlat(front: Size, wish: NamedFoldWish & { readonly kind: NamedFold }): Flat {
  const along = alongOf(wish);
  return flatOf(wish.kind, front, along, panelsOf(wish.kind, front[along], wish));
}

function flatOf(fold: FoldKind, front: Size, along: "width" | "height", { widths, folds }: Panels): Flat {
  let at = 0;
  const scores = folds.map((direction, index): Score => {
    at += widths[index] ?? 0;
    return { along, at, folds: direction };
  });
  const size = { ...front, [along]: widths.reduce((sum, width) => sum + width, 0) };
  return {
    fold,
    ...size,
    along,
    panels: [...widths],
    scores,
    slits: fold === "shutter" ? slitsOf(size, along, scores) : [],
  };
}

/** Two slits from the first score to the last, each as far from its edge. */
function slitsOf(size: Size, along: "width" | "height", scores: readonly Score[]): readonly Slit[] {
  const across = along === "width" ? size.height : size.width;
  const off = Math.floor((across * SHUTTER_SHARE.parts) / SHUTTER_SHARE.of);
  const [from, to] = [scores[0]?.at ?? 0, scores.at(-1)?.at ?? 0];
  return [off, across - off].map((at) => ({ along, at, from, to }));
}
