import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arrange } from "../src/arrange.js";
import { CutOrderError } from "../src/cut-order/cut-order-error.js";
import { cutOrder } from "../src/cut-order.js";
import type { CutOrder, CutOrderOptions } from "../src/cutting.js";
import type { CutNode, PieceLeaf, Sheet, Split } from "../src/model.js";
import { placements } from "../src/placements.js";
import { replayCuts } from "./replay-cuts.js";
import { validPlans } from "./valid-plan.js";

function piece(kind: string): PieceLeaf {
  return { type: "piece", shares: [{ kind, form: 0, turned: false, count: 1 }] };
}

function split(axis: "x" | "y", ...parts: readonly (readonly [number, CutNode])[]): Split {
  return { type: "split", axis, parts: parts.map(([size, node]) => ({ size, node })) };
}

/** Parts that are single pieces, in quarters of an inch. */
function pieces(axis: "x" | "y", ...inches: readonly number[]): Split {
  return split(axis, ...inches.map((size) => [size * 4, piece(`${size}`)] as const));
}

function sheetOf(width: number, height: number, trim?: Sheet["trim"]): Sheet {
  return { id: "sheet", width, height, trim };
}

function order(sheet: Sheet, tree: CutNode, options: CutOrderOptions = {}): CutOrder {
  return cutOrder(sheet, { sheet: sheet.id, run: 1, tree }, options);
}

/** 'edge distance: held | off' of each cut, a new setting marked by an arrow. */
function brief({ cuts, parts }: CutOrder): string[] {
  const name = (id: number): string => `${parts[id]!.what} ${parts[id]!.width}x${parts[id]!.height}`;
  return cuts.map(
    ({ edge, distance, held, off, newSetting }) =>
      `${newSetting ? "> " : ""}${edge} ${distance}: ${name(held)} | ${off === null ? "-" : name(off)}`,
  );
}

describe("the order of cuts", () => {
  it("repeats equal parts at one setting, from the same side", () => {
    expect(
      brief(
        order(
          sheetOf(17, 6),
          split("x", [5, piece("a")], [5, piece("a")], [5, piece("a")], [2, { type: "offcut" }]),
        ),
      ),
    ).toEqual([
      "> left 5: piece 5x6 | part 12x6",
      "left 5: piece 5x6 | part 7x6",
      "left 5: piece 5x6 | offcut 2x6",
    ]);
  });

  it("cuts a part free before it cuts it, and does equal settings in different parts one after the other", () => {
    const column = split("y", [11, piece("a")], [11, piece("a")]);
    const quarters = split("x", [9, column], [9, column]);
    const found = order(sheetOf(18, 22), quarters);
    expect(brief(found)).toEqual([
      "> left 9: part 9x22 | part 9x22",
      "> top 11: piece 9x11 | piece 9x11",
      "top 11: piece 9x11 | piece 9x11",
    ]);
    expect(found.settings).toBe(2);
    expect(found.cuts.map(({ part, held, off }) => [part, held, off])).toEqual([
      [0, 1, 2],
      [1, 3, 4],
      [2, 5, 6],
    ]);
    expect(found.parts.map(({ path }) => path)).toEqual([[], [0], [1], [0, 0], [0, 1], [1, 0], [1, 1]]);
  });

  it("holds the piece rather than the leftover beside it, so that the piece gets the measured width", () => {
    const tree = split("x", [3, piece("a")], [9, { type: "offcut" }]);
    expect(brief(order(sheetOf(12, 5), tree))).toEqual(["> left 3: piece 3x5 | offcut 9x5"]);
    expect(brief(order(sheetOf(12, 5), tree, { narrowestHold: 4 }))).toEqual([
      "> right 9: offcut 9x5 | piece 3x5",
    ]);
  });

  it("gives lines on the near side of the kerf, in coordinates of the whole sheet", () => {
    const tree = split("x", [4, piece("a")], [5, piece("b")]);
    const found = order(sheetOf(12, 9, { left: 2, top: 1 }), tree, { kerf: 1, narrowestHold: 5 });
    expect(found.cuts.map(({ edge, line }) => [edge, line])).toEqual([
      ["right", { x1: 2, y1: 0, x2: 2, y2: 9 }],
      ["bottom", { x1: 2, y1: 1, x2: 12, y2: 1 }],
      ["right", { x1: 7, y1: 1, x2: 7, y2: 9 }],
    ]);
  });

  it("trims left, right, top and bottom before anything else, the opposite side against the fence", () => {
    const trim = { left: 1, right: 2, top: 3, bottom: 4 };
    const found = order(sheetOf(23, 17, trim), pieces("x", 2.5, 2.5));
    expect(brief(found).slice(0, 4)).toEqual([
      "> right 22: part 22x17 | trim 1x17",
      "> left 20: part 20x17 | trim 2x17",
      "> bottom 14: part 20x14 | trim 20x3",
      "> top 10: part 20x10 | trim 20x4",
    ]);
    expect(found.cuts.map(({ purpose }) => purpose)).toEqual(["trim", "trim", "trim", "trim", "cut"]);
    expect(found.parts.filter(({ path }) => path?.length === 0)).toEqual([
      { id: found.cuts[3]!.held, x: 1, y: 3, width: 20, height: 10, what: "part", path: [] },
    ]);
  });

  it("counts the kerf of a trim as part of the trim, which may take it all", () => {
    const found = order(sheetOf(20, 10, { left: 3, right: 2 }), piece("a"), { kerf: 2 });
    expect(brief(found)).toEqual(["> right 17: part 17x10 | trim 1x10", "> left 15: piece 15x10 | -"]);
    expect(found.cuts[1]!.off).toBeNull();
  });

  it("takes a remainder that vanishes in the kerf off with a cut of its own", () => {
    const tree = split("y", [6, piece("a")], [6, piece("a")]);
    expect(brief(order(sheetOf(5, 15), tree, { kerf: 2 }))).toEqual([
      "> top 6: piece 5x6 | part 5x7",
      "top 6: piece 5x6 | -",
    ]);
  });

  it("has no cuts for a sheet that is used whole", () => {
    expect(order(sheetOf(5, 7), piece("a"))).toEqual({
      parts: [{ id: 0, x: 0, y: 0, width: 5, height: 7, what: "piece", path: [] }],
      cuts: [],
      settings: 0,
    });
  });

  it("leaves windows out: they are opened by their own tools", () => {
    const window = { x: 1, y: 1, width: 4, height: 2, tool: "knife", tree: pieces("x", 0.5, 0.5) };
    const tree = split("x", [6, { ...piece("mat"), window }], [6, piece("a")]);
    expect(brief(order(sheetOf(12, 4), tree))).toEqual(["> left 6: piece 6x4 | piece 6x4"]);
  });
});

