import { describe, expect, test } from "vitest";
import type { Problem } from "../../../src/index.js";
import { compileProblem } from "../../../src/search/compiled-problem.js";
import type { Branch } from "../../../src/search/trees/branch.js";
import { carryOver, looseTrees } from "../../../src/search/trees/carry-over.js";
import { CutTree, cutRules } from "../../../src/search/trees/cut-tree.js";
import { type LayTable, layTable } from "../../../src/search/trees/lay-table.js";

const upright = (id: string, width: number, height: number) => {
  return { id, quantity: 4, forms: [{ width, height, turns: "upright" as const }] };
};
/** Pieces of 30 x 20 and 10 x 10 on three sizes of sheets. */
const rooms: Problem = {
  kinds: [upright("large", 30, 20), upright("small", 10, 10)],
  sheets: [
    { id: "narrow", width: 30, height: 40 },
    { id: "square", width: 60, height: 60 },
    { id: "wide", width: 80, height: 40 },
  ],
  mode: "guillotine",
  aim: "all",
};

interface Ground {
  readonly problem: ReturnType<typeof compileProblem>;
  readonly table: LayTable;
  /** A tree on a sheet: a row of pieces, or one. */
  readonly row: (sheet: number, ...kinds: readonly number[]) => CutTree;
}

function groundOf(source: Problem): Ground {
  const problem = compileProblem(source);
  const table = layTable(problem, [4, 4]);
  const rules = cutRules(problem, table);
  const row: Ground["row"] = (index, ...kinds) => {
    const sheet = problem.sheets[index];
    if (sheet === undefined) throw new RangeError(`There is no sheet ${index}.`);
    const tree = new CutTree(rules, sheet);
    const pieces = kinds.map((kind): Branch => ({ axis: undefined, lay: layOf(table, index, kind) }));
    tree.write(pieces.length > 1 ? { axis: "x", children: pieces } : pieces[0]);
    tree.refresh();
    return tree;
  };
  return { problem, table, row };
}

function layOf(table: LayTable, sheet: number, kind: number): number {
  return table.first[sheet * table.kinds + kind] ?? -1;
}

/** What has come to lie on each sheet: its id and the kinds of its pieces. */
function laidOut(ground: Ground, counts: readonly number[], trees: readonly CutTree[]): readonly string[] {
  const { problem, table } = ground;
  return carryOver(problem, table, counts, looseTrees(trees)).map(({ sheet, branch }) => {
    const kinds: string[] = [];
    const read = (node: Branch): void => {
      if (node.axis !== undefined) {
        node.children.forEach(read);
        return;
      }
      const kind = table.kind[node.lay] ?? -1;
      expect(node.lay).toBe(layOf(table, sheet.index, kind));
      kinds.push(problem.kinds[kind]?.id ?? "");
    };
    if (branch) read(branch);
    return [sheet.id, ...kinds].join(" ");
  });
}

describe("trees that are carried over to other sheets", () => {
  const ground = groundOf(rooms);
  const { row } = ground;

  test("stay on a sheet of their kind where there is one, those with the most on them first", () => {
    const trees = [row(1, 1), row(1, 0, 1), row(0, 0), row(2)];
    expect(laidOut(ground, [1, 1, 1], trees)).toEqual(["narrow large", "square large small", "wide small"]);
  });

  test("move to the smallest sheet that is large enough", () => {
    expect(laidOut(ground, [1, 0, 1], [row(1, 0)])).toEqual(["narrow large", "wide"]);
    expect(laidOut(ground, [1, 0, 1], [row(1, 0, 1)])).toEqual(["narrow", "wide large small"]);
  });

  test("are left out where no sheet is large enough, or none is left", () => {
    expect(laidOut(ground, [2, 0, 0], [row(1, 0, 0)])).toEqual(["narrow", "narrow"]);
    expect(laidOut(ground, [0, 1, 0], [row(1, 0), row(2, 0, 0)])).toEqual(["square large"]);
  });

  test("stay where they are if levels or lengths of cuts have a limit", () => {
    const shelves = groundOf({ ...rooms, mode: "shelf" });
    expect(laidOut(shelves, [1, 0, 0], [shelves.row(1, 0)])).toEqual(["narrow"]);
    expect(laidOut(shelves, [0, 1, 0], [shelves.row(1, 0)])).toEqual(["square large"]);
    const sheets = rooms.sheets.map((sheet) => ({ ...sheet, longestCut: 60 }));
    const short = groundOf({ ...rooms, sheets });
    expect(laidOut(short, [0, 0, 1], [short.row(1, 0)])).toEqual(["wide"]);
    expect(laidOut(short, [0, 1, 0], [short.row(2, 0)])).toEqual(["square"]);
  });

  test("leave out what may not lie so on the other sheet", () => {
    const turns = "upright" as const;
    const kinds = [
      {
        ...upright("large", 30, 20),
        forms: [{ width: 30, height: 20, sheets: [{ sheet: "square", turns }] }],
      },
      upright("small", 10, 10),
    ];
    const bound = groundOf({ ...rooms, kinds });
    expect(laidOut(bound, [0, 0, 1], [bound.row(1, 0, 1)])).toEqual(["wide"]);
    expect(laidOut(bound, [0, 0, 1], [bound.row(1, 1, 1)])).toEqual(["wide small small"]);
  });
});
