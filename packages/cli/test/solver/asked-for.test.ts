import type { LinearSolver } from "@sheetwright/packing";
import { describe, expect, test } from "vitest";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

const MANY = "name,width,height,quantity,turn\ncard,4,5,31,no\ntag,2,3,57,no\n";
const FEW = "name,width,height,quantity,turn\ncard,4,5,1,no\ntag,2,3,1,no\n";

/** Plans a list and tells how often a solver was loaded, and what the plan says of it. */
async function planned(list: string, options = "", fails = false) {
  const files = memoryFiles({ "/desk/pieces.csv": list });
  let loads = 0;
  const loadSolver = (): Promise<LinearSolver> => {
    loads++;
    if (fails) return Promise.reject(new Error("not installed"));
    return Promise.resolve({
      name: "stand-in 1.0",
      solve: () => ({ status: "none", values: [], duals: [], objective: 0 }),
    });
  };
  const line = `plan --pieces pieces.csv --sheet us-letter --effort quick --out out ${options}`.trim();
  const { code } = await runIn(line.split(" "), { files, loadSolver });
  const read = async (name: string) => new TextDecoder().decode(await files.read(`/desk/out/${name}`));
  const plan = JSON.parse(await read("plan.json")) as { packing: { search: { lp: string } } };
  return {
    code,
    loads,
    lp: plan.packing.search.lp,
    told: /Searched with the help of [^,]*/.exec(await read("cut-list.txt"))?.[0],
  };
}

describe("the solver of a plan", () => {
  test("is loaded where copies outnumber kinds, and plan and overview name it", async () => {
    expect(await planned(MANY)).toEqual({
      code: 0,
      loads: 1,
      lp: "stand-in 1.0",
      told: "Searched with the help of stand-in 1.0",
    });
  });

  test("is not loaded where it is of no use, nor with --own-solver", async () => {
    const none = { code: 0, loads: 0, lp: "none", told: undefined };
    expect(await planned(FEW)).toEqual(none);
    expect(await planned(MANY, "--own-solver")).toEqual(none);
  });

  test("is done without where it cannot be loaded", async () => {
    expect(await planned(MANY, "", true)).toEqual({ code: 0, loads: 1, lp: "none", told: undefined });
  });
});
