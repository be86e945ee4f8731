import { describe, expect, it } from "vitest";
import { type Finding, type FindingCode, findingCodes, startFindings } from "../../src/verify/finding.js";
import type { ValidPlan } from "../valid-plan.js";
import { copyOf, type DamagedPlan, findingsOf, type Mutable } from "./damage.js";
import { examplePlan, stoppedPlan, windowPlan } from "./example-plan.js";

interface Example {
  readonly plan?: ValidPlan;
  readonly damage: (plan: DamagedPlan) => void;
  readonly path: string;
}

/** Writes a value at a place of the packing, such as `layouts[0].run`. */
function put(plan: DamagedPlan, path: string, value: unknown): void {
  const keys = path.split(/[.[\]]+/).filter((key) => key !== "");
  const last = keys.pop() ?? "";
  let holder: unknown = plan.packing;
  for (const key of keys) holder = (holder as Record<string, unknown>)[key];
  if (value === undefined) delete (holder as Record<string, unknown>)[last];
  else (holder as Record<string, unknown>)[last] = value;
}

const change = (path: string, value: unknown, foundAt = path, plan = examplePlan): Example => ({
  plan,
  damage: (damaged) => put(damaged, path, value),
  path: foundAt,
});

const ask = (
  damage: (problem: DamagedPlan["problem"]) => void,
  path: string,
  plan = examplePlan,
): Example => ({
  plan,
  damage: (damaged) => damage(damaged.problem),
  path,
});

const tree = "layouts[0].tree";
const panel = `${tree}.parts[1].node.parts[1].node`;
const certificate = "bound.certificate";

