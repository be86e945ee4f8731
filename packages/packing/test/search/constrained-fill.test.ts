import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CutNode } from "../../src/index.js";
import {
  type ConstrainedLayout,
  constrainedFill,
  constrainedFillSteps,
} from "../../src/search/constrained-fill.js";
import { fewestSheets, type OraclePiece } from "../brute-force.js";
import { countCut } from "./all-lengths.js";

const ENOUGH = 4_000_000;

/** A kind for these tests: `turns` says whether it may also lie turned. */
interface Kind {
  readonly width: number;
  readonly height: number;
  readonly value: number;
  readonly most: number;
  readonly turns: boolean;
}

function listed(kinds: readonly Kind[]): Parameters<typeof constrainedFill>[3] {
  return kinds.map((kind, i) => {
    const leaf = (turned: boolean): CutNode => ({
      type: "piece",
      shares: [{ kind: turned ? `${i} turned` : `${i}`, form: 0, turned, count: 1 }],
    });
    const upright = { width: kind.width, height: kind.height, leaf: leaf(false) };
    const turned = { width: kind.height, height: kind.width, leaf: leaf(true) };
    return { value: kind.value, most: kind.most, ways: kind.turns ? [upright, turned] : [upright] };
  });
}

/** Fills, and checks that the layout can be cut and is worth what it says. */
function fill(
  width: number,
  height: number,
  kerf: number,
  kinds: readonly Kind[],
  steps = ENOUGH,
): ConstrainedLayout {
  const layout = constrainedFill(width, height, kerf, listed(kinds), steps);
  const sizes = new Map(
    kinds.flatMap((kind, i) => [
      [`${i}`, kind],
      [`${i} turned`, { ...kind, width: kind.height, height: kind.width }],
    ]),
  );
  const cut = countCut(layout.tree, width, height, kerf, sizes);
  const counts = kinds.map((_, i) => (cut.get(`${i}`) ?? 0) + (cut.get(`${i} turned`) ?? 0));
  expect(layout.counts).toEqual(counts);
  kinds.forEach(({ most }, i) => {
    expect(counts[i]).toBeLessThanOrEqual(most);
  });
  expect(layout.value).toBe(kinds.reduce((sum, { value }, i) => sum + value * (counts[i] ?? 0), 0));
  return layout;
}

/** The most value of any choice of copies that one sheet gives, by looking at every choice. */
function mostValue(width: number, height: number, kerf: number, kinds: readonly Kind[]): number {
  let best = 0;
  const visit = (index: number, chosen: readonly OraclePiece[], value: number): void => {
    if (chosen.length > 0 && fewestSheets({ width, height }, chosen, kerf) !== 1) return;
    best = Math.max(best, value);
    for (let i = index; i < kinds.length; i++) {
      const kind = kinds[i] as Kind;
      const copies = chosen.filter((ways) => ways === waysOf(kind)).length;
      if (copies < kind.most) visit(i, [...chosen, waysOf(kind)], value + kind.value);
    }
  };
  visit(0, [], 0);
  return best;
}

const waysKnown = new WeakMap<Kind, OraclePiece>();

/** The same array for the same kind, so that its copies can be told. */
function waysOf(kind: Kind): OraclePiece {
  const known = waysKnown.get(kind);
  if (known) return known;
  const upright = { width: kind.width, height: kind.height };
  const ways = kind.turns ? [upright, { width: kind.height, height: kind.width }] : [upright];
  waysKnown.set(kind, ways);
  return ways;
}

