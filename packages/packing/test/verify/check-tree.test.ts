import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CutNode, Mode, Problem } from "../../src/model.js";
import { leftover } from "../cut-sheet.js";
import { usableSize } from "../identity-bound.js";
import { type ValidPlan, validPlans } from "../valid-plan.js";
import { isShelf, levelsOf } from "./brute-check.js";
import {
  codesOf,
  copyOf,
  type DamagedPlan,
  expectFinding,
  findingsOf,
  isSplit,
  type Mutable,
  sitesOf,
} from "./damage.js";
import { examplePlan, stoppedPlan, windowPlan } from "./example-plan.js";

/** A plan of leftovers alone: only the cuts are to be judged. */
function cutsOnly(tree: CutNode, settings: Partial<Problem> = {}, size = 10): DamagedPlan {
  const plan = copyOf(examplePlan);
  plan.problem.kinds = [];
  plan.problem.sheets = [{ id: "night", width: size, height: size }];
  plan.problem.kerf = 0;
  delete plan.problem.stages;
  Object.assign(plan.problem, settings);
  Object.assign(plan.packing, { mode: plan.problem.mode, placed: [], sheets: 1, value: "0", proven: false });
  plan.packing.cost = String(size * size);
  plan.packing.bound = { aim: "all", cost: "0", sheets: 0, certificate: { type: "weights", sheets: [] } };
  plan.packing.layouts = [{ sheet: "night", run: 1, tree: tree as Mutable<CutNode> }];
  return plan;
}

const offcut: CutNode = { type: "offcut" };
const split = (axis: "x" | "y", ...parts: readonly (readonly [number, CutNode])[]): CutNode => ({
  type: "split",
  axis,
  parts: parts.map(([size, node]) => ({ size, node })),
});

describe("the parts of a split", () => {
  it("are the part that is cut, less one kerf for each cut between them", () => {
    const tree = split("x", [4, offcut], [2, offcut], [2, offcut]);
    expect(codesOf(cutsOnly(tree, { kerf: 1 }))).toEqual([]);
    expect(codesOf(cutsOnly(tree))).toEqual(["parts-too-small at layouts[0].tree"]);
    expect(codesOf(cutsOnly(tree, { kerf: 2 }))).toEqual(["parts-too-large at layouts[0].tree"]);
  });

  it("may leave a remainder of up to one kerf, which vanishes in a last cut", () => {
    for (const [size, remainder] of [
      [9, 1],
      [8, 2],
      [7, 3],
    ] as const) {
      expect(codesOf(cutsOnly(split("y", [size, offcut]), { kerf: 3 })), `${remainder}`).toEqual([]);
    }
    expect(codesOf(cutsOnly(split("y", [6, offcut]), { kerf: 3 }))).toEqual([
      "parts-too-small at layouts[0].tree",
    ]);
    expect(codesOf(cutsOnly(split("y", [10, offcut]), { kerf: 3 }))).toEqual(["no-cut at layouts[0].tree"]);
  });

  it("are never none", () => {
    expect(codesOf(cutsOnly(split("x")))).toEqual(["no-cut at layouts[0].tree"]);
  });

  it("may be split along the same axis again", () => {
    const inner = split("x", [2, offcut], [3, offcut]);
    expect(codesOf(cutsOnly(split("x", [5, inner], [5, offcut]), { stages: 1 }))).toEqual([]);
  });

  it("sum exactly, beyond 2^53 too", () => {
    const most = Number.MAX_SAFE_INTEGER;
    const plan = cutsOnly(split("x", [most, offcut], [most, offcut], [2, offcut]));
    expectFinding(plan, "parts-too-large", "layouts[0].tree");
    const [finding] = findingsOf(plan);
    expect(finding?.found).toBe("18014398509481984");
  });
});

