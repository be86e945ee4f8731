import { describe, expect, it } from "vitest";
import { startFindings } from "../../src/verify/finding.js";
import { readProblem } from "../../src/verify/read-problem.js";

const sound = () => ({
  kinds: [
    {
      id: "mat",
      name: "Mat",
      quantity: 2,
      forms: [
        { width: 5, height: 7, turns: "upright", hidden: { x: 1, y: 1, width: 3, height: 5, tool: "knife" } },
      ],
      set: { of: "Rooftops", each: 1 },
    },
  ],
  sheets: [{ id: "night", width: 12, height: 12, stock: 3, trim: { left: 1 }, longestCut: 12 }],
  mode: "guillotine",
  aim: "all",
});

/** Writes a value at a place of a sound problem and gives the places of what is then wrong. */
function faults(path: string, value: unknown): readonly string[] {
  const problem = sound();
  const keys = path.split(/[.[\]]+/).filter((key) => key !== "");
  const last = keys.pop() ?? "";
  let holder: unknown = problem;
  for (const key of keys) holder = (holder as Record<string, unknown>)[key];
  (holder as Record<string, unknown>)[last] = value;
  const { list, report } = startFindings();
  const facts = readProblem(problem, report);
  expect(facts === undefined).toBe(list.length > 0);
  for (const { code } of list) expect(code).toBe("bad-problem");
  return list.map((finding) => finding.path);
}

describe("a problem", () => {
  it("is read with its defaults", () => {
    const { list, report } = startFindings();
    const facts = readProblem(sound(), report);
    expect(list).toEqual([]);
    const night = facts?.sheets.get("night");
    expect(night?.usable).toEqual({ x: 1, y: 0, width: 11, height: 12 });
    expect(night?.cost).toBe(144n);
    const mat = facts?.kinds.get("mat");
    expect([mat?.value, mat?.required, mat?.together]).toEqual([35n, 2n, null]);
    expect(mat?.forms[0]?.turnsOn("night")).toBe("upright");
    expect([facts?.kerf, facts?.stages, facts?.smallestOffcut]).toEqual([0, null, null]);
  });

  it("may leave out what has a default, and say null for no limit", () => {
    for (const path of ["stages", "sheets[0].stock", "sheets[0].longestCut"])
      expect(faults(path, null)).toEqual([]);
    for (const path of [
      "kerf",
      "sheets[0].trim",
      "sheets[0].cost",
      "kinds[0].forms[0].hidden",
      "kinds[0].set",
    ]) {
      expect(faults(path, undefined)).toEqual([]);
    }
  });

  it("may name sheets for a form that it does not have", () => {
    expect(
      faults("kinds[0].forms[0].sheets", [{ sheet: "night" }, { sheet: "ember", turns: "both" }]),
    ).toEqual([]);
  });

  it.each([
    ["mode", "free", "problem.mode"],
    ["aim", undefined, "problem.aim"],
    ["kerf", -1, "problem.kerf"],
    ["kerf", 0.5, "problem.kerf"],
    ["stages", 0, "problem.stages"],
    ["smallestOffcut", { width: 1 }, "problem.smallestOffcut.height"],
    ["kinds", {}, "problem.kinds"],
    ["kinds[0].id", 7, "problem.kinds[0].id"],
    ["kinds[0].quantity", -1, "problem.kinds[0].quantity"],
    ["kinds[0].quantity", null, "problem.kinds[0].quantity"],
    ["kinds[0].least", "1", "problem.kinds[0].least"],
    ["kinds[0].value", -1, "problem.kinds[0].value"],
    ["kinds[0].together", null, "problem.kinds[0].together"],
    ["kinds[0].set", { of: "Rooftops", each: 0 }, "problem.kinds[0].set.each"],
    ["kinds[0].forms", [], "problem.kinds[0].forms"],
    ["kinds[0].forms[0].width", 0, "problem.kinds[0].forms[0].width"],
    ["kinds[0].forms[0].height", 2 ** 53, "problem.kinds[0].forms[0].height"],
    ["kinds[0].forms[0].turns", "any", "problem.kinds[0].forms[0].turns"],
    ["kinds[0].forms[0].sheets", [{ sheet: "night", turns: 1 }], "problem.kinds[0].forms[0].sheets[0].turns"],
    [
      "kinds[0].forms[0].sheets",
      [{ sheet: "a" }, { sheet: "a" }],
      "problem.kinds[0].forms[0].sheets[1].sheet",
    ],
    ["kinds[0].forms[0].hidden.x", 3, "problem.kinds[0].forms[0].hidden"],
    ["kinds[0].forms[0].hidden.tool", null, "problem.kinds[0].forms[0].hidden.tool"],
    ["sheets[0].width", "12", "problem.sheets[0].width"],
    ["sheets[0].stock", 1.5, "problem.sheets[0].stock"],
    ["sheets[0].cost", Number.NaN, "problem.sheets[0].cost"],
    ["sheets[0].longestCut", 0, "problem.sheets[0].longestCut"],
    ["sheets[0].trim", { left: -1 }, "problem.sheets[0].trim.left"],
    ["sheets[0].trim", { left: 6, right: 6 }, "problem.sheets[0].trim"],
  ])("is refused with %s set to %j", (path, value, place) => {
    expect(faults(path, value)).toEqual([place]);
  });

  it("gives every kind and every sheet an id of its own", () => {
    const { kinds, sheets } = sound();
    expect(faults("kinds", [...kinds, ...kinds])).toEqual(["problem.kinds[1].id"]);
    expect(faults("sheets", [...sheets, ...sheets])).toEqual(["problem.sheets[1].id"]);
  });

  it("never asks for more than it allows", () => {
    const { report, list } = startFindings();
    const [kind] = sound().kinds;
    readProblem({ ...sound(), aim: "fill", kinds: [{ ...kind, least: 3 }] }, report);
    expect(list.map(({ path }) => path)).toEqual(["problem.kinds[0].least"]);
  });
});