// The three problems of N. Christofides, C. Whitlock, An algorithm for two-dimensional cutting problems, Operations Research
// 25 (1977), with their optima: width x height x copies, value.
const PUBLISHED = [
  {
    name: "cgcut1",
    width: 15,
    height: 10,
    kinds: "8x4x2 3x7x1 8x2x3 3x4x5 3x3x2 3x2x2 2x1x1",
    values: [66, 35, 24, 17, 11, 8, 2],
    optimum: 244,
  },
  {
    name: "cgcut2",
    width: 40,
    height: 70,
    kinds: "21x22x1 31x13x1 9x35x3 9x24x3 30x7x2 11x13x3 10x14x1 14x8x3 12x8x3 13x7x3",
    values: [582, 403, 315, 216, 210, 143, 140, 110, 94, 90],
    optimum: 2892,
  },
  {
    name: "cgcut3",
    width: 40,
    height: 70,
    kinds:
      "31x43x4 30x41x2 29x39x4 28x38x4 27x37x3 26x36x4 25x35x3 24x34x4 33x23x4 22x32x3 31x21x3 29x18x3 17x27x2 15x24x2 16x25x4 15x24x1 23x14x4 21x12x3 19x11x4 9x17x1",
    values: [
      500, 480, 460, 440, 420, 410, 400, 380, 360, 340, 320, 300, 280, 240, 260, 240, 220, 180, 160, 140,
    ],
    optimum: 1860,
  },
];

describe("the most valuable layout of a sheet from limited copies", () => {
  test.each(PUBLISHED)(
    "reaches the published optimum of $name",
    ({ width, height, kinds, values, optimum }) => {
      const list = kinds.split(" ").map((text, i): Kind => {
        const [w, h, most] = text.split("x").map(Number) as [number, number, number];
        return { width: w, height: h, most, value: values[i] as number, turns: false };
      });
      const layout = fill(width, height, 0, list);
      expect(layout.value).toBe(optimum);
      expect(layout.exact).toBe(true);
    },
  );

  const kind = fc.record({
    width: fc.integer({ min: 5, max: 20 }),
    height: fc.integer({ min: 5, max: 20 }),
    value: fc.integer({ min: 1, max: 400 }),
    most: fc.integer({ min: 1, max: 2 }),
    turns: fc.boolean(),
  });
  const kinds = fc.array(kind, { minLength: 1, maxLength: 3 });
  const side = fc.integer({ min: 20, max: 34 });

  test("is worth what a look at every choice of copies gives, whatever the kerf and the values", () => {
    fc.assert(
      fc.property(side, side, fc.nat(3), kinds, (width, height, kerf, list) => {
        const layout = fill(width, height, kerf, list);
        expect(layout.exact).toBe(true);
        expect(layout.value).toBe(mostValue(width, height, kerf, list));
      }),
    );
  });

  test("is the best with a bound by area alone, or says that it may not be", () => {
    let exact = 0;
    let runs = 0;
    fc.assert(
      fc.property(side, side, fc.nat(3), kinds, fc.nat(3000), (width, height, kerf, list, steps) => {
        const layout = fill(width, height, kerf, list, steps);
        const most = mostValue(width, height, kerf, list);
        expect(layout.value).toBeLessThanOrEqual(most);
        if (layout.exact) expect(layout.value).toBe(most);
        if (layout.exact) exact++;
        runs++;
      }),
    );
    // Both answers are seen often.
    expect(exact).toBeGreaterThan(runs / 20);
    expect(exact).toBeLessThan(runs * 0.95);
  });

  test("is the same whenever it is asked for, and pauses on the way", () => {
    const list = Array.from({ length: 9 }, (_, i): Kind => {
      const [width, height] = [21 + 4 * i, 64 - 3 * i];
      return { width, height, value: width * height + i, most: 1 + (i % 3), turns: i % 2 === 0 };
    });
    const once = fill(200, 180, 1, list, 600_000);
    expect(once.value).toBeGreaterThan(0);
    const run = constrainedFillSteps(200, 180, 1, listed(list), 600_000);
    let pauses = 0;
    let step = run.next();
    for (; !step.done; step = run.next()) pauses++;
    expect(step.value).toEqual(once);
    expect(pauses).toBeGreaterThan(1);
  });

  test("leaves a sheet whole where no copy may be cut", () => {
    const none = { width: 5, height: 5, value: 25, most: 0, turns: true };
    expect(fill(20, 20, 0, [none])).toEqual({
      value: 0,
      tree: { type: "waste" },
      counts: [0],
      exact: true,
      steps: 0,
    });
    expect(fill(20, 20, 0, [{ ...none, most: 1, width: 21 }]).value).toBe(0);
  });
});
