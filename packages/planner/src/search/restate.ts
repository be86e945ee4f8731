import type { Layout, Packing, Problem } from "@sheetwright/packing";

/**
 * Layouts as a plan for a problem, with the totals counted anew. The bound is the problem's own, proven by another search
 * of it; the record tells of all searches together.
 */
export function restate(
  problem: Problem,
  layouts: readonly Layout[],
  bound: Packing["bound"],
  searches: readonly Packing[],
): Packing {
  const counts = new Map<string, number>();
  for (const layout of layouts) countShares(layout, counts);
  const sheets = new Map(problem.sheets.map((sheet) => [sheet.id, sheet]));
  const cost = layouts.reduce((sum, { sheet: id, run }) => {
    const sheet = sheets.get(id)!;
    return sum + BigInt(run) * BigInt(sheet.cost ?? sheet.width * sheet.height);
  }, 0n);
  const placed = problem.kinds.map(({ id }) => ({ kind: id, count: counts.get(id) ?? 0 }));
  const missing = problem.kinds
    .map(({ id, quantity }) => ({ kind: id, count: (quantity ?? 0) - (counts.get(id) ?? 0) }))
    .filter(({ count }) => count > 0);
  const value = problem.kinds.reduce((sum, { id, forms: [first], value: own }) => {
    const each = own ?? (first === undefined ? 0 : first.width * first.height);
    return sum + BigInt(counts.get(id) ?? 0) * BigInt(each);
  }, 0n);
  const isShort = bound.aim === "all" && bound.cost === null;
  const outcome = missing.length === 0 ? "complete" : isShort ? "short" : "not-found";
  const isBest =
    outcome === "complete" && bound.aim === "all" && bound.cost !== null && BigInt(bound.cost) === cost;
  const last = searches.at(-1)!;
  return {
    version: 1,
    mode: problem.mode,
    aim: problem.aim,
    outcome,
    layouts,
    placed,
    missing,
    sheets: layouts.reduce((sum, { run }) => sum + run, 0),
    cost: cost.toString(),
    value: value.toString(),
    bound,
    proven: outcome === "short" || isBest,
    search: {
      effort: searches[0]!.search.effort,
      seed: last.search.seed,
      lp: last.search.lp,
      starts: searches.reduce((sum, { search }) => sum + search.starts, 0),
      steps: searches.reduce((sum, { search }) => sum + search.steps, 0),
      work: searches.reduce((sum, { search }) => sum + search.work, 0),
      ended: searches.some(({ search }) => search.ended === "cancelled")
        ? "cancelled"
        : isBest
          ? "proven"
          : "finished",
    },
  };
}

function countShares(layout: Layout, counts: Map<string, number>): void {
  const ahead = [layout.tree];
  for (let node = ahead.pop(); node !== undefined; node = ahead.pop()) {
    if (node.type === "split") ahead.push(...node.parts.map((part) => part.node));
    if (node.type !== "piece") continue;
    for (const { kind, count } of node.shares) counts.set(kind, (counts.get(kind) ?? 0) + count);
  }
}
