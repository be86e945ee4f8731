import { findSavings } from "@sheetwright/planner";
import { FaultsFound } from "../fault.js";
import type { Io } from "../io.js";
import { readProjectFile } from "../project/read-project-file.js";
import type { WrittenOptions } from "../request/plan-options.js";
import { readProjectSearch } from "../request/project-search-request.js";
import { tableReader } from "../request/table-reader.js";
import { withPacker } from "../threads/with-packer.js";
import { bold } from "../words/emphasis.js";
import { writeSavings } from "../words/write-savings.js";
import { addSavingsOptions, SAVINGS_OPTIONS, type SavingsOptionKey } from "./savings-options.js";

const SAVINGS = {
  name: "sheetwright savings",
  addOptions: addSavingsOptions,
  listHelp: "For a list of pieces, sheetwright compare --pieces tells of other sheets.",
};

const MOST = 100;

/**
 * Runs `sheetwright savings`: plans small changes of a project, and tells those that would save most. Resolves to the exit
 * code: 0, or 1 where a piece fits none of its papers. Rejects with {@link FaultsFound} for every mistake.
 *
 * @param rest what stands on the command line beside known options: the project file, and faults.
 */
export async function savingsCommand(
  written: WrittenOptions,
  rest: readonly string[],
  io: Io,
): Promise<0 | 1> {
  const reader = tableReader<SavingsOptionKey>(SAVINGS_OPTIONS, written);
  const most = reader.wholeNumber("most", 1, MOST) ?? 3;
  const { file, search, json, faults } = readProjectSearch(written, rest, reader, SAVINGS);
  const read = file === null ? null : await readProjectFile(file, SAVINGS.name, io);
  const all = [...faults, ...(read?.faults ?? [])];
  const project = read?.project ?? null;
  if (read === null || project === null || all.length > 0) throw new FaultsFound(all);
  const effort = written.effort === undefined ? "quick" : search.effort;
  const show = io.stderr.isTTY === true;
  const savings = await withPacker(search, io, (packer) =>
    findSavings(project, {
      most,
      effort,
      seed: search.seed,
      packer,
      onChange: (done, changes) => {
        if (show) io.stderr.write(`\rChanges: ${done} of ${changes}. Ctrl-C ends early.\u001b[K`);
      },
      ...(io.signal === undefined ? {} : { signal: io.signal }),
      ...(io.pause === undefined ? {} : { pause: io.pause }),
    }),
  );
  if (show) io.stderr.write("\r\u001b[K");
  const { search: record, ...told } = savings;
  if (json) {
    const { cancelled: endedEarly, ...how } = record;
    const data = { sheetwright: "savings", version: 1, endedEarly, ...told, search: how };
    io.stdout.write(`${JSON.stringify(data, null, 2)}\n`);
  }
  if (savings.asItIs === null) {
    const verdict =
      "Cannot be planned as asked: a piece fits none of its papers. sheetwright check says what would help.";
    io.stderr.write(lines([...read.notes, bold(verdict, io.stderr, io.env)]));
    return 1;
  }
  (json ? io.stderr : io.stdout).write(lines(writeSavings(savings)));
  const early = "Ended early: not all changes were tried.";
  const notes = [...read.notes, ...(record.cancelled ? [early] : [])];
  if (notes.length > 0) io.stderr.write(lines(["", ...notes]));
  return 0;
}

function lines(texts: readonly string[]): string {
  return `${texts.join("\n")}\n`;
}
