import { type CutOrder, cutOrder, type Packing, type Problem } from "@sheetwright/packing";
import { drawCutterFile, drawLayout, writeCutList } from "@sheetwright/svg";
import type { NewFile } from "../folder/replace-files.js";
import { seal, sha256 } from "../folder/seal.js";
import { PLAN_FILE } from "../folder/survey-folder.js";
import type { PlanRequest } from "../request/plan-request.js";
import { VERSION } from "../version.js";
import { writeOverview } from "../words/write-overview.js";
import type { FoundPlan } from "./find-plan.js";
import type { PlanFile } from "./plan-file.js";
import { layoutName, type PlanSummary, planSummary } from "./plan-summary.js";

/** Lists the pieces and leftovers of all layouts; see {@link writeOverview}. */
export const OVERVIEW_FILE = "cut-list.txt";

/** All that is written for a plan, and its summary. */
export interface PlanFiles {
  readonly files: readonly NewFile[];
  readonly summary: PlanSummary;
}

type Written = NewFile & Pick<PlanFile["files"][number], "what" | "layout">;

/** Draws and writes a plan: a drawing, a cut list and a cutter file a layout, the overview, and `plan.json`. */
export function planFiles(problem: Problem, found: FoundPlan, request: PlanRequest): PlanFiles {
  const { packing, unlimited } = found;
  const { unit, hold, cutterUnit, cutterEdges } = request;
  const cutOrders = packing.layouts.map((layout): CutOrder => {
    const sheet = problem.sheets.find((one) => one.id === layout.sheet);
    if (sheet === undefined)
      throw new RangeError(`The packing names the sheet "${layout.sheet}", which is not there.`);
    return cutOrder(sheet, layout, { kerf: problem.kerf ?? 0, narrowestHold: hold });
  });
  const drawn = packing.layouts.flatMap((_, layout): readonly Written[] => {
    const cuts = cutOrders[layout];
    if (cuts === undefined) throw new RangeError(`Layout ${layout} has no cut order.`);
    const name = layoutName(layout);
    return [
      {
        name: `${name}.svg`,
        what: "drawing",
        layout,
        content: drawLayout(problem, packing, layout, { unit, cuts }),
      },
      {
        name: `${name}.txt`,
        what: "cut list",
        layout,
        content: writeCutList(problem, packing, layout, { unit, cuts }),
      },
      {
        name: `${name}-cutter.svg`,
        what: "cutter file",
        layout,
        content: drawCutterFile(problem, packing, layout, { userUnit: cutterUnit, edges: cutterEdges }),
      },
    ];
  });
  const names = [PLAN_FILE, OVERVIEW_FILE, ...drawn.map((file) => file.name)];
  const summary = planSummary(problem, packing, { unit, hold, cutOrders, files: names, unlimited });
  const overview: Written = {
    name: OVERVIEW_FILE,
    what: "overview",
    layout: null,
    content: writeOverview(summary, problem, packing),
  };
  const written = [overview, ...drawn];
  const plan = writePlan(problem, packing, request, cutOrders, written);
  return { files: [{ name: PLAN_FILE, content: plan }, ...written], summary };
}

function writePlan(
  problem: Problem,
  packing: Packing,
  request: PlanRequest,
  cutOrders: readonly CutOrder[],
  written: readonly Written[],
): string {
  const plan = {
    sheetwright: "plan",
    version: 1,
    // Filled in below; it must stay above anything that a piece's name could imitate.
    seal: "",
    madeBy: `sheetwright ${VERSION}`,
    units: { length: "tick", ticksPerMillimetre: 1600, ticksPerInch: 40640, shown: request.unit },
    hold: request.hold,
    problem,
    packing,
    cutOrders,
    files: written.map(({ name, what, layout, content }) => ({
      name,
      what,
      layout,
      sha256: sha256(content),
    })),
  };
  return seal(`${JSON.stringify(plan, null, 2)}\n`);
}
