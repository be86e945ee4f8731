// Pieces that are cut short are laid whole first, since what lies above them is known only when all layers are laid. Then
// they lose the end on which other layers lie.

import { inches, millimetres, type Ticks, type Unit } from "@sheetwright/measure";
import type { CardLayer } from "../expansion.js";
import { type CardBuilder, type HiddenJoin, sayLength } from "./card-builder.js";
import { fault } from "./fault.js";
import { coversItsBox } from "./hidden-layers.js";

/**
 * How far a layer reaches over the end of what is cut short below it, so that the end does not show when a cut or a hand is
 * off: twice the error of a cut. In the metric trade 3 mm.
 */
const OVERLAP: Readonly<Record<Unit, Ticks>> = { in: inches(1 / 8), mm: millimetres(3) };

/**
 * Cuts pieces short as their layers ask for, at the lower or right end, or else at the other, wherever layers above lie on
 * all that is missing and a little more. Where none do there is a fault that says how much would show.
 *
 * @internal
 */
export function hideJoins(builder: CardBuilder): void {
  for (const hidden of builder.hides) hideJoin(builder, hidden, builder.faults.length === 0);
}

function hideJoin(builder: CardBuilder, hidden: HiddenJoin, mayTell: boolean): void {
  const { layer: index, along, gives, path } = hidden;
  const layer = builder.layers[index];
  if (layer === undefined || gives <= 0) return;
  const missing = layer[along] - gives;
  const above = builder.layers
    .slice(index + 1)
    .filter((one) => one.surface === layer.surface && coversItsBox(one));
  const overlap = OVERLAP[builder.units];
  const [start, across] = along === "height" ? (["y", "x"] as const) : (["x", "y"] as const);
  const bare = (from: Ticks, to: Ticks) => bareStretch(layer, above, { start, across, from, to });
  const end = layer[start] + layer[along];
  const atEnd = bare(end - missing - overlap, end);
  const atStart = bare(layer[start], layer[start] + missing + overlap);
  const isAtStart = atEnd > 0 && atStart < atEnd;
  const least = Math.min(atEnd, atStart);
  if (least > 0 && mayTell) {
    const side = sideOf(along, isAtStart);
    const say = (ticks: Ticks) => sayLength(builder, ticks);
    const breadth = `its whole breadth of ${say(layer[along === "height" ? "width" : "height"])}`;
    const where =
      least === missing + overlap
        ? `Neither at the ${sideOf(along, false)} nor at the ${sideOf(along, true)} does one lie over ${breadth}. Lay a strip or ` +
          "a panel of that breadth there, or make the one that is there larger."
        : `At the ${side}, where most of it does, ${say(least)} of these ${say(missing + overlap)} lie below none that goes over ` +
          `${breadth}. Lay a strip or a panel there, or make the one that is there larger.`;
    builder.faults.push(
      fault({
        code: "contradiction",
        path: `${path}.join`,
        found: `${say(least)} that no layer lies on`,
        expected: `layers on all that is missing, and ${say(overlap)} more`,
        message:
          `The paper of ${hidden.words} gives ${say(gives)} of its ${say(layer[along])}, and what is missing, ${say(missing)}, is to ` +
          `lie below another layer, which reaches ${say(overlap)} further. ${where}`,
      }),
    );
  }
  const [key, far] = along === "height" ? (["top", "bottom"] as const) : (["left", "right"] as const);
  const border = { ...layer.border, [isAtStart ? key : far]: layer.border[isAtStart ? key : far] + missing };
  builder.layers[index] = {
    ...layer,
    [start]: layer[start] + (isAtStart ? missing : 0),
    [along]: gives,
    border,
  };
  const at = builder.pieces.findIndex(({ id }) => id === layer.piece);
  const piece = builder.pieces[at];
  if (piece === undefined) return;
  builder.pieces[at] = { ...piece, forms: piece.forms.map((form) => ({ ...form, [along]: gives })) };
}

function sideOf(along: "width" | "height", isAtStart: boolean): string {
  if (along === "height") return isAtStart ? "top" : "bottom";
  return isAtStart ? "left" : "right";
}

/** How much of a stretch along a layer the layers above do not lie on over its whole breadth. */
function bareStretch(
  layer: CardLayer,
  above: readonly CardLayer[],
  {
    start,
    across,
    from,
    to,
  }: {
    readonly start: "x" | "y";
    readonly across: "x" | "y";
    readonly from: Ticks;
    readonly to: Ticks;
  },
): Ticks {
  const sides = { x: "width", y: "height" } as const;
  const spans = above.map((one) => ({
    from: one[start],
    to: one[start] + one[sides[start]],
    at: one[across],
    until: one[across] + one[sides[across]],
  }));
  const edges = [from, to, ...spans.flatMap((span) => [span.from, span.to])]
    .filter((edge) => edge >= from && edge <= to)
    .sort((a, b) => a - b);
  let bare = 0;
  for (let index = 1; index < edges.length; index += 1) {
    const [low, high] = [edges[index - 1] ?? 0, edges[index] ?? 0];
    const covers = spans.filter((span) => span.from <= low && span.to >= high).sort((a, b) => a.at - b.at);
    let reached = layer[across];
    for (const { at, until } of covers) {
      if (at > reached) break;
      reached = Math.max(reached, until);
    }
    if (reached < layer[across] + layer[sides[across]]) bare += high - low;
  }
  return bare;
}
