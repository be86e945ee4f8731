import { describe, expect, test } from "vitest";
import { layOut } from "../../src/layout/lay-out.js";
import { listOffcuts } from "../../src/layout/list-leftovers.js";
import { listPieces } from "../../src/layout/list-pieces.js";
import { kind, piece, plan, split } from "../plans/build.js";

const sheet = { id: "s", width: 100, height: 10 };

function list(run: number, leaves: readonly ReturnType<typeof piece>[]) {
  const kinds = [
    kind("a", 10, 10, "Mat"),
    kind("b", 10, 10),
    {
      ...kind("c", 10, 10, "Flat"),
      forms: [
        { width: 10, height: 10 },
        { width: 5, height: 20 },
      ],
    },
  ];
  const tree = split(
    "x",
    100,
    leaves.map((leaf) => [10, leaf] as const),
  );
  const { problem, packing } = plan(kinds, [sheet], [{ sheet: "s", run, tree }]);
  return listPieces(problem, layOut(sheet, packing.layouts[0] as (typeof packing.layouts)[number], 0), run);
}

describe("listPieces", () => {
  test("groups places by label: kinds in the problem's order, shared places after them", () => {
    const { entries, entryOf } = list(3, [
      piece({ kind: "b", count: 2 }, { kind: "a", count: 1 }),
      piece({ kind: "b", count: 3 }),
      piece({ kind: "a", count: 3, turned: true }),
      piece({ kind: "a", count: 3 }),
      piece({ kind: "a", count: 1 }, { kind: "b", count: 2 }),
    ]);
    expect(entries.map(({ number, label, places, pieces }) => [number, label, places, pieces])).toEqual([
      [1, "Mat", 2, 6],
      [2, "b", 1, 3],
      [3, "Mat x 1, b x 2", 2, 6],
    ]);
    expect(entryOf.map(({ number }) => number)).toEqual([3, 2, 1, 1, 3]);
  });

  test("lists two forms of one kind apart, each with its size", () => {
    const { entries } = list(1, [piece({ kind: "c", form: 1 }), piece({ kind: "c", form: 0 })]);
    expect(entries.map(({ size }) => size)).toEqual([
      { width: 10, height: 10 },
      { width: 5, height: 20 },
    ]);
  });

  test("counts what no share claims as an offcut", () => {
    const { entries } = list(4, [piece({ kind: "a", count: 3 })]);
    expect(entries).toMatchObject([
      { label: "Mat x 3, offcut x 1", words: ["Mat x 3,", "offcut x 1"], pieces: 3 },
    ]);
  });

  test("refuses a kind or form that the problem does not have", () => {
    expect(() => list(1, [piece({ kind: "z" })])).toThrow('no kind with the id "z"');
    expect(() => list(1, [piece({ kind: "a", form: 2 })])).toThrow('"a" has no form 2');
  });
});

describe("listOffcuts", () => {
  test("groups offcuts by size, largest first, numbered after the pieces", () => {
    const at = { x: 0, y: 0 };
    const offcuts = [
      { ...at, width: 2, height: 3 },
      { ...at, width: 3, height: 2 },
      { ...at, width: 9, height: 9 },
      { ...at, width: 2, height: 3 },
    ];
    const { entries, entryOf } = listOffcuts(offcuts, 4);
    expect(entries).toEqual([
      { number: 5, size: { width: 9, height: 9 }, places: 1 },
      { number: 6, size: { width: 3, height: 2 }, places: 1 },
      { number: 7, size: { width: 2, height: 3 }, places: 2 },
    ]);
    expect(entryOf.map(({ number }) => number)).toEqual([7, 6, 5, 7]);
  });
});
