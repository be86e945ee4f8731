/**
 * Plans that are right by construction: sheets are cut recursively at random, then the problem is written that asks for
 * what came out. Everything is drawn from two numbers, so that a failing case shrinks to one with fewer choices.
 */
import fc from "fast-check";
import type {
  Aim,
  Form,
  Kind,
  Layout,
  Mode,
  Packing,
  Problem,
  Sheet,
  SheetTurns,
  Turns,
} from "../src/model.js";
import { cutSheet, type DraftForm, type DraftKind, type Draw, type Workshop } from "./cut-sheet.js";
import { boundOf, costOf, identityWeights, usableSize, worthOf } from "./identity-bound.js";

export interface ValidPlan {
  readonly problem: Problem;
  readonly packing: Packing;
}

/** What plans may look like; all of it is drawn where nothing is said. */
export interface PlanChoices {
  readonly mode?: Mode;
  readonly aim?: Aim;
  /** `true`: at least 1; `false`: 0. */
  readonly kerf?: boolean;
  /** `true`: every sheet is trimmed on the left and at the top at least; `false`: no trim. */
  readonly trim?: boolean;
  readonly windows?: boolean;
  /** True: every piece that is asked for is placed. */
  readonly complete?: boolean;
  /** True: sheets of at most 40 x 40. */
  readonly small?: boolean;
}

/** With one fixed seed every property meets the same plans, so each is cut only once. */
const cutBefore = new Map<string, ValidPlan>();

/** Problems with plans that solve them, each right in every respect. */
export function validPlans(choices: PlanChoices = {}): fc.Arbitrary<ValidPlan> {
  return fc
    .tuple(fc.nat({ max: 0x7fffffff }), fc.integer({ min: 24, max: 120 }))
    .map(([seed, choiceCount]) => {
      const key = JSON.stringify([seed, choiceCount, choices]);
      const plan = cutBefore.get(key) ?? validPlan(seed, choiceCount, choices);
      cutBefore.set(key, plan);
      return plan;
    });
}

/** Draws `choiceCount` numbers by a hash of their place, and zeros from there on. */
export function drawFrom(seed: number, choiceCount: number): Draw {
  let place = 0;
  return (below) => {
    if (below <= 1 || place >= choiceCount) return 0;
    place += 1;
    let mixed = Math.imul(seed ^ Math.imul(place, 0x9e3779b1), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) % below;
  };
}

/** Cuts one plan from a seed, with at most so many choices a layout and as many for all the rest. */
function validPlan(seed: number, choiceCount: number, choices: PlanChoices = {}): ValidPlan {
  const draw = drawFrom(seed, choiceCount);
  const modes = ["guillotine", "guillotine", "shelf", "stopped"] as const;
  const mode = choices.mode ?? modes[draw(4)] ?? "guillotine";
  const aim = choices.aim ?? (draw(4) === 3 ? "fill" : "all");
  const kerf = choices.kerf === true ? 1 + draw(3) : choices.kerf === false ? 0 : draw(3);
  const smallestOffcut = draw(2) === 1 ? { width: draw(12), height: draw(12) } : undefined;
  const shop: Workshop = {
    mode,
    kerf,
    smallestOffcut,
    hasWindows: choices.windows ?? draw(3) === 2,
    mostKinds: 3 + draw(9),
    kinds: [],
    longest: new Map(),
    levels: 0,
  };
  const bare = Array.from({ length: 1 + draw(3) }, (_, index) => bareSheet(draw, choices, index));
  const used = new Map<string, number>();
  const layouts = Array.from({ length: 1 + draw(3) }, (_, layout): Layout => {
    const sheet = bare[draw(bare.length)] as Sheet;
    const run = mode === "stopped" ? 1 : 1 + draw(4);
    used.set(sheet.id, (used.get(sheet.id) ?? 0) + run);
    const place = { draw: drawFrom(seed + layout + 1, choiceCount), sheet: sheet.id, layout, run };
    return { sheet: sheet.id, run, tree: cutSheet(shop, place, usableSize(sheet)) };
  });
  const sheets = bare.map((sheet) => limitSheet(draw, shop, sheet, aim, used.get(sheet.id) ?? 0));
  const isComplete = draw(3) > 0;
  const kinds = shop.kinds.map((kind, index) => {
    const write = drawFrom(Math.imul(seed, 31) + index, choiceCount);
    return writeKind(write, kind, sheets, layouts, aim, choices.complete ?? isComplete);
  });
  const problem: Problem = {
    kinds,
    sheets,
    mode,
    aim,
    ...(kerf > 0 || draw(2) === 1 ? { kerf } : {}),
    ...(draw(3) === 2 ? { stages: Math.max(1, shop.levels) } : draw(2) === 1 ? { stages: null } : {}),
    ...(smallestOffcut === undefined ? {} : { smallestOffcut }),
  };
  const capacities = draw(2);
  const bound = boundOf(
    problem,
    identityWeights(problem, (sheet) => {
      const { width, height } = usableSize(sheet);
      return capacities === 0 ? (width + kerf) * (height + kerf) : 1 + draw(30);
    }),
  );
  const counts = new Map(shop.kinds.map((kind) => [kind.id, kind.placed]));
  return { problem, packing: describePlan(problem, layouts, bound, counts) };
}

