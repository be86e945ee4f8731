import { type Size, TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from "@sheetwright/measure";
import type { Along, Place } from "../project.js";
import { type CardBuilder, sayLength, saySize } from "./card-builder.js";
import { fault } from "./fault.js";
import { type Placed, placeAlong } from "./place-along.js";
import type { Rectangle, Surface } from "./surface.js";

/** A layer of a given size that is to be laid. */
export interface SizedLayer {
  readonly size: Size;
  readonly place: Place;
  readonly carrier: Surface;
  /** Its name for a message: `the 3b panel`. */
  readonly what: string;
  readonly path: string;
  /** The keys under the path that its width and its height come from. */
  readonly keys: { readonly width: string; readonly height: string };
}

/** Where it lies, whether or not it is within its carrier, and the lines that were rounded. */
export interface LaidBySize {
  readonly rectangle: Rectangle;
  readonly roundings: readonly NonNullable<Placed["rounding"]>[];
}

const AXES = {
  x: { side: "width", edges: { start: "left", end: "right" }, large: "wide", thirds: ["left", "right"] },
  y: { side: "height", edges: { start: "top", end: "bottom" }, large: "high", thirds: ["upper", "lower"] },
} as const;

/**
 * Lays a layer of a given size on its carrier; adds a fault for each side on which it is too large or sticks out.
 *
 * @internal
 */
export function layBySize(builder: CardBuilder, layer: SizedLayer): LaidBySize {
  const { size, place, carrier } = layer;
  const x = placeAlong(place.x, size.width, carrier.width, builder.precision);
  const y = placeAlong(place.y, size.height, carrier.height, builder.precision);
  findTooLarge(builder, layer);
  findSticksOut(builder, layer, "x", x.start);
  findSticksOut(builder, layer, "y", y.start);
  return {
    rectangle: { x: carrier.x + x.start, y: carrier.y + y.start, width: size.width, height: size.height },
    roundings: [x.rounding, y.rounding].filter((rounding) => rounding !== null),
  };
}

function findTooLarge(builder: CardBuilder, layer: SizedLayer): void {
  const { size, carrier, keys } = layer;
  const over = (["x", "y"] as const).filter((axis) => size[AXES[axis].side] > carrier[AXES[axis].side]);
  if (keys.width === keys.height) {
    if (over.length > 0) addTooLarge(builder, layer, over);
  } else {
    // A strip's width and length are two values of the file.
    for (const axis of over) addTooLarge(builder, layer, [axis]);
  }
}

function addTooLarge(
  builder: CardBuilder,
  { size, carrier, what, path, keys }: SizedLayer,
  over: readonly ("x" | "y")[],
): void {
  const say = (ticks: Ticks) => sayLength(builder, ticks);
  const excess = over.map((axis) => {
    const { side, large } = AXES[axis];
    return `${say(size[side] - carrier[side])} too ${large}`;
  });
  const { side, large } = AXES[over[0] ?? "x"];
  const ofSize = keys.width === keys.height;
  const turned = { width: size.height, height: size.width };
  const fitsTurned = turned.width <= carrier.width && turned.height <= carrier.height;
  const make = sayMake(keys);
  const metric = ofSize && keys.width !== "die" ? readAsMetric(builder, size, carrier) : null;
  const help =
    metric !== null
      ? `If those are millimetres, write ${metric}.`
      : fitsTurned
        ? `Turned a quarter, as ${saySize(builder, turned)}, it would fit.`
        : over.length > 1
          ? `${make} at most ${saySize(builder, carrier)}.`
          : `${make} at most ${say(carrier[side])} ${large}.`;
  builder.faults.push(
    fault({
      code: "too-large",
      path: `${path}.${keys[side]}`,
      found: ofSize ? saySize(builder, size) : say(size[side]),
      expected: ofSize ? `at most ${saySize(builder, carrier)}` : `at most ${say(carrier[side])}`,
      message:
        `${capital(what)} is ${saySize(builder, size)}, and ${carrier.words} is ${saySize(builder, carrier)}: ` +
        `it is ${excess.join(" and ")}. ${help}`,
    }),
  );
}

function findSticksOut(builder: CardBuilder, layer: SizedLayer, axis: "x" | "y", start: Ticks): void {
  const { size, place, carrier, what, path } = layer;
  const { side, edges, large, thirds } = AXES[axis];
  const extent = size[side];
  const room = carrier[side];
  const beyond = Math.max(-start, start + extent - room);
  // One that is too large has been told so, and always sticks out.
  if (extent > room || beyond <= 0) return;
  const along: Along = place[axis];
  const say = (ticks: Ticks) => sayLength(builder, ticks);
  const edge = -start > 0 ? edges.start : edges.end;
  const out = `${capital(what)} sticks out over the ${edge} edge of ${carrier.words} by ${say(beyond)}`;
  if (along.from === "third") {
    const line = `${thirds[along.third - 1]} third`;
    const middle = start + Math.floor(extent / 2);
    const most = 2 * Math.min(middle, room - middle);
    builder.faults.push(
      fault({
        code: "too-large",
        path: `${path}.line`,
        found: line,
        expected: `a line that it can be centred on`,
        message:
          `${out} when it is centred on the ${line}, ${say(middle)} from the ${edges.start}. ` +
          (most > 0
            ? `${sayMake(layer.keys)} at most ${say(most)} ${large}, or give its distance from the ${edge} instead.`
            : `The line is rounded to ${say(builder.precision)}: give a finer precision, or its distance from the ${edge} instead.`),
      }),
    );
  } else if (along.from !== "middle") {
    const from = edges[along.from];
    builder.faults.push(
      fault({
        code: "too-large",
        path: `${path}.${from}`,
        found: say(along.distance),
        expected: `at most ${say(room - extent)}`,
        message:
          `${out}: it is ${say(extent)} ${large}, lies ${say(along.distance)} from the ${from}, and there are ` +
          `${say(room)} in all. Give at most ${say(room - extent)}.`,
      }),
    );
  }
}

/** A die has the size that it has. */
function sayMake(keys: SizedLayer["keys"]): string {
  return keys.width === "die" ? "Take a die that is" : "Make it";
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/**
 * A size in whole inches as it would be in millimetres, `127 x 178 mm`, if that would fit and is no tiny part of what carries
 * it: both sides at least a quarter of the carrier's (own choice).
 */
function readAsMetric({ units }: CardBuilder, { width, height }: Size, carrier: Size): string | null {
  if (units !== "in" || width % TICKS_PER_INCH !== 0 || height % TICKS_PER_INCH !== 0) return null;
  const [w, h] = [width / TICKS_PER_INCH, height / TICKS_PER_INCH];
  const isLikely = (mm: number, side: Ticks) => mm * TICKS_PER_MM <= side && 4 * mm * TICKS_PER_MM >= side;
  return isLikely(w, carrier.width) && isLikely(h, carrier.height) ? `${w} x ${h} mm` : null;
}
