import { checkProject, type Project } from "@sheetwright/cards";
import { type Fault, FaultsFound, writePlace } from "../fault.js";
import { PLAN_FILE } from "../folder/survey-folder.js";
import { folderFaults, writeToFolder } from "../folder/write-to-folder.js";
import type { Io } from "../io.js";
import { OVERVIEW_FILE } from "../plan/plan-files.js";
import { type ReadProjectFile, readProjectFile } from "../project/read-project-file.js";
import type { WrittenOptions } from "../request/plan-options.js";
import { type ProjectPlanRequest, readProjectPlanRequest } from "../request/project-plan-request.js";
import { type TakenStock, takeStock } from "../stock/take-stock.js";
import { bold } from "../words/emphasis.js";
import { writeFindings } from "../words/write-findings.js";
import { BLADE_CAUTION } from "../words/write-notes.js";
import { writeProjectShortfall } from "../words/write-project-shortfall.js";
import { writeProjectSummary } from "../words/write-project-summary.js";
import { findProjectPlan } from "./find-project-plan.js";
import { projectPlanFiles } from "./project-plan-files.js";
import { writeProjectPlaces } from "./write-project-places.js";

/**
 * Runs `sheetwright plan FILE`: reads the project, plans, proves, draws, and writes all files or none. Resolves to the
 * exit code: 0, or 1 where not every piece is in the plan. Rejects with {@link FaultsFound}.
 *
 * @param rest what stands on the command line beside known options: the project file, and faults.
 */
export async function projectPlanCommand(
  written: WrittenOptions,
  rest: readonly string[],
  io: Io,
): Promise<0 | 1> {
  const { request, project, read, stock } = await readAll(written, rest, io);
  const plan = await findProjectPlan(project, request, io);
  const { files, summary } = projectPlanFiles(project, plan, request, stock?.source ?? null);

  const kept = await writeToFolder(request, files, io);
  const place = (path: string): string => writePlace(read.placeOf(path));
  // A piece that no paper can give is told as missing.
  const heard = checkProject(project).filter(
    ({ severity, silenced }) => severity !== "error" && silenced === null,
  );
  const notes = [...read.notes, ...(stock?.notes ?? []), ...writeFindings(heard, place), ...kept];
  const caution = summary.layouts.length === 0 ? [] : ["", ...BLADE_CAUTION];
  const text = lines([
    ...writeProjectSummary(summary),
    "",
    ...writeProjectPlaces(files, request.out),
    ...caution,
  ]);
  if (request.json) io.stdout.write(`${JSON.stringify(summary, null, 2)}\n`);
  (request.json ? io.stderr : io.stdout).write(text);
  if (notes.length > 0) io.stderr.write(lines(["", ...notes]));
  const [verdict, ...reasons] = writeProjectShortfall(summary, plan, place);
  if (verdict === undefined) return 0;
  io.stderr.write(lines(["", bold(verdict, io.stderr, io.env), ...reasons]));
  return 1;
}

async function readAll(
  written: WrittenOptions,
  rest: readonly string[],
  io: Io,
): Promise<{
  readonly request: ProjectPlanRequest;
  readonly project: Project;
  readonly read: ReadProjectFile;
  readonly stock: TakenStock | null;
}> {
  const { request, file, out, force, faults } = readProjectPlanRequest(written, rest);
  const all: Fault[] = [...faults];
  const read =
    file === null || faults.some(({ code }) => code === "not-a-project")
      ? null
      : await readProjectFile(file, "sheetwright plan", io);
  if (read !== null) all.push(...read.faults);
  // Said before the search, so that nobody waits for a plan that then cannot be written.
  if (out !== null) all.push(...(await folderFaults({ out, force }, [PLAN_FILE, OVERVIEW_FILE], io)));
  const project = read?.project ?? null;
  if (request === null || read === null || project === null || all.length > 0) throw new FaultsFound(all);
  const stock = request.stock === null ? null : await takeStock(project, request.stock, request.after, io);
  return { request, project: stock?.project ?? project, read, stock };
}

function lines(texts: readonly string[]): string {
  return `${texts.join("\n")}\n`;
}
