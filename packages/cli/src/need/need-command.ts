import type { Unit } from "@sheetwright/measure";
import { asManyAsNeeded, needOf } from "@sheetwright/planner";
import { FaultsFound } from "../fault.js";
import type { Io } from "../io.js";
import { readProjectFile } from "../project/read-project-file.js";
import { findProjectPlan } from "../project-plan/find-project-plan.js";
import type { WrittenOptions } from "../request/plan-options.js";
import { readProjectSearch } from "../request/project-search-request.js";
import { tableReader } from "../request/table-reader.js";
import { bold } from "../words/emphasis.js";
import { writeNeed } from "../words/write-need.js";
import { addNeedOptions, NEED_OPTIONS, type NeedOptionKey } from "./need-options.js";

const NEED = {
  name: "sheetwright need",
  addOptions: addNeedOptions,
  listHelp: "What a list of pieces takes is told by sheetwright plan --pieces without --count.",
};

/**
 * Runs `sheetwright need`: says what a project takes in all, and what of it is to be bought. Resolves to the exit code: 0, or
 * 1 where a piece fits none of its papers. Rejects with {@link FaultsFound} for every mistake.
 *
 * @param rest what stands on the command line beside known options: the project file, and faults.
 */
export async function needCommand(written: WrittenOptions, rest: readonly string[], io: Io): Promise<0 | 1> {
  const reader = tableReader<NeedOptionKey>(NEED_OPTIONS, written);
  const { file, search, json, faults } = readProjectSearch(written, rest, reader, NEED);
  const read = file === null ? null : await readProjectFile(file, "sheetwright need", io);
  const all = [...faults, ...(read?.faults ?? [])];
  const project = read?.project ?? null;
  if (read === null || project === null || all.length > 0) throw new FaultsFound(all);
  const plan = await findProjectPlan(asManyAsNeeded(project), search, io);
  const need = needOf(project, plan);
  const endedEarly = plan.search.cancelled;
  if (json) {
    const units = { length: "tick", ticksPerInch: 40640, shown: need.units satisfies Unit };
    const data = { sheetwright: "need", version: 1, endedEarly, ...need, units };
    io.stdout.write(`${JSON.stringify(data, null, 2)}\n`);
  }
  (json ? io.stderr : io.stdout).write(lines(writeNeed(need, project.rates?.currency ?? null)));
  const early = "Ended early: a longer search may find that fewer sheets will do.";
  const notes = [...read.notes, ...(endedEarly ? [early] : [])];
  if (notes.length > 0) io.stderr.write(lines(["", ...notes]));
  if (need.noPaper.length === 0) return 0;
  const verdict =
    "Cannot be planned as asked: a piece fits none of its papers. sheetwright check says what would help.";
  io.stderr.write(lines(["", bold(verdict, io.stderr, io.env)]));
  return 1;
}

function lines(texts: readonly string[]): string {
  return `${texts.join("\n")}\n`;
}
