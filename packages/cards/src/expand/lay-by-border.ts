import type { Sides } from "../project.js";
import { type CardBuilder, sayLength } from "./card-builder.js";
import { fault } from "./fault.js";
import type { Rectangle, Surface } from "./surface.js";

/**
 * What a border leaves of a carrier, or `null`, with a fault, where it leaves nothing. `what` names the layer.
 *
 * @internal
 */
export function layByBorder(
  builder: CardBuilder,
  layer: { readonly border: Sides; readonly carrier: Surface; readonly what: string; readonly path: string },
): Rectangle | null {
  const { border, carrier, what, path } = layer;
  const say = (ticks: number) => sayLength(builder, ticks);
  const width = carrier.width - border.left - border.right;
  const height = carrier.height - border.top - border.bottom;
  const vanishing = [
    ...(width > 0 ? [] : [{ sides: ["left", "right"] as const, room: carrier.width, across: "wide" }]),
    ...(height > 0 ? [] : [{ sides: ["top", "bottom"] as const, room: carrier.height, across: "high" }]),
  ];
  if (vanishing.length === 0) return { x: carrier.x + border.left, y: carrier.y + border.top, width, height };

  const taken = vanishing.map(({ sides: [first, second], room, across }) => {
    const excess = border[first] + border[second] - room;
    const over = excess === 0 ? "just as much" : `${say(excess)} less`;
    return (
      `The borders of ${say(border[first])} on the ${first} and ${say(border[second])} on the ${second} take ` +
      `${say(border[first] + border[second])}, and ${carrier.words} is ${say(room)} ${across}, ${over}.`
    );
  });
  const limits = vanishing.map(({ sides, room }) => `${sides.join(" and ")} together less than ${say(room)}`);
  builder.faults.push(
    fault({
      code: "layer-vanishes",
      path: `${path}.border`,
      found: sayBorder(builder, border),
      expected: limits.join(", "),
      message: `Nothing is left of ${what}. ${taken.join(" ")} Give ${limits.join(", ")}.`,
    }),
  );
  return null;
}

function sayBorder(builder: CardBuilder, border: Sides): string {
  const { left, right, top, bottom } = border;
  if (left === right && left === top && left === bottom) return sayLength(builder, left);
  return (["left", "right", "top", "bottom"] as const)
    .map((side) => `${side} ${sayLength(builder, border[side])}`)
    .join(", ");
}