// Widths in quarters of an inch; the published orders are common practice, no source.
describe("published strips", () => {
  const letter = sheetOf(34, 44);

  it("needs no more settings than falling fence positions: 9 3/4, 8 1/2, 7 1/4, 5 3/4, 4 1/4, 2 1/4", () => {
    const tree = pieces("y", 1.25, 1.25, 1.25, 1.5, 1.5, 2, 2.25);
    expect(order(letter, tree).settings).toBeLessThanOrEqual(6);
    expect(brief(order(letter, arrange(tree, letter)))).toEqual([
      "> bottom 5: piece 34x5 | part 34x39",
      "bottom 5: piece 34x5 | part 34x34",
      "bottom 5: piece 34x5 | part 34x29",
      "> bottom 6: piece 34x6 | part 34x23",
      "bottom 6: piece 34x6 | part 34x17",
      "> top 9: piece 34x9 | piece 34x8",
    ]);
  });

  it("gives those falling positions where the tool holds nothing narrower than 2 1/4", () => {
    const tree = arrange(pieces("y", 1.25, 1.25, 1.25, 1.5, 1.5, 2, 2.25), letter);
    const found = order(letter, tree, { narrowestHold: 9 });
    expect(found.cuts.map(({ edge, distance }) => [edge, distance / 4])).toEqual([
      ["top", 9.75],
      ["top", 8.5],
      ["top", 7.25],
      ["top", 5.75],
      ["top", 4.25],
      ["top", 2.25],
    ]);
    expect(found.cuts.some(({ tooNarrow }) => tooNarrow)).toBe(false);
  });

  it("cuts 3 1/4, 2 1/2, 2 1/2 and 1/4 left over from 8 1/2 in at no more than 3 settings", () => {
    const strip = sheetOf(9, 34);
    const tree = split("y", [13, piece("a")], [10, piece("b")], [10, piece("b")], [1, { type: "waste" }]);
    expect(order(strip, tree).settings).toBeLessThanOrEqual(3);
    const found = order(strip, arrange(tree, strip), { narrowestHold: 8 });
    expect(found.settings).toBe(2);
    expect(found.cuts.some(({ tooNarrow }) => tooNarrow)).toBe(false);
  });

  it("cuts 3, 2 1/4, 1 and 2 1/4 from 8 1/2 in at no more than 3 settings", () => {
    const strip = sheetOf(8, 34);
    const tree = pieces("y", 3, 2.25, 1, 2.25);
    expect(order(strip, tree).settings).toBeLessThanOrEqual(3);
    expect(order(strip, arrange(tree, strip)).settings).toBe(2);
  });

  it("cuts two strips into 5 1/4, 1 1/4, 1 1/4 and 3/4 at no more than 3 settings for both", () => {
    const column = pieces("y", 5.25, 1.25, 1.25, 0.75);
    const strips = sheetOf(12, 34);
    const found = order(strips, split("x", [6, column], [6, column]));
    expect(found.settings - 1).toBeLessThanOrEqual(3);
    expect(found.cuts).toHaveLength(7);
  });

  it("cuts a base of 5 1/2 x 10 1/2 and three pieces from the rest of a letter sheet at 4 settings", () => {
    const tree = split(
      "x",
      [22, split("y", [42, piece("base")], [2, { type: "offcut" }])],
      [12, pieces("y", 6.5, 3.25, 1.25)],
    );
    expect(order(letter, tree).settings).toBeLessThanOrEqual(4);
  });
});

