import type { Ticks } from "@sheetwright/measure";
import type { Card } from "../expansion.js";
import type { Extra, Flat } from "../project.js";
import { type Basis, weaker } from "../weight/paper-measures.js";
import type { Stuff } from "../weight/sheet-stuff.js";
import { foldedPanels, placeOnClosed } from "./folded-panels.js";
import { type Slab, thickestPoint } from "./thickest-point.js";

/** How thick a closed card is where it is thickest, in ticks. */
export interface CardThickness {
  readonly value: Ticks;
  /** The weakest foundation among all thicknesses that it is made of. */
  readonly basis: Basis;
  /** That of the folded base alone. */
  readonly base: Ticks;
}

/**
 * How thick a closed card is where it is thickest: panels of the base that lie on each other there, layers of all surfaces
 * with the foam under them, and extras. Extras of one surface lie beside each other, those of different surfaces on each
 * other, and all at the thickest place, since nobody says where: a card is at most this thick. Glue is not counted.
 *
 * @internal
 */
export function cardThickness(
  card: Pick<Card, "flats" | "base" | "layers">,
  extras: readonly Pick<Extra, "surface" | "thickness">[],
  stuffOf: (id: string) => Stuff | undefined,
): CardThickness {
  const parts = [card.base, ...card.layers.map(({ piece }) => piece)].flatMap((id) => stuffOf(id) ?? []);
  const basis = parts.map(({ caliperBasis }) => caliperBasis).reduce(weaker, "given");
  const highest = new Map<string, Ticks>();
  for (const { surface, thickness } of extras)
    highest.set(surface, Math.max(highest.get(surface) ?? 0, thickness));
  const onTop = [...highest.values()].reduce((sum, thickness) => sum + thickness, 0);
  const caliper = stuffOf(card.base)?.caliper ?? 0;
  const folded = card.flats.map((flat) => panelSlabs(flat, caliper));
  const whole = card.flats.map((flat, index) =>
    thickestPoint([...(folded[index] ?? []), ...layerSlabs(flat, card, stuffOf)]),
  );
  return {
    value: Math.max(0, ...whole) + onTop,
    basis,
    base: Math.max(0, ...folded.map(thickestPoint)),
  };
}

function panelSlabs(flat: Flat, thickness: Ticks): readonly Slab[] {
  return foldedPanels(flat).map(({ from, to }) =>
    flat.along === "width"
      ? { x: from, y: 0, width: to - from, height: flat.height, thickness }
      : { x: 0, y: from, width: flat.width, height: to - from, thickness },
  );
}

function layerSlabs(
  flat: Flat,
  { layers }: Pick<Card, "layers">,
  stuffOf: (id: string) => Stuff | undefined,
): readonly Slab[] {
  return layers.map((layer) => {
    const { x, y, width, height, piece, surface, foam = 0 } = layer;
    const thickness = foam + (stuffOf(piece)?.caliper ?? 0);
    return { ...placeOnClosed(flat, surface, { x, y, width, height }), thickness };
  });
}
