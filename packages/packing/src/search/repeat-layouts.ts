/**
 * Many copies: fill one sheet well, cut as many sheets like it as the copies allow, and go on with the rest. The work
 * grows with the number of different pieces, not with their copies.
 *
 * Source: sequential heuristic with pattern repetition, R. Haessler, A heuristic programming solution to a nonlinear
 * cutting stock problem, Management Science 17 (1971).
 */
import { bestFit, type Demand } from "./best-fit.js";
import { bestMixedLayout, bestSingleLayout, gridCount, type SingleLayout } from "./best-single-layout.js";
import { type CompiledProblem, type CompiledSheet, MOST_ON_SHEET } from "./compiled-problem.js";
import { type DraftLayout, layoutsOf } from "./draft.js";
import type { Meter } from "./meter.js";
import type { RandomStream } from "./random-stream.js";
import { type Rules, rulesOf } from "./rules.js";

/** What repetition took, and what is left for one-by-one placing. */
export interface Repeated {
  readonly layouts: readonly DraftLayout[];
  readonly rest: Demand;
}

/** Trials a layout when the best use of a sheet is looked for: the rules of the start, and noisy variations. */
const TRIALS = 4;

/** How layouts are chosen for repetition. */
export interface Repetition {
  /** Stops once at most so many copies are left ... */
  readonly untilCopies: number;
  /** ... or no layout can be repeated so often. */
  readonly leastRun: number;
  /**
   * True: of several layouts the one that uses its sheet best, which leaves the awkward pieces for the end. False: the
   * layout that the rules of the start make, awkward pieces first.
   */
  readonly greedy: boolean;
}

/** Different layouts that are about as many as a maker wants to see; runs are made long enough for it. */
const MOST_LAYOUTS = 60;

/** Share of the best use of a sheet below which a long run is not worth it. */
const LEAST_MERIT = 0.98;

/** Repeats layouts as long as {@link Repetition} says. Returns undefined where it was stopped on the way. */
export function* repeatLayouts(
  problem: CompiledProblem,
  demand: Demand,
  rules: Rules,
  random: RandomStream,
  meter: Meter,
  exact: ExactLayouts,
  how: Repetition,
): Generator<void, Repeated | undefined, void> {
  const { untilCopies, leastRun, greedy } = how;
  const wanted = [...demand.wanted];
  const stock = [...demand.stock];
  const layouts: DraftLayout[] = [];
  let copies = wanted.reduce((sum, count) => sum + count, 0);
  // Long runs first: a layout is made of copies that allow it this often.
  let longRun = Math.max(leastRun, Math.floor(copies / MOST_LAYOUTS));
  while (copies > untilCopies) {
    const best = yield* bestLayout(
      problem,
      { wanted, stock },
      longRun,
      rules,
      random,
      meter,
      greedy ? exact : undefined,
    );
    if (meter.stopped) return undefined;
    if (longRun > leastRun) {
      // A layout that few copies of each kind may enter can be poor: then shorter runs are the lesser evil.
      const free = yield* bestLayout(
        problem,
        { wanted, stock },
        leastRun,
        rules,
        random,
        meter,
        greedy ? exact : undefined,
      );
      if (meter.stopped) return undefined;
      if (best === undefined || (free && best.merit < LEAST_MERIT * free.merit)) {
        longRun = Math.max(leastRun, Math.floor(longRun / 2));
        continue;
      }
    }
    if (best === undefined) break;
    const { layout } = best;
    let run = stock[layout.sheet.index] ?? 0;
    for (const [kind, count] of layout.counts) run = Math.min(run, Math.floor((wanted[kind] ?? 0) / count));
    layouts.push({ ...layout, run });
    stock[layout.sheet.index] = (stock[layout.sheet.index] ?? 0) - run;
    for (const [kind, count] of layout.counts) wanted[kind] = (wanted[kind] ?? 0) - count * run;
    copies = wanted.reduce((sum, count) => sum + count, 0);
  }
  return { layouts, rest: { wanted, stock } };
}

interface Judged {
  readonly layout: DraftLayout;
  readonly merit: number;
}

/** The layout that uses a sheet best, or that the rules make, of copies that allow a run of `longRun`. */
function* bestLayout(
  problem: CompiledProblem,
  demand: Demand,
  longRun: number,
  rules: Rules,
  random: RandomStream,
  meter: Meter,
  exact: ExactLayouts | undefined,
): Generator<void, Judged | undefined, void> {
  let best: Judged | undefined;
  for (const sheet of problem.sheets) {
    if ((demand.stock[sheet.index] ?? 0) <= 0) continue;
    for (let trial = 0; trial < (exact ? TRIALS : 1); trial++) {
      const own = trial === 0 ? rules : rulesOf(Number.MAX_SAFE_INTEGER, random);
      const layout = yield* fillOne(problem, demand.wanted, longRun, sheet, own, random, meter);
      if (meter.stopped) return undefined;
      if (layout) best = better(problem, best, layout);
    }
    for (const layout of exact ? exactLayouts(problem, demand.wanted, longRun, sheet, exact) : []) {
      best = better(problem, best, layout);
    }
  }
  return best;
}

