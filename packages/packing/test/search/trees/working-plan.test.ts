import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Problem } from "../../../src/index.js";
import { type CompiledProblem, compileProblem } from "../../../src/search/compiled-problem.js";
import { demandOf } from "../../../src/search/demand.js";
import { branchOf } from "../../../src/search/trees/branch.js";
import { cutNodeOf } from "../../../src/search/trees/cut-node-of.js";
import { FoundPlaces } from "../../../src/search/trees/found-places.js";
import { type LayTable, layTable } from "../../../src/search/trees/lay-table.js";
import { WorkingPlan } from "../../../src/search/trees/working-plan.js";
import { anyProblem } from "../../problems.js";
import { piecesOf, readNodes } from "./naive-tree.js";
import { makeSteps, type StepChoices } from "./plan-steps.js";
import { takes } from "./tree-cases.js";

const choices = (most: number): fc.Arbitrary<readonly number[]> =>
  fc.array(fc.nat({ max: 0x7fffffff }), { maxLength: most });

/** A first step that fills sheets, then some that ruin and recreate. */
const steps: fc.Arbitrary<readonly StepChoices[]> = fc
  .tuple(
    fc.array(fc.nat({ max: 0x7fffffff }), { minLength: 6, maxLength: 25 }),
    fc.array(fc.record({ removals: choices(4), insertions: choices(6), isUndone: fc.boolean() }), {
      minLength: 1,
      maxLength: 8,
    }),
  )
  .map(([insertions, rest]) => [{ removals: [], insertions, isUndone: false }, ...rest]);

/** Sometimes a budget, in cheapest sheets. */
const budgets = fc.constantFrom(undefined, undefined, 1, 2, 4);

interface Ground {
  readonly compiled: CompiledProblem;
  readonly table: LayTable;
  readonly plan: WorkingPlan;
}

function groundOf(problem: Problem, sheets: number | undefined): Ground {
  const compiled = compileProblem(problem);
  const demand = demandOf(compiled);
  const table = layTable(compiled, demand.wanted);
  const plan = new WorkingPlan(compiled, table, demand);
  if (sheets !== undefined) plan.budget = sheets * Math.min(...compiled.sheets.map(({ cost }) => cost));
  return { compiled, table, plan };
}

/** All that a plan says of itself; trees that came later are uncut and count for nothing. */
function stateOf({ plan }: Ground) {
  const trees = plan.trees.map((tree) => ({
    sheet: tree.sheet.id,
    nodes: readNodes(tree),
    places: tree.places,
  }));
  while (trees.length > 0 && trees.at(-1)?.nodes === undefined) trees.pop();
  return {
    trees,
    versions: [...plan.version.subarray(0, trees.length)],
    copies: [...plan.open.copies],
    kinds: [...plan.open.kinds],
    weight: plan.open.weight,
    urgent: plan.open.urgent,
    cost: plan.cost,
    distance: plan.distance(0.01),
    groupTree: [...plan.groupTree],
    touched: [...plan.touched, ...plan.isTouched.filter((mark) => mark !== 0)],
  };
}

/** What open copies weigh by definition; those below the least number are counted by area and apart. */
function openWeights({ compiled, plan }: Ground): { readonly weight: number; readonly urgent: number } {
  const isFill = compiled.source.aim === "fill";
  const { wanted } = demandOf(compiled);
  let weight = 0;
  let urgent = 0;
  for (const { index, lays, value, least, fits } of compiled.kinds) {
    const open = plan.open.copies[index] as number;
    if (!fits || open === 0) continue;
    const area = Math.min(...lays.flat().map(({ width, height }) => width * height));
    const placed = (wanted[index] ?? 0) - open;
    const lacking = isFill ? Math.min(open, Math.max(0, least - placed)) : 0;
    weight += (isFill ? value : area) * (open - lacking);
    urgent += area * lacking;
  }
  return { weight, urgent };
}