describe("narrow parts", () => {
  it("come off while the rest is still wide", () => {
    const tree = split("x", [1, piece("a")], [1, piece("a")], [2, piece("b")], [8, piece("c")]);
    const found = order(sheetOf(12, 5), tree, { narrowestHold: 3 });
    expect(brief(found)).toEqual([
      "> right 11: part 11x5 | piece 1x5",
      "> right 10: part 10x5 | piece 1x5",
      "> right 8: piece 8x5 | piece 2x5",
    ]);
  });

  it("are cut together with the widest group to the end where no part can be held", () => {
    const tree = split(
      "x",
      [1, piece("a")],
      [2, piece("b")],
      [2, piece("b")],
      [1, piece("a")],
      [1, piece("a")],
    );
    const found = order(sheetOf(7, 5), tree, { narrowestHold: 4 });
    expect(found.cuts.map(({ distance }) => distance).filter((distance) => distance < 4)).toHaveLength(1);
    expect(found.cuts.at(-1)).toMatchObject({ tooNarrow: true, distance: 2 });
  });

  it("may be held together with a remainder that the kerf takes later", () => {
    const column = split("y", [3, piece("a")], [3, piece("a")]);
    const found = order(sheetOf(9, 8), split("x", [4, column], [4, column]), { kerf: 1, narrowestHold: 4 });
    expect(brief(found)).toEqual([
      "> left 4: part 4x8 | part 4x8",
      "bottom 4: part 4x4 | piece 4x3",
      "bottom 4: part 4x4 | piece 4x3",
      "> top 3: piece 4x3 | -",
      "top 3: piece 4x3 | -",
    ]);
    expect(found.cuts.map(({ tooNarrow }) => tooNarrow)).toEqual([false, false, false, true, true]);
  });

  it("are marked where nothing can be held", () => {
    const found = order(sheetOf(3, 5), split("x", [1, piece("a")], [2, piece("b")]), { narrowestHold: 4 });
    expect(found.cuts.map(({ tooNarrow }) => tooNarrow)).toEqual([true]);
    const trimmed = order(sheetOf(4, 5, { left: 1 }), piece("a"), { narrowestHold: 4 });
    expect(trimmed.cuts.map(({ tooNarrow }) => tooNarrow)).toEqual([true]);
  });
});

describe("a layout that cannot be put in order", () => {
  const failure = (tree: CutNode, options: CutOrderOptions = {}): unknown => {
    try {
      return order(sheetOf(12, 12), tree, options);
    } catch (error) {
      return error;
    }
  };

  it("is one with stopped cuts, for now", () => {
    const lines = { type: "stopped", hand: "clockwise", x1: 2, x2: 4, y1: 5, y2: 7 } as const;
    const leaves = { top: piece("a"), right: piece("a"), bottom: piece("a"), left: piece("a") };
    const stopped: CutNode = { ...lines, ...leaves, centre: { type: "waste" } };
    const error = failure(split("x", [5, piece("b")], [7, stopped]));
    expect(error).toBeInstanceOf(CutOrderError);
    expect(error).toMatchObject({ code: "not-yet", path: "tree.parts[1].node" });
    expect(String(error)).toContain("edge-to-edge cuts");
  });

  it("is one whose parts do not add up", () => {
    expect(failure(split("x", [5, piece("a")], [6, piece("b")]))).toMatchObject({
      code: "does-not-add-up",
      path: "tree",
      details: { found: 11, expected: 12 },
    });
    expect(
      failure(split("x", [5, piece("a")], [7, split("y", [7, piece("b")], [6, piece("c")])])),
    ).toMatchObject({
      code: "does-not-add-up",
      path: "tree.parts[1].node",
      details: { found: 13, expected: 12 },
    });
    expect(failure(split("x", [12, piece("a")], [0, piece("b")]))).toBeInstanceOf(CutOrderError);
    expect(failure(split("x"), { kerf: 20 })).toBeInstanceOf(CutOrderError);
  });

  it("is one for options that are no lengths", () => {
    expect(failure(piece("a"), { kerf: 0.5 })).toBeInstanceOf(RangeError);
    expect(failure(piece("a"), { narrowestHold: Number.NaN })).toBeInstanceOf(RangeError);
  });
});

