import { resolve } from "node:path";
import { type Fault, FaultsFound, quote } from "../fault.js";
import { findConflicts } from "../folder/find-conflicts.js";
import { replaceFiles } from "../folder/replace-files.js";
import { PLAN_FILE, surveyFolder } from "../folder/survey-folder.js";
import { type Io, systemCode } from "../io.js";
import { decodeText } from "../pieces/decode-text.js";
import { type PieceList, readPieceList } from "../pieces/piece-list.js";
import type { WrittenOptions } from "../request/plan-options.js";
import { type PlanRequest, readPlanRequest } from "../request/plan-request.js";
import { bold } from "../words/emphasis.js";
import { systemErrorWords } from "../words/system-error.js";
import { writeShortfall } from "../words/write-shortfall.js";
import { BLADE_CAUTION, writeSummary } from "../words/write-summary.js";
import { findPlan } from "./find-plan.js";
import { OVERVIEW_FILE, planFiles } from "./plan-files.js";
import { planProblem } from "./plan-problem.js";
import type { PlanSummary } from "./plan-summary.js";

/**
 * Runs `sheetwright plan`: reads the request and the piece list, plans, proves, draws, and writes all files or none.
 * Resolves to the exit code: 0, or 1 where not every piece is in the plan. Rejects with {@link FaultsFound}.
 *
 * @param rest what stands on the command line beside known options.
 */
export async function planCommand(written: WrittenOptions, rest: readonly string[], io: Io): Promise<0 | 1> {
  const { request, list } = await readAll(written, rest, io);
  const problem = planProblem(request, list.pieces);
  const found = await findPlan(problem, request, io);
  const { files, summary } = planFiles(problem, found, request);

  const notes = await writeAll(request, io, files);
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
    const text = await readText(pieces, io);
    list = typeof text === "string" ? readPieceList(text, pieces, unit) : { ...list, faults: [text] };
    all.push(...list.faults);
  }
  // Said before the search, so that nobody waits for a plan that then cannot be written.
  if (out !== null) all.push(...(await conflicts(out, [PLAN_FILE, OVERVIEW_FILE], force, io)));
  if (request === null || all.length > 0) throw new FaultsFound(all);
  return { request, list };
}

async function readText(file: string, io: Io): Promise<string | Fault> {
  try {
    return decodeText(await io.files.read(resolve(io.cwd, file)), file);
  } catch (error) {
    const code = systemCode(error);
    if (code === undefined) throw error;
    const message = `${quote(file)} cannot be read: ${systemErrorWords(code)}.`;
    return { code: "not-readable", place: { option: "--pieces" }, message };
  }
}

async function conflicts(
  out: string,
  names: readonly string[],
  force: boolean,
  io: Io,
): Promise<readonly Fault[]> {
  try {
    return findConflicts(await surveyFolder(io.files, resolve(io.cwd, out)), out, names, force);
  } catch (error) {
    return [notWritable(error, out)];
  }
}

/** Writes the files and removes those of an earlier plan that this one has no use for. Resolves to what to say of it. */
async function writeAll(
  request: PlanRequest,
  io: Io,
  files: readonly { readonly name: string; readonly content: string }[],
): Promise<string[]> {
  const { out, force } = request;
  const names = files.map((file) => file.name);
  const faults = await conflicts(out, names, force, io);
  if (faults.length > 0) throw new FaultsFound(faults);
  try {
    const folder = resolve(io.cwd, out);
    const survey = await surveyFolder(io.files, folder);
    const stale = [...survey.own].filter((name) => !names.includes(name)).sort();
    await replaceFiles(io.files, folder, files, stale);
    const kept = [...survey.changed].filter((name) => !names.includes(name)).sort();
    return kept.map((name) => `${name} is of an earlier plan; it was changed since, so it was left there.`);
  } catch (error) {
    throw new FaultsFound([notWritable(error, out)], { cause: error });
  }
}

/** Gives the fault for an error of the operating system; throws any other. */
function notWritable(error: unknown, out: string): Fault {
  const code = systemCode(error);
  if (code === undefined) throw error;
  const message = `${quote(out)} cannot be written to: ${systemErrorWords(code)}. What was there before is unchanged.`;
  return { code: "not-writable", place: { option: "--out" }, message };
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
