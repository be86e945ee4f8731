// What lies on something cut to a shape lies within its outer line; across a window it may lie.

import type { Ticks } from "@sheetwright/measure";
import { boxOf, difference, mostDistance, moved, type Outline } from "@sheetwright/shapes";
import type { CardLayer } from "../expansion.js";
import { type CardBuilder, sayLength, saySize } from "./card-builder.js";
import { fault } from "./fault.js";
import type { Rectangle, Surface } from "./surface.js";

/** Outlines may be off by so much together: 0.0025 mm. */
const ROUNDED: Ticks = 4;

/**
 * Adds a fault where a layer pokes out over the outline of what carries it.
 *
 * @internal
 */
export function findBeyondOutline(
  builder: CardBuilder,
  layer: CardLayer,
  carrier: Surface,
  path: string,
): void {
  const { outline } = carrier;
  if (outline === undefined) return;
  const filled = outline.map(({ outer }): Outline => ({ outer, windows: [] }));
  const beyond = beyondOf(outlineOfLayer(layer), filled);
  if (beyond === 0) return;
  const piece = builder.pieces.find(({ id }) => id === layer.piece);
  const item = builder.items.find(({ id }) => id === layer.piece);
  const label = piece?.label ?? item?.label ?? layer.piece;
  const what = layer.outline === undefined ? `The ${label}` : `The shape of the ${label}`;
  const fits = layer.outline === undefined ? rectangleThatFits(layer, filled, builder.precision) : null;
  const help =
    fits === null
      ? "Make it smaller, or move it inwards."
      : `About the same middle ${saySize(builder, fits)} would fit.`;
  const said = sayLength(builder, beyond);
  builder.faults.push(
    fault({
      code: "too-large",
      path,
      found: saySize(builder, layer),
      expected: "a layer within the shape that carries it",
      message: `${what} pokes out over the edge of the shape of ${carrier.words}, by up to ${said}. ${help}`,
    }),
  );
}

/** How far something reaches beyond some outlines; 0 where it lies within. */
function beyondOf(outlines: readonly Outline[], carrier: readonly Outline[]): Ticks {
  const outside = difference(outlines, carrier);
  const most = outside.map((part) => Math.min(...carrier.map((one) => mostDistance(part, one).distance)));
  const furthest = Math.max(0, ...most);
  return furthest <= ROUNDED ? 0 : Math.round(furthest);
}

function outlineOfLayer(layer: CardLayer): readonly Outline[] {
  const { x, y } = layer;
  return layer.outline?.map((outline) => moved(outline, { x, y })) ?? [frameOf(layer)];
}

function frameOf({ x, y, width, height }: Rectangle): Outline {
  const [right, bottom] = [x + width, y + height];
  const outer = [
    { to: { x: right, y } },
    { to: { x: right, y: bottom } },
    { to: { x, y: bottom } },
    { to: { x, y } },
  ];
  return { outer, windows: [] };
}

/** The largest rectangle about the same middle that is as much smaller on all sides; `null` where none is left. */
function rectangleThatFits(
  layer: Rectangle,
  carrier: readonly Outline[],
  precision: Ticks,
): Rectangle | null {
  const smaller = (by: Ticks): Rectangle => ({
    x: layer.x + by,
    y: layer.y + by,
    width: layer.width - 2 * by,
    height: layer.height - 2 * by,
  });
  const most = Math.floor((Math.min(layer.width, layer.height) - 1) / 2);
  let [low, high] = [0, Math.ceil(most / precision)];
  // A smaller one about the same middle lies within a larger one.
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (beyondOf([frameOf(smaller(Math.min(most, middle * precision)))], carrier) === 0) high = middle;
    else low = middle + 1;
  }
  const by = low * precision;
  if (by > most) return null;
  const found = smaller(by);
  return beyondOf([frameOf(found)], carrier) === 0 && boxOf(frameOf(found)).width > 0 ? found : null;
}
