import { hiddenLayers } from "../expand/hidden-layers.js";
import type { Card, Expansion } from "../expansion.js";
import type { Project } from "../project.js";
import type { Found } from "./finding.js";
import { listed } from "./listed.js";

/**
 * Finds layers of which nothing shows.
 *
 * @internal
 */
export function findHiddenLayers(_: Project, expansion: Expansion): readonly Found[] {
  return expansion.cards.flatMap((card) => hiddenIn(card, expansion));
}

function hiddenIn(card: Card, { pieces }: Expansion): readonly Found[] {
  const isHidden = hiddenLayers(card);
  const hidden = pieces.filter(({ id }) => isHidden.has(card.layers.findIndex(({ piece }) => piece === id)));
  // Bands of one layer are told of together.
  return [...new Set(hidden.map(({ path }) => path))].map((path) => {
    const labels = hidden.filter((piece) => piece.path === path).map(({ label }) => label);
    const it = labels.length > 1 ? "them" : "it";
    const help = path.endsWith(".join.ends")
      ? `Make what covers the seams narrower, or write at: one end, which makes one larger end of ${it}.`
      : `Move ${it}, or leave ${it} out.`;
    const message = `Nothing of the ${listed(labels)} shows: what lies above covers ${it} whole. ${help}`;
    return { code: "hidden-layer", path, message };
  });
}