/** One readable example of each code. */
const examples: Readonly<Record<FindingCode, Example>> = {
  "bad-problem": ask((problem) => {
    problem.kerf = -1;
  }, "problem.kerf"),
  "missing-value": change("layouts[0].run", undefined),
  "wrong-type": change("layouts[0].run", "2"),
  "unknown-word": change(`${tree}.axis`, "z"),
  "out-of-range": change(`${tree}.parts[0].size`, 7.5),
  "unknown-sheet": change("layouts[0].sheet", "ember"),
  "unknown-kind": change(`${panel}.shares[0].kind`, "banner"),
  "unknown-form": change(`${panel}.shares[0].form`, 1),
  "too-large": {
    damage: (plan) => {
      const parts = Array.from({ length: 200_000 }, () => ({ size: 1, node: { type: "offcut" } }));
      put(plan, tree, { type: "split", axis: "x", parts });
    },
    path: `${tree}.parts[199999].node`,
  },
  "more-findings": {
    damage: (plan) =>
      put(
        plan,
        "missing",
        Array.from({ length: 1001 }, () => "banner"),
      ),
    path: "packing",
  },
  "wrong-version": change("version", 2),
  "wrong-mode": change("mode", "shelf"),
  "wrong-aim": change("bound.aim", "fill"),
  overlap: ask(
    (problem) => {
      problem.kinds[0]?.forms.splice(0, 1, { width: 6, height: 8 });
    },
    `${tree}.right`,
    stoppedPlan,
  ),
  "too-close": {
    damage: (plan) => {
      plan.problem.kinds[0]?.forms.splice(0, 1, { width: 6, height: 7 });
    },
    path: `${tree}.parts[0].node.parts[1].node`,
  },
  outside: ask((problem) => {
    problem.kinds[1]?.forms.splice(0, 1, { width: 5, height: 6 });
  }, panel),
  "parts-too-large": change(`${tree}.parts[1].size`, 6, tree),
  "parts-too-small": {
    damage: (plan) => {
      columnOf(plan, 0).parts.pop();
    },
    path: `${tree}.parts[0].node`,
  },
  "no-cut": change(`${panel}`, {
    type: "split",
    axis: "x",
    parts: [
      { size: 5, node: { type: "piece", shares: [{ kind: "panel", form: 0, turned: false, count: 1 }] } },
    ],
  }),
  "cut-too-long": ask((problem) => {
    const [sheet] = problem.sheets;
    if (sheet !== undefined) sheet.longestCut = 12;
  }, tree),
  "too-many-stages": ask((problem) => {
    problem.stages = 1;
  }, `${tree}.parts[0].node`),
  "not-shelf": {
    damage: (plan) => {
      plan.problem.mode = "shelf";
      plan.problem.stages = null;
      plan.packing.mode = "shelf";
      put(plan, `${tree}.parts[0].node.parts[2].node`, {
        type: "split",
        axis: "x",
        parts: [
          { size: 3, node: { type: "offcut" } },
          { size: 3, node: { type: "offcut" } },
        ],
      });
    },
    path: `${tree}.parts[0].node.parts[2].node`,
  },
  "stopped-cuts": {
    plan: stoppedPlan,
    damage: (plan) => {
      plan.problem.mode = "guillotine";
      plan.packing.mode = "guillotine";
    },
    path: tree,
  },
  "wrong-lines": change(`${tree}.x2`, 12, tree, stoppedPlan),
  "stopped-run": change("layouts[0].run", 2, "layouts[0].run", stoppedPlan),
  "piece-size": change(
    `${tree}.parts[0].node.parts[0].size`,
    4,
    `${tree}.parts[0].node.parts[0].node.shares[0]`,
  ),
  "sheet-not-allowed": ask((problem) => {
    const form = problem.kinds[1]?.forms[0];
    if (form !== undefined) form.sheets = [];
  }, `${panel}.shares[0]`),
  "turn-not-allowed": ask((problem) => {
    const form = problem.kinds[1]?.forms[0];
    if (form !== undefined) form.turns = "turned";
  }, `${panel}.shares[0].turned`),
  "no-shares": change(`${panel}.shares`, []),
  "shares-exceed-run": change(`${panel}.shares[0].count`, 3, `${panel}.shares`),
  "wrong-leftover": change(`${tree}.parts[0].node.parts[2].node.type`, "waste"),
  "window-not-hidden": change(`${tree}.window.x`, 0, `${tree}.window`, windowPlan),
  "window-tool": change(`${tree}.window.tool`, "scissors", `${tree}.window.tool`, windowPlan),
  "too-many-placed": ask((problem) => {
    const [mat] = problem.kinds;
    if (mat !== undefined) mat.quantity = 5;
  }, "placed[0]"),
  "over-stock": ask((problem) => {
    const [sheet] = problem.sheets;
    if (sheet !== undefined) sheet.stock = 1;
  }, "layouts"),
  "together-split": ask((problem) => {
    const [mat] = problem.kinds;
    if (mat !== undefined) mat.together = "seam";
  }, "layouts[0].run"),
  "wrong-placed": change("placed[0].count", 5),
  "wrong-missing": change("missing", [{ kind: "mat", count: 1 }], "missing[0].kind"),
  "wrong-sheets": change("sheets", 1),
  "wrong-cost": change("cost", "421"),
  "wrong-value": change("value", "236"),
  "wrong-outcome": change("outcome", "not-found"),
  "wrong-proven": change("proven", false),
  "bound-not-proven": change("bound.cost", "630"),
  "bound-understated": change("bound.cost", "210"),
  "not-dual-feasible": change(
    `${certificate}.sheets[0].x`,
    { family: "step", at: 8 },
    `${certificate}.sheets[0].x.at`,
  ),
  "certificate-wrong-mode": change(
    certificate,
    { type: "prices", prices: [{ kind: "photo", price: 1 }] },
    certificate,
    stoppedPlan,
  ),
  "certificate-too-large": {
    damage: (plan) => {
      // 2,000 kinds, each worth its extent: next to no sum of extents is like another.
      const kinds = Array.from({ length: 2000 }, (_, i) => ({
        id: `kind ${i}`,
        quantity: 1,
        forms: [{ width: 100_000 + ((i * 7919) % 90_001), height: 10 }],
      }));
      plan.problem.kinds.push(...kinds);
      const [sheet] = plan.problem.sheets;
      if (sheet !== undefined) Object.assign(sheet, { width: 10_000_000 });
      const values = kinds.map(({ id, forms }) => {
        const extent = forms[0]?.width ?? 0;
        return { kind: id, extent, value: extent };
      });
      put(plan, `${certificate}.sheets[0].x`, { family: "fitted", values });
    },
    path: `${certificate}.sheets[0].x.values`,
  },
  "certificate-sheet-missing": change(`${certificate}.sheets`, []),
  "certificate-sheet-extra": change(`${certificate}.sheets[0].sheet`, "ember"),
  "certificate-sheet-twice": {
    damage: (plan) => {
      const { certificate } = plan.packing.bound;
      if (certificate.type === "weights") certificate.sheets = [...certificate.sheets, ...certificate.sheets];
    },
    path: `${certificate}.sheets[1].sheet`,
  },
  "certificate-fits": change(certificate, { type: "no-fit", kind: "mat" }, `${certificate}.kind`),
};

