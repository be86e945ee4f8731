import { checkProject, findProjectFaults, type Project } from "@sheetwright/cards";
import { type Packing, packAsync } from "@sheetwright/packing";
import { costText, costUnits } from "../group/cost-units.js";
import { asManyAsNeeded } from "../need/as-many-as-needed.js";
import { type PlanAsyncOptions, planAsync } from "../plan.js";
import type { Plan } from "../plan-model.js";
import { percentOf } from "../totals/percent-of.js";
import { provenPlan } from "../verify/proven-plan.js";
import { letTurn } from "./let-turn.js";
import { otherCutting } from "./other-cutting.js";
import { otherMeasures } from "./other-measures.js";
import { otherPapers } from "./other-papers.js";
import type { Change, Saving, SavingFigures, Savings } from "./savings.js";

/** How to look for savings. The effort, `quick` unless something else is said, is that of every plan. */
export interface SavingsOptions extends PlanAsyncOptions {
  /** How many changes are told at most (default 3). */
  readonly most?: number | undefined;
  /** How many changes are planned at most (default 100); those that let pieces turn come first, sizes last. */
  readonly mostTried?: number | undefined;
  /** Called before each change with how many are planned already, and how many there are to plan. */
  readonly onChange?: ((done: number, all: number) => void) | undefined;
}

/**
 * Looks for the small changes of a project that save most: pieces that may turn, grain let go, other papers, a border a step
 * wider, either fold, fewer spares, no kerf or trim, sheets of another size. The project and each change are planned at the
 * same effort with as many sheets as needed ({@link asManyAsNeeded}); papers that a change leaves as they are, are not
 * searched anew. What costs less saves; where a cost is not known, and of equal costs, what takes less area of sheets. Changes that contradict the project, or that a check warns of, are left out. A function of project, effort and
 * seed, as long as it is not ended early.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: Place cards
 * copies: 11
 * papers: { stars: { paper: 5 1/4 x 9 1/2, pattern: one-way, cost: 0.40 } }
 * cards: [{ name: Row, size: 4 1/4 x 1, fold: flat, base: stars }]
 * `);
 * const { asItIs, savings: [best] } = await findSavings(project);
 * [asItIs.sheets, asItIs.cost] // => [2, "0.80"]
 * [best.words, best.sheetsSaved, best.costSaved] // => ["let the base pieces turn on stars", 1, "0.40"]
 */
export async function findSavings(project: Project, options: SavingsOptions = {}): Promise<Savings> {
  const { most = 3, mostTried = 100, onChange, effort = "quick", seed = 1, signal, ...rest } = options;
  const own: PlanAsyncOptions = {
    ...rest,
    effort,
    seed,
    signal,
    packer: remembering(rest.packer ?? packAsync),
  };
  const head = { title: project.title, units: project.units, currency: project.rates?.currency ?? null };
  const before = await planAsync(asManyAsNeeded(project), own);
  if (before.enough !== "yes") {
    const search = { effort, seed, cancelled: before.search.cancelled };
    return { ...head, asItIs: null, savings: [], tried: 0, saving: 0, search };
  }
  const base = weigh(provenPlan(asManyAsNeeded(project), before));
  const warned = warningsOf(project);
  const changes = [
    ...letTurn(project),
    ...otherCutting(project),
    ...otherMeasures(project),
    ...otherPapers(project),
  ]
    .filter((change) => isSound(change.project, warned))
    .slice(0, mostTried);
  const found: { readonly change: Change; readonly weighed: Weighed; readonly plan: Plan }[] = [];
  let done = 0;
  let tried = 0;
  for (const change of changes) {
    if (signal?.aborted === true) break;
    onChange?.(done, changes.length);
    done += 1;
    if (change.isLeast && found.some((one) => one.change.subject === change.subject)) continue;
    const plan = await planAsync(asManyAsNeeded(change.project), own);
    tried += 1;
    if (plan.enough !== "yes") continue;
    const weighed = weigh(plan);
    if (compare(weighed, base, base) < 0) found.push({ change, weighed, plan });
  }
  // A stable sort: of equals the change that was tried first stays before the others.
  found.sort(
    (a, b) => compare(a.weighed, b.weighed, base) || a.weighed.figures.sheets - b.weighed.figures.sheets,
  );
  const subjects = new Set<string>();
  const best = found.filter(({ change: { subject } }) => {
    const isNew = !subjects.has(subject);
    subjects.add(subject);
    return isNew;
  });
  return {
    ...head,
    asItIs: base.figures,
    savings: best.slice(0, most).map(({ change, weighed, plan }) => {
      provenPlan(asManyAsNeeded(change.project), plan);
      return savingOf(change, weighed, base, isProven(before, plan));
    }),
    tried,
    saving: best.length,
    search: { effort, seed, cancelled: done < changes.length },
  };
}

