import type { CutNode } from "../model.js";
import type { CompiledProblem } from "../search/compiled-problem.js";
import { type DraftLayout, leftoverSpread } from "../search/draft.js";

/**
 * The same layouts without the copies that nobody wants; what is taken out becomes waste, on as few sheets as possible, and
 * sheets that are empty then go. Layouts that give too much are taken from the end of the list.
 */
export function dropSurplus(
  problem: CompiledProblem,
  layouts: readonly DraftLayout[],
  wanted: readonly number[],
): readonly DraftLayout[] {
  const surplus = wanted.map((count) => -count);
  for (const { counts, run } of layouts) {
    for (const [kind, count] of counts) surplus[kind] = (surplus[kind] ?? 0) + count * run;
  }
  const kept: DraftLayout[] = [];
  for (const layout of [...layouts].reverse()) kept.push(...dropFrom(problem, layout, surplus));
  return kept.reverse();
}

/** Takes surplus copies out of a run, and out of what is left to take. */
function dropFrom(problem: CompiledProblem, layout: DraftLayout, surplus: number[]): readonly DraftLayout[] {
  const parts: DraftLayout[] = [];
  let { run } = layout;
  // Sheets of a run lose the same copies as long as the surplus lasts.
  while (run > 0) {
    const drop = new Map<number, number>();
    let times = run;
    for (const [kind, count] of layout.counts) {
      const most = Math.min(count, surplus[kind] ?? 0);
      if (most <= 0) continue;
      drop.set(kind, most);
      times = Math.min(times, Math.max(1, Math.floor((surplus[kind] ?? 0) / most)));
    }
    if (drop.size === 0) {
      parts.push({ ...layout, run });
      break;
    }
    for (const [kind, count] of drop) surplus[kind] = (surplus[kind] ?? 0) - count * times;
    const left = without(problem, layout, drop);
    if (left.counts.size > 0) parts.push({ ...left, run: times });
    run -= times;
  }
  return parts;
}

function without(
  problem: CompiledProblem,
  layout: DraftLayout,
  drop: ReadonlyMap<number, number>,
): DraftLayout {
  const left = new Map([...drop].map(([kind, count]) => [problem.kinds[kind]?.id, count]));
  const visit = (node: CutNode): CutNode => {
    if (node.type === "split") {
      return { ...node, parts: node.parts.map((part) => ({ size: part.size, node: visit(part.node) })) };
    }
    const id = node.type === "piece" ? node.shares[0]?.kind : undefined;
    const count = left.get(id) ?? 0;
    if (count === 0) return node;
    left.set(id, count - 1);
    return { type: "waste" };
  };
  const tree = visit(layout.tree());
  const counts = new Map<number, number>();
  for (const [kind, count] of layout.counts) {
    const rest = count - (drop.get(kind) ?? 0);
    if (rest > 0) counts.set(kind, rest);
  }
  const { sheet } = layout;
  const spread = leftoverSpread(tree, { width: sheet.width, height: sheet.height }, problem.kerf);
  return { sheet, run: layout.run, tree: () => tree, counts, spread };
}
