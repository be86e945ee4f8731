/**
 * How many complete sets the papers and items of a project give: the most that a search finds, and the fewest that are proven
 * impossible.
 *
 * A number of sets is asked for as a project of its own, all pieces over all papers, so whatever holds of plans holds here.
 * First as many sets are asked for as the project does. From the largest number that was found, numbers grow in steps of 1, 2,
 * 4 until an attempt falls short, and what lies between is halved. Attempts take less effort than a plan, and look for nothing
 * but all pieces; the number behind the last one found is planned with all the effort, and that is gone on with while it
 * succeeds. Larger numbers are tried in the same way until a bound excludes one, and down again from there.
 *
 * It guarantees that the number found has a plan that proves right, and that the number proven impossible has a bound that
 * does. It does not promise that the two meet. Effort: about four attempts for each binary digit of the number, as many for
 * the paper that runs out next, and a handful of plans.
 */

import { type Expansion, expandProject, type Project } from "@sheetwright/cards";
import type { Effort } from "@sheetwright/packing";
import { faceOf, facesById } from "../group/faces-by-id.js";
import { type PlanAsyncOptions, planAsync } from "../plan.js";
import type { Plan } from "../plan-model.js";
import { driveSearch } from "../search/drive-search.js";
import { attemptPlan } from "./attempt-plan.js";
import type { ImpossibleSets, RunOut, SetCount, SetsWithMore } from "./set-count.js";
import { type SetOfCards, setOfCards, withSets } from "./set-of-cards.js";

/** Attempts take less effort than the plan itself. */
const ATTEMPT_EFFORT: Readonly<Record<Effort, Effort>> = {
  quick: "quick",
  standard: "quick",
  thorough: "standard",
};

/**
 * How many complete sets the papers and items on hand give: one of every card, or as many of each as its copies for guests make it.
 * Samples and spares are not reckoned. Rejects as `planAsync` does.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: Two cards
 * copies: 4
 * papers: { night: { cardstock: us-letter, count: 3 }, cream: { cardstock: us-letter, count: 1 } }
 * cards:
 *   - { name: Plain, format: us-a2, base: night }
 *   - { name: Matted, format: us-a2, base: night, front: [{ mat: cream, border: 1/4 }] }
 * `);
 * const { most, impossible, runsOut, withMore } = await completeSets(project);
 * [most, impossible.sets, impossible.papers] // => [3, 4, [["night"]]]
 * runsOut.map(({ sets, papers }) => [sets, papers[0].designs]) // => [[3, ["night"]], [4, ["cream"]]]
 * withMore // => [{ sets: 4, sheets: [{ design: "night", more: 1 }] }]
 */
export async function completeSets(project: Project, options: PlanAsyncOptions = {}): Promise<SetCount> {
  const { effort = "standard" } = options;
  const set = setOfCards(project);
  const search = searchOf(project, options);
  const { title, units } = project;
  const one = expandProject(withSets(project, 1));
  const asNeeded = unlimited(one);
  const common = { title, units, set: set.cards, wanted: set.wanted, asNeeded };
  const none = { plan: null, impossible: null, runsOut: [], withMore: [], noPaper: [] };

  // Papers that come as needed give any number where they give one set with nothing else.
  if (asNeeded.length > 0) {
    const alone = searchOf(onlyAsNeeded(project), options);
    if ((await alone.attempt(1)) === "yes") return { ...common, ...none, most: null, cancelled: false };
    if (alone.isCancelled()) return { ...common, ...none, most: 0, cancelled: true };
  }

  let found = await mostSets(search, set.wanted, set.limit);
  let next: Plan | null = null;
  while (!search.isCancelled() && found < set.limit) {
    next = await search.plan(found + 1, effort);
    if (next.enough !== "yes") break;
    found += 1;
    next = null;
  }
  let plan: Plan | null = null;
  for (; plan === null && found > 0; found -= plan === null ? 1 : 0) plan = await search.planFound(found);
  const told = { ...common, most: found, plan, noPaper: next?.noPaper.map(({ label }) => label) ?? [] };
  if (search.isCancelled() || next === null)
    return { ...told, impossible: null, runsOut: [], withMore: [], cancelled: search.isCancelled() };

  const impossible = await fewestImpossible(search, found, next, set.limit);
  const first = runOut(found, next);
  const isBuyable = next.noPaper.length === 0;
  const second = isBuyable ? await nextToRunOut(project, set, first, options) : null;
  const withMore = isBuyable ? await setsWithMore(search, next, found, second, set) : [];
  return {
    ...told,
    impossible,
    runsOut: [...(isBuyable ? [first] : []), ...(second === null ? [] : [second])],
    withMore,
    cancelled: search.isCancelled() || options.signal?.aborted === true,
  };
}

