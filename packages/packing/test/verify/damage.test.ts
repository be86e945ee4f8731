import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { leftover } from "../cut-sheet.js";
import { validPlans } from "../valid-plan.js";
import {
  copyOf,
  correctTotals,
  type DamagedPlan,
  expectFinding,
  findingsOf,
  formOf,
  isPiece,
  isSplit,
  isStopped,
  type Mutable,
  type Site,
  sitesOf,
  statedCounts,
} from "./damage.js";
import { examplePlan, stoppedPlan } from "./example-plan.js";

/** Damages plans at a place that is chosen among those where the damage can be done. */
function expectRefusal<Place>(
  plans: ReturnType<typeof validPlans>,
  placesIn: (plan: DamagedPlan) => readonly Place[],
  damage: (plan: DamagedPlan, place: Place, choice: number) => void,
): void {
  fc.assert(
    fc.property(plans, fc.nat(0xffff), fc.nat(0xffff), (valid, which, choice) => {
      const plan = copyOf(valid);
      const places = placesIn(plan);
      fc.pre(places.length > 0);
      damage(plan, places[which % places.length] as Place, choice);
    }),
  );
}

/** Plans without kerf and trim, cut edge to edge: every tick stands in the tree. */
const plainPlans = validPlans({ kerf: false, trim: false, mode: "guillotine" });

const piecesOf = (plan: DamagedPlan) => sitesOf(plan).filter(isPiece);
const splitsOf = (plan: DamagedPlan) => sitesOf(plan).filter(isSplit);
const layoutsOf = (plan: DamagedPlan) => plan.packing.layouts.map((layout, index) => ({ layout, index }));

/** Makes a piece larger than its part by lengthening its form, as the piece lies. */
function lengthenForm(plan: DamagedPlan, site: Site, axis: "x" | "y"): void {
  if (site.node.type !== "piece") throw new TypeError("Not a piece.");
  for (const share of site.node.shares) {
    const form = formOf(plan, share);
    if ((axis === "x") !== share.turned) form.width += 1;
    else form.height += 1;
  }
}

/** Two pieces side by side in a split. */
const neighbours = (plan: DamagedPlan) =>
  splitsOf(plan).flatMap((site) =>
    site.node.parts.flatMap((part, index) => {
      const next = site.node.parts[index + 1];
      return part.node.type === "piece" && next?.node.type === "piece" ? [{ site, index }] : [];
    }),
  );

const exampleSplit = (plan: DamagedPlan, index: number) => {
  const root = plan.packing.layouts[0]?.tree;
  const column = root?.type === "split" ? root.parts[index]?.node : undefined;
  if (column?.type !== "split") throw new TypeError("The example has changed.");
  return column;
};

const codesOf = (plan: DamagedPlan) => findingsOf(plan).map(({ code, path }) => `${code} at ${path}`);

describe("verify refuses an overlap by one tick", () => {
  it("in the example, where the first column's second mat is one too high", () => {
    const plan = copyOf({ ...examplePlan, problem: { ...examplePlan.problem, kerf: 0 } });
    const [mat, panel] = plan.problem.kinds;
    if (mat === undefined || panel === undefined) throw new TypeError("The example has changed.");
    panel.forms[0] = { width: 5, height: 5 };
    mat.forms.push({ width: 7, height: 6 });
    const column = exampleSplit(plan, 0);
    const first = column.parts[0]?.node;
    if (first?.type === "piece") first.shares = [{ kind: "mat", form: 1, turned: false, count: 2 }];
    expectFinding(plan, "piece-size", "layouts[0].tree.parts[0].node.parts[0].node.shares[0]");
    expectFinding(plan, "overlap", "layouts[0].tree.parts[0].node.parts[1].node");
  });

  it("between any two pieces side by side", () => {
    expectRefusal(plainPlans, neighbours, (plan, { site, index }) => {
      const first = `${site.path}.parts[${index}].node`;
      const piece = piecesOf(plan).find(({ path }) => path === first) as Site;
      lengthenForm(plan, piece, site.node.axis);
      expectFinding(plan, "piece-size", `${first}.shares[0]`);
      const meetings = findingsOf(plan).filter(({ code }) => code === "overlap");
      // A later piece may be found on the first one, or the first one on an earlier one that grew as well.
      expect(meetings.length).toBeGreaterThan(0);
    });
  });

  it("in the tree of any split, where a part is one larger", () => {
    expectRefusal(plainPlans, splitsOf, (plan, { node, path }, choice) => {
      const part = node.parts[choice % node.parts.length];
      if (part !== undefined) part.size += 1;
      expectFinding(plan, "parts-too-large", path);
    });
  });

  it("of parts that sum to one too much while each piece fits its part", () => {
    const plan = copyOf(examplePlan);
    const column = exampleSplit(plan, 0);
    const last = column.parts[2];
    if (last !== undefined) last.size = 2;
    expect(codesOf(plan)).toEqual(["parts-too-large at layouts[0].tree.parts[0].node"]);
  });
});

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

