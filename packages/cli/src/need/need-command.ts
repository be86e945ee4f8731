import type { Unit } from "@sheetwright/measure";
import { asManyAsNeeded, needOf } from "@sheetwright/planner";
import { type Fault, FaultsFound, quote } from "../fault.js";
import type { Io } from "../io.js";
import { readProjectFile } from "../project/read-project-file.js";
import { findProjectPlan } from "../project-plan/find-project-plan.js";
import { faultsOfRest, freeWords, ONE_NAME } from "../request/free-words.js";
import { suggestOption, type WrittenOptions } from "../request/plan-options.js";
import { readSearchOptions, type SearchOptions } from "../request/shared-options.js";
import { tableReader } from "../request/table-reader.js";
import { bold } from "../words/emphasis.js";
import { writeNeed } from "../words/write-need.js";
import { addNeedOptions, NEED_OPTIONS, type NeedOptionKey } from "./need-options.js";

/**
 * Runs `sheetwright need`: says what a project takes in all, and what of it is to be bought. Resolves to the exit code: 0, or
 * 1 where a piece fits none of its papers. Rejects with {@link FaultsFound} for every mistake.
 *
 * @param rest what stands on the command line beside known options: the project file, and faults.
 */
export async function needCommand(written: WrittenOptions, rest: readonly string[], io: Io): Promise<0 | 1> {
  const { file, request, json, faults } = readRequest(written, rest);
  const read = file === null ? null : await readProjectFile(file, "sheetwright need", io);
  const all = [...faults, ...(read?.faults ?? [])];
  const project = read?.project ?? null;
  if (read === null || project === null || all.length > 0) throw new FaultsFound(all);
  const plan = await findProjectPlan(asManyAsNeeded(project), request, io);
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

interface ReadNeedRequest {
  readonly file: string | null;
  readonly request: SearchOptions;
  readonly json: boolean;
  readonly faults: readonly Fault[];
}

function readRequest(written: WrittenOptions, rest: readonly string[]): ReadNeedRequest {
  const [file = null] = freeWords(rest).words;
  const others = rest.filter((_, index) => index !== rest.indexOf(file ?? ""));
  const reader = tableReader<NeedOptionKey>(NEED_OPTIONS, written);
  const request = readSearchOptions(written, reader);
  const place = { option: "sheetwright need" };
  const faults: Fault[] = [
    ...faultsOfRest(others, {
      suggest: (option) => suggestOption(option, addNeedOptions),
      help: `One project file is looked at at a time. ${ONE_NAME}`,
    }),
    ...reader.faults(),
  ];
  if (file === null) {
    const message = "the project file is missing. Give its name, such as sheetwright need cards.yaml.";
    faults.unshift({ code: "option-missing", place, message });
  } else if (/\.(csv|tsv|txt)$/i.test(file)) {
    const message =
      `${quote(file)} is no project file by its name, expected one that ends in .yaml or .json. ` +
      "What a list of pieces takes is told by sheetwright plan --pieces without --count.";
    faults.unshift({ code: "not-a-project", place, message });
  }
  const isProject = faults.every(({ code }) => code !== "not-a-project");
  return { file: isProject ? file : null, request, json: written["json"] === true, faults };
}

function lines(texts: readonly string[]): string {
  return `${texts.join("\n")}\n`;
}
