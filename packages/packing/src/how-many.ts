import { arrange } from "./arrange.js";
import type { CutNode, Layout, Mode, Problem, Sheet, Size, Turns } from "./model.js";
import { pack } from "./pack.js";
import { checkProblem } from "./problem/check-problem.js";
import { ProblemError } from "./problem/problem-error.js";
import { bestSingleLayout } from "./search/best-single-layout.js";
import { compileProblem, MOST_ON_SHEET } from "./search/compiled-problem.js";

/** The yield of one piece on one sheet. */
export interface Yield {
  /** Pieces that one sheet gives. */
  readonly count: number;
  /** True where no layout of this mode gives more. */
  readonly exact: boolean;
  /** One sheet cut so. Its pieces have the kind `piece`. */
  readonly layout: Layout;
}

/** How the sheet may be cut. */
export interface YieldOptions {
  /** Default `guillotine`. */
  readonly mode?: Mode | undefined;
  readonly kerf?: number | undefined;
  readonly stages?: number | null | undefined;
  readonly smallestOffcut?: Size | undefined;
}

/** A sheet by its size and, where they matter, its trims and longest cut. */
export type YieldSheet = Size & Pick<Sheet, "trim" | "longestCut">;

/**
 * How many pieces of one size one sheet gives. Exact by dynamic programming in guillotine mode and by shelves in shelf
 * mode, unless stages or the length of cuts are limited; then the best that {@link pack} finds.
 *
 * Throws {@link ProblemError} for sizes that are no lengths, and where by area more than 10,000 pieces would fit.
 *
 * @example
 * const sheet = { width: 12, height: 12 };
 * howMany(sheet, { width: 5, height: 7 }).count // => 3
 * howMany(sheet, { width: 5, height: 7, turns: "upright" }).count // => 2
 * howMany(sheet, { width: 5, height: 7 }).exact // => true
 * howMany(sheet, { width: 5, height: 7.5 }) // throws ProblemError: kinds[0].forms[0].height must be a whole number
 */
export function howMany(
  sheet: YieldSheet,
  piece: Size & { readonly turns?: Turns | undefined },
  options: YieldOptions = {},
): Yield {
  const { mode = "guillotine", ...rest } = options;
  const problem: Problem = {
    kinds: [{ id: "piece", quantity: null, forms: [piece], value: 1 }],
    sheets: [{ ...sheet, id: "sheet", stock: 1 }],
    mode,
    aim: "fill",
    ...rest,
  };
  const findings = checkProblem(problem);
  if (findings.length > 0) throw new ProblemError(findings);
  const most = Math.floor((sheet.width * sheet.height) / (piece.width * piece.height));
  if (most > MOST_ON_SHEET) {
    const expected = `at most ${MOST_ON_SHEET}`;
    const message = `By area ${most} pieces would fit; a layout holds ${expected}. Take a smaller sheet or a larger piece.`;
    throw new ProblemError([{ code: "too-many", path: "piece", message, found: most, expected }]);
  }
  const compiled = compileProblem(problem);
  const [compiledSheet] = compiled.sheets;
  const [kind] = compiled.kinds;
  if (compiledSheet === undefined || kind === undefined)
    throw new RangeError("A sheet and a piece are needed.");
  const single = bestSingleLayout(compiled, compiledSheet, kind);
  if (single) {
    const size = { width: compiledSheet.width, height: compiledSheet.height };
    const smallest = options.smallestOffcut;
    const how = { kerf: compiled.kerf, ...(smallest ? { smallestOffcut: smallest } : {}) };
    return { count: single.count, exact: true, layout: oneSheet(arrange(single.tree, size, how)) };
  }
  const packing = pack(problem);
  const count = packing.placed[0]?.count ?? 0;
  return { count, exact: packing.proven, layout: packing.layouts[0] ?? oneSheet({ type: "waste" }) };
}

function oneSheet(tree: CutNode): Layout {
  return { sheet: "sheet", run: 1, tree };
}
