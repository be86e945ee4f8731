import { FaultsFound, writePlace } from "../fault.js";
import type { Io } from "../io.js";
import { readProjectFile } from "../project/read-project-file.js";
import type { WrittenOptions } from "../request/plan-options.js";
import { bold } from "../words/emphasis.js";
import { writeCheck } from "../words/write-check.js";
import { writeFindings } from "../words/write-findings.js";
import { checkReport } from "./check-report.js";
import { readCheckRequest } from "./check-request.js";
import { checkShelf } from "./check-shelf.js";

/**
 * Runs `sheetwright check`: reads a project, or a shelf, and says what it is and what is odd in it, without planning.
 * Resolves to the exit code: 0, or 1 where a piece fits none of its papers. Rejects with {@link FaultsFound} for every mistake.
 *
 * @param rest what stands on the command line beside known options: the project file, and faults.
 */
export async function checkCommand(written: WrittenOptions, rest: readonly string[], io: Io): Promise<0 | 1> {
  const { file, json, silenced, faults } = readCheckRequest(written, rest);
  if (file === null || faults.length > 0) throw new FaultsFound(faults);
  if (await checkShelf(file, json, io)) return 0;
  const { project, faults: mistakes, placeOf, notes } = await readProjectFile(file, "sheetwright check", io);
  if (project === null) throw new FaultsFound(mistakes);
  const report = checkReport(project, placeOf);
  if (json) io.stdout.write(`${JSON.stringify(report, null, 2)}\n`);
  (json ? io.stderr : io.stdout).write(lines(writeCheck(report)));
  const heard = report.findings.filter((one) => one.silenced === null);
  const listed = silenced ? report.findings : heard;
  const said = [...notes, ...writeFindings(listed, (path) => writePlace(placeOf(path)))];
  if (said.length > 0) io.stderr.write(lines(["", ...said]));
  if (heard.every(({ severity }) => severity !== "error")) return 0;
  const verdict = "Cannot be planned as asked: a piece fits none of its papers.";
  io.stderr.write(lines(["", bold(verdict, io.stderr, io.env)]));
  return 1;
}

function lines(texts: readonly string[]): string {
  return `${texts.join("\n")}\n`;
}
