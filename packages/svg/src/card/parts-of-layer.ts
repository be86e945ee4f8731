import type { LayerPiece } from "./card-facts.js";

/**
 * All pieces that one layer of the file is made up of, of which `first` is the first: bands, those that divide one of them,
 * and parts or ends of what its paper is too small for. Without what covers its seams.
 */
export function partsOfLayer(layers: readonly LayerPiece[], first: LayerPiece): readonly LayerPiece[] {
  const start = layers.indexOf(first);
  const origin = originOf(first);
  const end = layers.findIndex((layer, index) => index > start && originOf(layer) !== origin);
  return layers.slice(start, end < 0 ? undefined : end);
}

/** The place of the whole layer in the file. */
function originOf({ piece }: LayerPiece): string {
  return piece.path.replace(/(?:\.papers\[\d+\])*(?:\.join\.ends)?$/, "");
}
