import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { leftover } from "../cut-sheet.js";
import { validPlans } from "../valid-plan.js";
import {
  codesOf,
  copyOf,
  correctTotals,
  type DamagedPlan,
  exampleSplit,
  expectFinding,
  expectRefusal,
  findingsOf,
  layoutsOf,
  type Mutable,
  piecesOf,
  type Site,
  statedCounts,
} from "./damage.js";
import { examplePlan } from "./example-plan.js";

describe("verify refuses a dropped piece", () => {
  /** Takes a piece out and leaves a rightly called leftover. */
  function drop(
    plan: DamagedPlan,
    site: Site<Mutable<{ type: "piece"; shares: unknown[] }>>,
  ): Map<string, number> {
    const counts = statedCounts(plan);
    for (const share of site.node.shares as Mutable<{ kind: string; count: number }>[]) {
      counts.set(share.kind, (counts.get(share.kind) ?? 0) - share.count);
    }
    site.replace(leftover(plan.problem as never, site) as never);
    return counts;
  }
  const plans = validPlans({ mode: "guillotine", aim: "all", complete: true, windows: false });

  it("in the example", () => {
    const plan = copyOf(examplePlan);
    const column = exampleSplit(plan, 1);
    if (column.parts[1]) column.parts[1].node = { type: "offcut" };
    expect(codesOf(plan)).toEqual([
      "wrong-placed at placed[1].count",
      "wrong-missing at missing",
      "wrong-value at value",
      "wrong-outcome at outcome",
      "wrong-proven at proven",
    ]);
  });

  it("that the list of placed copies still counts", () => {
    expectRefusal(plans, piecesOf, (plan, site) => {
      const kind = site.node.shares[0]?.kind;
      drop(plan, site as never);
      const index = plan.problem.kinds.findIndex(({ id }) => id === kind);
      expectFinding(plan, "wrong-placed", `placed[${index}].count`);
    });
  });

  it("that no list counts and nobody misses", () => {
    expectRefusal(plans, piecesOf, (plan, site) => {
      correctTotals(plan, drop(plan, site as never));
      expectFinding(plan, "wrong-missing", "missing");
      expectFinding(plan, "wrong-outcome", "outcome");
    });
  });

  it("that is listed as missing in a plan called complete", () => {
    expectRefusal(plans, piecesOf, (plan, site) => {
      const counts = drop(plan, site as never);
      correctTotals(plan, counts);
      plan.packing.missing = plan.problem.kinds
        .map(({ id, quantity }) => ({ kind: id, count: (quantity ?? 0) - (counts.get(id) ?? 0) }))
        .filter(({ count }) => count > 0);
      const codes = findingsOf(plan).map(({ code }) => code);
      expect(codes).toContain("wrong-outcome");
      expect(codes.filter((code) => code !== "wrong-proven")).toEqual(["wrong-outcome"]);
    });
  });
});

describe("verify refuses a duplicated piece", () => {
  const plans = validPlans({ mode: "guillotine", aim: "all", complete: true, windows: false });

  it("in the example", () => {
    const plan = copyOf(examplePlan);
    const panel = exampleSplit(plan, 1).parts[1]?.node;
    if (panel?.type === "piece") panel.shares = [{ kind: "panel", form: 0, turned: false, count: 2 }];
    expect(codesOf(plan)).toEqual([
      "too-many-placed at placed[1]",
      "wrong-placed at placed[1].count",
      "wrong-value at value",
    ]);
  });

  it("whose share stands twice", () => {
    expectRefusal(plans, piecesOf, (plan, { node, path }) => {
      const share = node.shares[0];
      if (share === undefined) throw new TypeError("A piece without shares.");
      const index = plan.problem.kinds.findIndex(({ id }) => id === share.kind);
      node.shares.push({ ...share });
      expectFinding(plan, "too-many-placed", `placed[${index}]`);
      expectFinding(plan, "wrong-placed", `placed[${index}].count`);
      const run = plan.packing.layouts[Number(/\d+/.exec(path)?.[0])]?.run ?? 0;
      if (2 * share.count > run) expectFinding(plan, "shares-exceed-run", `${path}.shares`);
    });
  });

  it("whose layout stands twice, with all totals corrected", () => {
    expectRefusal(plans, layoutsOf, (plan, { layout, index }) => {
      const counts = statedCounts(plan);
      const shares = piecesOf(plan)
        .filter((site) => site.layout === index)
        .flatMap((site) => site.node.shares);
      fc.pre(shares.length > 0);
      for (const { kind, count } of shares) counts.set(kind, (counts.get(kind) ?? 0) + count);
      plan.packing.layouts.push(structuredClone(layout));
      plan.packing.sheets += layout.run;
      correctTotals(plan, counts);
      const first = plan.problem.kinds.findIndex(({ id }) => shares.some(({ kind }) => kind === id));
      expectFinding(plan, "too-many-placed", `placed[${first}]`);
    });
  });
});

describe("verify refuses a wrong run count", () => {
  it("in the example", () => {
    const plan = copyOf(examplePlan);
    const layout = plan.packing.layouts[0];
    if (layout !== undefined) layout.run = 3;
    expect(codesOf(plan)).toEqual(["wrong-sheets at sheets", "wrong-cost at cost", "wrong-proven at proven"]);
    if (layout !== undefined) layout.run = 1;
    expectFinding(plan, "shares-exceed-run", "layouts[0].tree.parts[0].node.parts[0].node.shares");
  });

  it("of one sheet too many", () => {
    expectRefusal(validPlans(), layoutsOf, (plan, { layout }) => {
      layout.run += 1;
      expectFinding(plan, "wrong-sheets", "sheets");
      const sheet = plan.problem.sheets.find(({ id }) => id === layout.sheet);
      if (sheet?.cost !== 0) expectFinding(plan, "wrong-cost", "cost");
    });
  });

  it("of one sheet too few, even with the sheets and their cost corrected", () => {
    const full = (plan: DamagedPlan) =>
      piecesOf(plan).filter((site) => {
        const run = plan.packing.layouts[site.layout]?.run ?? 0;
        const count = site.node.shares.reduce((sum, share) => sum + share.count, 0);
        return run > 1 && count === run && !site.isInWindow;
      });
    expectRefusal(validPlans(), full, (plan, { path, layout }) => {
      const entry = plan.packing.layouts[layout];
      const sheet = plan.problem.sheets.find(({ id }) => id === entry?.sheet);
      if (entry === undefined || sheet === undefined) throw new TypeError("No layout.");
      entry.run -= 1;
      plan.packing.sheets -= 1;
      const cost = BigInt(sheet.cost ?? sheet.width * sheet.height);
      plan.packing.cost = String(BigInt(plan.packing.cost) - cost);
      expectFinding(plan, "shares-exceed-run", `${path}.shares`);
    });
  });

  it("that is no count at all", () => {
    for (const run of [0, -1, 1.5, Number.NaN, Number.POSITIVE_INFINITY, 2 ** 53]) {
      const plan = copyOf(examplePlan);
      if (plan.packing.layouts[0] !== undefined) plan.packing.layouts[0].run = run;
      expectFinding(plan, "out-of-range", "layouts[0].run");
    }
  });
});