function bareSheet(draw: Draw, choices: PlanChoices, index: number): Sheet {
  const large = choices.small !== true && draw(5) === 4;
  const side = () => (large ? 635 * (8 + draw(760)) + draw(635) : 10 + draw(31));
  const trim = () => draw(4);
  const some = { left: 1 + draw(3), right: trim(), top: 1 + draw(3), bottom: trim() };
  const drawn = [{}, { trim: { left: trim(), bottom: trim() } }, { trim: some }][draw(3)];
  return {
    id: ["night", "ember", "cream"][index] as string,
    width: side(),
    height: side(),
    ...(choices.trim === true ? { trim: some } : choices.trim === false ? {} : drawn),
    ...(draw(2) === 1 ? { cost: draw(12) } : {}),
  };
}

/** Sets stock and longest cut so that what was cut is still allowed, often only just. */
function limitSheet(draw: Draw, shop: Workshop, sheet: Sheet, aim: Aim, used: number): Sheet {
  const usable = usableSize(sheet);
  const { left = 0, right = 0, top = 0, bottom = 0 } = sheet.trim ?? {};
  const longest = Math.max(
    1,
    shop.longest.get(sheet.id) ?? 1,
    left + right > 0 ? sheet.height : 0,
    top + bottom > 0 ? usable.width : 0,
  );
  const stocks = [
    { stock: used },
    { stock: used + draw(3) },
    ...(aim === "all" ? [{}, { stock: null }] : []),
  ];
  const limits = [{}, { longestCut: longest }, { longestCut: null }];
  return { ...sheet, ...stocks[draw(stocks.length)], ...limits[draw(limits.length)] };
}

function writeKind(
  draw: Draw,
  kind: DraftKind,
  sheets: readonly Sheet[],
  layouts: readonly Layout[],
  aim: Aim,
  isComplete: boolean,
): Kind {
  const [only, ...others] = kind.layouts;
  const mayBelong = only !== undefined && others.length === 0 && layouts[only]?.run === 1;
  const extra = isComplete || draw(3) > 0 ? 0 : 1 + draw(3);
  const least = isComplete || draw(3) > 0 ? draw(kind.placed + 1) : kind.placed + 1;
  const amount =
    aim === "all"
      ? { quantity: kind.placed + extra }
      : {
          quantity: draw(3) === 2 ? null : Math.max(kind.placed + extra, least),
          ...(draw(2) === 1 ? { least } : {}),
        };
  return {
    id: kind.id,
    ...amount,
    forms: kind.forms.map((form) => writeForm(draw, form, sheets)),
    ...(draw(3) === 2 ? { value: draw(50) } : {}),
    ...(mayBelong && draw(3) === 2 ? { together: `seam ${only}` } : {}),
    ...(draw(8) === 7 ? { set: { of: "Rooftops", each: 1 + draw(2) } } : {}),
  };
}

function writeForm(draw: Draw, form: DraftForm, sheets: readonly Sheet[]): Form {
  const { uses, ...rest } = form;
  const style = draw(4);
  if (style === 0) return rest;
  if (style === 1) return { ...rest, turns: turnsOf(uses) };
  const used = sheets.filter((sheet) => uses.some((entry) => entry.sheet === sheet.id));
  const listed: readonly SheetTurns[] = used.map((sheet) => ({
    sheet: sheet.id,
    turns: turnsOf(uses.filter((entry) => entry.sheet === sheet.id)),
  }));
  if (style === 2) return { ...rest, turns: draw(2) === 0 ? "upright" : "turned", sheets: listed };
  return { ...rest, turns: turnsOf(uses), sheets: used.map((sheet) => ({ sheet: sheet.id })) };
}

/** The turns that are used, and no others. */
function turnsOf(uses: DraftForm["uses"]): Turns {
  const turned = uses.some((entry) => entry.turned);
  const upright = uses.some((entry) => !entry.turned);
  return turned && !upright ? "turned" : upright && !turned ? "upright" : "both";
}

/** Writes the packing of layouts whose counts and bound are known. */
export function describePlan(
  problem: Problem,
  layouts: readonly Layout[],
  bound: Packing["bound"],
  counts: ReadonlyMap<string, number>,
): Packing {
  const placed = problem.kinds.map((kind) => ({ kind: kind.id, count: counts.get(kind.id) ?? 0 }));
  const wanted = (kind: Kind) => (problem.aim === "all" ? (kind.quantity ?? 0) : (kind.least ?? 0));
  const missing = problem.kinds
    .map((kind, index) => ({ kind: kind.id, count: wanted(kind) - (placed[index]?.count ?? 0) }))
    .filter(({ count }) => count > 0);
  const cost = layouts.reduce((sum, { sheet, run }) => {
    const found = problem.sheets.find((entry) => entry.id === sheet) as Sheet;
    return sum + BigInt(run) * costOf(found);
  }, 0n);
  const value = problem.kinds.reduce(
    (sum, kind, index) => sum + BigInt(placed[index]?.count ?? 0) * worthOf(kind),
    0n,
  );
  const isShort = bound.aim === "all" && bound.cost === null;
  const isProven =
    bound.aim === "fill"
      ? bound.value === String(value)
      : missing.length > 0
        ? isShort
        : bound.cost === String(cost);
  return {
    version: 1,
    mode: problem.mode,
    aim: problem.aim,
    outcome: missing.length === 0 ? "complete" : isShort ? "short" : "not-found",
    layouts,
    placed,
    missing,
    sheets: layouts.reduce((sum, { run }) => sum + run, 0),
    cost: String(cost),
    value: String(value),
    bound,
    proven: isProven,
    search: { effort: "quick", seed: 1, lp: "none", starts: 1, steps: 0, work: 0, ended: "finished" },
  };
}
