import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Packing, type Problem, pack, verify } from "../../src/index.js";
import {
  bestUnlimitedLayout,
  type UnlimitedLayout,
  unlimitedLayoutSteps,
} from "../../src/search/unlimited-copies.js";
import { cutWithoutWaste } from "../problems.js";
import { countCut, mostValueByAllLengths, type WorthyPiece } from "./all-lengths.js";

const ENOUGH = 8_000_000;

function best(
  width: number,
  height: number,
  kerf: number,
  pieces: readonly WorthyPiece[],
  steps = ENOUGH,
): UnlimitedLayout {
  return bestUnlimitedLayout(width, height, kerf, withLeaves(pieces), steps);
}

function withLeaves(pieces: readonly WorthyPiece[]): Parameters<typeof bestUnlimitedLayout>[3] {
  return pieces.map((piece, i) => ({
    ...piece,
    leaf: { type: "piece", shares: [{ kind: `${i}`, form: 0, turned: false, count: 1 }] },
  }));
}

/** That a layout can be cut, yields what its counts say, and is worth what it says. */
function check(
  layout: UnlimitedLayout,
  width: number,
  height: number,
  kerf: number,
  pieces: readonly WorthyPiece[],
): void {
  const sizes = new Map(pieces.map((piece, i) => [`${i}`, piece]));
  const cut = countCut(layout.tree, width, height, kerf, sizes);
  expect(pieces.map((_, i) => cut.get(`${i}`) ?? 0)).toEqual(layout.counts);
  expect(layout.counts.reduce((sum, count, i) => sum + count * (pieces[i]?.value ?? 0), 0)).toBe(
    layout.value,
  );
}

/** Turns every piece both ways where that is allowed; the value is the area. */
function byArea(sizes: readonly (readonly [number, number])[], mayTurn: boolean): readonly WorthyPiece[] {
  const upright = sizes.map(([width, height]) => ({ width, height, value: width * height }));
  return mayTurn
    ? [...upright, ...upright.map(({ width, height, value }) => ({ width: height, height: width, value }))]
    : upright;
}

// Sizes of gcut1, gcut5 and gcut9: J. Beasley, Algorithms for unconstrained two-dimensional guillotine cutting, J. Oper. Res.
// Soc. 36 (1985), as OR-Library holds them. The optima with copies without limit were computed by a dynamic program that
// shares nothing with this one.
const PUBLISHED = [
  {
    name: "gcut1",
    side: 250,
    sizes: "167x184 114x118 167x152 83x140 70x86 143x166 120x160 66x148 87x141 69x165",
    fixed: 56460,
    turned: 58136,
  },
  {
    name: "gcut5",
    side: 500,
    sizes: "198x205 179x155 364x236 272x147 352x145 343x245 132x174 164x250 282x356 342x151",
    fixed: 246000,
    turned: 246000,
  },
  {
    name: "gcut9",
    side: 1000,
    sizes: "310x426 673x468 426x463 325x498 555x540 292x455 343x341 362x491 305x688 459x607",
    fixed: 971100,
    turned: 971100,
  },
].map(({ sizes, ...rest }) => ({
  ...rest,
  sizes: sizes.split(" ").map((size) => size.split("x").map(Number) as [number, number]),
}));

