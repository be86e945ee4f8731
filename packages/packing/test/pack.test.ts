import { describe, expect, test } from "vitest";
import { type Packing, type Problem, ProblemError, pack, verify } from "../src/index.js";

const INCH = 40640;
const quick = (problem: Problem, seed = 1): Packing => pack(problem, { effort: "quick", seed });
const inches = (width: number, height: number): { width: number; height: number } => ({
  width: Math.round(width * INCH),
  height: Math.round(height * INCH),
});
const kind = (id: string, quantity: number, width: number, height: number): Problem["kinds"][number] => ({
  id,
  quantity,
  forms: [inches(width, height)],
});
const onSheets = (kinds: Problem["kinds"], width: number, height: number): Problem => ({
  mode: "guillotine",
  aim: "all",
  kinds,
  sheets: [{ id: "sheet", ...inches(width, height) }],
});
const placedOf = (packing: Packing): readonly number[] => packing.placed.map((entry) => entry.count);

describe("pack", () => {
  test("cuts two 5 1/2 x 8 1/2 in from each letter sheet, in one run", () => {
    const packing = quick(onSheets([kind("base", 20, 5.5, 8.5)], 8.5, 11));
    expect(packing).toMatchObject({ outcome: "complete", sheets: 10, proven: true });
    expect(packing.layouts).toMatchObject([{ sheet: "sheet", run: 10 }]);
  });

  test("says 'short' with proof when there are too few sheets, and fills them all the same", () => {
    const problem = onSheets([kind("base", 20, 5.5, 8.5)], 8.5, 11);
    const packing = quick({ ...problem, sheets: [{ ...problem.sheets[0]!, stock: 9 }] });
    expect(packing).toMatchObject({ outcome: "short", proven: true, missing: [{ kind: "base", count: 2 }] });
    expect(packing.bound).toMatchObject({ cost: null, sheets: null });
    expect(placedOf(packing)).toEqual([18]);
  });

  test("says which kind fits nowhere, and plans the rest", () => {
    const packing = quick(onSheets([kind("flap", 1, 12.25, 4), kind("mat", 4, 4, 5)], 12, 12));
    expect(packing).toMatchObject({ outcome: "short", missing: [{ kind: "flap", count: 1 }] });
    expect(placedOf(packing)).toEqual([0, 4]);
  });

  test("puts complete sets first when stock is short", () => {
    // Three bases and three mats; two sheets hold three bases, or two bases with their mats.
    const problem: Problem = {
      mode: "guillotine",
      aim: "all",
      sheets: [{ id: "sheet", width: 100, height: 100, stock: 2 }],
      kinds: [
        { id: "base", quantity: 3, forms: [{ width: 100, height: 60 }], set: { of: "card", each: 1 } },
        { id: "mat", quantity: 6, forms: [{ width: 50, height: 40 }], set: { of: "card", each: 2 } },
      ],
    };
    const packing = quick(problem);
    expect(placedOf(packing)).toEqual([2, 4]);
    expect(packing.outcome).toBe("short");
    expect(verify(problem, packing)).toEqual([]);
  });

  test("keeps pieces that belong together on one sheet", () => {
    const problem: Problem = {
      mode: "guillotine",
      aim: "all",
      sheets: [{ id: "sheet", width: 100, height: 100 }],
      kinds: [
        { id: "left", quantity: 2, forms: [{ width: 30, height: 100 }], together: "seam" },
        { id: "right", quantity: 1, forms: [{ width: 40, height: 100 }], together: "seam" },
        { id: "other", quantity: 3, forms: [{ width: 50, height: 100 }] },
      ],
    };
    const packing = quick(problem);
    expect(verify(problem, packing)).toEqual([]);
    expect(packing).toMatchObject({ outcome: "complete", sheets: 3 });
  });

  test("takes the form that needs fewer sheets", () => {
    // US A2 base: 5 1/2 x 8 1/2 or 4 1/4 x 11 from 4 1/4 x 11 in strips (common practice).
    const forms = [inches(5.5, 8.5), inches(4.25, 11)];
    const problem = onSheets([{ id: "base", quantity: 4, forms }], 4.25, 11);
    const packing = quick(problem);
    expect(packing).toMatchObject({ outcome: "complete", sheets: 4 });
    expect(verify(problem, packing)).toEqual([]);
  });

  test("uses an offcut that costs nothing before a sheet", () => {
    const problem: Problem = {
      ...onSheets([kind("tag", 2, 2, 4)], 8.5, 11),
      sheets: [
        { id: "letter", ...inches(8.5, 11), cost: 25 },
        { id: "offcut", ...inches(4, 4), cost: 0, stock: 1 },
      ],
    };
    expect(quick(problem)).toMatchObject({ cost: "0", layouts: [{ sheet: "offcut" }] });
  });

  test("fills one sheet with what is worth most", () => {
    const problem: Problem = {
      mode: "guillotine",
      aim: "fill",
      sheets: [{ id: "sheet", width: 10, height: 10, stock: 1 }],
      kinds: [
        { id: "cheap", quantity: null, forms: [{ width: 5, height: 5 }], value: 1 },
        { id: "dear", quantity: 2, forms: [{ width: 5, height: 5 }], value: 5 },
        { id: "asked", quantity: 4, least: 1, forms: [{ width: 5, height: 5 }], value: 0 },
      ],
    };
    const packing = quick(problem);
    expect(placedOf(packing)).toEqual([1, 2, 1]);
    expect(verify(problem, packing)).toEqual([]);
  });

  test("plans nothing for nothing", () => {
    const packing = quick(onSheets([], 8.5, 11));
    expect(packing).toMatchObject({ outcome: "complete", sheets: 0, cost: "0", layouts: [], proven: true });
  });

  test("refuses what it cannot understand with every fault named", () => {
    const broken = { kinds: [{ id: "", quantity: -1, forms: [] }], sheets: [], mode: "saw", aim: "all" };
    expect(() => pack(broken as unknown as Problem)).toThrow(ProblemError);
    try {
      pack(broken as unknown as Problem);
    } catch (error) {
      const paths = (error as ProblemError).details.map((finding) => finding.path);
      expect(paths).toEqual(["mode", "kinds[0].id", "kinds[0].quantity", "kinds[0].forms"]);
    }
  });

  test("answers 'not yet' for stopped cuts", () => {
    const problem: Problem = { ...onSheets([kind("a", 1, 1, 1)], 2, 2), mode: "stopped" };
    expect(() => pack(problem)).toThrow(expect.objectContaining({ code: "not-yet" }));
  });

  test("refuses a seed or an effort that is none", () => {
    const problem = onSheets([kind("a", 1, 1, 1)], 2, 2);
    expect(() => pack(problem, { seed: 1.5 })).toThrow(RangeError);
    expect(() => pack(problem, { effort: "slow" as "quick" })).toThrow(RangeError);
  });
});