function columnOf(plan: DamagedPlan, index: number): { parts: Mutable<unknown>[] } {
  const root = plan.packing.layouts[0]?.tree;
  const column = root?.type === "split" ? root.parts[index]?.node : undefined;
  if (column?.type !== "split") throw new TypeError("The example has changed.");
  return column;
}

function damaged({ plan = examplePlan, damage }: Example): readonly Finding[] {
  const copy = copyOf(plan);
  damage(copy);
  return findingsOf(copy);
}

describe("a finding", () => {
  for (const code of Object.keys(findingCodes) as FindingCode[]) {
    it(`has the code ${code} where ${findingCodes[code].replace(/^./, (letter) => letter.toLowerCase()).slice(0, -1)}`, () => {
      const example = examples[code];
      const found = damaged(example).find(
        (finding) => finding.code === code && finding.path === example.path,
      );
      expect(found, `${code} at ${example.path}`).toBeDefined();
    });
  }

  it("tells a reader what is wrong, where, and what would help", () => {
    const messages = (code: FindingCode) =>
      damaged(examples[code])
        .filter((finding) => finding.code === code)
        .map(({ message }) => message)[0];
    expect(messages("parts-too-large")).toBe(
      "The parts of layouts[0].tree need 14 along x, kerfs included, but the part that is cut gives 13. " +
        "They would fit without kerf: leave 1 for each cut between two parts.",
    );
    expect(messages("turn-not-allowed")).toBe(
      'layouts[0].tree.parts[1].node.parts[1].node.shares[0] has kind "panel" upright, but on sheet "night" its form ' +
        "may only lie turned. Lay it the other way.",
    );
    expect(messages("wrong-type")).toBe('layouts[0].run is "2". Give a whole number from 1 on.');
    expect(messages("missing-value")).toBe("layouts[0].run is missing. Give a whole number from 1 on.");
    expect(messages("bound-not-proven")).toBe(
      "bound.cost states 630, but the certificate proves 420. State what the certificate proves, or find a stronger one.",
    );
  });

  it("ends every message with a full stop, names its place, and is plain JSON", () => {
    for (const code of Object.keys(examples) as FindingCode[]) {
      if (code === "too-large") continue;
      for (const finding of damaged(examples[code])) {
        expect(finding.message).toMatch(/^\S.*\.$/);
        expect(finding.message).not.toMatch(/undefined|NaN|\[object/);
        expect(JSON.parse(JSON.stringify(finding))).toEqual(finding);
        expect(Object.keys(findingCodes)).toContain(finding.code);
      }
    }
  });

  it("names the likely reason where a trim or a kerf was left out", () => {
    const plan = copyOf(examplePlan);
    plan.problem.kerf = 0;
    plan.packing.layouts[0] = {
      sheet: "night",
      run: 2,
      tree: {
        type: "split",
        axis: "x",
        parts: [8, 7].map((size) => ({ size, node: { type: "offcut" } as const })),
      },
    };
    const message = () => findingsOf(plan).find(({ code }) => code === "parts-too-large")?.message;
    expect(message()).toContain("They fit the sheet with its trim: cut what is inside the trim only.");
    plan.problem.kerf = 1;
    const root = plan.packing.layouts[0].tree;
    if (root.type === "split" && root.parts[0] !== undefined) root.parts[0].size = 6;
    expect(message()).toContain("They would fit without kerf: leave 1 for each cut between two parts.");
  });
});

describe("a list of findings", () => {
  it("closes after a thousand with the word that there are more", () => {
    const { list, report } = startFindings();
    for (let count = 0; count < 1500; count += 1)
      report("overlap", `layouts[${count}]`, "One lies on another.");
    expect(list.length).toBe(1001);
    expect(list.at(-1)?.code).toBe("more-findings");
  });

  it("shows values that JSON cannot hold as text", () => {
    const { list, report } = startFindings();
    for (const value of [Number.NaN, 5n, [1, 2], [], { a: 1 }, Symbol("s"), () => 1, "x".repeat(300)]) {
      report("wrong-type", "packing", "One.", value);
    }
    expect(list.map(({ found }) => found)).toEqual([
      "NaN",
      "5",
      "a list of 2",
      "an empty list",
      "an object",
      "Symbol(s)",
      "a function",
      `${"x".repeat(199)}…`,
    ]);
  });
});