describe("large layouts", () => {
  it("cost little however many pieces they have: 3,000 equal ones", () => {
    const column = split("y", ...Array.from({ length: 60 }, () => [50, piece("a")] as const));
    const found = order(
      sheetOf(5000, 3000),
      split("x", ...Array.from({ length: 50 }, () => [100, column] as const)),
    );
    expect(found.cuts).toHaveLength(2999);
    expect(found.settings).toBe(2);
  });

  it("may be as deep as they have pieces", () => {
    let tree: CutNode = piece("p");
    let width = 1;
    for (let i = 0; i < 2000; i++) {
      const size = 1 + (i % 7);
      tree = split("x", [size, piece("p")], [width, tree]);
      width += size;
    }
    const found = order(sheetOf(width, 9), arrange(tree, { width, height: 9 }));
    expect(found.cuts).toHaveLength(2000);
    expect(found.settings).toBe(7);
  });

  it("cost little with many different strips: 120 of them, ten pieces each", () => {
    const strips = Array.from({ length: 120 }, (_, i) => {
      const sizes = Array.from({ length: 9 }, (_, j) => 50 + ((i * 31 + j * j * 17) % 200));
      const rest = 4000 - sizes.reduce((sum, size) => sum + size, 0);
      return [100 + i, split("y", ...[...sizes, rest].map((size) => [size, piece("p")] as const))] as const;
    });
    const sheet = sheetOf(
      strips.reduce((sum, [size]) => sum + size, 0),
      4000,
    );
    const found = order(sheet, split("x", ...strips));
    expect(replayCuts(sheet, found, 0, 0).faults).toEqual([]);
    expect(found.cuts).toHaveLength(1199);
  });
});

describe("every order of cuts", () => {
  const edgeToEdge = fc
    .constantFrom("guillotine" as const, "shelf" as const)
    .chain((mode) => validPlans({ mode }));

  it("begins with the trims, gives exactly the leaves of its layout, and says what is true of each cut", () => {
    fc.assert(
      fc.property(
        edgeToEdge,
        fc.nat({ max: 30 }),
        fc.boolean(),
        ({ problem, packing }, narrowestHold, arranged) => {
          const { kerf = 0 } = problem;
          for (const layout of packing.layouts) {
            const sheet = problem.sheets.find(({ id }) => id === layout.sheet)!;
            const { left = 0, right = 0, top = 0, bottom = 0 } = sheet.trim ?? {};
            const size = { width: sheet.width - left - right, height: sheet.height - top - bottom };
            const tree = arranged ? arrange(layout.tree, size, { ...problem, narrowestHold }) : layout.tree;
            const found = cutOrder(sheet, { ...layout, tree }, { kerf, narrowestHold });
            const replay = replayCuts(sheet, found, kerf, narrowestHold);
            expect(replay.faults).toEqual([]);
            const trimmed = [left, right, top, bottom].map((trim) => trim > 0);
            const fences = ["right", "left", "bottom", "top"].filter((_, i) => trimmed[i]);
            const trims = found.cuts.filter(({ purpose }) => purpose === "trim");
            expect(found.cuts.slice(0, trims.length)).toEqual(trims);
            expect(trims.map(({ edge }) => edge)).toEqual(fences);
            const leaves = placements(sheet, { ...layout, tree }, kerf)
              .filter(({ depth }) => depth === 0)
              .map(({ x, y, width, height, path, node }) => ({ x, y, width, height, path, what: node.type }));
            const parts = replay.left.filter(({ what }) => what !== "trim").map(({ id: _, ...part }) => part);
            const key = (part: { path?: readonly number[] }): string => JSON.stringify(part.path);
            const sorted = <T extends { path?: readonly number[] }>(list: T[]): T[] =>
              list.sort((a, b) => (key(a) < key(b) ? -1 : 1));
            expect(sorted(parts)).toEqual(sorted(leaves));
          }
        },
      ),
    );
  });

  it("is the same every time", () => {
    fc.assert(
      fc.property(validPlans({ mode: "guillotine", small: true }), ({ problem, packing }) => {
        for (const layout of packing.layouts.slice(0, 1)) {
          const sheet = problem.sheets.find(({ id }) => id === layout.sheet)!;
          const once = cutOrder(sheet, layout, { kerf: problem.kerf, narrowestHold: 6 });
          const copy = JSON.parse(JSON.stringify(layout)) as typeof layout;
          expect(cutOrder(sheet, copy, { kerf: problem.kerf, narrowestHold: 6 })).toEqual(once);
        }
      }),
    );
  });
});
