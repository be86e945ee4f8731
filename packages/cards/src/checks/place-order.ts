import type { Layer, Project } from "../project.js";
import { parentOf, pathTo } from "../project-file/value-path.js";

/** The places before the papers, in the order in which the documentation lists them. */
const HEAD = ["title", "units", "precision", "copies", "shelf", "trimmer", "die-machine"];

/**
 * Numbers the places of a project in its order: what concerns it as a whole, its papers and items, its cards with their layers as
 * they are listed, then all else. A path that is no place of its own counts as what it stands in.
 *
 * @internal
 */
export function placeOrder({ papers, items = [], cards }: Project): (path: string) => number {
  const places = [
    ...HEAD,
    "papers",
    ...papers.flatMap(({ id, designs }) => {
      const path = pathTo("papers", id);
      const own = designs
        .filter((design) => design.id !== id)
        .map((design) => design.id.slice(id.length + 1));
      return [path, ...own.map((key) => pathTo(pathTo(path, "designs"), key))];
    }),
    "items",
    ...items.map(({ path }) => path),
    "dies",
    "rates",
    "cards",
    ...cards.flatMap(({ path, surfaces }) => [
      path,
      ...surfaces.flatMap((surface) => [surface.path, ...layerPaths(surface.layers)]),
    ]),
  ];
  const numbers = new Map(places.map((place, index) => [place, index]));
  return (path) => {
    let place = path;
    while (place !== "") {
      const number = numbers.get(place);
      if (number !== undefined) return number;
      place = parentOf(place);
    }
    return path === "" ? -1 : places.length;
  };
}

function layerPaths(layers: readonly Layer[]): readonly string[] {
  return layers.flatMap((layer) => [layer.path, ...layerPaths(layer.layers)]);
}
