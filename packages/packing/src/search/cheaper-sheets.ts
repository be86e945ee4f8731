import { bestFit, type Demand } from "./best-fit.js";
import type { CompiledProblem } from "./compiled-problem.js";
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
      .sort((a, b) => a.cost - b.cost || a.index - b.index);
    let moved: DraftLayout | undefined;
    for (const sheet of layout.run === 1 ? cheaper : []) {
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