describe("verify refuses a piece outside by one tick", () => {
  it("in the example", () => {
    const plan = copyOf(examplePlan);
    plan.problem.kinds[1]?.forms.splice(0, 1, { width: 6, height: 5 });
    expectFinding(plan, "outside", "layouts[0].tree.parts[1].node.parts[1].node");
    expectFinding(plan, "piece-size", "layouts[0].tree.parts[1].node.parts[1].node.shares[0]");
  });

  it("at the right or the bottom of the usable part", () => {
    const atTheEdge = (plan: DamagedPlan) =>
      piecesOf(plan).flatMap((site): { site: Site; axis: "x" | "y" }[] => {
        const root = sitesOf(plan).find(({ path }) => path === `layouts[${site.layout}].tree`);
        if (root === undefined || site.isInWindow) return [];
        if (site.x + site.width === root.width) return [{ site, axis: "x" }];
        return site.y + site.height === root.height ? [{ site, axis: "y" }] : [];
      });
    expectRefusal(validPlans(), atTheEdge, (plan, { site, axis }) => {
      lengthenForm(plan, site, axis);
      expectFinding(plan, "outside", site.path);
      expectFinding(plan, "piece-size", `${site.path}.shares[0]`);
    });
  });

  it("where the sheet is one narrower than the plan took it to be", () => {
    const cutAlongX = (plan: DamagedPlan) =>
      splitsOf(plan).filter((site) => site.node.axis === "x" && /^layouts\[\d+\]\.tree$/.test(site.path));
    expectRefusal(plainPlans, cutAlongX, (plan, site) => {
      const sheet = plan.problem.sheets.find(({ id }) => id === plan.packing.layouts[site.layout]?.sheet);
      if (sheet !== undefined) sheet.width -= 1;
      expectFinding(plan, "parts-too-large", site.path);
    });
  });
});

describe("verify refuses a swapped size", () => {
  it("in the example, where a mat is said to lie the other way", () => {
    const plan = copyOf(examplePlan);
    const mat = exampleSplit(plan, 0).parts[0]?.node;
    if (mat?.type === "piece" && mat.shares[0]) mat.shares[0].turned = false;
    expectFinding(plan, "piece-size", "layouts[0].tree.parts[0].node.parts[0].node.shares[0]");
  });

  it("of any piece that is no square", () => {
    const oblong = (plan: DamagedPlan) => piecesOf(plan).filter((site) => site.width !== site.height);
    expectRefusal(validPlans(), oblong, (plan, { node, path }, choice) => {
      const index = choice % node.shares.length;
      const share = node.shares[index];
      if (share !== undefined) share.turned = !share.turned;
      expectFinding(plan, "piece-size", `${path}.shares[${index}]`);
    });
  });

  it("of two parts of a split that change places without their contents", () => {
    const unequal = (plan: DamagedPlan) =>
      splitsOf(plan).flatMap((site) =>
        site.node.parts.flatMap((part, index) => {
          const other = site.node.parts.findIndex(({ size }) => size !== part.size);
          return part.node.type === "piece" && other >= 0 ? [{ site, index, other }] : [];
        }),
      );
    expectRefusal(validPlans(), unequal, (plan, { site, index, other }) => {
      const [one, two] = [site.node.parts[index], site.node.parts[other]];
      if (one !== undefined && two !== undefined) [one.size, two.size] = [two.size, one.size];
      expectFinding(plan, "piece-size", `${site.path}.parts[${index}].node.shares[0]`);
    });
  });
});