/** Attempts at numbers of sets, and plans of them, each made once. */
interface SetSearch {
  /** Whether all pieces of so many sets are found, with the effort of attempts. */
  readonly attempt: (sets: number) => Promise<Plan["enough"]>;
  /** A plan of so many sets, with the effort of attempts unless it says otherwise. */
  readonly plan: (sets: number, effort?: Effort) => Promise<Plan>;
  /** A plan with all pieces, with all the effort where that finds one too; `null` where neither does. */
  readonly planFound: (sets: number) => Promise<Plan | null>;
  readonly isCancelled: () => boolean;
}

function searchOf(project: Project, options: PlanAsyncOptions): SetSearch {
  const { effort: full = "standard", seed = 1, solver } = options;
  const attempts = ATTEMPT_EFFORT[full] ?? full;
  const plans = new Map<string, Plan>();
  const answers = new Map<number, Plan["enough"]>();
  let cancelled = false;
  const planOf = async (sets: number, effort: Effort = attempts): Promise<Plan> => {
    const key = `${sets} ${effort}`;
    const found = plans.get(key) ?? (await planAsync(withSets(project, sets), { ...options, effort }));
    cancelled ||= found.search.cancelled;
    plans.set(key, found);
    return found;
  };
  const attempt = async (sets: number): Promise<Plan["enough"]> => {
    const before = answers.get(sets);
    if (before !== undefined) return before;
    const requests = attemptPlan(withSets(project, sets), { effort: attempts, seed, solver });
    const one = await driveSearch(requests, options);
    cancelled ||= one.cancelled;
    const enough = one.enough ?? (await planOf(sets)).enough;
    answers.set(sets, enough);
    return enough;
  };
  return {
    attempt,
    plan: planOf,
    planFound: async (sets) => {
      for (const effort of new Set([full, attempts])) {
        const found = await planOf(sets, effort);
        if (found.enough === "yes") return found;
      }
      return null;
    },
    isCancelled: () => cancelled,
  };
}

/** The most sets that attempts find, up to a limit, from a number that is known to be found. */
async function mostSets(search: SetSearch, wanted: number, limit: number, known = 0): Promise<number> {
  let best = known;
  let tooMany = limit + 1;
  const isFound = async (sets: number): Promise<boolean> => {
    const isYes = (await search.attempt(sets)) === "yes";
    if (isYes) best = sets;
    else tooMany = sets;
    return isYes;
  };
  if (wanted > known) await isFound(wanted);
  for (let step = 1; best + step < tooMany && !search.isCancelled(); step *= 2) {
    if (!(await isFound(best + step))) break;
  }
  while (tooMany - best > 1 && !search.isCancelled()) await isFound(Math.floor((best + tooMany) / 2));
  return best;
}

/** The fewest sets that a bound excludes; `null` where none is excluded up to the limit. */
async function fewestImpossible(
  search: SetSearch,
  found: number,
  next: Plan,
  limit: number,
): Promise<ImpossibleSets | null> {
  const isExcluded = async (sets: number): Promise<boolean> =>
    (sets === found + 1 ? next.enough : await search.attempt(sets)) === "no";
  let open = found;
  let excluded = limit + 1;
  for (let step = 1; excluded > limit && open < limit && !search.isCancelled(); step *= 2) {
    const sets = Math.min(limit, found + step);
    if (await isExcluded(sets)) excluded = sets;
    else open = sets;
  }
  if (excluded > limit) return null;
  while (excluded - open > 1 && !search.isCancelled()) {
    const middle = Math.floor((open + excluded) / 2);
    if (await isExcluded(middle)) excluded = middle;
    else open = middle;
  }
  const plan = excluded === found + 1 ? next : await search.plan(excluded);
  if (plan.enough !== "no") return null;
  const papers = plan.shortages
    .filter(({ outcome }) => outcome === "short")
    .map(({ group }) => plan.groups[group]!.designs);
  const items = shortItems(plan).flatMap(({ item, proven }) => (proven ? [item] : []));
  return { sets: excluded, papers, ...(items.length === 0 ? {} : { items }), plan };
}

