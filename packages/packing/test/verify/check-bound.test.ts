import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { DualFeasible, FittedValue, KindPrice, Problem, Sheet, SheetWeights } from "../../src/model.js";
import type { FindingCode } from "../../src/verify/finding.js";
import type { Draw } from "../cut-sheet.js";
import {
  boundOf,
  boundOfPrices,
  costOf,
  lies,
  type MeasureOf,
  usableSize,
  usefulSheets,
} from "../identity-bound.js";
import { describePlan, drawFrom, type ValidPlan, validPlans } from "../valid-plan.js";
import { codesOf, copyOf, type DamagedPlan, expectFinding, findingsOf, statedCounts } from "./damage.js";
import { examplePlan, stoppedPlan, windowPlan } from "./example-plan.js";
import { guillotineOracle } from "./guillotine-oracle.js";
import { paperMeasure } from "./paper-measure.js";

const byPaper: MeasureOf = paperMeasure;

/** Draws functions and capacities for every sheet that pieces can be cut from. */
function drawWeights(problem: Problem, seed: number): readonly SheetWeights[] {
  const draw = drawFrom(seed, 1000);
  const drawFunction = (sheet: Sheet, extent: number): DualFeasible => {
    const at = 1 + draw(Math.floor(extent / 2));
    const fitted = draw(3) === 0 ? drawFitted(problem, sheet, draw) : undefined;
    const list: readonly DualFeasible[] = [
      { family: "identity" },
      { family: "rounding", k: 1 + draw(6) },
      ...(extent >= 2
        ? ([
            { family: "threshold", at },
            { family: "step", at },
          ] as const)
        : []),
    ];
    return fitted ?? (list[draw(list.length)] as DualFeasible);
  };
  const kerf = problem.kerf ?? 0;
  return usefulSheets(problem).map((sheet) => {
    const { width, height } = usableSize(sheet);
    const drawPair = () => ({ x: drawFunction(sheet, width + kerf), y: drawFunction(sheet, height + kerf) });
    const besides = Array.from({ length: draw(3) }, drawPair);
    return {
      sheet: sheet.id,
      ...drawPair(),
      ...(besides.length === 0 ? {} : { besides }),
      capacity: draw(2) === 0 ? width * height : 1 + draw(20),
    };
  });
}

/**
 * Some extents of the pieces on a sheet, with values; undefined where a window may be opened, nothing came out, or the
 * sheet has too many units for the measure to go through them.
 */
function drawFitted(problem: Problem, sheet: Sheet, draw: Draw): DualFeasible | undefined {
  const { width, height } = usableSize(sheet);
  const room = Math.min(width, height);
  if (Math.max(width, height) > 100) return undefined;
  const values: FittedValue[] = [];
  for (const kind of problem.kinds) {
    if (kind.quantity === 0) continue;
    const ways = kind.forms.flatMap((form) => lies(form, sheet));
    if (ways.some(([, , a]) => a > 0)) return undefined;
    for (const extent of new Set([...ways.map(([w]) => w), ...ways.map(([, h]) => h)])) {
      if (extent <= room && draw(3) > 0) values.push({ kind: kind.id, extent, value: 1 + draw(6) });
    }
  }
  return values.length === 0 ? undefined : { family: "fitted", values };
}

/** Some kinds with prices; undefined where they prove nothing or the oracle would have to look at too much. */
function drawPrices(problem: Problem, seed: number): readonly KindPrice[] | undefined {
  const draw = drawFrom(seed, 1000);
  const isLarge = problem.sheets.some(
    (sheet) => Math.max(usableSize(sheet).width, usableSize(sheet).height) > 60,
  );
  const hasWindows = problem.kinds.some(({ forms }) => forms.some(({ hidden }) => hidden !== undefined));
  if (isLarge || hasWindows || problem.mode === "stopped") return undefined;
  return problem.kinds.flatMap(({ id }) => (draw(4) > 0 ? [{ kind: id, price: 1 + draw(30) }] : []));
}

