import { expandProject, explainNoPaper, type Project } from "@sheetwright/cards";
import type { PackOptions } from "@sheetwright/packing";
import { groupPapers, inOneBag } from "../group/group-papers.js";
import { groupProblem } from "../group/group-problem.js";
import { itemTakes, lackingFor } from "../items/item-takes.js";
import type { Plan } from "../plan-model.js";
import { asOneSet } from "../search/grain-wish.js";
import { groupSearch, type Search } from "../search/group-search.js";
import { mostInStrips } from "../strips/strip-forms.js";

/** What an attempt came to. */
export interface Attempt {
  /** As a plan would say it; `null` where only a plan can tell, since strips of die blanks might still do. */
  readonly enough: Plan["enough"] | null;
  readonly cancelled: boolean;
}

/**
 * Whether the papers and items of a project give all that it asks for, found with less work than a plan takes: a group that falls short
 * is not searched for what it gives instead, nor for what would help.
 */
export function* attemptPlan(project: Project, options: PackOptions): Search<Attempt> {
  const expansion = expandProject(project);
  const copies = new Map(expansion.cards.map((card) => [card.number, card.copies]));
  const lacking = lackingFor(itemTakes(project, expansion), copies);
  if (lacking.some(({ proven }) => proven)) return { enough: "no", cancelled: false };
  const unfit = expansion.pieces.filter((piece) => explainNoPaper(project, piece) !== null);
  if (unfit.some(({ quantity }) => quantity > 0)) return { enough: "no", cancelled: false };
  const clusters = groupPapers(expansion, new Set(unfit.map(({ id }) => id))).map(inOneBag);
  const packOptions: PackOptions = { ...options, narrowestHold: project.trimmer.narrowestHold };
  let isComplete = lacking.length === 0;
  for (const [group, cluster] of clusters.entries()) {
    const search = groupSearch({ group, groups: clusters.length }, packOptions);
    const task = groupProblem(cluster, project, new Set());
    const { problem } = task;
    const packing = yield* search.pack({ ...problem, kinds: asOneSet(problem.kinds) }, "sets");
    const cancelled = search.isStopped();
    if (packing.outcome === "complete" && !cancelled) continue;
    if (cancelled) return { enough: "not-found", cancelled };
    if (mostInStrips(task, cluster.pieces, project).size > 0) return { enough: null, cancelled };
    if (packing.outcome === "short") return { enough: "no", cancelled };
    isComplete = false;
  }
  return { enough: isComplete ? "yes" : "not-found", cancelled: false };
}