/** Items of which a plan needs more than there is. */
function shortItems({
  itemUse = [],
}: Plan): readonly { readonly item: string; readonly proven: boolean; readonly more: number }[] {
  return itemUse.flatMap(({ item, onHand, needed, atLeast }) =>
    onHand === null || needed <= onHand ? [] : [{ item, proven: atLeast > onHand, more: needed - onHand }],
  );
}

function runOut(sets: number, plan: Plan): RunOut {
  const { shortages, groups } = plan;
  const items = shortItems(plan).map(({ item, proven }) => ({ item, proven }));
  return {
    ...(items.length === 0 ? {} : { items }),
    sets,
    papers: shortages.map(({ group, outcome }) => ({
      designs: groups[group]!.designs,
      proven: outcome === "short",
    })),
  };
}

/** What runs out once there is enough of the papers and items that run out first; `null` where nothing does. */
async function nextToRunOut(
  project: Project,
  set: SetOfCards,
  first: RunOut,
  options: PlanAsyncOptions,
): Promise<RunOut | null> {
  const bought = new Set(first.papers.flatMap(({ designs }) => designs));
  const papers = project.papers.map((paper) => ({
    ...paper,
    designs: paper.designs.map((one) => (bought.has(one.id) ? { ...one, count: null } : one)),
  }));
  const plenty = new Set(first.items?.map(({ item }) => item));
  const items = project.items?.map((item) => (plenty.has(item.name) ? { ...item, count: null } : item));
  const enough = { ...project, papers, ...(items === undefined ? {} : { items }) };
  const alone = searchOf(onlyAsNeeded(enough), options);
  if ((await alone.attempt(1)) === "yes" || alone.isCancelled()) return null;
  const search = searchOf(enough, options);
  // All other papers and items gave one set more already.
  const sets = await mostSets(search, Math.max(set.wanted, first.sets + 1), set.limit, first.sets);
  if (sets >= set.limit || search.isCancelled()) return null;
  return runOut(sets, await search.plan(sets + 1));
}

/** What sheets and items more would give: one set more, and as many as the papers that run out next give, or the wanted number. */
async function setsWithMore(
  search: SetSearch,
  next: Plan,
  found: number,
  second: RunOut | null,
  { wanted }: SetOfCards,
): Promise<readonly SetsWithMore[]> {
  const withMore = (plan: Plan, sets: number): readonly SetsWithMore[] => {
    const { shortages } = plan;
    const items = shortItems(plan).map(({ item, more }) => ({ item, more }));
    const isKnown = shortages.every(({ wouldHelp }) => wouldHelp.length > 0);
    if (!isKnown || shortages.length + items.length === 0) return [];
    const sheets = shortages.flatMap(({ wouldHelp }) => wouldHelp);
    return [{ sets, sheets, ...(items.length === 0 ? {} : { items }) }];
  };
  const one = withMore(next, found + 1);
  const until = second?.sets ?? wanted;
  if (until <= found + 1 || search.isCancelled()) return one;
  return [...one, ...withMore(await search.plan(until), until)];
}

/** Designs of papers that come as needed and that some piece may be cut from. */
function unlimited({ papers, pieces }: Expansion): readonly string[] {
  const faces = facesById(papers);
  const used = new Set(pieces.flatMap((piece) => piece.faces.map((id) => faceOf(faces, id).design.id)));
  return papers.flatMap(({ designs }) =>
    designs.filter(({ id, count }) => count === null && used.has(id)).map(({ id }) => id),
  );
}

/** The project without a sheet, an offcut or an item that is counted, and with nothing cut yet. */
function onlyAsNeeded({ cutAlready: _, ...project }: Project): Project {
  const items = project.items?.map((item) => ({ ...item, count: item.count === null ? null : 0 }));
  return {
    ...project,
    ...(items === undefined ? {} : { items }),
    papers: project.papers.map((paper) => ({
      ...paper,
      designs: paper.designs.map((design) => ({
        ...design,
        count: design.count === null ? null : 0,
        offcuts: [],
      })),
    })),
  };
}
