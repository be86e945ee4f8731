// What lies on something cut to a shape lies within its outer line; across a window it may lie.

import { inches, type Ticks } from "@sheetwright/measure";
import { difference, mostDistance, moved, type Outline } from "@sheetwright/shapes";
import type { CardLayer } from "../expansion.js";
import { type CardBuilder, sayLength, saySize } from "./card-builder.js";
import { fault } from "./fault.js";
import { shapeOfPiece } from "./shape-of-piece.js";
import type { Rectangle, Surface } from "./surface.js";

/** Less is told as nothing by a ruler: half of 1/64 in. */
const SEEN: Ticks = inches(1 / 128);

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
  const what = layer.outline === undefined ? `the ${label}` : shapeOfPiece(`the ${label}`);
  const fits = layer.outline === undefined ? rectangleThatFits(layer, filled, builder.precision) : null;
  const help =
    fits === null
      ? "Make it smaller, or move it inwards."
      : `About the same middle ${saySize(builder, fits)} would fit.`;
  const said = beyond < SEEN ? "a hair" : `up to ${sayLength(builder, beyond)}`;
  builder.faults.push(
    fault({
      code: "too-large",
      path,
      found: saySize(builder, layer),
      expected: "a layer within the shape that carries it",
      message: `${what.charAt(0).toUpperCase()}${what.slice(1)} pokes out over the edge of ${shapeOfPiece(carrier.words)}, by ${said}. ${help}`,
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

/**
 * The largest rectangle about the same middle that is as much smaller on all sides, or of a strip one that is only shorter; `null` where none is left.
 */
function rectangleThatFits(
  layer: Rectangle,
  carrier: readonly Outline[],
  precision: Ticks,
): Rectangle | null {
  const isLevel = layer.width >= layer.height;
  const evenly = { x: 1, y: 1 } as const;
  const shorter = isLevel ? ({ x: 1, y: 0 } as const) : ({ x: 0, y: 1 } as const);
  const isStrip = Math.max(layer.width, layer.height) >= 3 * Math.min(layer.width, layer.height);
  const [first, second] = isStrip ? [shorter, evenly] : [evenly, shorter];
  return shrunk(layer, first, carrier, precision) ?? shrunk(layer, second, carrier, precision);
}

function shrunk(
  layer: Rectangle,
  { x, y }: { readonly x: 0 | 1; readonly y: 0 | 1 },
  carrier: readonly Outline[],
  precision: Ticks,
): Rectangle | null {
  const smaller = (steps: number): Rectangle => {
    const by = steps * precision;
    return {
      x: layer.x + x * by,
      y: layer.y + y * by,
      width: layer.width - 2 * x * by,
      height: layer.height - 2 * y * by,
    };
  };
  const side = Math.min(...[...(x === 1 ? [layer.width] : []), ...(y === 1 ? [layer.height] : [])]);
  const most = Math.ceil(side / (2 * precision)) - 1;
  let [low, high] = [0, most + 1];
  // A smaller one about the same middle lies within a larger one.
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (beyondOf([frameOf(smaller(middle))], carrier) === 0) high = middle;
    else low = middle + 1;
  }
  return low > most ? null : smaller(low);
}
