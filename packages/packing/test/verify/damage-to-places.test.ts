import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { validPlans } from "../valid-plan.js";
import {
  codesOf,
  copyOf,
  type DamagedPlan,
  exampleSplit,
  expectFinding,
  expectRefusal,
  findingsOf,
  formOf,
  isStopped,
  layoutsOf,
  lengthenForm,
  neighbours,
  piecesOf,
  type Site,
  sitesOf,
  splitsOf,
} from "./damage.js";
import { examplePlan, stoppedPlan } from "./example-plan.js";

/** Plans without kerf and trim, cut edge to edge: every tick stands in the tree. */
const plainPlans = validPlans({ kerf: false, trim: false, mode: "guillotine" });

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