describe("pack on the cut lists that makers publish (common practice, no source)", () => {
  const planned: readonly [string, Problem, number][] = [
    [
      "one 4 x 11 and two 5 1/2 x 8 bases from 12 x 12",
      onSheets([kind("base", 2, 5.5, 8), kind("long base", 1, 4, 11)], 12, 12),
      1,
    ],
    [
      "seven strips of 8 1/2 in across a letter sheet, nothing left",
      onSheets(
        [
          kind("1 1/4", 3, 8.5, 1.25),
          kind("1 1/2", 2, 8.5, 1.5),
          kind("2", 1, 8.5, 2),
          kind("2 1/4", 1, 8.5, 2.25),
        ],
        8.5,
        11,
      ),
      1,
    ],
    [
      "3 1/4 + 2 1/2 + 2 1/2 of a 2 1/4 in strip",
      onSheets([kind("a", 1, 3.25, 2.25), kind("b", 2, 2.5, 2.25)], 8.5, 2.25),
      1,
    ],
    [
      "3 + 2 1/4 + 1 + 2 1/4 of a 2 in strip, nothing left",
      onSheets([kind("a", 1, 3, 2), kind("b", 2, 2.25, 2), kind("c", 1, 1, 2)], 8.5, 2),
      1,
    ],
    [
      "5 1/4 + 1 1/4 + 1 1/4 + 3/4 of a 1 1/2 in strip",
      onSheets([kind("a", 1, 5.25, 1.5), kind("b", 2, 1.25, 1.5), kind("c", 1, 0.75, 1.5)], 8.5, 1.5),
      1,
    ],
    [
      "a 5 1/2 x 10 1/2 base and three 3 in wide pieces from letter",
      onSheets(
        [kind("base", 1, 5.5, 10.5), kind("a", 1, 3, 6.5), kind("b", 1, 3, 3.25), kind("c", 1, 3, 1.25)],
        8.5,
        11,
      ),
      1,
    ],
  ];
  test.each(planned)("%s", (_title, problem, sheets) => {
    const packing = quick(problem);
    expect(packing.sheets).toBe(sheets);
    expect(packing.proven).toBe(true);
    expect(verify(problem, packing)).toEqual([]);
  });

  test("17 pieces of 5 x 7 in from a 22 x 28 in board", () => {
    expect(quick(onSheets([kind("card", 17, 5, 7)], 22, 28)).sheets).toBe(1);
  });

  test("20 pieces of 127 x 177.8 mm from ten A4 sheets", () => {
    const card = { id: "card", quantity: 20, forms: [{ width: 127 * 1600, height: 284480 }] };
    const packing = quick({
      mode: "guillotine",
      aim: "all",
      kinds: [card],
      sheets: [{ id: "a4", width: 336000, height: 475200 }],
    });
    expect(packing.sheets).toBe(10);
  });
});
