/** Steps of ruin and recreate as random as they can be: what they take out, put in, keep and undo is drawn. */
import type { CompiledProblem } from "../../../src/search/compiled-problem.js";
import type { CutTree } from "../../../src/search/trees/cut-tree.js";
import type { WorkingPlan } from "../../../src/search/trees/working-plan.js";
import { takes } from "./tree-cases.js";

/** What decides one step. */
export interface StepChoices {
  readonly removals: readonly number[];
  readonly insertions: readonly number[];
  readonly isUndone: boolean;
}

/** A piece of a kind that a tree takes. */
interface Option {
  readonly kind: number;
  readonly at: number;
  readonly place: number;
  readonly lay: number;
}

/**
 * Makes steps.
 * @param watch `during` is called whenever all trees are up to date within a step, the others between steps.
 */
export function makeSteps(
  problem: CompiledProblem,
  plan: WorkingPlan,
  steps: readonly StepChoices[],
  watch: {
    readonly before?: () => void;
    readonly during?: () => void;
    readonly after?: (isUndone: boolean) => void;
  },
): void {
  for (const { removals, insertions, isUndone } of steps) {
    plan.begin();
    watch.before?.();
    for (const choice of removals) {
      const at = choice % Math.max(1, plan.trees.length);
      const count = plan.trees[at]?.count ?? 0;
      if (count > 0) plan.takeOut(at, (choice >> 8) % count);
    }
    plan.refreshTouched();
    watch.during?.();
    for (const choice of insertions) {
      const options = optionsOf(problem, plan);
      const option = options[choice % Math.max(1, options.length)];
      if (option === undefined) break;
      plan.place(option.kind, option.at, option.place, option.lay);
      watch.during?.();
    }
    plan.open.tidy();
    plan.weighTouched();
    if (isUndone) plan.undo();
    else plan.keep();
    watch.after?.(isUndone);
  }
}

/** Every way to put an open piece on a sheet in use or on the next one, groups together on one sheet. */
function optionsOf(problem: CompiledProblem, plan: WorkingPlan): readonly Option[] {
  const options: Option[] = [];
  plan.trees.forEach((tree: CutTree, at) => {
    if (!plan.mayTake(at)) return;
    const { first, kinds } = tree.rules.table;
    for (const { index: kind, group } of problem.kinds) {
      const groupTree = group < 0 ? -1 : (plan.groupTree[group] as number);
      if ((plan.open.copies[kind] ?? 0) === 0 || (groupTree >= 0 && groupTree !== at)) continue;
      const row = tree.sheet.index * kinds + kind;
      for (let lay = first[row] as number; lay < (first[row + 1] as number); lay++) {
        for (let place = 0; place < tree.places; place++) {
          if (takes(tree, place, lay)) options.push({ kind, at, place, lay });
        }
      }
    }
  });
  return options;
}
