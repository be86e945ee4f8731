import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { validPlans } from "../valid-plan.js";
import { codesOf, copyOf, expectFinding, findingsOf, isPiece, sitesOf } from "./damage.js";
import { examplePlan } from "./example-plan.js";

describe("verify refuses totals that are not those of the layouts", () => {
  it("a wrong cost", () => {
    fc.assert(
      fc.property(validPlans(), fc.boolean(), (valid, isMore) => {
        const plan = copyOf(valid);
        const cost = BigInt(plan.packing.cost);
        fc.pre(isMore || cost > 0n);
        plan.packing.cost = String(isMore ? cost + 1n : cost - 1n);
        expect(codesOf(plan)).toEqual(["wrong-cost at cost"]);
      }),
    );
  });

  it("a wrong value, number of sheets or copies, or proven flag, and nothing else with it", () => {
    const damages = fc.constantFrom("value", "sheets", "placed", "proven");
    fc.assert(
      fc.property(validPlans(), damages, fc.nat(0xffff), (valid, damage, which) => {
        const plan = copyOf(valid);
        const { packing } = plan;
        const index = which % Math.max(1, packing.placed.length);
        const entry = packing.placed[index];
        if (damage === "value") packing.value = String(BigInt(packing.value) + 1n);
        else if (damage === "sheets") packing.sheets += 1;
        else if (damage === "proven") packing.proven = !packing.proven;
        else if (entry !== undefined) entry.count += 1;
        else return;
        const path = damage === "placed" ? `placed[${index}].count` : damage;
        expect(codesOf(plan)).toEqual([`wrong-${damage} at ${path}`]);
      }),
    );
  });

  it("a count that is left out, stands twice, or in another order", () => {
    const plan = copyOf(examplePlan);
    const [mat, panel] = plan.packing.placed;
    if (mat === undefined || panel === undefined) throw new TypeError("The example has changed.");
    plan.packing.placed = [mat];
    expect(codesOf(plan)).toEqual(["wrong-placed at placed"]);
    plan.packing.placed = [panel, mat];
    expect(codesOf(plan)).toEqual(["wrong-placed at placed[0].kind", "wrong-placed at placed[1].kind"]);
    plan.packing.placed = [mat, panel, { ...panel }];
    expect(codesOf(plan)).toEqual(["wrong-placed at placed[2].kind"]);
    plan.packing.placed = [mat, panel, { kind: "banner", count: 1 }];
    expect(codesOf(plan)).toEqual(["unknown-kind at placed[2].kind"]);
  });

  it("a missing copy of a kind that is not missing, and one that is left out", () => {
    fc.assert(
      fc.property(validPlans(), (valid) => {
        const plan = copyOf(valid);
        const first = plan.packing.missing.shift();
        if (first === undefined) {
          fc.pre(plan.packing.placed.length > 0);
          plan.packing.missing.push({ kind: plan.packing.placed[0]?.kind ?? "", count: 1 });
          expect(codesOf(plan)).toEqual(["wrong-missing at missing[0].kind"]);
        } else {
          expect(findingsOf(plan).map(({ code }) => code)).toContain("wrong-missing");
        }
      }),
    );
  });

  it("a wrong outcome, whichever it is", () => {
    fc.assert(
      fc.property(validPlans(), fc.nat(1), (valid, which) => {
        const plan = copyOf(valid);
        const { outcome } = plan.packing;
        const others = (["complete", "short", "not-found"] as const).filter((other) => other !== outcome);
        plan.packing.outcome = others[which] ?? "complete";
        // With the aim fill either word may stand where the certificate proves the stock short.
        fc.pre(!(plan.packing.aim === "fill" && outcome !== "complete" && plan.packing.outcome === "short"));
        expect(codesOf(plan)).toEqual(["wrong-outcome at outcome"]);
      }),
    );
  });

  it("counts beyond 2^53, which must not be rounded away", () => {
    const plan = copyOf(examplePlan);
    const [mat] = plan.problem.kinds;
    if (mat !== undefined) mat.value = Number.MAX_SAFE_INTEGER;
    plan.packing.value = (6n * BigInt(Number.MAX_SAFE_INTEGER) + 25n).toString();
    expect(codesOf(plan)).toEqual([]);
    plan.packing.value = (6n * BigInt(Number.MAX_SAFE_INTEGER) + 26n).toString();
    expect(codesOf(plan)).toEqual(["wrong-value at value"]);
  });
});

