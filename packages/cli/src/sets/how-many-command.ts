import type { Project } from "@sheetwright/cards";
import { completeSets, type ImpossibleSets, type SetCount, verifyPlan, withSets } from "@sheetwright/planner";
import { FaultsFound } from "../fault.js";
import type { Io } from "../io.js";
import { showProgress } from "../plan/show-progress.js";
import { WrongPlan } from "../plan/wrong-plan.js";
import { readProjectFile } from "../project/read-project-file.js";
import type { WrittenOptions } from "../request/plan-options.js";
import { readProjectSearch } from "../request/project-search-request.js";
import type { SearchOptions } from "../request/shared-options.js";
import { tableReader } from "../request/table-reader.js";
import { takeStock } from "../stock/take-stock.js";
import { withPacker } from "../threads/with-packer.js";
import { writeSetCount } from "../words/write-set-count.js";
import { addHowManyOptions, HOW_MANY_OPTIONS, type HowManyOptionKey } from "./how-many-options.js";

const HOW_MANY = {
  name: "sheetwright how-many",
  addOptions: addHowManyOptions,
  listHelp: "How much of a list can be cut is told by sheetwright plan --pieces with --count.",
};

/**
 * Runs `sheetwright how-many`: says how many complete sets of cards the papers and items on hand give. Resolves to the exit code: 0, or
 * 1 where not one was found. Rejects with {@link FaultsFound} for every mistake.
 *
 * @param rest what stands on the command line beside known options: the project file, and faults.
 */
export async function howManyCommand(
  written: WrittenOptions,
  rest: readonly string[],
  io: Io,
): Promise<0 | 1> {
  const reader = tableReader<HowManyOptionKey>(HOW_MANY_OPTIONS, written);
  const stockFile = written.stock === undefined ? null : reader.required("stock");
  const { file, search, json, faults } = readProjectSearch(written, rest, reader, HOW_MANY);
  const read = file === null ? null : await readProjectFile(file, HOW_MANY.name, io);
  const all = [...faults, ...(read?.faults ?? [])];
  if (read === null || read.project === null || all.length > 0) throw new FaultsFound(all);
  const stock = stockFile === null ? null : await takeStock(read.project, stockFile, null, io);
  const project = stock?.project ?? read.project;

  const count = await findSetCount(project, search, io);
  if (json) {
    const { cancelled: endedEarly, plan: _, impossible, units, ...found } = count;
    const proven = impossible === null ? null : withoutPlan(impossible);
    const shown = { length: "tick", ticksPerInch: 40640, shown: units };
    const data = {
      sheetwright: "how-many",
      version: 1,
      endedEarly,
      ...found,
      impossible: proven,
      units: shown,
    };
    io.stdout.write(`${JSON.stringify(data, null, 2)}\n`);
  }
  (json ? io.stderr : io.stdout).write(lines(writeSetCount(count, project)));
  const early = "Ended early: a longer search may find more.";
  const notes = [...read.notes, ...(stock?.notes ?? []), ...(count.cancelled ? [early] : [])];
  if (notes.length > 0) io.stderr.write(lines(["", ...notes]));
  return count.most === 0 ? 1 : 0;
}

/** Counts the sets, and proves the plans right that the answer rests on. Rejects with {@link WrongPlan}. */
async function findSetCount(project: Project, search: SearchOptions, io: Io): Promise<SetCount> {
  const { effort, seed } = search;
  const progress = showProgress(io.stderr);
  const count = await withPacker(search, io, (packer) =>
    completeSets(project, {
      effort,
      seed,
      packer,
      onProgress: ({ group, groups, progress: step }) => {
        progress.show(step, groups === 1 ? "" : `papers ${group + 1} of ${groups}, `);
      },
      ...(io.signal === undefined ? {} : { signal: io.signal }),
      ...(io.pause === undefined ? {} : { pause: io.pause }),
    }),
  ).finally(progress.clear);
  const { most, plan, impossible } = count;
  const findings = [
    ...(plan === null ? [] : verifyPlan(withSets(project, most ?? 0), plan)),
    ...(impossible === null ? [] : verifyPlan(withSets(project, impossible.sets), impossible.plan)),
  ];
  if (findings.length > 0) throw new WrongPlan(findings);
  return count;
}

function withoutPlan({ plan: _, ...told }: ImpossibleSets): Omit<ImpossibleSets, "plan"> {
  return told;
}

function lines(texts: readonly string[]): string {
  return `${texts.join("\n")}\n`;
}