describe("the longest cut", () => {
  it("is the extent of the part along the cut", () => {
    const tree = split("x", [4, split("y", [5, offcut], [5, offcut])], [6, offcut]);
    const at = (longestCut: number) =>
      codesOf(cutsOnly(tree, { sheets: [{ id: "night", width: 10, height: 10, longestCut }] }));
    expect(at(10)).toEqual([]);
    expect(at(9)).toEqual(["cut-too-long at layouts[0].tree"]);
    expect(at(3)).toEqual([
      "cut-too-long at layouts[0].tree",
      "cut-too-long at layouts[0].tree.parts[0].node",
    ]);
  });

  it("holds for the trims, the last two of which cross a narrower sheet", () => {
    const trimmed = (trim: Problem["sheets"][number]["trim"], longestCut: number) => {
      const sheets = [{ id: "night", width: 12, height: 9, trim, longestCut }];
      const plan = cutsOnly(offcut, { sheets });
      plan.packing.cost = "108";
      return findingsOf(plan).map(({ code, message }) => `${code}: ${message.split(" is a cut")[0]}`);
    };
    expect(trimmed({ left: 1, right: 1, top: 1, bottom: 1 }, 10)).toEqual([]);
    expect(trimmed({ left: 1, right: 1, top: 1, bottom: 1 }, 9)).toEqual([
      "cut-too-long: The top trim of layouts[0]",
      "cut-too-long: The bottom trim of layouts[0]",
    ]);
    expect(trimmed({ left: 1, bottom: 1 }, 8)).toEqual([
      "cut-too-long: The left trim of layouts[0]",
      "cut-too-long: The bottom trim of layouts[0]",
    ]);
    expect(trimmed({ left: 0 }, 1)).toEqual([]);
  });

  it("holds for stopped cuts by their own length", () => {
    const plan = copyOf(stoppedPlan);
    const [sheet] = plan.problem.sheets;
    expect(codesOf(plan)).toEqual([]);
    if (sheet !== undefined) sheet.longestCut = 6;
    expect(codesOf(plan)).toEqual(["cut-too-long at layouts[0].tree"]);
  });

  it("holds for the cuts in a window, not for its opening", () => {
    const plan = copyOf(windowPlan);
    const [sheet] = plan.problem.sheets;
    if (sheet !== undefined) sheet.longestCut = 5;
    expect(codesOf(plan)).toEqual([]);
    if (sheet !== undefined) sheet.longestCut = 4;
    expect(codesOf(plan)).toEqual(["cut-too-long at layouts[0].tree.window.tree"]);
  });

  it("is refused one tick short in every plan that is cut edge to edge", () => {
    fc.assert(
      fc.property(validPlans({ mode: "guillotine" }), fc.nat(0xffff), (valid, which) => {
        const plan = copyOf(valid);
        const splits = sitesOf(plan).filter(isSplit);
        fc.pre(splits.length > 0);
        const site = splits[which % splits.length];
        const sheet = plan.problem.sheets.find(
          ({ id }) => id === plan.packing.layouts[site?.layout ?? 0]?.sheet,
        );
        if (site === undefined || sheet === undefined) throw new TypeError("No split.");
        const length = site.node.axis === "x" ? site.height : site.width;
        fc.pre(length > 1);
        sheet.longestCut = length - 1;
        expectFinding(plan, "cut-too-long", site.path);
      }),
    );
  });
});

describe("the stages", () => {
  it("are the levels of parallel cuts, so that one fewer is refused", () => {
    fc.assert(
      fc.property(validPlans({ windows: false }), (valid) => {
        const levels = Math.max(...valid.packing.layouts.map(({ tree }) => levelsOf(tree)));
        fc.pre(levels > 0);
        const plan = copyOf(valid);
        plan.problem.stages = levels;
        expect(codesOf(plan)).toEqual([]);
        fc.pre(levels > 1);
        plan.problem.stages = levels - 1;
        expect(findingsOf(plan).map(({ code }) => code)).toContain("too-many-stages");
      }),
    );
  });

  it("count from one again in a window", () => {
    const plan = copyOf(windowPlan);
    plan.problem.stages = 1;
    expect(codesOf(plan)).toEqual(["too-many-stages at layouts[0].tree.window.tree.parts[0].node"]);
  });
});

