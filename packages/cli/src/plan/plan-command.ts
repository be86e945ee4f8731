import { type Fault, FaultsFound } from "../fault.js";
import { PLAN_FILE } from "../folder/survey-folder.js";
import { folderFaults, writeToFolder } from "../folder/write-to-folder.js";
import type { Io } from "../io.js";
import { type PieceList, readPieceList } from "../pieces/piece-list.js";
import type { WrittenOptions } from "../request/plan-options.js";
import { type PlanRequest, readPlanRequest } from "../request/plan-request.js";
import { readText } from "../text/read-text.js";
import { bold } from "../words/emphasis.js";
import { BLADE_CAUTION } from "../words/write-notes.js";
import { writeShortfall } from "../words/write-shortfall.js";
import { writeSummary } from "../words/write-summary.js";
import { findPlan } from "./find-plan.js";
import { OVERVIEW_FILE, planFiles } from "./plan-files.js";
import { planProblem } from "./plan-problem.js";
import type { PlanSummary } from "./plan-summary.js";

/** What helps where the list is no text. */
const LIST_HELP = 'Save the list as "CSV UTF-8", or make sure that this is the list and no spreadsheet file.';

/**
 * Runs `sheetwright plan --pieces`: reads the request and the piece list, plans, proves, draws, and writes all files or none.
 * Resolves to the exit code: 0, or 1 where not every piece is in the plan. Rejects with {@link FaultsFound}.
 *
 * @param rest what stands on the command line beside known options.
 */
export async function planCommand(written: WrittenOptions, rest: readonly string[], io: Io): Promise<0 | 1> {
  const { request, list } = await readAll(written, rest, io);
  const problem = planProblem(request, list.pieces);
  const found = await findPlan(problem, request, io);
  const { files, summary } = planFiles(problem, found, request);

  const notes = [...(await writeToFolder(request, files, io))];
  if (list.comments === 1)
    notes.push(`${request.pieces}: 1 line that starts with # was left out as a comment.`);
  if (list.comments > 1) {
    notes.push(`${request.pieces}: ${list.comments} lines that start with # were left out as comments.`);
  }
  const shortfall = writeShortfall(summary, problem);
  const caution = summary.layouts.length === 0 ? [] : ["", ...BLADE_CAUTION];
  const text = lines([...writeSummary(summary), "", ...writePlaces(summary, request.out), ...caution]);
  if (request.json) io.stdout.write(`${JSON.stringify(summary, null, 2)}\n`);
  (request.json ? io.stderr : io.stdout).write(text);
  if (notes.length > 0) io.stderr.write(lines(["", ...notes]));
  if (shortfall.length === 0) return 0;
  const [verdict = "", ...reasons] = shortfall;
  io.stderr.write(lines(["", bold(verdict, io.stderr, io.env), ...reasons]));
  return 1;
}

async function readAll(
  written: WrittenOptions,
  rest: readonly string[],
  io: Io,
): Promise<{ readonly request: PlanRequest; readonly list: PieceList }> {
  const { request, unit, pieces, out, force, faults } = readPlanRequest(written, rest);
  const all: Fault[] = [...faults];
  let list: PieceList = { pieces: [], comments: 0, faults: [] };
  if (pieces !== null && unit !== null) {
    const text = await readText(pieces, { place: { option: "--pieces" }, help: LIST_HELP }, io);
    list = typeof text === "string" ? readPieceList(text, pieces, unit) : { ...list, faults: [text] };
    all.push(...list.faults);
  }
  // Said before the search, so that nobody waits for a plan that then cannot be written.
  if (out !== null) all.push(...(await folderFaults({ out, force }, [PLAN_FILE, OVERVIEW_FILE], io)));
  if (request === null || all.length > 0) throw new FaultsFound(all);
  return { request, list };
}

function writePlaces({ layouts }: PlanSummary, out: string): readonly string[] {
  const [first] = layouts;
  const last = layouts.at(-1);
  if (first === undefined || last === undefined)
    return [`Written to ${out}: ${PLAN_FILE}, ${OVERVIEW_FILE}.`];
  const range = (end: string): string =>
    last === first ? first.name + end : `${first.name}${end} to ${last.name}${end}`;
  return [
    `Written to ${out}: ${PLAN_FILE}, ${OVERVIEW_FILE}, and for each layout`,
    `  ${range(".svg")}: the sheet to print, true to scale`,
    `  ${range(".txt")}: its cuts in working order`,
    `  ${range("-cutter.svg")}: for a cutting machine`,
  ];
}

function lines(texts: readonly string[]): string {
  return `${texts.join("\n")}\n`;
}
