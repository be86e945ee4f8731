// Where the panels of a flat lie when the card is folded up, and where on the closed card a place of a surface comes to lie.
//
// Every score folds right back, so along the side that is divided a panel lies mirrored at the score it shares with the one
// before it; whether it folds to the front or to the back changes the order of the pile, not where the panel lies. The
// closed card is seen from its front. One panel lies as in the flat, with its outside to the reader: the last one, or the
// one before it where the last is folded back to the front (z, easel, double gate). The others follow from it to both sides.

import type { Size, Ticks } from "@sheetwright/measure";
import type { Rectangle } from "../expand/surface.js";
import type { Flat, SurfaceName } from "../project.js";

/** A panel of the closed card along the side of the flat that the scores divide, from the left or top edge of the card. */
export interface FoldedPanel {
  readonly from: Ticks;
  readonly to: Ticks;
  /** Whether its outside looks away from the reader of the front. */
  readonly isFlipped: boolean;
}

/**
 * The panels of a flat as they lie in the closed card, in the order of the flat.
 *
 * @example
 * const [gate] = flatsOf({ front: { width: 4, height: 6 }, fold: "gate" });
 * foldedPanels(gate).map(({ from, to }) => [from, to]) // => [[2, 4], [0, 4], [0, 2]]
 */
export function foldedPanels(flat: Flat): readonly FoldedPanel[] {
  const { panels } = flat;
  const still = panelToReader(flat);
  const placed = new Map<number, FoldedPanel>();
  const put = (index: number, score: Ticks, runsOn: boolean) => {
    const width = panels[index] ?? 0;
    const [from, to] = runsOn ? [score, score + width] : [score - width, score];
    placed.set(index, { from, to, isFlipped: (index - still) % 2 !== 0 });
    return runsOn ? to : from;
  };
  const end = put(still, 0, true);
  // A panel runs back over the one whose score it shares.
  let score = end;
  let runsOn = false;
  for (let index = still + 1; index < panels.length; index += 1) {
    score = put(index, score, runsOn);
    runsOn = !runsOn;
  }
  score = 0;
  runsOn = true;
  for (let index = still - 1; index >= 0; index -= 1) {
    score = put(index, score, runsOn);
    runsOn = !runsOn;
  }
  const all = panels.flatMap((_, index) => placed.get(index) ?? []);
  const start = Math.min(...all.map(({ from }) => from));
  return all.map(({ from, to, isFlipped }) => ({ from: from - start, to: to - start, isFlipped }));
}

/** The index of the panel whose outside the reader of the front sees. */
function panelToReader({ fold, panels, scores }: Flat): number {
  const last = panels.length - 1;
  if (last === 0) return 0;
  return fold === "double-gate" || scores.at(-1)?.folds === "valley" ? last - 1 : last;
}

/**
 * How large a flat is when everything is folded up, in ticks.
 *
 * @example
 * const own = { kind: "own", along: "width", widths: [5, 4, 3], folds: ["mountain", "mountain"] };
 * closedSize(flatsOf({ front: { width: 4, height: 6 }, fold: own })[0]) // => { width: 5, height: 6 }
 */
export function closedSize(flat: Flat): Size {
  const extent = Math.max(...foldedPanels(flat).map(({ to }) => to));
  return flat.along === "width"
    ? { width: extent, height: flat.height }
    : { width: flat.width, height: extent };
}

/**
 * A place of a surface, in ticks from its top left corner as its reader sees it, as a place of the closed card, seen from
 * the front: what lies at the left of the back lies behind the right of the front.
 *
 * @example
 * const [flat] = flatsOf({ front: { width: 4, height: 6 }, fold: "side" });
 * placeOnClosed(flat, "back", { x: 0, y: 1, width: 1, height: 2 }) // => { x: 3, y: 1, width: 1, height: 2 }
 */
export function placeOnClosed(flat: Flat, surface: SurfaceName, at: Rectangle): Rectangle {
  const { along, panels } = flat;
  const across = along === "width" ? "height" : "width";
  const folded = foldedPanels(flat);
  const whole = { from: 0, to: Math.max(...folded.map(({ to }) => to)) };
  const [lead, cross] = along === "width" ? (["x", "y"] as const) : (["y", "x"] as const);
  const put = (panel: { from: Ticks; to: Ticks }, isBackwards: boolean, isMirrored: boolean): Rectangle => ({
    ...at,
    [lead]: isBackwards ? panel.to - at[lead] - at[along] : panel.from + at[lead],
    [cross]: isMirrored ? flat[across] - at[cross] - at[across] : at[cross],
  });
  // Who turns the card over turns it like a page, so left and right change places, top and bottom do not.
  const outside = (panel: Pick<FoldedPanel, "from" | "to">, isFlipped: boolean) =>
    put(panel, isFlipped && along === "width", isFlipped && along === "height");
  // Opened, the inside of a panel that looks away lies to the other side of its score.
  const inside = (panel: FoldedPanel) => put(panel, !panel.isFlipped, false);
  if (surface === "front") return outside(whole, false);
  const found = panelOf(flat, surface);
  const panel = folded[found.index < 0 ? panels.length + found.index : found.index];
  if (found.face === "whole-back" || panel === undefined) return outside(whole, true);
  return found.face === "outside" ? outside(panel, panel.isFlipped) : inside(panel);
}

/** The panel that a surface is a face of; a negative index counts from the end. */
function panelOf(
  { fold, panels }: Flat,
  surface: SurfaceName,
): { readonly index: number; readonly face: "inside" | "outside" | "whole-back" } {
  const folds = fold === "side" || fold === "top";
  switch (surface) {
    case "back":
      if (folds || fold === "z" || fold === "easel") return { index: 0, face: "outside" };
      return fold === "gate" || fold === "tri"
        ? { index: 1, face: "outside" }
        : { index: 0, face: "whole-back" };
    case "inside":
      return { index: fold === "gate" || fold === "tri" ? 1 : 0, face: "inside" };
    case "inside-front":
      return { index: -1, face: "inside" };
    case "inside-flap":
      return { index: 0, face: "inside" };
    case "flap":
      // The flap of a z shows its inside at the front.
      return fold === "z" ? { index: -1, face: "inside" } : { index: 0, face: "outside" };
    case "left-door":
    case "upper-door":
      return { index: -1, face: "outside" };
    case "right-door":
    case "lower-door":
      return { index: 0, face: "outside" };
    default: {
      const page = Number(surface.slice("page-".length));
      return { index: panels.length - page, face: "inside" };
    }
  }
}
