import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { isDeepStrictEqual } from "node:util";
import { type CutNode, cutOrder, type Packing, type Problem, pack } from "@sheetwright/packing";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { planFile, planFileJsonSchema } from "../../src/plan/plan-file.js";

const published = fileURLToPath(new URL("../../schema/plan.schema.json", import.meta.url));
const validator = async () =>
  new Ajv2020({ strict: true }).compile(JSON.parse(await readFile(published, "utf8")));

const problem: Problem = {
  kinds: [
    {
      id: "base",
      name: "base of the card",
      quantity: 2,
      least: 1,
      forms: [{ width: 40, height: 60, turns: "both", sheets: [{ sheet: "cream", turns: "upright" }] }],
      value: 3,
      together: "seam",
      set: { of: "Rooftops", each: 1 },
    },
  ],
  sheets: [
    {
      id: "cream",
      name: "cream cardstock",
      width: 100,
      height: 100,
      stock: 4,
      cost: 5,
      trim: { left: 1, right: 1, top: 1, bottom: 1 },
      longestCut: 100,
    },
  ],
  mode: "guillotine",
  aim: "all",
  kerf: 1,
  stages: 4,
  smallestOffcut: { width: 10, height: 10 },
};

function plan(packing: Packing): Record<string, unknown> {
  const [sheet] = problem.sheets;
  if (sheet === undefined) throw new Error("no sheet");
  return {
    sheetwright: "plan",
    version: 1,
    seal: "0".repeat(64),
    madeBy: "sheetwright 0.1.0",
    units: { length: "tick", ticksPerMillimetre: 1600, ticksPerInch: 40640, shown: "in" },
    hold: 10,
    problem,
    packing,
    cutOrders: packing.layouts.map((layout) => cutOrder(sheet, layout, { kerf: 1, narrowestHold: 10 })),
    files: [{ name: "sheet-1.svg", what: "drawing", layout: 0, sha256: "a".repeat(64) }],
  };
}

const packing = pack(problem, { effort: "quick" });
const leaf: CutNode = { type: "waste" };

describe("the published schema of plan.json", () => {
  it("is the one made from the source (vitest -u renews it)", async () => {
    const text = await readFile(published, "utf8");
    const made: unknown = JSON.parse(JSON.stringify(planFileJsonSchema()));
    // The formatter lays the file out, so what it says is compared, not how it is laid out.
    const same = isDeepStrictEqual(JSON.parse(text), made);
    await expect(same ? text : `${JSON.stringify(made, null, 2)}\n`).toMatchFileSnapshot(published);
  });

  it("accepts a plan that uses every field of a problem", async () => {
    const validate = await validator();
    validate(JSON.parse(JSON.stringify(plan(packing))));
    expect(validate.errors).toBeNull();
    expect(planFile.safeParse(plan(packing)).success).toBe(true);
  });

  it("accepts windows and stopped cuts, which the model has", async () => {
    const stopped: CutNode = {
      type: "stopped",
      hand: "clockwise",
      x1: 1,
      x2: 2,
      y1: 1,
      y2: 2,
      top: leaf,
      right: leaf,
      bottom: leaf,
      left: leaf,
      centre: leaf,
    };
    const tree: CutNode = {
      type: "piece",
      shares: [{ kind: "base", form: 0, turned: false, count: 1 }],
      window: { x: 1, y: 1, width: 5, height: 5, tool: "knife", tree: stopped },
    };
    const other = { ...plan(packing), packing: { ...packing, layouts: [{ sheet: "cream", run: 1, tree }] } };
    const validate = await validator();
    validate(other);
    expect(validate.errors).toBeNull();
    expect(planFile.safeParse(other).success).toBe(true);
  });

  it.each([
    ["a length that is no whole number", (p: Packing) => ({ ...plan(p), hold: 1.5 })],
    ["a field that is not listed", (p: Packing) => ({ ...plan(p), colour: "red" })],
    ["a field that is missing", (p: Packing) => ({ ...plan(p), seal: undefined })],
    ["another version", (p: Packing) => ({ ...plan(p), version: 2 })],
    [
      "a run of no sheets",
      (p: Packing) => ({ ...plan(p), packing: { ...p, layouts: [{ sheet: "a", run: 0, tree: leaf }] } }),
    ],
    [
      "an unknown part",
      (p: Packing) => ({
        ...plan(p),
        packing: { ...p, layouts: [{ sheet: "a", run: 1, tree: { type: "hole" } }] },
      }),
    ],
    ["a cost that is no whole number", (p: Packing) => ({ ...plan(p), packing: { ...p, cost: "1.5" } })],
  ])("refuses %s", async (_, damage) => {
    const validate = await validator();
    const damaged: unknown = JSON.parse(JSON.stringify(damage(packing)));
    expect(validate(damaged)).toBe(false);
    expect(planFile.safeParse(damaged).success).toBe(false);
  });
});