describe("shelf mode", () => {
  const asShelf = (plan: DamagedPlan, mode: Mode = "shelf") => {
    plan.problem.mode = mode;
    plan.packing.mode = mode;
    plan.problem.stages = null;
    return plan;
  };
  const piece: CutNode = { type: "piece", shares: [{ kind: "tag", form: 0, turned: false, count: 1 }] };
  const withTags = (tree: CutNode, count: number) => {
    const plan = cutsOnly(tree, { mode: "shelf" });
    plan.problem.kinds = [{ id: "tag", quantity: count, forms: [{ width: 2, height: 3 }] }];
    plan.packing.placed = [{ kind: "tag", count }];
    return findingsOf(plan)
      .filter(({ code }) => code === "not-shelf")
      .map(({ path }) => path);
  };

  it("trims one piece at the third level", () => {
    const row = (trim: CutNode) => split("y", [4, split("x", [2, trim], [8, offcut])], [6, offcut]);
    expect(withTags(row(split("y", [3, piece], [1, offcut])), 1)).toEqual([]);
    expect(withTags(row(split("y", [2, offcut], [2, offcut])), 0)).toEqual([
      "layouts[0].tree.parts[0].node.parts[0].node",
    ]);
    const two = split("y", [3, piece], [3, piece], [4, offcut]);
    expect(withTags(split("y", [10, split("x", [2, two], [8, offcut])]), 2)).toEqual([
      "layouts[0].tree.parts[0].node.parts[0].node",
    ]);
  });

  it("has no fourth level", () => {
    const third = split("y", [3, split("x", [2, piece], [2, offcut])], [1, offcut]);
    const tree = split("y", [4, split("x", [4, third], [6, offcut])], [6, offcut]);
    expect(withTags(tree, 1)).toEqual(["layouts[0].tree.parts[0].node.parts[0].node.parts[0].node"]);
  });

  it("takes strips of either axis", () => {
    for (const axis of ["x", "y"] as const) {
      expect(codesOf(cutsOnly(split(axis, [4, offcut], [6, offcut]), { mode: "shelf" }))).toEqual([]);
    }
  });

  it("takes exactly those guillotine plans that have no more than strips, pieces and last trims", () => {
    let [taken, all] = [0, 0];
    fc.assert(
      fc.property(validPlans({ mode: "guillotine", windows: false }), (valid) => {
        const plan = asShelf(copyOf(valid));
        const isTaken = codesOf(plan).every((code) => !code.startsWith("not-shelf"));
        expect(isTaken).toBe(valid.packing.layouts.every(({ tree }) => isShelf(tree)));
        all += 1;
        if (isTaken) taken += 1;
      }),
    );
    expect(taken / all).toBeGreaterThan(0.1);
  });
});

describe("the leftovers", () => {
  it("are called offcut or waste by their size alone", () => {
    fc.assert(
      fc.property(validPlans(), fc.nat(0xffff), (valid, which) => {
        const plan = copyOf(valid);
        const leftovers = sitesOf(plan).filter(({ node }) => node.type === "offcut" || node.type === "waste");
        fc.pre(leftovers.length > 0);
        const site = leftovers[which % leftovers.length];
        site?.replace({ type: site.node.type === "offcut" ? "waste" : "offcut" });
        expect(codesOf(plan)).toEqual([`wrong-leftover at ${site?.path}.type`]);
      }),
    );
  });

  it("are offcuts where they are just as large as the smallest, either way round", () => {
    const smallestOffcut = { width: 2, height: 4 };
    const named = (type: "offcut" | "waste", width: number, height: number) => {
      const rest = (w: number, h: number) => leftover({ smallestOffcut }, { width: w, height: h });
      const column = split("y", [height, { type }], [10 - height, rest(width, 10 - height)]);
      const tree = split("x", [width, column], [10 - width, rest(10 - width, 10)]);
      return codesOf(cutsOnly(tree, { smallestOffcut }));
    };
    expect(named("offcut", 2, 4)).toEqual([]);
    expect(named("offcut", 4, 2)).toEqual([]);
    expect(named("waste", 3, 3)).toEqual([]);
    expect(named("waste", 1, 4)).toEqual([]);
    expect(named("offcut", 3, 3)).not.toEqual([]);
    expect(named("waste", 2, 4)).not.toEqual([]);
  });
});

