import type { Size } from "@sheetwright/measure";
import type { LayerPiece } from "./card-facts.js";

/**
 * The sizes that a layer is cut to, in ticks: two where it may be cut either way. What a die cuts, what is folded, and a
 * ribbon with its ends are not cut as large as they lie.
 */
export function cutSizes({ layer, piece: { die, forms, faces } }: LayerPiece): readonly Size[] {
  const isFolded = forms.some(({ scores }) => scores.length > 0);
  return die === undefined && !isFolded && faces.length > 0 ? [layer] : forms;
}
