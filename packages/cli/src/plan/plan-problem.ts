import type { Kind, Problem, Sheet } from "@sheetwright/packing";
import type { Piece } from "../pieces/piece-list.js";
import type { PlanRequest } from "../request/plan-request.js";

/** Puts a request and its pieces as a problem for the packing. Pieces with quantity 0 are left out. */
export function planProblem(request: PlanRequest, pieces: readonly Piece[]): Problem {
  const { sheet: size, count, trim, longestCut, mode, kerf, keep } = request;
  const sheet: Sheet = {
    id: size.id,
    name: size.name,
    width: size.width,
    height: size.height,
    ...(count === null ? {} : { stock: count }),
    ...(Object.keys(trim).length === 0 ? {} : { trim }),
    ...(longestCut === null ? {} : { longestCut }),
  };
  const kinds = pieces
    .filter((piece) => piece.quantity > 0)
    .map(
      ({ name, width, height, quantity, turn }): Kind => ({
        id: name,
        quantity,
        forms: [{ width, height, turns: turn ? "both" : "upright" }],
      }),
    );
  return { kinds, sheets: [sheet], mode, aim: "all", kerf, smallestOffcut: keep };
}