describe("the most valuable layout of a sheet from copies without limit", () => {
  test.each(PUBLISHED)("reaches the published optimum of $name", ({ side, sizes, fixed, turned }) => {
    for (const mayTurn of [false, true]) {
      const pieces = byArea(sizes, mayTurn);
      const layout = best(side, side, 0, pieces);
      check(layout, side, side, 0, pieces);
      expect(layout.value).toBe(mayTurn ? turned : fixed);
      expect(layout.exact).toBe(true);
    }
  });

  test.each(PUBLISHED)("is what pack fills a sheet of $name with", ({ side, sizes, fixed, turned }) => {
    for (const turns of ["upright", "both"] as const) {
      const problem: Problem = {
        mode: "guillotine",
        aim: "fill",
        kinds: sizes.map(([width, height], i) => ({
          id: `${i}`,
          quantity: null,
          forms: [{ width, height, turns }],
        })),
        sheets: [{ id: "s", width: side, height: side, stock: 1 }],
      };
      const packing: Packing = pack(problem, { effort: "quick" });
      expect(verify(problem, packing)).toEqual([]);
      expect(packing.value).toBe(String(turns === "both" ? turned : fixed));
    }
  });

  const piece = fc.record({
    width: fc.integer({ min: 4, max: 24 }),
    height: fc.integer({ min: 4, max: 24 }),
    value: fc.oneof(fc.constant(undefined), fc.integer({ min: 0, max: 300 })),
  });
  const pieces = fc
    .array(piece, { minLength: 1, maxLength: 7 })
    .map((list) => list.map((entry) => ({ ...entry, value: entry.value ?? entry.width * entry.height })));
  const side = fc.integer({ min: 20, max: 48 });

  test("is worth what a look at every cut gives, whatever the kerf and the values", () => {
    fc.assert(
      fc.property(side, side, fc.nat(4), pieces, (width, height, kerf, list) => {
        const layout = best(width, height, kerf, list);
        check(layout, width, height, kerf, list);
        expect(layout.exact).toBe(true);
        expect(layout.value).toBe(mostValueByAllLengths(width, height, kerf, list));
      }),
    );
  });

  test("is as good with good parts alone, or says that it may not be the best", () => {
    const size = fc.tuple(fc.integer({ min: 80, max: 200 }), fc.integer({ min: 80, max: 200 }));
    const long = fc.integer({ min: 400, max: 600 });
    const sizes = fc.array(size, { minLength: 3, maxLength: 12 });
    const share = fc.constantFrom(20, 50, 100, 150, 200);
    let exact = 0;
    let runs = 0;
    fc.assert(
      fc.property(long, long, fc.nat(2), sizes, share, (width, height, kerf, list, percent) => {
        const pieces = byArea(list, true);
        const whole = best(width, height, kerf, pieces);
        const layout = best(width, height, kerf, pieces, Math.floor((whole.steps * percent) / 100));
        check(layout, width, height, kerf, pieces);
        expect(whole.exact).toBe(true);
        expect(layout.value).toBeLessThanOrEqual(whole.value);
        if (layout.exact) expect(layout.value).toBe(whole.value);
        if (layout.exact) exact++;
        runs++;
      }),
    );
    // Both answers are seen often.
    expect(exact).toBeGreaterThan(runs / 20);
    expect(exact).toBeLessThan(runs * 0.95);
  });

  test("finds a layout without waste again on a sheet of thousands of lengths, with a kerf or without", () => {
    fc.assert(
      fc.property(fc.nat(3), fc.integer({ min: 1, max: 1600 }), fc.nat(), (kerf, scale, extra) => {
        const [cut] = fc.sample(cutWithoutWaste(3000, 2400, 10, kerf), { numRuns: 1, seed: scale + extra });
        const list = (cut ?? [])
          .filter(({ width, height }) => width >= 300 && height >= 300)
          .map(({ width, height }) => ({ width, height, value: (width + kerf) * (height + kerf) }));
        fc.pre(list.length === (cut ?? []).length);
        const layout = best(3000, 2400, kerf, list);
        check(layout, 3000, 2400, kerf, list);
        expect(layout.value).toBe((3000 + kerf) * (2400 + kerf));
        expect(layout.exact).toBe(true);
      }),
    );
  });

  test("is the same whenever it is asked for, and pauses on the way", () => {
    const list = byArea(
      [
        [403, 811],
        [517, 632],
        [389, 977],
        [456, 701],
        [613, 388],
        [741, 529],
      ],
      true,
    );
    const once = best(3000, 2900, 0, list);
    expect(best(3000, 2900, 0, list)).toEqual(once);
    const run = unlimitedLayoutSteps(3000, 2900, 0, withLeaves(list), ENOUGH);
    let pauses = 0;
    let step = run.next();
    for (; !step.done; step = run.next()) pauses++;
    expect(step.value).toEqual(once);
    expect(pauses).toBeGreaterThan(2);
  });

  test("leaves a sheet whole where nothing fits or nothing is worth anything", () => {
    const nothing = { value: 0, tree: { type: "waste" }, counts: [0], exact: true, steps: 0 };
    expect(best(10, 10, 0, [{ width: 11, height: 3, value: 33 }])).toEqual(nothing);
    expect(best(10, 10, 0, [{ width: 5, height: 3, value: 0 }])).toEqual(nothing);
  });

  test("says where more steps are needed, and finds a layout even without any", () => {
    const list = byArea(
      Array.from({ length: 40 }, (_, i) => [70_001 + 3_019 * i, 160_003 - 2_003 * i] as const),
      true,
    );
    const layout = best(487_680, 487_680, 0, list, 0);
    check(layout, 487_680, 487_680, 0, list);
    expect(layout.exact).toBe(false);
    expect(layout.value).toBeGreaterThan(0);
  });
});