describe("verify refuses a forbidden turn", () => {
  it("in the example, where the mats' pattern must run along their height", () => {
    const plan = copyOf(examplePlan);
    const form = plan.problem.kinds[0]?.forms[0];
    if (form !== undefined) form.turns = "upright";
    expect(codesOf(plan)).toEqual([
      "turn-not-allowed at layouts[0].tree.parts[0].node.parts[0].node.shares[0].turned",
      "turn-not-allowed at layouts[0].tree.parts[0].node.parts[1].node.shares[0].turned",
    ]);
  });

  it("on every sheet, or on the sheet that it is cut from", () => {
    expectRefusal(validPlans(), piecesOf, (plan, { node, path, layout }, choice) => {
      const index = choice % node.shares.length;
      const share = node.shares[index];
      const sheet = plan.packing.layouts[layout]?.sheet;
      if (share === undefined || sheet === undefined) throw new TypeError("No share.");
      const form = formOf(plan, share);
      const turns = share.turned ? "upright" : "turned";
      if (choice % 3 === 0) form.sheets = [{ sheet, turns }];
      else {
        form.turns = turns;
        delete form.sheets;
      }
      expectFinding(plan, "turn-not-allowed", `${path}.shares[${index}].turned`);
    });
  });

  it("even of a square, whose pattern turns with it", () => {
    const plan = copyOf(examplePlan);
    const panel = exampleSplit(plan, 1).parts[1]?.node;
    if (panel?.type === "piece" && panel.shares[0]) panel.shares[0].turned = true;
    expect(codesOf(plan)).toEqual([]);
    plan.problem.kinds[1]?.forms.splice(0, 1, { width: 5, height: 5, turns: "upright" });
    expect(codesOf(plan)).toEqual([
      "turn-not-allowed at layouts[0].tree.parts[1].node.parts[1].node.shares[0].turned",
    ]);
  });

  it("and a sheet that the form may not be cut from", () => {
    expectRefusal(validPlans(), piecesOf, (plan, { node, path }, choice) => {
      const index = choice % node.shares.length;
      const share = node.shares[index];
      if (share === undefined) throw new TypeError("No share.");
      formOf(plan, share).sheets = [{ sheet: "another" }];
      expectFinding(plan, "sheet-not-allowed", `${path}.shares[${index}]`);
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

describe("verify refuses a five-block layout", () => {
  it("in the example, passed as guillotine", () => {
    const plan = copyOf(stoppedPlan);
    plan.problem.mode = "guillotine";
    plan.packing.mode = "guillotine";
    expect(codesOf(plan)).toEqual(["stopped-cuts at layouts[0].tree"]);
  });

  it("passed as guillotine or shelf", () => {
    const stopped = (plan: DamagedPlan) => sitesOf(plan).filter(isStopped);
    expectRefusal(validPlans({ mode: "stopped" }), stopped, (plan, { path }, choice) => {
      const mode = choice % 2 === 0 ? "guillotine" : "shelf";
      plan.problem.mode = mode;
      plan.packing.mode = mode;
      expectFinding(plan, "stopped-cuts", path);
    });
  });

  it("that is cut from more than one sheet at a time", () => {
    const plan = copyOf(stoppedPlan);
    if (plan.packing.layouts[0] !== undefined) plan.packing.layouts[0].run = 2;
    expectFinding(plan, "stopped-run", "layouts[0].run");
  });

  it("whose lines are one off", () => {
    const blocksThatAreLeaves = (plan: DamagedPlan) =>
      sitesOf(plan)
        .filter(isStopped)
        .flatMap((site) =>
          (["top", "right", "bottom", "left", "centre"] as const)
            .filter((name) => site.node[name].type === "piece")
            .map((name) => ({ site, name })),
        );
    expectRefusal(validPlans({ mode: "stopped" }), blocksThatAreLeaves, (plan, { site, name }, choice) => {
      const { node, path } = site;
      // The lines that bound each block, for either hand.
      const clockwise = {
        top: ["x2", "y1"],
        right: ["x2", "y2"],
        bottom: ["x1", "y2"],
        left: ["x1", "y1"],
      } as const;
      const anticlockwise = {
        top: ["x1", "y1"],
        right: ["x2", "y1"],
        bottom: ["x2", "y2"],
        left: ["x1", "y2"],
      } as const;
      const hand = node.hand === "clockwise" ? clockwise : anticlockwise;
      const lines = name === "centre" ? (["x1", "x2", "y1", "y2"] as const) : hand[name];
      const line = lines[choice % lines.length] ?? "x1";
      node[line] += choice % 8 < 4 ? 1 : -1;
      const expected = [
        `piece-size at ${path}.${name}.shares[0]`,
        `wrong-lines at ${path}`,
        `out-of-range at ${path}.${line}`,
      ];
      expect(codesOf(plan).some((code) => expected.includes(code))).toBe(true);
    });
  });
});

describe("verify refuses an ignored kerf", () => {
  it("in the example, where the blade takes 2", () => {
    const plan = copyOf(examplePlan);
    plan.problem.kerf = 2;
    expectFinding(plan, "parts-too-large", "layouts[0].tree");
    expectFinding(plan, "outside", "layouts[0].tree.parts[1].node.parts[0].node");
  });

  it("in the example, where a mat is cut into the kerf beside it", () => {
    const plan = copyOf(examplePlan);
    plan.problem.kinds[0]?.forms.push({ width: 7, height: 6 });
    const first = exampleSplit(plan, 0).parts[0]?.node;
    if (first?.type === "piece") first.shares = [{ kind: "mat", form: 1, turned: false, count: 2 }];
    const codes = codesOf(plan);
    expect(codes).toContain("too-close at layouts[0].tree.parts[0].node.parts[1].node");
    expect(codes).not.toContain("overlap at layouts[0].tree.parts[0].node.parts[1].node");
  });

  it("at every split of a plan made without it", () => {
    expectRefusal(plainPlans, splitsOf, (plan, { path }, choice) => {
      plan.problem.kerf = 1 + (choice % 4);
      expectFinding(plan, "parts-too-large", path);
    });
  });

  it("between two pieces side by side, by their places alone", () => {
    expectRefusal(validPlans({ kerf: true }), neighbours, (plan, { site, index }) => {
      const first = `${site.path}.parts[${index}].node`;
      const piece = piecesOf(plan).find(({ path }) => path === first) as Site;
      lengthenForm(plan, piece, site.node.axis);
      const codes = findingsOf(plan).map(({ code }) => code);
      expect(codes).toContain("too-close");
    });
  });
});

describe("verify refuses an ignored trim", () => {
  it("in the example, where the bottom is squared off as well", () => {
    const plan = copyOf(examplePlan);
    const sheet = plan.problem.sheets[0];
    if (sheet?.trim !== undefined) sheet.trim.bottom = 1;
    expectFinding(plan, "parts-too-large", "layouts[0].tree.parts[0].node");
    expectFinding(plan, "outside", "layouts[0].tree.parts[1].node.parts[1].node");
  });

  it("of any layout that was cut from the whole sheet", () => {
    expectRefusal(
      validPlans({ kerf: false, trim: false, mode: "guillotine" }),
      layoutsOf,
      (plan, { layout, index }) => {
        const sheet = plan.problem.sheets.find(({ id }) => id === layout.sheet);
        if (sheet === undefined) throw new TypeError("No sheet.");
        fc.pre(layout.tree.type === "split" || layout.tree.type === "piece");
        sheet.trim = { left: 1, top: 1 };
        if (layout.tree.type === "split") expectFinding(plan, "parts-too-large", `layouts[${index}].tree`);
        else expectFinding(plan, "piece-size", `layouts[${index}].tree.shares[0]`);
      },
    );
  });
});