describe("a plan that steps change", () => {
  test("is after an undone step just what it was before", () => {
    let undone = 0;
    fc.assert(
      fc.property(anyProblem, steps, budgets, (problem, list, budget) => {
        const ground = groundOf(problem, budget);
        let before: ReturnType<typeof stateOf> | undefined;
        let uncut: readonly number[] = [];
        makeSteps(ground.compiled, ground.plan, list, {
          before: () => {
            before = stateOf(ground);
            uncut = [...ground.plan.uncut];
          },
          after: (isUndone) => {
            if (!isUndone) return;
            expect(stateOf(ground)).toEqual(before);
            expect(ground.plan.uncut).toEqual(uncut);
            undone++;
          },
        });
      }),
    );
    expect(undone).toBeGreaterThan(100);
  });

  test("knows what is open, what it weighs, what the sheets cost and which may come next", () => {
    fc.assert(
      fc.property(anyProblem, steps, budgets, (problem, list, budget) => {
        const ground = groundOf(problem, budget);
        const { compiled, plan, table } = ground;
        const { wanted, stock } = demandOf(compiled);
        makeSteps(compiled, plan, list, {
          after: () => {
            const pieces = plan.trees.map((tree) =>
              piecesOf(readNodes(tree)).map(({ lay }) => table.kind[lay]),
            );
            for (const { index, fits, group } of compiled.kinds) {
              const placed = pieces.flat().filter((kind) => kind === index).length;
              expect(plan.open.copies[index]).toBe(fits ? (wanted[index] ?? 0) - placed : 0);
              expect(plan.open.kinds.includes(index)).toBe((plan.open.copies[index] as number) > 0);
              if (group < 0) continue;
              const isOfGroup = (kind: number | undefined): boolean =>
                compiled.kinds[kind ?? -1]?.group === group;
              const on = pieces.flatMap((list, at) => (list.some(isOfGroup) ? [at] : []));
              expect(on.length > 0 ? on : [-1]).toEqual([plan.groupTree[group]]);
            }
            expect(new Set(plan.open.kinds).size).toBe(plan.open.kinds.length);
            const { weight, urgent } = plan.open;
            expect({ weight, urgent }).toEqual(openWeights(ground));
            const used = plan.trees.filter((tree) => tree.count > 0).map((tree) => tree.sheet);
            expect(plan.cost).toBe(used.reduce((sum, sheet) => sum + sheet.cost, 0));
            expect(plan.cost).toBeLessThanOrEqual(plan.budget);
            for (const sheet of compiled.sheets) {
              const left = (stock[sheet.index] ?? 0) - used.filter(({ id }) => id === sheet.id).length;
              expect(left).toBeGreaterThanOrEqual(0);
              const next = plan.trees[plan.uncut[sheet.index] as number];
              expect(next && { id: next.sheet.id, count: next.count }).toEqual(
                left > 0 ? { id: sheet.id, count: 0 } : undefined,
              );
            }
          },
        });
      }),
    );
  });

  test("comes nearer to its goal by any piece that must be there than by all others", () => {
    let weighed = 0;
    fc.assert(
      fc.property(anyProblem, (problem) => {
        const { compiled, plan } = groundOf({ ...problem, aim: "fill" }, undefined);
        const before = plan.distance(0);
        const urgent = plan.open.kinds.filter((kind) => (compiled.kinds[kind]?.least ?? 0) > 0);
        if (urgent.length === 0) return;
        weighed++;
        const gains = urgent.map((kind) => {
          plan.open.save();
          plan.open.take(kind);
          const gain = before - plan.distance(0);
          plan.open.restore();
          return gain;
        });
        for (const { index, least } of compiled.kinds) {
          while (least === 0 && (plan.open.copies[index] as number) > 0) plan.open.take(index);
        }
        for (const gain of gains) expect(gain).toBeGreaterThan(before - plan.distance(0));
      }),
    );
    expect(weighed).toBeGreaterThan(5);
  });

  test("is as far from its goal as the same sheets taken over anew", () => {
    fc.assert(
      fc.property(anyProblem, steps, budgets, (problem, list, budget) => {
        const ground = groundOf(problem, budget);
        const { compiled, plan } = ground;
        makeSteps(compiled, plan, list, {});
        const fresh = groundOf(problem, budget);
        fresh.plan.load(
          plan.trees
            .filter((tree) => tree.count > 0)
            .map((tree) => {
              const lays = piecesOf(readNodes(tree)).map(({ lay }) => lay);
              // Plain data lists the pieces in the order of the nodes.
              return { sheet: tree.sheet, branch: branchOf(cutNodeOf(tree), () => lays.shift() as number) };
            }),
        );
        expect(fresh.plan.cost).toBe(plan.cost);
        expect(openWeights(fresh)).toEqual(openWeights(ground));
        expect([...fresh.plan.open.copies]).toEqual([...plan.open.copies]);
        expect(fresh.plan.distance(0.01)).toBeCloseTo(plan.distance(0.01), 9);
      }),
    );
  });
});

