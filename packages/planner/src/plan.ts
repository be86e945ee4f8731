/**
 * Plans a project: works out its pieces, divides papers and pieces into groups that can be planned apart, packs each group,
 * looks for spare copies where nothing is missing, and counts what is used, left and missing.
 *
 * Every packing is proven right by the verifier of packing before it is given out. The same project, effort and seed give
 * the same bytes; pausing changes nothing. A plan that is ended early is right too, but another run may give another one.
 */

import {
  expandProject,
  explainNoPaper,
  type NoPaper,
  type Paper,
  type Piece,
  type Project,
} from "@sheetwright/cards";
import {
  type Effort,
  type LinearSolver,
  type Packing,
  type PackOptions,
  packSteps,
} from "@sheetwright/packing";
import { groupPapers, inOneBag } from "./group/group-papers.js";
import { type GroupTask, groupProblem } from "./group/group-problem.js";
import { itemTakes } from "./items/item-takes.js";
import { sparesWithItems } from "./items/spares-with-items.js";
import { useItems } from "./items/use-items.js";
import { shortageOfBags } from "./kits/shortage-of-bags.js";
import type { ItemUse, PaperGroup, Plan, Shortage } from "./plan-model.js";
import { type DriveOptions, driveSearch } from "./search/drive-search.js";
import {
  type CompleteGroup,
  findSpares,
  type Spares,
  wishedSpares,
  withSpares,
} from "./search/find-spares.js";
import { groupSearch, type PlanProgress, type Search } from "./search/group-search.js";
import { searchGroup } from "./search/search-group.js";
import { shareShortPapers } from "./sets/share-short-papers.js";
import { endlessProblem } from "./strips/endless-problem.js";
import { completeCopies } from "./totals/complete-copies.js";
import { paperLeftovers } from "./totals/find-leftovers.js";
import { foldGrains } from "./totals/fold-grains.js";
import { paperUse, planCost } from "./totals/paper-use.js";
import { planCosts } from "./totals/plan-costs.js";

/** How to plan. */
export interface PlanOptions {
  /** Work to do for each group of papers (default `standard`). */
  readonly effort?: Effort | undefined;
  /** A whole number from 0; the same seed gives the same plan everywhere (default 1). */
  readonly seed?: number | undefined;
  /** Solves linear programs where one is of use; without, the search does so itself. */
  readonly solver?: LinearSolver | undefined;
}

/** What {@link planAsync} takes besides. */
export interface PlanAsyncOptions extends PlanOptions, DriveOptions {}

const EFFORTS: readonly string[] = ["quick", "standard", "thorough"] satisfies Effort[];

/**
 * Plans a project at once.
 *
 * Too little paper, or a piece that no paper is large enough for, is a result and not an error. Throws ProjectError where
 * the project contradicts itself, RangeError for a bad seed or effort.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: Harbour cards
 * papers:
 *   night: { cardstock: us-letter, count: 5, grain: long, cost: 0.35 }
 * cards:
 *   - { name: Harbour, format: us-a2, base: night, copies: 8 }
 * `);
 * const found = plan(project);
 * found.enough // => "yes"
 * found.use // => [{ design: "night", used: 4, left: 1, offcutsUsed: 0 }]
 * found.folds // => [{ piece: "1a", along: 8, across: 0, unknown: 0, none: 0 }]
 * found.cost // => "1.40"
 * plan({ ...project, cards: [{ ...project.cards[0], copies: -1 }] }) // throws ProjectError: copies
 * plan(project, { seed: 0.5 }) // throws RangeError: seed must be a whole number
 */