function boundByPrices(problem: Problem, seed: number) {
  const prices = drawPrices(problem, seed);
  if (prices === undefined) return null;
  try {
    return boundOfPrices(problem, prices, (sheet) => guillotineOracle(problem, prices, sheet));
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** Whether the functions give every kind a weight, so that they limit an unlimited quantity. */
function boundBy(problem: Problem, weights: readonly SheetWeights[]) {
  try {
    return boundOf(problem, weights, byPaper);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function withBound(plan: ValidPlan, bound: ValidPlan["packing"]["bound"]): ValidPlan {
  const { problem, packing } = plan;
  const counts = new Map(packing.placed.map(({ kind, count }) => [kind, count]));
  return { problem, packing: describePlan(problem, packing.layouts, bound, counts) };
}

function boundOfAll(plan: DamagedPlan) {
  const { bound } = plan.packing;
  if (bound.aim !== "all" || bound.certificate.type !== "weights") throw new TypeError("Another bound.");
  return { bound, sheets: bound.certificate.sheets };
}

/** The least step between two costs. */
function unitOf(problem: Problem): bigint {
  let unit = 0n;
  for (const sheet of problem.sheets) {
    let [a, b] = [unit, costOf(sheet)];
    while (b > 0n) [a, b] = [b, a % b];
    unit = a;
  }
  return unit;
}

describe("a bound", () => {
  it("is accepted in the examples", () => {
    for (const plan of [examplePlan, stoppedPlan, windowPlan]) expect(findingsOf(copyOf(plan))).toEqual([]);
  });

  it("is accepted for any dual-feasible functions on the two axes, as far as they prove it", () => {
    fc.assert(
      fc.property(validPlans(), fc.nat(0xffff), (plan, seed) => {
        const bound = boundBy(plan.problem, drawWeights(plan.problem, seed));
        fc.pre(bound !== null);
        expect(findingsOf(copyOf(withBound(plan, bound as NonNullable<typeof bound>)))).toEqual([]);
      }),
    );
  });

  it("is accepted for any prices of kinds, as far as they prove it, and never proves more than a plan", () => {
    let all = 0;
    fc.assert(
      fc.property(
        validPlans({ complete: true, windows: false, small: true }),
        fc.nat(0xffff),
        (plan, seed) => {
          const bound = boundByPrices(plan.problem, seed);
          if (bound === null) return;
          all += 1;
          expect(findingsOf(copyOf(withBound(plan, bound)))).toEqual([]);
          if (bound.aim === "fill") {
            expect(BigInt(bound.value)).toBeGreaterThanOrEqual(BigInt(plan.packing.value));
          } else {
            expect(bound.cost).not.toBeNull();
            expect(BigInt(bound.cost ?? 0)).toBeLessThanOrEqual(BigInt(plan.packing.cost));
            expect(bound.sheets).toBeLessThanOrEqual(plan.packing.sheets);
          }
        },
      ),
    );
    expect(all).toBeGreaterThan(20);
  });

  it("never proves more than a plan that is there, whatever the functions, windows included", () => {
    fc.assert(
      fc.property(validPlans({ complete: true }), fc.nat(0xffff), (plan, seed) => {
        const { problem, packing } = plan;
        const bound = boundBy(problem, drawWeights(problem, seed));
        if (bound === null) return;
        if (bound.aim === "fill") {
          expect(BigInt(bound.value)).toBeGreaterThanOrEqual(BigInt(packing.value));
        } else {
          expect(bound.cost).not.toBeNull();
          expect(BigInt(bound.cost ?? 0)).toBeLessThanOrEqual(BigInt(packing.cost));
          expect(bound.sheets).toBeLessThanOrEqual(packing.sheets);
        }
      }),
    );
  });
});

describe("verify refuses a bound raised by one unit", () => {
  it("in the example", () => {
    const plan = copyOf(examplePlan);
    boundOfAll(plan).bound.cost = "630";
    expect(codesOf(plan)).toEqual(["bound-not-proven at bound.cost"]);
    boundOfAll(plan).bound.cost = "421";
    expect(codesOf(plan)).toEqual(["bound-not-proven at bound.cost"]);
    boundOfAll(plan).bound.cost = "420";
    boundOfAll(plan).bound.sheets = 3;
    expect(codesOf(plan)).toEqual(["bound-not-proven at bound.sheets"]);
  });

  it("above what the certificate gives", () => {
    fc.assert(
      fc.property(validPlans(), fc.boolean(), (valid, byUnit) => {
        const plan = copyOf(valid);
        const { bound } = plan.packing;
        if (bound.aim === "fill") {
          fc.pre(bound.value !== "0");
          bound.value = String(BigInt(bound.value) - 1n);
          expectFinding(plan, "bound-not-proven", "bound.value");
          return;
        }
        fc.pre(bound.cost !== null && bound.sheets !== null);
        bound.sheets = Number(bound.sheets) + 1;
        const unit = byUnit ? unitOf(valid.problem) : 1n;
        bound.cost = String(BigInt(bound.cost ?? 0) + (unit === 0n ? 1n : unit));
        expectFinding(plan, "bound-not-proven", "bound.cost");
        expectFinding(plan, "bound-not-proven", "bound.sheets");
      }),
    );
  });

  it("to what no plan could reach, so that too little stock passes for proven", () => {
    fc.assert(
      fc.property(validPlans({ aim: "all" }), (valid) => {
        const plan = copyOf(valid);
        const { bound } = plan.packing;
        fc.pre(bound.aim === "all" && bound.cost !== null);
        if (bound.aim !== "all") return;
        bound.cost = null;
        bound.sheets = null;
        expectFinding(plan, "bound-not-proven", "bound.cost");
        expectFinding(plan, "bound-not-proven", "bound.sheets");
        if (plan.packing.missing.length > 0) {
          plan.packing.outcome = "short";
          plan.packing.proven = true;
          expectFinding(plan, "wrong-outcome", "outcome");
          expectFinding(plan, "wrong-proven", "proven");
        }
      }),
    );
  });

  it("to the plan's own cost, so that it passes for proven", () => {
    fc.assert(
      fc.property(validPlans({ aim: "all", complete: true }), (valid) => {
        fc.pre(!valid.packing.proven);
        const plan = copyOf(valid);
        boundOfAll(plan).bound.cost = plan.packing.cost;
        plan.packing.proven = true;
        expectFinding(plan, "bound-not-proven", "bound.cost");
        expectFinding(plan, "wrong-proven", "proven");
      }),
    );
  });

  it("and one that states less than is proven, since it is then not what the certificate gives", () => {
    fc.assert(
      fc.property(validPlans(), (valid) => {
        const plan = copyOf(valid);
        const { bound } = plan.packing;
        if (bound.aim === "fill") {
          bound.value = String(BigInt(bound.value) + 1n);
          expectFinding(plan, "bound-understated", "bound.value");
        } else if (bound.cost === null) {
          bound.cost = plan.packing.cost;
          bound.sheets = plan.packing.sheets;
          expectFinding(plan, "bound-understated", "bound.cost");
          expectFinding(plan, "bound-understated", "bound.sheets");
        } else {
          fc.pre(bound.cost !== "0" && bound.sheets !== 0);
          bound.cost = String(BigInt(bound.cost) - 1n);
          bound.sheets = Number(bound.sheets) - 1;
          expectFinding(plan, "bound-understated", "bound.cost");
          expectFinding(plan, "bound-understated", "bound.sheets");
        }
      }),
    );
  });
});

describe("verify refuses a false certificate", () => {
  it("whose function has a parameter out of its range, in the example", () => {
    const plan = copyOf(examplePlan);
    const [entry] = boundOfAll(plan).sheets;
    // The usable 13 and the kerf of 1 make 14, and 8 is more than its half: two mats of 6 and 8 would count 28 of 14.
    if (entry !== undefined) entry.x = { family: "threshold", at: 8 };
    expect(codesOf(plan)).toEqual(["not-dual-feasible at bound.certificate.sheets[0].x.at"]);
  });

  it("whose function has a parameter out of its range", () => {
    fc.assert(
      fc.property(validPlans(), fc.nat(0xffff), fc.boolean(), fc.nat(5), (valid, which, isX, choice) => {
        const plan = copyOf(valid);
        const { certificate } = plan.packing.bound;
        fc.pre(certificate.type === "weights" && certificate.sheets.length > 0);
        if (certificate.type !== "weights") return;
        const index = which % certificate.sheets.length;
        const entry = certificate.sheets[index];
        const sheet = valid.problem.sheets.find(({ id }) => id === entry?.sheet);
        if (entry === undefined || sheet === undefined) throw new TypeError("No entry.");
        const usable = usableSize(sheet);
        const extent = (isX ? usable.width : usable.height) + (valid.problem.kerf ?? 0);
        const beyondHalf = Math.floor(extent / 2) + 1;
        const bad = [
          { family: "threshold", at: beyondHalf },
          { family: "step", at: beyondHalf },
          { family: "threshold", at: 0 },
          { family: "step", at: 0.5 },
          { family: "rounding", k: 0 },
          { family: "rounding", k: 1.5 },
        ] as const;
        Object.assign(entry, { [isX ? "x" : "y"]: bad[choice] });
        const name = choice >= 4 ? "k" : "at";
        const path = `bound.certificate.sheets[${index}].${isX ? "x" : "y"}.${name}`;
        expectFinding(plan, "not-dual-feasible", path);
      }),
    );
  });

  it("whose weights are doctored, exactly where that changes what they prove", () => {
    let [changed, all] = [0, 0];
    fc.assert(
      fc.property(validPlans(), fc.nat(0xffff), fc.integer({ min: 2, max: 9 }), (valid, which, factor) => {
        const plan = copyOf(valid);
        const { bound } = plan.packing;
        if (bound.certificate.type !== "weights") return;
        const { sheets } = bound.certificate;
        fc.pre(sheets.length > 1);
        const entry = sheets[which % sheets.length];
        if (entry !== undefined) entry.capacity = (entry.capacity * factor) % 1_000_003 || 1;
        const honest = boundOf(valid.problem, sheets);
        const codes = findingsOf(plan).map(({ code }) => code);
        const isRefused = codes.includes("bound-not-proven") || codes.includes("bound-understated");
        const stated = valid.packing.bound;
        const isStill =
          honest.aim === "fill"
            ? stated.aim === "fill" && honest.value === stated.value
            : stated.aim === "all" && honest.cost === stated.cost && honest.sheets === stated.sheets;
        all += 1;
        if (!isStill) changed += 1;
        expect(isRefused).toBe(!isStill);
      }),
    );
    expect(changed / all).toBeGreaterThan(0.05);
  });

  describe("with fitted values", () => {
    // With the kerf a mat of 7 takes 8 of a row of 14: one stands in a row, so the capacity is 1.
    const fittedPlan = () => {
      const plan = copyOf(examplePlan);
      const [entry] = boundOfAll(plan).sheets;
      const mat = plan.problem.kinds[0]?.id ?? "";
      const values = [{ kind: mat, extent: 7, value: 1 }];
      if (entry !== undefined) entry.x = { family: "fitted", values };
      return { plan, values };
    };
    const place = "bound.certificate.sheets[0].x.values";
    const refused = (
      damage: (of: ReturnType<typeof fittedPlan>) => void,
      code: FindingCode,
      path: string,
    ) => {
      const fitted = fittedPlan();
      damage(fitted);
      expectFinding(fitted.plan, code, path);
    };

    it("that are no list of values", () => {
      refused(
        ({ values }) => Object.assign(values[0] ?? {}, { value: 0 }),
        "out-of-range",
        `${place}[0].value`,
      );
      refused(
        ({ values }) => Object.assign(values[0] ?? {}, { value: 1.5 }),
        "out-of-range",
        `${place}[0].value`,
      );
      refused(
        ({ values }) => Object.assign(values[0] ?? {}, { value: 1_000_001 }),
        "out-of-range",
        `${place}[0].value`,
      );
      refused(
        ({ values }) => Object.assign(values[0] ?? {}, { extent: 0 }),
        "out-of-range",
        `${place}[0].extent`,
      );
      refused(
        ({ values }) => Object.assign(values[0] ?? {}, { kind: "flag" }),
        "unknown-kind",
        `${place}[0].kind`,
      );
      refused(({ values }) => Object.assign(values[0] ?? {}, { kind: 3 }), "wrong-type", `${place}[0].kind`);
      refused(
        ({ plan }) => Object.assign(boundOfAll(plan).sheets[0]?.x ?? {}, { values: 3 }),
        "wrong-type",
        place,
      );
    });

    it("of which none fits a row, or two speak of the same extent", () => {
      refused(({ values }) => values.splice(0), "not-dual-feasible", place);
      refused(({ values }) => Object.assign(values[0] ?? {}, { extent: 14 }), "not-dual-feasible", place);
      refused(
        ({ values }) => values.push({ ...(values[0] as FittedValue) }),
        "not-dual-feasible",
        `${place}[1]`,
      );
    });

    it("that belong to another problem, exactly where that changes what they prove", () => {
      let [changed, all] = [0, 0];
      fc.assert(
        fc.property(validPlans({ aim: "all", windows: false }), fc.nat(0xffff), (valid, seed) => {
          // Of many sheets one more or less is needed where of one or two the same number would do.
          const problem: Problem = {
            ...valid.problem,
            kinds: valid.problem.kinds.map((kind) => ({ ...kind, quantity: 20 * (kind.quantity ?? 0) })),
            sheets: valid.problem.sheets.map((sheet) => ({ ...sheet, stock: null })),
          };
          const bound = boundBy(problem, drawWeights(problem, seed));
          fc.pre(bound?.aim === "all");
          if (bound?.aim !== "all") return;
          const plan = copyOf(withBound({ ...valid, problem }, bound));
          const functions = boundOfAll(plan).sheets.flatMap(({ x, y, besides }) => [
            x,
            y,
            ...(besides ?? []).flatMap((pair) => [pair.x, pair.y]),
          ]);
          const values = functions.flatMap((f) => (f.family === "fitted" ? f.values : []));
          fc.pre(values.length > 0);
          const entry = values[seed % values.length];
          if (entry !== undefined) entry.value += 1 + (seed % 5);
          const honest = boundOf(problem, boundOfAll(plan).sheets, byPaper);
          const codes = findingsOf(plan).map(({ code }) => code);
          const isRefused = codes.includes("bound-not-proven") || codes.includes("bound-understated");
          const isStill =
            honest.aim === "all" && honest.cost === bound.cost && honest.sheets === bound.sheets;
          all += 1;
          if (!isStill) changed += 1;
          expect(isRefused).toBe(!isStill);
        }),
      );
      expect(changed / all).toBeGreaterThan(0.02);
    });

    it("where pieces may come out of other pieces", () => {
      const plan = copyOf(windowPlan);
      const [entry] = boundOfAll(plan).sheets;
      const kind = plan.problem.kinds[0];
      const extent = kind?.forms[0]?.width ?? 0;
      const f = { family: "fitted" as const, values: [{ kind: kind?.id ?? "", extent, value: 1 }] };
      if (entry !== undefined) entry.x = f;
      expectFinding(plan, "not-dual-feasible", "bound.certificate.sheets[0].x");
      if (entry !== undefined) Object.assign(entry, { x: { family: "identity" }, besides: [{ x: f, y: f }] });
      expectFinding(plan, "not-dual-feasible", "bound.certificate.sheets[0].besides[0].y");
    });
  });

  describe("of prices", () => {
    const pricedPlan = () => {
      const plan = copyOf(examplePlan);
      const prices = plan.problem.kinds.map(({ id }) => ({ kind: id, price: 1 }));
      plan.packing.bound.certificate = { type: "prices", prices };
      return { plan, prices };
    };
    const place = "bound.certificate.prices";

    it("that are no list of prices", () => {
      const refused = (
        damage: (of: ReturnType<typeof pricedPlan>) => void,
        code: FindingCode,
        path: string,
      ) => {
        const priced = pricedPlan();
        damage(priced);
        expectFinding(priced.plan, code, path);
      };
      const first = ({ prices }: ReturnType<typeof pricedPlan>) => prices[0] ?? {};
      refused((of) => Object.assign(first(of), { price: 0 }), "out-of-range", `${place}[0].price`);
      refused((of) => Object.assign(first(of), { price: 0.5 }), "out-of-range", `${place}[0].price`);
      refused(
        (of) => Object.assign(first(of), { price: 1_000_000_001 }),
        "out-of-range",
        `${place}[0].price`,
      );
      refused((of) => Object.assign(first(of), { kind: "flag" }), "unknown-kind", `${place}[0].kind`);
      refused(
        (of) => of.prices.push({ kind: of.prices[0]?.kind ?? "", price: 2 }),
        "out-of-range",
        `${place}[2].kind`,
      );
      refused((of) => Object.assign(of.plan.packing.bound.certificate, { prices: {} }), "wrong-type", place);
    });

    it("where cuts may stop inside the part, or pieces come out of other pieces", () => {
      for (const wrong of [stoppedPlan, windowPlan]) {
        const plan = copyOf(wrong);
        const prices = plan.problem.kinds.map(({ id }) => ({ kind: id, price: 1 }));
        plan.packing.bound.certificate = { type: "prices", prices };
        expectFinding(plan, "certificate-wrong-mode", "bound.certificate");
      }
    });

    it("that are doctored, exactly where that changes what they prove", () => {
      let [changed, all] = [0, 0];
      fc.assert(
        fc.property(
          validPlans({ aim: "all", windows: false, small: true }),
          fc.nat(0xffff),
          (valid, seed) => {
            const bound = boundByPrices(valid.problem, seed);
            if (bound?.aim !== "all" || bound.certificate.type !== "prices") return;
            const prices = bound.certificate.prices.map(({ kind, price }, i, list) => ({
              kind,
              price: i === seed % list.length ? price + 40 : price,
            }));
            const plan = copyOf(withBound(valid, { ...bound, certificate: { type: "prices", prices } }));
            const honest = boundOfPrices(valid.problem, prices, (sheet) =>
              guillotineOracle(valid.problem, prices, sheet),
            );
            const codes = findingsOf(plan).map(({ code }) => code);
            const isRefused = codes.includes("bound-not-proven") || codes.includes("bound-understated");
            const isStill =
              honest.aim === "all" && honest.cost === bound.cost && honest.sheets === bound.sheets;
            all += 1;
            if (!isStill) changed += 1;
            expect(isRefused).toBe(!isStill);
          },
        ),
      );
      expect(changed / all).toBeGreaterThan(0.05);
    });
  });

  it("whose pairs besides are no pairs of functions", () => {
    const broken = [
      [3, "wrong-type", "besides"],
      [[3], "wrong-type", "besides[0]"],
      [[{ x: { family: "identity" } }], "missing-value", "besides[0].y"],
      [[{ x: { family: "identity" }, y: { family: "step", at: 0 } }], "not-dual-feasible", "besides[0].y.at"],
    ] as const;
    for (const [besides, code, path] of broken) {
      const plan = copyOf(examplePlan);
      Object.assign(boundOfAll(plan).sheets[0] ?? {}, { besides });
      expectFinding(plan, code, `bound.certificate.sheets[0].${path}`);
    }
  });

  it("whose capacity is no number of weights", () => {
    for (const capacity of [0, -196, 1.5, Number.NaN, 2 ** 53]) {
      const plan = copyOf(examplePlan);
      const [entry] = boundOfAll(plan).sheets;
      if (entry !== undefined) entry.capacity = capacity;
      expectFinding(plan, "out-of-range", "bound.certificate.sheets[0].capacity");
    }
  });

  it("that leaves out a sheet, names one twice, or names one that carries nothing", () => {
    const plan = copyOf(examplePlan);
    const { sheets } = boundOfAll(plan);
    const [entry] = sheets;
    if (entry === undefined) throw new TypeError("No entry.");
    sheets.push({ ...entry });
    expect(codesOf(plan)).toEqual(["certificate-sheet-twice at bound.certificate.sheets[1].sheet"]);
    sheets[1] = { ...entry, sheet: "ember" };
    expect(codesOf(plan)).toEqual(["certificate-sheet-extra at bound.certificate.sheets[1].sheet"]);
    plan.problem.sheets.push({ id: "ember", width: 4, height: 100, cost: 210 });
    expect(codesOf(plan)).toEqual(["certificate-sheet-extra at bound.certificate.sheets[1].sheet"]);
    sheets.pop();
    expect(codesOf(plan)).toEqual([]);
    plan.problem.sheets[1] = { id: "ember", width: 5, height: 5, cost: 210 };
    expect(codesOf(plan)).toEqual(["certificate-sheet-missing at bound.certificate.sheets"]);
  });

  it("that leaves out any sheet", () => {
    fc.assert(
      fc.property(validPlans(), fc.nat(0xffff), (valid, which) => {
        const plan = copyOf(valid);
        const { certificate } = plan.packing.bound;
        fc.pre(certificate.type === "weights" && certificate.sheets.length > 0);
        if (certificate.type !== "weights") return;
        certificate.sheets.splice(which % certificate.sheets.length, 1);
        expectFinding(plan, "certificate-sheet-missing", "bound.certificate.sheets");
      }),
    );
  });

  it("that says of any kind that it fits no sheet", () => {
    fc.assert(
      fc.property(validPlans({ aim: "all" }), fc.nat(0xffff), (valid, which) => {
        const plan = copyOf(valid);
        const placed = valid.packing.placed.filter(({ count }) => count > 0);
        fc.pre(placed.length > 0);
        const kind = placed[which % placed.length]?.kind ?? "";
        plan.packing.bound = { aim: "all", cost: null, sheets: null, certificate: { type: "no-fit", kind } };
        expectFinding(plan, "certificate-fits", "bound.certificate.kind");
      }),
    );
  });
});

describe("a kind that fits no sheet", () => {
  const impossible = () => {
    const plan = copyOf(examplePlan);
    plan.problem.kinds.push({ id: "banner", quantity: 1, forms: [{ width: 14, height: 2 }] });
    plan.packing.placed.push({ kind: "banner", count: 0 });
    plan.packing.missing.push({ kind: "banner", count: 1 });
    plan.packing.outcome = "short";
    plan.packing.bound = {
      aim: "all",
      cost: null,
      sheets: null,
      certificate: { type: "no-fit", kind: "banner" },
    };
    return plan;
  };

  it("proves that the stock is short", () => {
    expect(findingsOf(impossible())).toEqual([]);
  });

  it("is worth nothing as a proof where none of it is wanted", () => {
    const plan = impossible();
    const banner = plan.problem.kinds[2];
    if (banner !== undefined) banner.quantity = 0;
    expectFinding(plan, "certificate-fits", "bound.certificate.kind");
  });

  it("is not called a mere failure of the search", () => {
    const plan = impossible();
    plan.packing.outcome = "not-found";
    expect(codesOf(plan)).toEqual(["wrong-outcome at outcome"]);
  });

  it("has a name of the problem", () => {
    const plan = impossible();
    plan.packing.bound.certificate = { type: "no-fit", kind: "flag" };
    expectFinding(plan, "unknown-kind", "bound.certificate.kind");
  });

  it("limits no value", () => {
    const plan = copyOf(examplePlan);
    plan.problem.aim = "fill";
    plan.packing.aim = "fill";
    plan.problem.kinds.push({ id: "banner", quantity: 1, forms: [{ width: 14, height: 2 }] });
    plan.packing.placed.push({ kind: "banner", count: 0 });
    plan.packing.bound = { aim: "fill", value: "235", certificate: { type: "no-fit", kind: "banner" } };
    expectFinding(plan, "bound-not-proven", "bound.value");
  });
});

describe("windows in the bound", () => {
  it("count only where a wanted piece is small enough to come out of one", () => {
    const plan = copyOf(windowPlan);
    const tag = plan.problem.kinds[1];
    if (tag !== undefined) tag.quantity = 0;
    const root = plan.packing.layouts[0]?.tree;
    if (root?.type === "piece") delete root.window;
    plan.packing.placed[1] = { kind: "tag", count: 0 };
    plan.packing.value = "80";
    expect(findingsOf(plan)).toEqual([]);
    expect(statedCounts(plan).get("tag")).toBe(0);
  });

  it("keep it below two sheets where area alone would ask for them", () => {
    // A tag of 5 x 7 takes the whole hidden part: 80 + 35 is more than the 80 of one sheet.
    const plan = copyOf(windowPlan);
    plan.problem.kinds[1] = { id: "tag", quantity: 1, forms: [{ width: 7, height: 5 }] };
    plan.packing.value = "115";
    const root = plan.packing.layouts[0]?.tree;
    if (root?.type !== "piece") throw new TypeError("The example has changed.");
    const tree = { type: "piece" as const, shares: [{ kind: "tag", form: 0, turned: false, count: 1 }] };
    root.window = { x: 1, y: 1, width: 7, height: 5, tool: "knife", tree };
    expect(findingsOf(plan)).toEqual([]);
    const { bound } = plan.packing;
    if (bound.aim !== "all") throw new TypeError("Another bound.");
    bound.cost = "160";
    bound.sheets = 2;
    expectFinding(plan, "bound-not-proven", "bound.cost");
  });
});
