import type { CutNode, Kind, Share, Sheet } from "@sheetwright/packing";
import fc from "fast-check";
import { inch, type Plan, plan } from "./build.js";

/** Names that are hard to set: long, unbroken, foreign, with marks and signs, or hardly there. */
const HARD_NAMES = [
  "a",
  "Rooftops base",
  "Seam cover, long",
  "Straßenlaternenbeleuchtungsanlage",
  "Laternennacht: Grundkarte für die großen Umschläge, außen",
  "WWWWWWWW MMMMMMMM",
  "iiii llll jjjj tttt ffff",
  "Étoile filante & <Lune>",
  "灯籠の夜・小さな窓",
  "Фонарик, узкая полоска",
  'He said "cut here" \\ / 100 %',
  "ẍ̧̣ e̋ q̲",
  "🏮 lantern 🏮🏮",
  "   ",
  "\u202eright to left\u0007",
  "ﷺ",
];

/** Any string at all, lone surrogates and control characters included. */
function anyName(maxLength: number): fc.Arbitrary<string> {
  return fc.string({ unit: fc.nat(0x10ffff).map((code) => String.fromCodePoint(code)), maxLength });
}

/**
 * Plans made by cutting a sheet recursively at whole sixteenths, with kerf, trims, runs, shared places and windows. All
 * decisions follow from the recipe's seed.
 */
export function randomPlan(options: { readonly windows?: boolean } = {}): fc.Arbitrary<Plan> {
  return fc
    .record({
      width: fc.oneof(fc.integer({ min: 24, max: 224 }), fc.constantFrom(96, 136, 192)),
      height: fc.oneof(fc.integer({ min: 24, max: 224 }), fc.constantFrom(96, 176, 192)),
      kerf: fc.constantFrom(0, 0, 0, 1, 2),
      run: fc.oneof(fc.constant(1), fc.integer({ min: 2, max: 40 })),
      trims: fc.array(fc.constantFrom(0, 0, 2, 4), { minLength: 4, maxLength: 4 }),
      name: fc.oneof(fc.constantFrom(...HARD_NAMES), anyName(30)),
      names: fc.array(fc.oneof(fc.constantFrom(...HARD_NAMES), anyName(40)), {
        minLength: 1,
        maxLength: 6,
      }),
      depth: fc.integer({ min: 1, max: 5 }),
      seed: fc.nat(),
    })
    .map((recipe) => cutRecursively({ ...recipe, windows: options.windows === true }));
}

interface Recipe {
  readonly width: number;
  readonly height: number;
  readonly kerf: number;
  readonly run: number;
  readonly trims: readonly number[];
  readonly name: string;
  readonly names: readonly string[];
  /** Most levels of cuts. */
  readonly depth: number;
  readonly seed: number;
  readonly windows: boolean;
}

const UNIT = inch(1 / 16);
const MOST_PARTS = 30;

function cutRecursively(recipe: Recipe): Plan {
  const { kerf, run, names } = recipe;
  let state = recipe.seed;
  // The linear congruential generator of Numerical Recipes (Press et al.); its high bits vary best.
  const choose = (below: number): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state >>> 8) % below;
  };
  const kinds: Kind[] = [];
  let parts = 1;

  function kindFor(width: number, height: number, other?: string): Share {
    const size = { width: width * UNIT, height: height * UNIT };
    const turned = choose(3) === 1;
    const form = turned ? { width: size.height, height: size.width } : size;
    const known = kinds.find(
      ({ id, forms }) => id !== other && forms[0]?.width === form.width && forms[0]?.height === form.height,
    );
    if (known !== undefined && choose(4) !== 1) return { kind: known.id, form: 0, turned, count: run };
    const name = names[kinds.length % names.length];
    kinds.push({ id: `kind ${kinds.length}`, name, quantity: 1, forms: [form] });
    return { kind: `kind ${kinds.length - 1}`, form: 0, turned, count: run };
  }

  function leaf(width: number, height: number, level: number): CutNode {
    const what = choose(10);
    if (what === 7 || what === 8) return { type: "offcut" };
    if (what === 9) return { type: "waste" };
    const first = kindFor(width, height);
    const shares = [first];
    if (run > 1 && choose(4) === 1) {
      const count = 1 + choose(run - 1);
      const second = kindFor(width, height, first.kind);
      shares[0] = { ...first, count };
      if (choose(3) !== 1) {
        shares.push({ ...second, count: run - count });
      }
    }
    const windowed = recipe.windows && level === 0 && width >= 24 && height >= 24 && choose(2) === 1;
    if (!windowed) return { type: "piece", shares };
    const inner = { x: 4, y: 6, width: width - 8, height: height - 10 };
    return {
      type: "piece",
      shares,
      window: {
        x: inner.x * UNIT,
        y: inner.y * UNIT,
        width: inner.width * UNIT,
        height: inner.height * UNIT,
        tool: "knife",
        tree: node(inner.width, inner.height, 1, 1),
      },
    };
  }

  function node(width: number, height: number, depth: number, level: number): CutNode {
    const longest = Math.max(width, height);
    const most = Math.min(7, Math.floor((longest + kerf) / (3 + kerf)));
    if (depth === 0 || most < 2 || parts > MOST_PARTS || choose(8) === 7) return leaf(width, height, level);
    const axis = choose(2) === 0 ? (width >= height ? "x" : "y") : width >= height ? "y" : "x";
    const extent = axis === "x" ? width : height;
    const across = axis === "x" ? height : width;
    const count = 2 + choose(Math.max(1, most - 1));
    if (extent < count * 3 + (count - 1) * kerf) return leaf(width, height, level);
    parts += count - 1;
    const free = extent - (count - 1) * kerf;
    const equal = choose(2) === 0;
    const sizes: number[] = [];
    let left = free;
    for (let i = 0; i < count - 1; i += 1) {
      const fair = Math.floor(free / count);
      const size = equal ? fair : 2 + choose(Math.max(1, left - 2 * (count - i) - 1));
      sizes.push(size);
      left -= size;
    }
    sizes.push(left);
    return {
      type: "split",
      axis,
      parts: sizes.map((size) => ({
        size: size * UNIT,
        node: axis === "x" ? node(size, across, depth - 1, level) : node(across, size, depth - 1, level),
      })),
    };
  }

  const [left = 0, right = 0, top = 0, bottom = 0] = recipe.trims;
  const tree = node(recipe.width - left - right, recipe.height - top - bottom, recipe.depth, 0);
  const sheet: Sheet = {
    id: "sheet & co",
    name: recipe.name,
    width: recipe.width * UNIT,
    height: recipe.height * UNIT,
    trim: { left: left * UNIT, right: right * UNIT, top: top * UNIT, bottom: bottom * UNIT },
  };
  return plan(kinds, [sheet], [{ sheet: sheet.id, run, tree }], { kerf: kerf * UNIT });
}