/** Layouts that dynamic programming finds, each made once a search. */
export interface ExactLayouts {
  /** The most copies of one kind on a sheet. */
  readonly of: (sheet: CompiledSheet, kind: number) => SingleLayout | undefined;
  /** The most value on a sheet from copies without limit; for the aim `fill` only. */
  readonly mixed: (sheet: CompiledSheet) => DraftLayout | undefined;
}

/** Steps that the most valuable layout of a sheet may take: some tens of milliseconds. */
const MIXED_STEPS = 4_000_000;

/** Remembers {@link bestSingleLayout} and {@link bestMixedLayout}. */
export function exactLayoutsOf(problem: CompiledProblem): ExactLayouts {
  const known = new Map<string, SingleLayout | undefined>();
  const mixed = new Map<number, DraftLayout | undefined>();
  return {
    of: (sheet, kind) => {
      const key = `${sheet.index}:${kind}`;
      if (!known.has(key)) {
        const entry = problem.kinds[kind];
        known.set(key, entry && bestSingleLayout(problem, sheet, entry));
      }
      return known.get(key);
    },
    mixed: (sheet) => {
      if (problem.source.aim !== "fill") return undefined;
      if (!mixed.has(sheet.index)) mixed.set(sheet.index, mixedLayout(problem, sheet));
      return mixed.get(sheet.index);
    },
  };
}

function mixedLayout(problem: CompiledProblem, sheet: CompiledSheet): DraftLayout | undefined {
  const free = problem.kinds.filter((kind) => kind.group < 0 && kind.quantity > 0 && kind.value > 0);
  const best = bestMixedLayout(problem, sheet, free, MIXED_STEPS);
  if (best === undefined) return undefined;
  const counts = new Map<number, number>();
  best.kinds.forEach((kind, piece) => {
    const count = best.counts[piece] ?? 0;
    if (count > 0) counts.set(kind, (counts.get(kind) ?? 0) + count);
  });
  return counts.size === 0 ? undefined : { sheet, run: 1, tree: () => best.tree, counts, spread: 0 };
}

/** Kinds up to which a start also looks at layouts of one kind alone. */
const MOST_SINGLE_KINDS = 24;

function* fillOne(
  problem: CompiledProblem,
  wanted: readonly number[],
  longRun: number,
  sheet: CompiledSheet,
  rules: Rules,
  random: RandomStream,
  meter: Meter,
): Generator<void, DraftLayout | undefined, void> {
  const area = sheet.width * sheet.height;
  const mostOfKind = Math.ceil(MOST_ON_SHEET / problem.kinds.length);
  const capped = problem.kinds.map((kind) => {
    const lay = kind.lays[sheet.index]?.[0];
    if (lay === undefined || kind.group >= 0) return 0;
    return Math.min(
      Math.floor((wanted[kind.index] ?? 0) / longRun),
      Math.floor(area / (lay.width * lay.height)),
      mostOfKind,
    );
  });
  const stock = problem.sheets.map((entry) => (entry.index === sheet.index ? 1 : 0));
  const forest = yield* bestFit(
    problem,
    { wanted: capped, stock },
    { ...rules, oneByOne: false },
    random,
    meter,
  );
  return forest && layoutsOf(problem, forest)[0];
}

function exactLayouts(
  problem: CompiledProblem,
  wanted: readonly number[],
  longRun: number,
  sheet: CompiledSheet,
  exact: ExactLayouts,
): readonly DraftLayout[] {
  const mixed = exact.mixed(sheet);
  const fits = mixed && [...mixed.counts].every(([kind, count]) => count * longRun <= (wanted[kind] ?? 0));
  const several = mixed && fits ? [mixed] : [];
  if (problem.kinds.length > MOST_SINGLE_KINDS) return several;
  const alone = problem.kinds.flatMap((kind) => {
    const copies = wanted[kind.index] ?? 0;
    // No layout has fewer than rows and columns of one kind give, which is known at once.
    if (kind.group >= 0 || copies === 0 || gridCount(problem, sheet, kind) * longRun > copies) return [];
    const single = exact.of(sheet, kind.index);
    if (single === undefined || single.count === 0 || single.count * longRun > copies) return [];
    const { count, tree } = single;
    return [{ sheet, run: 1, tree: () => tree, counts: new Map([[kind.index, count]]), spread: 0 }];
  });
  return [...several, ...alone];
}

function better(problem: CompiledProblem, best: Judged | undefined, layout: DraftLayout): Judged {
  const lay = (kind: number): number => {
    const first = problem.kinds[kind]?.lays[layout.sheet.index]?.[0];
    return first ? first.width * first.height : 0;
  };
  let used = 0;
  for (const [kind, count] of layout.counts) {
    const worth = problem.source.aim === "fill" ? (problem.kinds[kind]?.value ?? 0) : lay(kind);
    used += worth * count;
  }
  const price = problem.source.aim === "fill" ? layout.sheet.width * layout.sheet.height : layout.sheet.cost;
  const merit = used / Math.max(1, price);
  return best && best.merit >= merit ? best : { layout, merit };
}
