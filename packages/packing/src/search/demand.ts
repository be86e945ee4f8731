import type { Demand } from "./best-fit.js";
import type { Budget } from "./budget.js";
import { type CompiledProblem, MOST_ON_SHEET } from "./compiled-problem.js";
import type { DraftLayout } from "./draft.js";
import { MOST_SINGLE_COPIES } from "./one-start.js";
import { SHELF_RULES } from "./shelves.js";

/**
 * What there is to place: never more copies of a kind than all sheets together could hold by area, and with the aim
 * `fill` of what is worth nothing no more than must be there.
 */
export function demandOf(problem: CompiledProblem): Demand {
  const stock = problem.sheets.map((sheet) => sheet.stock);
  const wanted = problem.kinds.map((kind) => {
    if (Number.isFinite(kind.quantity) && problem.source.aim === "all") return kind.quantity;
    if (kind.value === 0) return Math.min(kind.quantity, kind.least);
    let most = 0;
    for (const sheet of problem.sheets) {
      const smallest = Math.min(...(kind.lays[sheet.index] ?? []).map((lay) => lay.width * lay.height));
      if (Number.isFinite(smallest))
        most += sheet.stock * Math.floor((sheet.width * sheet.height) / smallest);
    }
    return Math.min(kind.quantity, most);
  });
  return { wanted, stock };
}

/** What is left to place when some layouts stay as they are. */
export function restOf(problem: CompiledProblem, demand: Demand, kept: readonly DraftLayout[]): Demand {
  const wanted = [...demand.wanted];
  const stock = [...demand.stock];
  for (const layout of kept) {
    stock[layout.sheet.index] = (stock[layout.sheet.index] ?? 0) - layout.run;
    for (const [kind, count] of layout.counts) wanted[kind] = (wanted[kind] ?? 0) - count * layout.run;
  }
  return { wanted: wanted.map((copies, kind) => (problem.kinds[kind]?.fits ? copies : 0)), stock };
}

/** Pieces on a sheet above which even one plan takes long. */
const MANY_ON_SHEET = 4_000;

/**
 * Numbers of the first plans that an effort affords, see {@link oneStart}: a function of the problem alone, so that they
 * are the same for any way of running them.
 */
export function firstStarts(problem: CompiledProblem, demand: Demand, budget: Budget): readonly number[] {
  const copies = demand.wanted.reduce((sum, count) => sum + count, 0);
  const kinds = problem.kinds.length;
  const ways = problem.kinds.some((kind) => kind.lays.some((lays) => lays.length > 1)) ? 2 : 1;
  // One by one, every copy looks at about half as many free rectangles as there are copies; repeated layouts look at the
  // few on one sheet.
  const most = mostOnSheet(problem, demand);
  const workPerStart =
    copies > MOST_SINGLE_COPIES + 4 * kinds
      ? 40_000 + 400 * kinds + (most > MANY_ON_SHEET ? most * most : 0)
      : ways * copies * (copies / 2 + 20) + 1;
  const afforded = Math.floor(budget.work / workPerStart);
  const shelves = SHELF_RULES.map((_, rule) => rule);
  if (afforded === 0) return [...shelves.filter((rule) => rule % 2 === 0), SHELF_RULES.length];
  const starts = Math.max(SHELF_RULES.length + 4, Math.min(budget.most, afforded));
  return Array.from({ length: starts }, (_, start) => start);
}

/** Pieces on one sheet at most, by area: the smallest first. */
function mostOnSheet(problem: CompiledProblem, demand: Demand): number {
  let most = 0;
  for (const sheet of problem.sheets) {
    const smallest = problem.kinds
      .map((kind) => ({
        area: Math.min(...(kind.lays[sheet.index] ?? []).map((lay) => lay.width * lay.height)),
        copies: demand.wanted[kind.index] ?? 0,
      }))
      .filter(({ area }) => Number.isFinite(area))
      .sort((a, b) => a.area - b.area);
    let room = sheet.width * sheet.height;
    let count = 0;
    for (const { area, copies } of smallest) {
      const taken = Math.min(copies, Math.floor(room / area));
      count += taken;
      room -= taken * area;
    }
    most = Math.max(most, count);
  }
  return Math.min(most, MOST_ON_SHEET);
}
