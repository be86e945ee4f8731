import type { Demand } from "../best-fit.js";
import type { CompiledProblem, CompiledSheet } from "../compiled-problem.js";
import type { Meter } from "../meter.js";
import type { RandomStream } from "../random-stream.js";
import type { SheetNeed } from "./sheet-need.js";

/** A number of each sheet that a plan may use. */
export interface SheetMix {
  /** By sheet index. */
  readonly counts: readonly number[];
  readonly cost: number;
  /** Area of all its sheets, each with a kerf more both ways. */
  readonly area: number;
  /** Sum of the extents of all its sheets, both ways: waste lies along edges. */
  readonly rim: number;
}

/** Partial mixes looked at, at most, before a sample is taken instead. */
const MOST_PARTS = 100_000;

/** Mixes drawn near a plan's own where there are too many of them. */
const DRAWS = 2_000;

function usefulSheets(problem: CompiledProblem, demand: Demand): CompiledSheet[] {
  return problem.sheets.filter((sheet) => mostOf(demand, sheet) > 0);
}

/** A sheet is of use only where a piece lies on it. */
function mostOf(demand: Demand, sheet: CompiledSheet): number {
  const copies = demand.wanted.reduce((sum, count) => sum + count, 0);
  return Math.min(demand.stock[sheet.index] ?? 0, copies);
}

/** Sums up some numbers of sheets. */
export function mixOf(problem: CompiledProblem, counts: readonly number[]): SheetMix {
  let cost = 0;
  let area = 0;
  let rim = 0;
  for (const sheet of problem.sheets) {
    const count = counts[sheet.index] ?? 0;
    cost += count * sheet.cost;
    area += count * grossArea(problem, sheet);
    rim += count * (sheet.width + sheet.height);
  }
  return { counts: [...counts], cost, area, rim };
}

function grossArea({ kerf }: CompiledProblem, { width, height }: CompiledSheet): number {
  return (width + kerf) * (height + kerf);
}

/**
 * Every mix from the stock that costs less than a plan and has area enough for every piece where it may lie, or undefined
 * where there are too many. What costs nothing is in all of them.
 * @param below what the plan costs.
 */
export function allMixes(
  problem: CompiledProblem,
  demand: Demand,
  need: SheetNeed,
  below: number,
  meter: Meter,
): readonly SheetMix[] | undefined {
  // The dearest first: fewer parts are looked at.
  const order = usefulSheets(problem, demand).sort((a, b) => b.cost - a.cost || a.index - b.index);
  const most = order.map((sheet) => mostOf(demand, sheet));
  // Area that the sheets from one on can still give.
  const rest = new Array<number>(order.length + 1).fill(0);
  for (let at = order.length - 1; at >= 0; at--) {
    const sheet = order[at] as CompiledSheet;
    rest[at] = (rest[at + 1] as number) + (most[at] as number) * grossArea(problem, sheet);
  }
  const mixes: SheetMix[] = [];
  const counts = problem.sheets.map(() => 0);
  let parts = 0;
  const add = (at: number, cost: number, area: number): void => {
    if (++parts > MOST_PARTS || area + (rest[at] as number) < need.area) return;
    const sheet = order[at];
    if (sheet === undefined) {
      if (need.isMetBy(counts)) mixes.push(mixOf(problem, counts));
      return;
    }
    const end = most[at] as number;
    const each = grossArea(problem, sheet);
    for (let n = sheet.cost === 0 ? end : 0; n <= end && cost + n * sheet.cost < below; n++) {
      counts[sheet.index] = n;
      add(at + 1, cost + n * sheet.cost, area + n * each);
    }
    counts[sheet.index] = 0;
  };
  add(0, 0, 0);
  meter.work += parts;
  return parts > MOST_PARTS ? undefined : mixes;
}

/**
 * Some mixes like those of {@link allMixes}, drawn at random, that differ from a plan's own in few sheets.
 * @param own the sheets of the plan, by sheet index.
 * @param below what the plan costs.
 */
export function nearMixes(
  problem: CompiledProblem,
  demand: Demand,
  need: SheetNeed,
  own: readonly number[],
  below: number,
  random: RandomStream,
  meter: Meter,
): readonly SheetMix[] {
  const sheets = usefulSheets(problem, demand);
  const found = new Map<string, SheetMix>();
  const inUse = problem.sheets.flatMap((sheet) =>
    Array.from({ length: own[sheet.index] ?? 0 }, () => sheet.index),
  );
  for (let draw = 0; draw < DRAWS && inUse.length > 0; draw++) {
    const counts = [...own];
    for (let gone = 1 + random.below(3); gone > 0; gone--) {
      const index = inUse[random.below(inUse.length)] as number;
      counts[index] = Math.max(0, (counts[index] as number) - 1);
    }
    let mix = mixOf(problem, counts);
    while (mix.area < need.area) {
      const left = below - mix.cost;
      const more = sheets.filter((s) => s.cost < left && (counts[s.index] as number) < mostOf(demand, s));
      const sheet = more[random.below(Math.max(1, more.length))];
      if (sheet === undefined) break;
      counts[sheet.index] = (counts[sheet.index] as number) + 1;
      mix = mixOf(problem, counts);
    }
    if (mix.area >= need.area && mix.cost < below && need.isMetBy(counts)) found.set(counts.join(" "), mix);
    meter.work += sheets.length;
  }
  return [...found.values()];
}
