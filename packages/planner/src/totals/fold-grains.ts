import { foldVerdict, type Paper, type Piece } from "@sheetwright/cards";
import { placements } from "@sheetwright/packing";
import type { FoldGrain, PaperGroup } from "../plan-model.js";

/** How the grain lies at the first fold of every piece that is folded, copies counted, in the order of the labels. */
export function foldGrains(
  pieces: readonly Piece[],
  papers: readonly Paper[],
  groups: readonly PaperGroup[],
): readonly FoldGrain[] {
  const folded = new Map(pieces.filter(isFolded).map((piece) => [piece.id, piece]));
  const counts = new Map([...folded.keys()].map((id) => [id, { along: 0, across: 0, unknown: 0, none: 0 }]));
  const grains = new Map(papers.flatMap(({ designs, grain }) => designs.map(({ id }) => [id, grain])));
  for (const { packing, problem, sheets, bags = 1 } of groups) {
    const ofSheet = new Map(sheets.map(({ sheet, design }) => [sheet, grains.get(design)!]));
    const known = new Map(problem.sheets.map((sheet) => [sheet.id, sheet]));
    for (const layout of packing.layouts) {
      const grain = ofSheet.get(layout.sheet)!;
      for (const { node } of placements(known.get(layout.sheet)!, layout, problem.kerf)) {
        if (node.type !== "piece") continue;
        for (const { kind, form, turned, count } of node.shares) {
          const score = folded.get(kind)?.forms[form]?.scores[0];
          if (score !== undefined) counts.get(kind)![foldVerdict(score, turned, grain)] += count * bags;
        }
      }
    }
  }
  return [...counts].map(([piece, count]) => ({ piece, ...count }));
}

function isFolded({ forms }: Piece): boolean {
  return forms.some(({ scores }) => scores.length > 0);
}