describe("places that are remembered", () => {
  test("are those that looking at every place finds, whatever has been done and undone between", () => {
    let found = 0;
    let looked = 0;
    fc.assert(
      fc.property(anyProblem, steps, budgets, (problem, list, budget) => {
        const ground = groundOf(problem, budget);
        const { compiled, plan, table } = ground;
        // With very many kinds nothing is remembered from step to step; tables of one sheet can say that they have so many.
        const isForgetful = compiled.sheets.length === 1 && list.length % 2 === 0;
        const remembered = new FoundPlaces(isForgetful ? { ...table, kinds: 1 << 20 } : table);
        const check = (): void => {
          remembered.prepare(plan.trees.length, compiled.kinds.length);
          // One comparison for all: there are thousands.
          const seen: unknown[] = [];
          const expected: unknown[] = [];
          plan.trees.forEach((tree, at) => {
            for (const { index: kind } of compiled.kinds) {
              const row = remembered.rowOf(kind, kind);
              const version = plan.version[at] as number;
              const entry = remembered.find(row, kind, at, tree, version, plan.isTouched[at] === 1);
              const fits = fitsOf(table, kind, tree);
              const best = Math.min(...fits);
              seen.push([at, kind, remembered.placesIn(entry), remembered.fitIn(entry)]);
              expected.push([at, kind, fits.length, best]);
              found++;
              if (fits.length === 0) continue;
              const { place, lay } = chosenBy(table, kind, tree);
              seen.push([takes(tree, place, lay), restOf(table, tree, place, lay), table.kind[lay]]);
              expected.push([true, best, kind]);
            }
          });
          expect(seen).toEqual(expected);
          looked = remembered.work;
        };
        makeSteps(compiled, plan, list, { during: check, after: check });
      }),
    );
    expect(found).toBeGreaterThan(1000);
    expect(looked).toBeGreaterThan(0);
  });
});

function chosenBy(table: LayTable, kind: number, tree: WorkingPlan["trees"][number]): FoundPlaces {
  const chosen = new FoundPlaces(table);
  chosen.choose(kind, tree);
  return chosen;
}

/** The least rest at each place that a kind has on a tree. */
function fitsOf(table: LayTable, kind: number, tree: WorkingPlan["trees"][number]): readonly number[] {
  const row = tree.sheet.index * table.kinds + kind;
  const fits: number[] = [];
  for (let lay = table.first[row] as number; lay < (table.first[row + 1] as number); lay++) {
    for (let place = 0; place < tree.places; place++) {
      if (takes(tree, place, lay)) fits.push(restOf(table, tree, place, lay));
    }
  }
  return fits;
}

function restOf(table: LayTable, { room }: WorkingPlan["trees"][number], place: number, lay: number): number {
  const right = (room[2 * place] as number) - (table.width[lay] as number);
  const below = (room[2 * place + 1] as number) - (table.height[lay] as number);
  return Math.min(right, below);
}
