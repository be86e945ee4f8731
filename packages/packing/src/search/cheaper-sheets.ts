import { bestFit, type Demand } from "./best-fit.js";
import type { CompiledProblem, CompiledSheet } from "./compiled-problem.js";
import { type DraftLayout, layoutsOf } from "./draft.js";
import type { Meter } from "./meter.js";
import type { RandomStream } from "./random-stream.js";
import { type Rules, rulesOf } from "./rules.js";

/**
 * Moves the pieces of single sheets to cheaper sheets that take them all, such as an offcut. Only single sheets of a
 * plan are looked at: a run stays a run.
 */
export function* useCheaperSheets(
  problem: CompiledProblem,
  demand: Demand,
  layouts: readonly DraftLayout[],
  rules: Rules,
  random: RandomStream,
  meter: Meter,
): Generator<void, readonly DraftLayout[] | undefined, void> {
  const stock = [...demand.stock];
  for (const layout of layouts) {
    stock[layout.sheet.index] = (stock[layout.sheet.index] ?? 0) - layout.run;
  }
  const result: DraftLayout[] = [];
  for (const layout of layouts) {
    const cheaper = problem.sheets
      .filter((sheet) => sheet.cost < layout.sheet.cost && (stock[sheet.index] ?? 0) > 0)
      .filter((sheet) => layout.run === 1 && mayTake(problem, sheet, layout.counts))
      .sort((a, b) => a.cost - b.cost || a.index - b.index);
    let moved: DraftLayout | undefined;
    for (const sheet of cheaper) {
      const wanted = problem.kinds.map((kind) => layout.counts.get(kind.index) ?? 0);
      const one = problem.sheets.map((entry) => (entry.index === sheet.index ? 1 : 0));
      for (const own of [rules, rulesOf(Number.MAX_SAFE_INTEGER, random)]) {
        const forest = yield* bestFit(
          problem,
          { wanted, stock: one },
          { ...own, oneByOne: false },
          random,
          meter,
        );
        if (forest === undefined) return undefined;
        const only = layoutsOf(problem, forest)[0];
        if (only && wanted.every((copies, kind) => (only.counts.get(kind) ?? 0) === copies)) moved = only;
        if (moved) break;
      }
      if (moved) {
        stock[sheet.index] = (stock[sheet.index] ?? 0) - 1;
        stock[layout.sheet.index] = (stock[layout.sheet.index] ?? 0) + 1;
        break;
      }
    }
    result.push(moved ?? layout);
  }
  return result;
}

/** Whether all pieces may lie on a sheet, and have area enough there. Most sheets are left out so, without a try. */
function mayTake(
  { kerf, kinds }: CompiledProblem,
  sheet: CompiledSheet,
  counts: ReadonlyMap<number, number>,
): boolean {
  let left = (sheet.width + kerf) * (sheet.height + kerf);
  for (const [kind, count] of counts) {
    const lays = kinds[kind]?.lays[sheet.index] ?? [];
    // Infinity where the kind may not lie there.
    left -= count * Math.min(...lays.map(({ width, height }) => (width + kerf) * (height + kerf)));
  }
  return left >= 0;
}
