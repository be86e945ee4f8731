import type { Design, Layer, Project } from "@sheetwright/cards";

/** The card with each of its layers, those on layers too, as a function gives it. */
export function withLayers(card: Design, change: (layer: Layer) => Layer): Design {
  const changed = (layers: readonly Layer[]): readonly Layer[] =>
    layers.map((layer) => change({ ...layer, layers: changed(layer.layers) }));
  return {
    ...card,
    surfaces: card.surfaces.map((surface) => ({ ...surface, layers: changed(surface.layers) })),
  };
}

/** All layers of a card, each before those that lie on it. */
export function allLayers(card: Design): readonly Layer[] {
  const found = (layers: readonly Layer[]): readonly Layer[] =>
    layers.flatMap((layer) => [layer, ...found(layer.layers)]);
  return card.surfaces.flatMap(({ layers }) => found(layers));
}

/** The project with one card in the place of that of the same number. */
export function withDesign(project: Project, card: Design): Project {
  return { ...project, cards: project.cards.map((one) => (one.number === card.number ? card : one)) };
}
