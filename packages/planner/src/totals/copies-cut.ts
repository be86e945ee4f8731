import type { Piece } from "@sheetwright/cards";
import type { Packing } from "@sheetwright/packing";
import type { PaperGroup } from "../plan-model.js";

/**
 * How many copies of each piece some groups' packings give, by the id of the piece, those in strips counted one by one and those of all bags together;
 * pieces in no group are absent.
 *
 * @example
 * const strips = [{ kind: "3b*4", piece: "3b", holds: 4, along: ["width"] }];
 * const placed = [{ kind: "3a", count: 9 }, { kind: "3b*4", count: 2 }, { kind: "3b", count: 1 }];
 * [...copiesCut([{ packing: { placed }, strips }])] // => [["3a", 9], ["3b", 9]]
 */
export function copiesCut(
  groups: readonly {
    readonly packing: Pick<Packing, "placed">;
    readonly strips?: PaperGroup["strips"];
    readonly bags?: PaperGroup["bags"];
  }[],
): ReadonlyMap<Piece["id"], number> {
  const counts = new Map<string, number>();
  for (const { packing, strips = [], bags = 1 } of groups) {
    const known = new Map(strips.map((strip) => [strip.kind, strip]));
    for (const { kind, count } of packing.placed) {
      const strip = known.get(kind);
      const piece = strip?.piece ?? kind;
      counts.set(piece, (counts.get(piece) ?? 0) + count * (strip?.holds ?? 1) * bags);
    }
  }
  return counts;
}