export function plan(project: Project, options: PlanOptions = {}): Plan {
  const steps = planSteps(project, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * Like {@link plan}, pausing between steps. Pausing never changes the plan; one that is ended early is the best so far,
 * with `search.cancelled` true. Rejects as `plan` throws.
 *
 * @example
 * const text = `{ sheetwright: 1, title: One, papers: { cream: { cardstock: us-letter } },
 *   cards: [{ name: Plain, format: us-a2, base: cream, copies: 40 }] }`;
 * const { project } = cards.readProject(text);
 * const signal = { aborted: false };
 * const onProgress = ({ group, groups }) => {
 *   signal.aborted = group + 1 === groups;
 * };
 * const found = await planAsync(project, { signal, onProgress });
 * found.search.cancelled // => true
 * [found.enough, verifyPlan(project, found)] // => ["yes", []]
 */
export function planAsync(project: Project, options: PlanAsyncOptions = {}): Promise<Plan> {
  return driveSearch(planRequests(project, options), options);
}

/**
 * The plan as a generator that yields after fixed amounts of work, for callers with a scheduler of their own. Send `true`
 * to end it early: every group then still gets a first packing. Throws as {@link plan} does.
 *
 * @example
 * const text = `{ sheetwright: 1, title: One, papers: { cream: { cardstock: us-letter } },
 *   cards: [{ name: Plain, format: us-a2, base: cream }] }`;
 * const { project } = cards.readProject(text);
 * const steps = planSteps(project);
 * let step = steps.next();
 * [step.value.group, step.value.groups, step.value.aim] // => [0, 1, "layouts"]
 * while (!step.done) step = steps.next();
 * JSON.stringify(step.value) === JSON.stringify(plan(project)) // => true
 */
export function* planSteps(
  project: Project,
  options: PlanOptions = {},
): Generator<PlanProgress, Plan, boolean | undefined> {
  const requests = planRequests(project, options);
  let stopped = false;
  let request = requests.next();
  while (!request.done) {
    const { problem, options: own, ...place } = request.value;
    const steps = packSteps(problem, own);
    let step = steps.next();
    while (!step.done) {
      stopped = (yield { ...place, progress: step.value }) === true || stopped;
      step = steps.next(stopped);
    }
    request = requests.next({ packing: step.value, stopped });
  }
  return request.value;
}

/** All of a plan but its packings, which it asks for one after another. */
function* planRequests(project: Project, options: PlanOptions): Search<Plan> {
  const { effort = "standard", seed = 1 } = options;
  if (!EFFORTS.includes(effort))
    throw new RangeError(`effort must be one of ${EFFORTS.join(", ")}, and is ${effort}.`);
  if (!Number.isSafeInteger(seed) || seed < 0)
    throw new RangeError(`seed must be a whole number from 0, and is ${seed}.`);
  const expansion = expandProject(project);
  const { papers, cards, pieces } = expansion;
  const unfit = pieces.map((piece) => explainNoPaper(project, piece)).filter((one) => one !== null);
  const leftOut = new Set(unfit.map(({ piece }) => piece));
  // What is cut already needs no paper.
  const wanted = pieces.filter(({ quantity }) => quantity > 0);
  const noPaper = unfit.filter(({ piece }) => wanted.some(({ id }) => id === piece));
  const empty = emptyFaces(papers);
  const cannotBe = ({ id, faces }: Piece) => leftOut.has(id) || faces.every((face) => empty.has(face));
  const hopeless = new Set(wanted.filter(cannotBe).map(({ card }) => card));
  const clusters = groupPapers(expansion, leftOut).map(inOneBag);

  const { narrowestHold } = project.trimmer;
  const packOptions: PackOptions = { effort, seed, narrowestHold, solver: options.solver };
  const groups: PaperGroup[] = [];
  const asked: CompleteGroup[] = [];
  let shortages: readonly Shortage[] = [];
  let cancelled = false;
  for (const [group, cluster] of clusters.entries()) {
    const search = groupSearch({ group, groups: clusters.length }, packOptions);
    const task = groupProblem(cluster, project, hopeless);
    const found = yield* searchGroup(task, cluster.pieces, papers, project, search);
    const { packing, shortage, divisions } = found;
    asked.push({ task, pieces: cluster.pieces, divisions });
    groups.push(groupOf(found.task, packing));
    if (shortage !== null) shortages = [...shortages, { group, ...shortage }];
    cancelled = search.isStopped();
  }

  const able = cards.filter(({ number }) => !hopeless.has(number));
  const short = shortages.map(({ group }) => ({ group, ...asked[group]!, packing: groups[group]!.packing }));
  const shared = yield* shareShortPapers(cancelled ? [] : short, able, papers, effort, (group) =>
    groupSearch({ group, groups: clusters.length }, packOptions),
  );
  cancelled ||= shared.cancelled;
  for (const [group, packing] of shared.packings) groups[group] = groupOf(asked[group]!.task, packing);
  shortages = shortages.flatMap((shortage) => {
    const packing = shared.packings.get(shortage.group);
    return packing === undefined ? [shortage] : missingStill(shortage, packing);
  });

  const takes = itemTakes(project, expansion);
  const wished = yield* sparesWithItems(takes, cards, wishedSpares(cards), effort);
  let spares: Spares = new Map();
  if (isEnough(shortages, unfit, []) === "yes" && wished.size > 0 && !cancelled) {
    const found = yield* findSpares(asked, wished, papers, project, effort, (group) =>
      groupSearch({ group, groups: clusters.length }, packOptions),
    );
    spares = found.spares;
    cancelled = found.cancelled;
    for (const [group, { task, packing }] of found.groups) groups[group] = groupOf(task, packing);
  }

  for (const [group, { task, pieces: own }] of asked.entries()) {
    const problem = endlessProblem(withSpares(task, own, spares), own, project);
    if (problem === null) continue;
    const search = groupSearch({ group, groups: clusters.length }, packOptions);
    const packing = yield* search.pack(problem, "strips", "quick");
    groups[group] = { ...groups[group]!, endless: { problem, packing } };
    cancelled ||= search.isStopped();
  }
  const told = shortages.map((shortage): Shortage => {
    const isShort = isProvenShort(groups[shortage.group]!);
    const { task } = asked[shortage.group]!;
    const all = papers.flatMap(({ designs }) => designs);
    return shortageOfBags({ ...shortage, outcome: isShort ? "short" : "not-found" }, task, all);
  });

  const use = paperUse(papers, groups);
  const ofPapers = completeCopies(cards, pieces, groups, noPaper, spares);
  const bags = project.kits?.bags ?? 1;
  const { itemUse, complete } = yield* useItems(takes, cards, ofPapers, spares, wished, bags);
  const cost = planCost(papers, use);
  const { rates } = project;
  return {
    version: 1,
    ...expansion,
    enough: isEnough(told, noPaper, itemUse),
    groups,
    noPaper,
    complete,
    shortages: told,
    use,
    ...(project.items === undefined ? {} : { itemUse }),
    leftovers: paperLeftovers(papers, groups),
    folds: foldGrains(pieces, papers, groups),
    cost,
    ...(rates === undefined ? {} : { costs: planCosts(rates, complete, cost) }),
    search: { effort, seed, lp: solverOf(groups), cancelled },
  };
}

/** The solver that was passed in for some group, or `none`. */
function solverOf(groups: readonly PaperGroup[]): string {
  return groups.map(({ packing }) => packing.search.lp).find((lp) => lp !== "none") ?? "none";
}

/** Faces of which there is no sheet at all: cards that need them cannot be completed, and are not cut for first. */
function emptyFaces(papers: readonly Paper[]): ReadonlySet<string> {
  const designs = papers.flatMap((paper) => paper.designs);
  const empty = designs.filter(
    ({ count, offcuts }) => count === 0 && offcuts.every((offcut) => offcut.count === 0),
  );
  return new Set(empty.flatMap(({ front, back }) => (back === null ? [front.id] : [front.id, back.id])));
}

/** What is missing from a group with another packing; nothing where that one holds everything. */
function missingStill(shortage: Shortage, { missing, outcome }: Packing): readonly Shortage[] {
  if (outcome === "complete") return [];
  return [{ ...shortage, pieces: missing.map(({ kind, count }) => ({ piece: kind, missing: count })) }];
}

function groupOf(task: GroupTask, packing: Packing): PaperGroup {
  const { designs, problem, bags, sheets, strips } = task;
  return {
    designs,
    problem,
    packing,
    ...(bags === undefined ? {} : { bags }),
    sheets,
    ...(strips === undefined ? {} : { strips }),
  };
}

/** Whether a group's papers are proven not to give all, in whatever strips its die blanks are cut. */
function isProvenShort({ packing, endless }: PaperGroup): boolean {
  return packing.outcome === "short" && (endless === undefined || endless.packing.outcome === "short");
}

function isEnough(
  shortages: readonly Shortage[],
  noPaper: readonly NoPaper[],
  itemUse: readonly ItemUse[],
): Plan["enough"] {
  const lacks = (count: (use: ItemUse) => number): boolean =>
    itemUse.some((use) => use.onHand !== null && count(use) > use.onHand);
  const isShort = noPaper.length > 0 || shortages.some(({ outcome }) => outcome === "short");
  if (isShort || lacks(({ atLeast }) => atLeast)) return "no";
  return shortages.length === 0 && !lacks(({ needed }) => needed) ? "yes" : "not-found";
}
