import type { Effort, Packing } from "@sheetwright/packing";
import { countAcross, type GrainWish, joinKept, keepAlong } from "./grain-wish.js";
import type { GroupSearch, Search } from "./group-search.js";
import { keepsOffcuts } from "./keeps-offcuts.js";
import { restate } from "./restate.js";

/** Short searches at most for a group whose pieces cannot all lie along the grain for nothing. */
const MOST_TRIES = 12;

/**
 * Turns the pieces of a packing along the grain as far as that costs nothing: no piece is lost, neither cost nor sheets
 * grow, and of no design the largest leftover worth keeping gets smaller. First all wishing pieces are kept along at once, with the effort of the packing itself. Where that costs
 * something, they are kept along one kind after another, those with the most copies first: all copies of a kind, or else
 * as many as short searches find by halving.
 * It does not promise the most copies along that are possible.
 */
export function* followGrain(wish: GrainWish, free: Packing, search: GroupSearch): Search<Packing> {
  const isComplete = free.outcome === "complete";
  const searches = [free];
  let best = free;
  let across = countAcross(wish, free.layouts);
  if (total(across) === 0) return free;

  const tryToKeep = function* (kept: ReadonlyMap<string, number>, effort?: Effort): Search<boolean> {
    const found = yield* search.pack(keepAlong(wish, kept, isComplete), "grain", effort);
    searches.push(found);
    const candidate = restate(wish.problem, joinKept(found.layouts), free.bound, searches);
    const stillAcross = countAcross(wish, candidate.layouts);
    if (
      !isNoWorse(candidate, best) ||
      !keepsOffcuts(wish, candidate, best) ||
      total(stillAcross) >= total(across)
    )
      return false;
    best = candidate;
    across = stillAcross;
    return true;
  };

  // With spare copies there are more of a piece than the project asks for.
  const quantities = new Map(wish.problem.kinds.map(({ id, quantity }) => [id, quantity ?? 0]));
  const wishing = wish.wishing.map(({ id }) => ({ id, quantity: quantities.get(id) ?? 0 }));
  const kept = new Map(wishing.map(({ id, quantity }) => [id, quantity]));
  if (!(yield* tryToKeep(kept))) {
    kept.clear();
    let tries = 0;
    const mostFirst = [...wishing].sort((a, b) => b.quantity - a.quantity);
    for (const { id, quantity } of mostFirst) {
      const along = (): number => quantity - (across.get(id) ?? 0);
      let most = quantity;
      let next = most;
      while (along() < most && tries < MOST_TRIES && !search.isStopped()) {
        tries++;
        if (!(yield* tryToKeep(new Map(kept).set(id, next), "quick"))) most = next - 1;
        // Only whole kinds are kept where pieces are missing: halves of a kind would break up its sets.
        if (!isComplete) break;
        next = Math.ceil((along() + most) / 2);
      }
      kept.set(id, along());
    }
  }
  return restate(wish.problem, best.layouts, free.bound, searches);
}

function total(counts: ReadonlyMap<string, number>): number {
  return [...counts.values()].reduce((sum, count) => sum + count, 0);
}

function isNoWorse(a: Packing, b: Packing): boolean {
  return (
    a.placed.every(({ count }, i) => count >= (b.placed[i]?.count ?? 0)) &&
    BigInt(a.cost) <= BigInt(b.cost) &&
    a.sheets <= b.sheets
  );
}
