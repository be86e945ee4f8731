import type { SurfaceName } from "../project.js";
import { addLayer, type CardBuilder } from "./card-builder.js";
import type { Surface } from "./surface.js";

/**
 * Lays the front of an easel: a panel as large as the card, glued to the lower half of the folded front alone, so that it
 * stands up when the card is opened. What lies on the front lies on it. Gives the surface that it is; none for any other
 * card. That it comes from the paper of the base is common practice, no source.
 *
 * @internal
 */
export function layEaselFront(
  builder: CardBuilder,
  surfaces: ReadonlyMap<SurfaceName, Surface>,
): readonly Surface[] {
  const { flats, base, frontPaper, path } = builder.design;
  const front = surfaces.get("front");
  if (front === undefined || flats.every(({ fold }) => fold !== "easel")) return [];
  const { x, y, width, height } = front;
  const piece = {
    purpose: "easel front",
    path: frontPaper === undefined ? `${path}.fold` : `${path}.front-paper`,
    choice: frontPaper ?? base,
  };
  const border = { left: 0, right: 0, top: 0, bottom: 0 };
  const on = addLayer(builder, piece, {
    surface: "front",
    rectangle: { x, y, width, height },
    on: null,
    border,
  });
  const words = `the ${builder.pieces.at(-1)?.label ?? piece.purpose}`;
  return [{ ...front, on, until: on + 1, words }];
}
