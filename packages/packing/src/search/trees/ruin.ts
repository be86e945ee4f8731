import type { RandomStream } from "../random-stream.js";
import type { CutTree } from "./cut-tree.js";
import type { WorkingPlan } from "./working-plan.js";

/** Parameters of what is taken out; one set serves all problems. */
const TUNING = {
  /** Nodes taken out of the trees in one step: from 1 to twice as many less one. */
  removals: 5,
  /** Of two removals near each other the second is at most so many nodes away. */
  near: 3,
  /** Once in so many removals from a sheet with a group all of the sheet is taken out. */
  splitGroups: 3,
};

/**
 * Takes some nodes out of the trees, pieces or whole blocks.
 * @param isNear whether every other removal comes from near the one before: what is free then lies together. It gains most
 *   where few sheets hold many pieces.
 */
export function ruin(plan: WorkingPlan, random: RandomStream, isNear: boolean): void {
  const removals = 1 + random.below(2 * TUNING.removals - 1);
  let at = 0;
  let node = 0;
  for (let i = 0; i < removals; i++) {
    const stays = isNear && i > 0 && random.below(2) === 0;
    if (!stays) at = random.below(plan.trees.length);
    const { count } = plan.trees[at] as CutTree;
    if (count === 0) continue;
    const first = stays ? Math.max(0, Math.min(node, count - 1) - TUNING.near) : 0;
    const last = stays ? Math.min(count - 1, node + TUNING.near) : count - 1;
    node = first + random.below(last - first + 1);
    // What belongs together changes its sheet only as a whole.
    const isWhole = plan.groupTree.includes(at) && random.below(TUNING.splitGroups) === 0;
    plan.takeOut(at, isWhole ? 0 : node);
  }
  plan.refreshTouched();
}
