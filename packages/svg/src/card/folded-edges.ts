/** Along which edges of a surface a card is folded, as its reader sees that surface. */

import type { Card, Flat, SurfaceName } from "@sheetwright/planner";

/** A side of a surface. */
export type Edge = "left" | "right" | "top" | "bottom";

/** An edge that is a fold. */
export interface FoldedEdge {
  readonly edge: Edge;
  readonly fold: Flat["fold"];
  /** What stands beside it; `null` where another edge of the surface has the word already. */
  readonly word: string | null;
}

/** The folded edges of a surface, each once; a card that may be folded either way has those of both. */
export function foldedEdges({ flats }: Pick<Card, "flats">, surface: SurfaceName): readonly FoldedEdge[] {
  const all = flats.flatMap((flat, way) =>
    edgesOf(flat, surface).map(
      (edge, index): FoldedEdge => ({
        edge,
        fold: flat.fold,
        word: index > 0 ? null : way === 0 ? "fold" : "or fold",
      }),
    ),
  );
  return all.filter(({ edge }, index) => all.findIndex((other) => other.edge === edge) === index);
}

function edgesOf({ fold, along, panels }: Flat, surface: SurfaceName): readonly Edge[] {
  const [start, end]: readonly [Edge, Edge] = along === "width" ? ["left", "right"] : ["top", "bottom"];
  // A card is turned over like a page, so that a fold at the left comes to lie at the right and one at the top stays.
  const startFromBehind: Edge = along === "width" ? "right" : "top";
  if (panels.length < 2) return [];
  const page = /^page-(\d+)$/.exec(surface);
  if (page !== null) {
    const number = Number(page[1]);
    return [...(number > 1 ? [start] : []), ...(number < panels.length ? [end] : [])];
  }
  switch (surface) {
    case "front":
      return fold === "gate" || fold === "double-gate" || fold === "shutter" ? [start, end] : [start];
    case "inside":
      return fold === "gate" || fold === "tri" ? [start, end] : [start];
    case "back":
      return backEdges(fold, panels.length, startFromBehind, along === "width" ? "left" : "bottom", [
        start,
        end,
      ]);
    case "inside-flap":
      return [start];
    case "left-door":
      return ["left"];
    case "right-door":
      return ["right"];
    case "upper-door":
      return ["top"];
    case "lower-door":
      return ["bottom"];
    default:
      // The inside of the front, and a flap.
      return [end];
  }
}

function backEdges(
  fold: Flat["fold"],
  panels: number,
  start: Edge,
  end: Edge,
  both: readonly Edge[],
): readonly Edge[] {
  switch (fold) {
    case "side":
    case "top":
    case "z":
    case "easel":
      return [start];
    case "accordion":
      // Of an odd number of panels the last one shows its inside.
      return [panels % 2 === 0 ? start : end];
    case "own":
      return [];
    default:
      return both;
  }
}
