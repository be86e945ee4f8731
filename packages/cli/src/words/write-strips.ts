import { formatSize } from "@sheetwright/measure";
import type { CutNode } from "@sheetwright/packing";
import type { Piece, Plan } from "@sheetwright/planner";
import { counted } from "./counted.js";
import { listed } from "./listed.js";

/**
 * Says in which strips the shapes of a piece are cut: `in 2 strips of 4 (9 1/4 x 2 1/2 in) and 1 of 3 (7 x 2 1/2 in)`; empty
 * where each has a die blank of its own.
 */
export function stripsInWords(piece: Piece["id"], { groups, units }: Plan): string {
  const words = groups.flatMap(({ strips = [], problem, packing }) => {
    const own = strips.filter((strip) => strip.piece === piece);
    if (own.length === 0) return [];
    const said = own.map(({ kind, holds }, index) => {
      const count = packing.placed.find((one) => one.kind === kind)?.count ?? 0;
      const forms = problem.kinds.find(({ id }) => id === kind)?.forms ?? [];
      const sizes = forms
        .filter((_, form) => packing.layouts.some(({ tree }) => cutsForm(tree, kind, form)))
        .map(({ width, height }) => formatSize(width, height, { unit: units }));
      const number = index === 0 ? counted(count, "strip") : `${count}`;
      return `${number} of ${holds} (${listed(sizes, "or")})`;
    });
    const single = packing.placed.find(({ kind }) => kind === piece)?.count ?? 0;
    return [...said, ...(single > 0 ? [`${single} by itself`] : [])];
  });
  return words.length === 0 ? "" : `in ${listed(words)}`;
}

function cutsForm(node: CutNode, kind: string, form: number): boolean {
  if (node.type === "split") return node.parts.some((part) => cutsForm(part.node, kind, form));
  return node.type === "piece" && node.shares.some((share) => share.kind === kind && share.form === form);
}