describe("verify refuses more than the stock", () => {
  it("of any sheet that is used", () => {
    fc.assert(
      fc.property(validPlans(), fc.nat(0xffff), (valid, which) => {
        const plan = copyOf(valid);
        const layout = plan.packing.layouts[which % plan.packing.layouts.length];
        const sheet = plan.problem.sheets.find(({ id }) => id === layout?.sheet);
        if (sheet === undefined) throw new TypeError("No sheet.");
        const used = plan.packing.layouts
          .filter((other) => other.sheet === sheet.id)
          .reduce((sum, { run }) => sum + run, 0);
        sheet.stock = used - 1;
        expectFinding(plan, "over-stock", "layouts");
      }),
    );
  });

  it("of a sheet that two layouts share", () => {
    const plan = copyOf(examplePlan);
    const [layout] = plan.packing.layouts;
    if (layout === undefined) throw new TypeError("The example has changed.");
    plan.packing.layouts.push({ ...layout, tree: { type: "offcut" } });
    expectFinding(plan, "over-stock", "layouts");
  });
});

describe("verify refuses what belongs together on two sheets", () => {
  it("in two layouts", () => {
    fc.assert(
      fc.property(validPlans({ mode: "stopped" }), fc.nat(0xffff), (valid, which) => {
        const plan = copyOf(valid);
        const layouts = new Map<string, Set<number>>();
        for (const site of sitesOf(plan).filter(isPiece)) {
          for (const { kind } of site.node.shares) {
            layouts.set(kind, (layouts.get(kind) ?? new Set()).add(site.layout));
          }
        }
        const first = [...layouts].find(([, indices]) => indices.has(0))?.[0];
        const elsewhere = [...layouts].filter(([, indices]) => indices.size > 1 || !indices.has(0));
        fc.pre(first !== undefined && elsewhere.length > 0);
        const second = elsewhere[which % elsewhere.length]?.[0];
        for (const kind of plan.problem.kinds) {
          if (kind.id === first || kind.id === second) kind.together = "the same sheet";
        }
        expectFinding(plan, "together-split", "layouts");
      }),
    );
  });

  it("in one layout that is cut from several sheets", () => {
    fc.assert(
      fc.property(validPlans({ mode: "guillotine" }), fc.nat(0xffff), (valid, which) => {
        const plan = copyOf(valid);
        const sites = sitesOf(plan)
          .filter(isPiece)
          .filter(({ layout }) => (plan.packing.layouts[layout]?.run ?? 0) > 1);
        fc.pre(sites.length > 0);
        const site = sites[which % sites.length];
        const kind = plan.problem.kinds.find(({ id }) => id === site?.node.shares[0]?.kind);
        if (kind !== undefined) kind.together = "one sheet";
        expectFinding(plan, "together-split", `layouts[${site?.layout}].run`);
      }),
    );
  });

  it("but takes two kinds that belong together from one sheet", () => {
    const plan = copyOf(examplePlan);
    const [layout] = plan.packing.layouts;
    if (layout === undefined) throw new TypeError("The example has changed.");
    for (const kind of plan.problem.kinds) kind.together = "seam";
    expect(codesOf(plan)).toEqual(["together-split at layouts[0].run"]);
  });
});

describe("the aim fill", () => {
  const filled = () => {
    const plan = copyOf(examplePlan);
    plan.problem.aim = "fill";
    plan.packing.aim = "fill";
    for (const kind of plan.problem.kinds) kind.quantity = null;
    // Three sheets of 196 carry 588; a mat is worth 35 for 48, a panel 25 for 36: 588 x 35 / 48 = 428.75.
    plan.packing.bound = { ...plan.packing.bound, aim: "fill", value: "428" } as typeof plan.packing.bound;
    plan.packing.proven = false;
    return plan;
  };

  it("is complete with what the search found", () => {
    expect(codesOf(filled())).toEqual([]);
  });

  it("misses what is below the least", () => {
    const plan = filled();
    const panel = plan.problem.kinds[1];
    if (panel !== undefined) panel.least = 3;
    expect(codesOf(plan)).toEqual(["wrong-missing at missing", "wrong-outcome at outcome"]);
    plan.packing.missing = [{ kind: "panel", count: 2 }];
    plan.packing.outcome = "not-found";
    expect(codesOf(plan)).toEqual([]);
    plan.packing.outcome = "short";
    expect(codesOf(plan)).toEqual(["wrong-outcome at outcome"]);
  });

  it("may say that the stock is short where the certificate proves it of the least", () => {
    const plan = filled();
    const panel = plan.problem.kinds[1];
    // 17 x 36 = 612 is more than 588.
    if (panel !== undefined) panel.least = 17;
    plan.packing.missing = [{ kind: "panel", count: 16 }];
    plan.packing.outcome = "short";
    expect(codesOf(plan)).toEqual([]);
    plan.packing.outcome = "not-found";
    expect(codesOf(plan)).toEqual([]);
  });

  it("has no bound where the stock is unlimited and so is a kind of some value", () => {
    const plan = filled();
    const [sheet] = plan.problem.sheets;
    if (sheet !== undefined) sheet.stock = null;
    expect(codesOf(plan)).toEqual(["bound-not-proven at bound.value"]);
  });
});
