/** Sheets that are cut by every mix of rules, and trees that grow on them by random insertions and removals. */
import fc from "fast-check";
import type { CutNode, Form, Kind, Packing, Problem, Sheet, Turns } from "../../../src/index.js";
import {
  type CompiledProblem,
  type CompiledSheet,
  compileProblem,
} from "../../../src/search/compiled-problem.js";
import { demandOf } from "../../../src/search/demand.js";
import { type CutRules, CutTree, cutRules } from "../../../src/search/trees/cut-tree.js";
import { layTable } from "../../../src/search/trees/lay-table.js";
import { boundOf, identityWeights } from "../../identity-bound.js";
import { describePlan } from "../../valid-plan.js";

/** A problem with one sheet in plenty, and what decides each step on it. */
export interface TreeCase {
  readonly problem: Problem;
  readonly choices: readonly number[];
}

/** Copies of each kind: more than a sheet ever holds here. */
const PLENTY = 400;

const kerf = fc.constantFrom(0, 0, 1, 2, 3);
const rules = fc.oneof(
  fc.constant({ mode: "guillotine" as const }),
  fc.integer({ min: 1, max: 5 }).map((stages) => ({ mode: "guillotine" as const, stages })),
  fc
    .constantFrom(undefined, 1, 2, 3)
    .map((stages) => ({ mode: "shelf" as const, ...(stages ? { stages } : {}) })),
);

const sheets: fc.Arbitrary<Sheet> = fc
  .record({
    width: fc.integer({ min: 14, max: 80 }),
    height: fc.integer({ min: 14, max: 80 }),
    trim: fc.option(fc.record({ left: fc.nat(3), bottom: fc.nat(3) }), { freq: 3, nil: undefined }),
    short: fc.option(fc.nat(20), { freq: 2, nil: undefined }),
  })
  .map(({ width, height, trim, short }): Sheet => {
    const size = { id: "sheet", width, height };
    if (short === undefined) return trim ? { ...size, trim } : size;
    // Cuts along the shorter side can always be made; those along the longer one rarely, and then no trim either.
    return { ...size, longestCut: Math.max(Math.min(width, height), Math.max(width, height) - 1 - short) };
  });

function kindsFor(sheet: Sheet): fc.Arbitrary<readonly Kind[]> {
  const { left = 0, bottom = 0 } = sheet.trim ?? {};
  const extent = fc.oneof(
    { weight: 5, arbitrary: fc.integer({ min: 2, max: 30 }) },
    // Equal extents, extents one apart and pieces as wide or high as the sheet are where faults live.
    { weight: 3, arbitrary: fc.constantFrom(5, 6, 10, 11, sheet.width - left, sheet.height - bottom) },
  );
  const form: fc.Arbitrary<Form> = fc.record({
    width: extent,
    height: extent,
    turns: fc.constantFrom<Turns>("upright", "turned", "both"),
  });
  return fc
    .array(fc.array(form, { minLength: 1, maxLength: 2 }), { minLength: 1, maxLength: 6 })
    .map((list) => list.map((forms, i): Kind => ({ id: `k${i}`, quantity: PLENTY, forms })));
}

export const treeCases: fc.Arbitrary<TreeCase> = fc.tuple(sheets, rules, kerf).chain(([sheet, rule, width]) =>
  fc.record({
    problem: kindsFor(sheet).map(
      // All that is left over is waste, so that a tree need not be arranged before it is verified.
      (kinds): Problem => ({
        ...rule,
        aim: "all",
        kinds,
        sheets: [sheet],
        kerf: width,
        smallestOffcut: { width: 1000, height: 1000 },
      }),
    ),
    choices: fc.array(fc.nat({ max: 0x7fffffff }), { minLength: 4, maxLength: 40 }),
  }),
);

/** What the trees of a problem share. */
export interface Ground {
  readonly compiled: CompiledProblem;
  readonly sheet: CompiledSheet;
  readonly rules: CutRules;
}

export function groundOf(problem: Problem): Ground {
  const compiled = compileProblem(problem);
  const [sheet] = compiled.sheets;
  if (sheet === undefined) throw new RangeError("There is no sheet.");
  return { compiled, sheet, rules: cutRules(compiled, layTable(compiled, demandOf(compiled).wanted)) };
}

/** A place of a tree and a lay that it takes. */
interface Fitting {
  readonly place: number;
  readonly lay: number;
}

/** All lays that a tree offers a place, with their places. */
function fittingsOf(tree: CutTree): readonly Fitting[] {
  const found: Fitting[] = [];
  const { table } = tree.rules;
  for (let lay = 0; lay < table.lays.length; lay++) {
    for (let place = 0; place < tree.places; place++) if (takes(tree, place, lay)) found.push({ place, lay });
  }
  return found;
}

/** Whether a place is large enough for a lay, and needs no trim that the rules forbid. */
export function takes(tree: CutTree, place: number, lay: number): boolean {
  const { table } = tree.rules;
  const right = (tree.room[2 * place] as number) - (table.width[lay] as number);
  const below = (tree.room[2 * place + 1] as number) - (table.height[lay] as number);
  return right >= 0 && below >= 0 && tree.takesExactly(place, right, below);
}

/** One change of a tree: an insertion, or a removal with the kinds that it took out. */
export type Change = Fitting | { readonly node: number; readonly taken: readonly number[] };

/**
 * Grows a tree by the choices of a case; about one step in four removes a node.
 * @param before is told each change before it is made, `after` once the tree is up to date.
 */
export function growTree(
  { compiled, sheet, rules }: Ground,
  choices: readonly number[],
  after: (tree: CutTree, change: Change) => void,
  before: (tree: CutTree, change: Change) => void = () => {},
): CutTree {
  const tree = new CutTree(rules, sheet);
  if (compiled.kinds.length === 0) return tree;
  for (const choice of choices) {
    const fittings = fittingsOf(tree);
    const which = choice >> 2;
    if (tree.count > 0 && (choice % 4 === 0 || fittings.length === 0)) {
      const node = which % tree.count;
      const taken: number[] = [];
      before(tree, { node, taken });
      tree.remove(node, (kind) => taken.push(kind));
      tree.refresh();
      after(tree, { node, taken });
      continue;
    }
    if (fittings.length === 0) continue;
    const change = fittings[which % fittings.length] as Fitting;
    before(tree, change);
    tree.insert(tree.placeNode[change.place] as number, tree.placeHow[change.place] as number, change.lay);
    tree.refresh();
    after(tree, change);
  }
  return tree;
}

/** Makes packings of one sheet each, to be verified. */
export function oneSheetPlans(problem: Problem): (tree: CutNode) => Packing {
  const bound = boundOf(
    problem,
    identityWeights(problem, () => 1),
  );
  return (tree) => {
    const counts = new Map<string, number>();
    const count = (node: CutNode): void => {
      if (node.type === "piece") {
        for (const { kind } of node.shares) counts.set(kind, (counts.get(kind) ?? 0) + 1);
      } else if (node.type === "split") for (const part of node.parts) count(part.node);
    };
    count(tree);
    return describePlan(problem, [{ sheet: "sheet", run: 1, tree }], bound, counts);
  };
}
