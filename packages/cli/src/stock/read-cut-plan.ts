import { join, resolve } from "node:path";
import { verifyPlan } from "@sheetwright/planner";
import { type Fault, FaultsFound, quote } from "../fault.js";
import { isSealed, sha256 } from "../folder/seal.js";
import { PLAN_FILE } from "../folder/survey-folder.js";
import type { Io } from "../io.js";
import { type ProjectPlanFile, projectPlanFile } from "../project-plan/project-plan-file.js";
import { readText } from "../text/read-text.js";

/** A plan of a project as it lies in its folder, proven right. */
export interface CutPlan {
  /** SHA-256 of its `plan.json`, by which it is told from every other plan. */
  readonly identity: string;
  readonly plan: ProjectPlanFile["plan"];
  readonly project: ProjectPlanFile["project"];
  /** The identity of the plan that it goes on from; `null` without one. */
  readonly after: string | null;
  /** Names of the layouts by their group and place, as their files are called: `sheet-night-1`. */
  readonly layouts: readonly NamedLayout[];
}

/** A layout by its name. */
export interface NamedLayout {
  readonly name: string;
  readonly group: number;
  readonly layout: number;
  readonly run: number;
}

/**
 * Reads the plan of a project from its folder and proves it again. Rejects with {@link FaultsFound} where there is none, or
 * it is not as Sheetwright wrote it.
 *
 * @param folder the folder's path as it was given.
 * @param option what was given it, for the place of a fault.
 */
export async function readCutPlan(folder: string, option: string, io: Io): Promise<CutPlan> {
  const name = (await io.files.look(resolve(io.cwd, folder))) === "file" ? folder : join(folder, PLAN_FILE);
  const place = { option };
  const refuse = (code: string, message: string): never => {
    throw new FaultsFound([{ code, place: { file: name, path: "" }, message }]);
  };
  const help = "Give the folder that sheetwright plan wrote.";
  const text = await readText(name, { place, help }, io);
  if (typeof text !== "string") throw new FaultsFound([text satisfies Fault]);
  const value = parse(text);
  const kind: unknown =
    typeof value === "object" && value !== null ? Reflect.get(value, "sheetwright") : null;
  if (kind === "plan")
    refuse(
      "not-a-project",
      "this is the plan of a list of pieces, expected that of a project: only its papers have keys.",
    );
  if (kind !== "project-plan") refuse("not-a-plan", `found no plan of a project. ${help}`);
  const again = "Plan again, and cut by that plan.";
  if (!isSealed(text)) refuse("changed-since", `the plan was changed after Sheetwright wrote it. ${again}`);
  const read = projectPlanFile.safeParse(value);
  if (!read.success) return refuse("not-a-plan", `found a plan of another version of Sheetwright. ${again}`);
  const { plan, project, stock, files } = read.data;
  const [finding] = verifyPlan(project, plan);
  if (finding !== undefined)
    refuse(
      "not-right",
      `the plan is not right: ${finding.path}: ${finding.message} ${quote(name)} is not cut by.`,
    );
  const layouts = files.flatMap(({ what, name: drawing, group, layout }): NamedLayout[] => {
    const of = plan.groups[group ?? -1];
    const inOne = of?.packing.layouts[layout ?? -1]?.run;
    const run = inOne === undefined ? undefined : inOne * (of?.bags ?? 1);
    if (what !== "drawing" || group === null || layout === null || run === undefined) return [];
    return [{ name: drawing.replace(/\.svg$/, ""), group, layout, run }];
  });
  return { identity: sha256(text), plan, project, after: stock?.after ?? null, layouts };
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
