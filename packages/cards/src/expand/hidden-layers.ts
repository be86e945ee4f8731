import { areaOf } from "@sheetwright/shapes";
import type { Card, CardLayer } from "../expansion.js";
import { visibleAreas } from "./visible-areas.js";

/**
 * Whether a layer covers all of its box, as rectangles do and what is cut to another shape does not.
 *
 * @internal
 */
export function coversItsBox({
  outline,
  width,
  height,
}: Pick<CardLayer, "outline" | "width" | "height">): boolean {
  if (outline === undefined) return true;
  return outline.reduce((sum, one) => sum + areaOf(one), 0) >= width * height;
}

/**
 * The indices of the layers of a card of which nothing shows. What is cut to a shape hides nothing, since only boxes are
 * compared; it is hidden itself where its box is.
 *
 * @internal
 */
export function hiddenLayers({ surfaces, layers }: Pick<Card, "surfaces" | "layers">): ReadonlySet<number> {
  const hidden = new Set<number>();
  const covering = layers.map((layer) => (coversItsBox(layer) ? layer : { ...layer, width: 0, height: 0 }));
  for (const { name } of surfaces) {
    const areas = visibleAreas({ surfaces, layers: covering }, name).layers;
    for (const [index, layer] of layers.entries()) {
      if (layer.surface !== name) continue;
      const isOwn = covering[index] === layer;
      const above = isOwn ? [] : [layer, ...covering.slice(index + 1)];
      const shows = isOwn ? areas[index] : visibleAreas({ surfaces, layers: above }, name).layers[0];
      if (shows === 0n) hidden.add(index);
    }
  }
  return hidden;
}
