import type { Project } from "@sheetwright/cards";
import { type CutOrder, cutOrder } from "@sheetwright/packing";
import { cardsAsCut, layoutMarks, type Plan } from "@sheetwright/planner";
import {
  drawCard,
  drawCutterFile,
  drawLayout,
  drawMeasurements,
  writeCutList,
  writeMeasurements,
} from "@sheetwright/svg";
import { finishedInShort } from "../finished/finished-in-short.js";
import type { NewFile } from "../folder/replace-files.js";
import { seal, sha256 } from "../folder/seal.js";
import { PLAN_FILE } from "../folder/survey-folder.js";
import { OVERVIEW_FILE } from "../plan/plan-files.js";
import type { ProjectPlanRequest } from "../request/project-plan-request.js";
import { VERSION } from "../version.js";
import { counted } from "../words/counted.js";
import { PACKING_LIST_FILE, writePackingList } from "../words/write-packing-list.js";
import { writeProjectOverview } from "../words/write-project-overview.js";
import { writeProjectShortfall } from "../words/write-project-shortfall.js";
import { type FileNames, fileNames } from "./file-names.js";
import type { ProjectPlanFile } from "./project-plan-file.js";
import { type ProjectPlanSummary, projectPlanSummary } from "./project-plan-summary.js";

/** All that is written for a project's plan, and its summary. */
export interface ProjectPlanFiles {
  readonly files: readonly (NewFile & { readonly what: FileKind })[];
  readonly summary: ProjectPlanSummary;
}

/** What a file is. */
export type FileKind = ProjectPlanFile["files"][number]["what"] | "plan";

type Listed = Omit<ProjectPlanFile["files"][number], "sha256">;
type Written = NewFile & Listed;

/**
 * Draws and writes a project's plan: every sheet, every card, the overview, and `plan.json`.
 *
 * @param stock that which counts and offcuts were taken from; `null` where they are the project's own.
 */
export function projectPlanFiles(
  project: Project,
  plan: Plan,
  request: ProjectPlanRequest,
  stock: ProjectPlanFile["stock"] | null,
): ProjectPlanFiles {
  const hold = project.trimmer.narrowestHold;
  const cutOrders = plan.groups.map(({ problem, packing }) =>
    packing.layouts.map((layout): CutOrder => {
      const sheet = problem.sheets.find((one) => one.id === layout.sheet);
      if (sheet === undefined)
        throw new RangeError(`The packing names the sheet "${layout.sheet}", which is not there.`);
      return cutOrder(sheet, layout, { kerf: problem.kerf ?? 0, narrowestHold: hold });
    }),
  );
  const names = fileNames(plan);
  const drawn = [...sheetFiles(plan, names, cutOrders, request), ...cardFiles(plan, names)];
  const bagFiles = project.kits === undefined ? [] : [PACKING_LIST_FILE];
  const files = [PLAN_FILE, OVERVIEW_FILE, ...bagFiles, ...drawn.map((file) => file.name)];
  const summary = projectPlanSummary(plan, {
    finished: finishedInShort(project),
    bags: project.kits?.bags ?? null,
    items: project.items,
    hold,
    cutOrders,
    names,
    files,
  });
  // The file says nothing of where the project's values stand: its bytes do not depend on how the project is laid out.
  const shortfall = writeProjectShortfall(summary, plan, (path) => path);
  const overview: Written = {
    name: OVERVIEW_FILE,
    what: "overview",
    group: null,
    layout: null,
    card: null,
    content: writeProjectOverview(summary, { ...plan, ...cardsAsCut(plan) }, shortfall),
  };
  const packingLists = bagFiles.map(
    (name): Written => ({
      name,
      what: "packing list",
      group: null,
      layout: null,
      card: null,
      content: writePackingList(summary, plan, project),
    }),
  );
  const written = [overview, ...packingLists, ...drawn];
  const planText = writePlan(project, plan, cutOrders, written, stock);
  return { files: [{ name: PLAN_FILE, what: "plan", content: planText }, ...written], summary };
}

function sheetFiles(
  plan: Plan,
  names: FileNames,
  cutOrders: readonly (readonly CutOrder[])[],
  { cutterUnit, cutterEdges }: ProjectPlanRequest,
): readonly Written[] {
  const unit = plan.units;
  return plan.groups.flatMap(({ problem, packing, bags }, group) => {
    const marks = layoutMarks(plan, group);
    const title = bags === undefined ? plan.title : `${plan.title}, for each bag`;
    const forBag =
      bags === undefined
        ? ""
        : `For each of ${counted(bags, "bag")}, all alike: its sheets go out whole.\n\n`;
    return packing.layouts.flatMap((_, layout): readonly Written[] => {
      const cuts = cutOrders[group]?.[layout];
      const name = names.layouts[group]?.[layout];
      if (cuts === undefined || name === undefined)
        throw new RangeError(`Layout ${layout} of group ${group} has no cut order or no name.`);
      const of = { group, layout, card: null };
      return [
        {
          name: `${name}.svg`,
          what: "drawing",
          ...of,
          content: drawLayout(problem, packing, layout, { unit, cuts, marks, title }),
        },
        {
          name: `${name}.txt`,
          what: "cut list",
          ...of,
          content: `${forBag}${writeCutList(problem, packing, layout, { unit, cuts, marks })}`,
        },
        {
          name: `${name}-cutter.svg`,
          what: "cutter file",
          ...of,
          content: drawCutterFile(problem, packing, layout, {
            userUnit: cutterUnit,
            edges: cutterEdges,
            marks,
          }),
        },
      ];
    });
  });
}

function cardFiles(plan: Plan, names: FileNames): readonly Written[] {
  const unit = plan.units;
  const cards = cardsAsCut(plan);
  return plan.cards.flatMap(({ number }, index): readonly Written[] => {
    const name = names.cards[index];
    if (name === undefined) throw new RangeError(`Card ${number} has no name for its files.`);
    const of = { group: null, layout: null, card: number };
    return [
      { name: `${name}.svg`, what: "card", ...of, content: drawCard(cards, number, { unit }) },
      ...drawMeasurements(cards, number, { unit }).map(
        (content, page): Written => ({
          name: page === 0 ? `${name}-sizes.svg` : `${name}-sizes-${page + 1}.svg`,
          what: "measurements",
          ...of,
          content,
        }),
      ),
      {
        name: `${name}-sizes.txt`,
        what: "measurements as text",
        ...of,
        content: writeMeasurements(cards, number, { unit }),
      },
    ];
  });
}

function writePlan(
  project: Project,
  plan: Plan,
  cutOrders: readonly (readonly CutOrder[])[],
  written: readonly Written[],
  stock: ProjectPlanFile["stock"] | null,
): string {
  const file = {
    sheetwright: "project-plan",
    version: 1,
    // Filled in below; it must stay above anything that a title or a name could imitate.
    seal: "",
    madeBy: `sheetwright ${VERSION}`,
    title: plan.title,
    units: { length: "tick", ticksPerMillimetre: 1600, ticksPerInch: 40640, shown: plan.units },
    hold: project.trimmer.narrowestHold,
    ...(stock === null ? {} : { stock }),
    project,
    plan,
    cutOrders,
    files: written.map(({ content, ...listed }) => ({ ...listed, sha256: sha256(content) })),
  };
  return seal(`${JSON.stringify(file, null, 2)}\n`);
}
