import type { CardLayer } from "../expansion.js";
import type { ProjectFault } from "../project-fault.js";
import { type CardBuilder, type LaidBorder, sayLength } from "./card-builder.js";
import { fault } from "./fault.js";
import { coversItsBox } from "./hidden-layers.js";
import type { Rectangle } from "./surface.js";

const SIDES = ["left", "right", "top", "bottom"] as const;

/**
 * Finds borders that nowhere show in their full width along one of their sides, since other layers lie on them all along
 * it. A strip that crosses a border leaves the rest of it, and is no matter. Only of use where everything else fits.
 *
 * @internal
 */
export function findCoveredBorders(builder: CardBuilder): readonly ProjectFault[] {
  return builder.borders.flatMap((border) => {
    const covered = SIDES.flatMap((side) => {
      const covers = coversOf(builder, border, side);
      return covers === null ? [] : [{ side, covers }];
    });
    return covered.length === 0 ? [] : [sayCovered(builder, border, covered)];
  });
}

type Side = (typeof SIDES)[number];

/** What lies on a side of a border, where it does so all along; `null` where the border shows somewhere. */
function coversOf(
  { layers }: CardBuilder,
  { surface, outer, inner, above }: LaidBorder,
  side: Side,
): readonly CardLayer[] | null {
  const { start, end, from, to } = stretchOf(outer, inner, side);
  if (from >= to) return null;
  const upright = side === "left" || side === "right";
  const covers = layers.slice(above).filter((layer) => {
    if (layer.surface !== surface || !coversItsBox(layer)) return false;
    const [at, extent] = upright ? [layer.x, layer.width] : [layer.y, layer.height];
    return at < to && at + extent > from;
  });
  const spans = covers
    .map(({ x, y, width, height }) => (upright ? { at: y, until: y + height } : { at: x, until: x + width }))
    .sort((a, b) => a.at - b.at);
  let reached = start;
  for (const { at, until } of spans) {
    if (at > reached) break;
    reached = Math.max(reached, until);
  }
  return reached >= end ? covers : null;
}

/** A side of a border: along the inner edge from `start` to `end`, across from `from` to `to`. */
function stretchOf(outer: Rectangle, inner: Rectangle, side: Side) {
  const alongY = { start: inner.y, end: inner.y + inner.height };
  const alongX = { start: inner.x, end: inner.x + inner.width };
  switch (side) {
    case "left":
      return { ...alongY, from: outer.x, to: inner.x };
    case "right":
      return { ...alongY, from: inner.x + inner.width, to: outer.x + outer.width };
    case "top":
      return { ...alongX, from: outer.y, to: inner.y };
    case "bottom":
      return { ...alongX, from: inner.y + inner.height, to: outer.y + outer.height };
  }
}

function sayCovered(
  builder: CardBuilder,
  { path, words, outer, inner }: LaidBorder,
  covered: readonly { readonly side: Side; readonly covers: readonly CardLayer[] }[],
): ProjectFault {
  const say = (side: Side) => {
    const { from, to } = stretchOf(outer, inner, side);
    return `${sayLength(builder, to - from)} ${side === "top" || side === "bottom" ? "at" : "on"} the ${side}`;
  };
  const ids = new Set(covered.flatMap(({ covers }) => covers.map(({ piece }) => piece)));
  const labels = [...builder.pieces, ...builder.items]
    .filter(({ id }) => ids.has(id))
    .map(({ label }) => `the ${label}`);
  const what = listed(labels);
  const [lie, it] = labels.length > 1 ? ["lie", "them"] : ["lies", "it"];
  return fault({
    code: "border-covered",
    path,
    found: listed(covered.map(({ side }) => say(side))),
    expected: "a border that shows in its full width somewhere on each side that has one",
    message:
      `The border of ${words}, ${listed(covered.map(({ side }) => say(side)))}, does not show in its full width: ${what} ${lie} on it ` +
      `all along. Make ${it} smaller or move ${it}.`,
  });
}

function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} and ${last}`;
}