describe("the windows", () => {
  const openings = validPlans({ windows: true });

  it("are refused one tick outside of the hidden part", () => {
    fc.assert(
      fc.property(openings, fc.nat(0xffff), fc.nat(3), (valid: ValidPlan, which, side) => {
        const plan = copyOf(valid);
        const sites = sitesOf(plan).filter(({ node }) => node.type === "piece" && node.window !== undefined);
        fc.pre(sites.length > 0);
        const site = sites[which % sites.length];
        if (site?.node.type !== "piece" || site.node.window === undefined) throw new TypeError("No window.");
        const { window } = site.node;
        const [share] = site.node.shares;
        const form = plan.problem.kinds.find(({ id }) => id === share?.kind)?.forms[share?.form ?? 0];
        if (form?.hidden === undefined || share === undefined) throw new TypeError("Nothing is hidden.");
        // The hidden part as the piece lies: (x, y) of an upright piece of height h comes to (h - y, x).
        const { x, y, width, height } = form.hidden;
        const hidden = share.turned
          ? { left: form.height - y - height, top: x, right: form.height - y, bottom: x + width }
          : { left: x, top: y, right: x + width, bottom: y + height };
        if (side === 0) {
          fc.pre(hidden.left > 0);
          window.x = hidden.left - 1;
        } else if (side === 1) {
          fc.pre(hidden.top > 0);
          window.y = hidden.top - 1;
        } else if (side === 2) window.x = hidden.right - window.width + 1;
        else window.y = hidden.bottom - window.height + 1;
        expectFinding(plan, "window-not-hidden", `${site.path}.window`);
      }),
    );
  });

  it("are there only on the sheets that yield their piece", () => {
    const plan = copyOf(windowPlan);
    const [layout] = plan.packing.layouts;
    if (layout === undefined) throw new TypeError("The example has changed.");
    layout.run = 2;
    const tag = sitesOf(plan).find(({ path }) => path.endsWith("window.tree.parts[0].node.parts[0].node"));
    if (tag?.node.type === "piece" && tag.node.shares[0] !== undefined) tag.node.shares[0].count = 2;
    expectFinding(plan, "shares-exceed-run", `${tag?.path}.shares`);
  });

  it("are refused in a piece without a hidden part", () => {
    const plan = copyOf(windowPlan);
    const form = plan.problem.kinds[0]?.forms[0];
    delete form?.hidden;
    expectFinding(plan, "window-not-hidden", "layouts[0].tree.window");
  });

  it("hold their own pieces apart and inside", () => {
    const plan = copyOf(windowPlan);
    plan.problem.kinds[1]?.forms.splice(0, 1, { width: 3, height: 6 });
    expectFinding(plan, "outside", "layouts[0].tree.window.tree.parts[0].node.parts[0].node");
  });
});

describe("the usable part", () => {
  it("is the sheet inside its trims, where every plan by construction begins", () => {
    fc.assert(
      fc.property(validPlans({ trim: true }), (valid) => {
        const plan = copyOf(valid);
        for (const site of sitesOf(plan)) {
          const sheet = valid.problem.sheets.find(
            ({ id }) => id === valid.packing.layouts[site.layout]?.sheet,
          );
          if (sheet === undefined) throw new TypeError("No sheet.");
          const usable = usableSize(sheet);
          expect(site.x + site.width).toBeLessThanOrEqual(usable.width);
          expect(site.y + site.height).toBeLessThanOrEqual(usable.height);
        }
        expect(codesOf(plan)).toEqual([]);
      }),
    );
  });
});