type Packer = NonNullable<PlanAsyncOptions["packer"]>;

/** A packer that packs each problem once: papers that a change leaves alone come from what was found before. */
function remembering(packer: Packer): Packer {
  const known = new Map<string, Promise<Packing>>();
  return (problem, options) => {
    const key = JSON.stringify([problem, options.effort, options.seed, options.narrowestHold]);
    const before = known.get(key);
    if (before !== undefined && options.signal?.aborted !== true) return before;
    const packing = packer(problem, options);
    known.set(key, packing);
    return packing;
  };
}

/** Codes and places of what a check warns of. */
function warningsOf(project: Project): ReadonlySet<string> {
  const warnings = checkProject(project).filter(({ severity }) => severity !== "note");
  return new Set(warnings.map(({ code, path }) => `${code} ${path}`));
}

/** Whether a changed project has no fault, and no warning that it had not before. */
function isSound(project: Project, warned: ReadonlySet<string>): boolean {
  if (findProjectFaults(project).length > 0) return false;
  return [...warningsOf(project)].every((warning) => warned.has(warning));
}

/** What a plan takes, to be compared. */
interface Weighed {
  readonly figures: SavingFigures;
  readonly area: bigint;
}

function weigh(plan: Plan): Weighed {
  let area = 0n;
  const papers: SavingFigures["papers"][number][] = [];
  for (const { sheet, material, name: paper, designs } of plan.papers) {
    for (const { id: design, name: own } of designs) {
      const sheets = plan.use.find((one) => one.design === design)?.used ?? 0;
      if (sheets === 0) continue;
      area += BigInt(sheets) * BigInt(sheet.width) * BigInt(sheet.height);
      papers.push({ design, name: material === "pad" ? `${paper}: ${own}` : paper, sheets });
    }
  }
  const sheets = papers.reduce((sum, one) => sum + one.sheets, 0);
  return { figures: { cost: plan.cost, sheets, papers }, area };
}

/** Below 0 where the first takes less: by cost where the project's own is known, then by the area of the sheets. */
function compare(a: Weighed, b: Weighed, base: Weighed): number {
  if (base.figures.cost !== null) {
    const [first, second] = [costOf(a, base), costOf(b, base)];
    if (first !== second) return first < second ? -1 : 1;
  }
  return a.area === b.area ? 0 : a.area < b.area ? -1 : 1;
}

/** A change that brings in a paper without a cost does not save. */
function costOf({ figures: { cost } }: Weighed, base: Weighed): bigint {
  return cost === null ? costUnits(base.figures.cost ?? "0") + 1n : costUnits(cost);
}

/** Whether all papers that a change touches are planned best without it. */
function isProven(before: Plan, after: Plan): boolean {
  const kept = new Set(after.groups.map(({ problem }) => JSON.stringify(problem)));
  return before.groups
    .filter(({ problem }) => !kept.has(JSON.stringify(problem)))
    .every(({ packing, endless }) => packing.proven && endless === undefined);
}

function savingOf({ words, path, write }: Change, after: Weighed, base: Weighed, proven: boolean): Saving {
  const [was, is] = [base.figures.cost, after.figures.cost];
  const less = base.area > after.area ? base.area - after.area : 0n;
  return {
    words,
    path,
    write,
    takes: after.figures,
    costSaved: was === null || is === null ? null : costText(costUnits(was) - costUnits(is)),
    sheetsSaved: base.figures.sheets - after.figures.sheets,
    areaPercent: percentOf(less, base.area),
    proven,
  };
}
