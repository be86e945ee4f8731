import { asManyAsNeeded, priceOf } from "@sheetwright/planner";
import { FaultsFound } from "../fault.js";
import type { Io } from "../io.js";
import { readProjectFile } from "../project/read-project-file.js";
import { findProjectPlan } from "../project-plan/find-project-plan.js";
import type { WrittenOptions } from "../request/plan-options.js";
import { readProjectSearch } from "../request/project-search-request.js";
import { tableReader } from "../request/table-reader.js";
import { bold } from "../words/emphasis.js";
import { writePrice } from "../words/write-price.js";
import { addPriceOptions, PRICE_OPTIONS, type PriceOptionKey } from "./price-options.js";

const PRICE = {
  name: "sheetwright price",
  addOptions: addPriceOptions,
  listHelp: "What sheets for a list of pieces cost is told by sheetwright compare --pieces.",
};

/**
 * Runs `sheetwright price`: plans a project, and says what its cards cost, a copy and a guest, and what a price would be.
 * Where what is on hand does not give all, as much as needed is reckoned with. Resolves to the exit code: 0, or 1
 * where a piece fits none of its papers. Rejects with {@link FaultsFound} for every mistake.
 *
 * @param rest what stands on the command line beside known options: the project file, and faults.
 */
export async function priceCommand(written: WrittenOptions, rest: readonly string[], io: Io): Promise<0 | 1> {
  const reader = tableReader<PriceOptionKey>(PRICE_OPTIONS, written);
  const { file, search, json, faults } = readProjectSearch(written, rest, reader, PRICE);
  const read = file === null ? null : await readProjectFile(file, PRICE.name, io);
  const all = [...faults, ...(read?.faults ?? [])];
  const project = read?.project ?? null;
  if (read === null || project === null || all.length > 0) throw new FaultsFound(all);
  const onHand = await findProjectPlan(project, search, io);
  const isEnough = onHand.enough === "yes";
  const plan = isEnough ? onHand : await findProjectPlan(asManyAsNeeded(project), search, io);
  if (plan.enough !== "yes") {
    if (json)
      io.stdout.write(`${JSON.stringify({ sheetwright: "price", version: 1, enough: "no" }, null, 2)}\n`);
    const verdict =
      "Cannot be planned as asked: a piece fits none of its papers. sheetwright check says what would help.";
    io.stderr.write(lines([...read.notes, bold(verdict, io.stderr, io.env)]));
    return 1;
  }
  const price = priceOf(project, plan);
  const endedEarly = plan.search.cancelled;
  const sheets = isEnough ? "on hand" : "as needed";
  if (json) {
    const units = { length: "tick", ticksPerInch: 40640, shown: price.units };
    const data = { sheetwright: "price", version: 1, enough: "yes", endedEarly, sheets, ...price, units };
    io.stdout.write(`${JSON.stringify(data, null, 2)}\n`);
  }
  (json ? io.stderr : io.stdout).write(lines(writePrice(price)));
  const notes = [
    ...read.notes,
    ...(isEnough ? [] : ["What is on hand does not give all: as much as needed is reckoned with."]),
    ...(endedEarly ? ["Ended early: a longer search may find that fewer sheets will do."] : []),
  ];
  if (notes.length > 0) io.stderr.write(lines(["", ...notes]));
  return 0;
}

function lines(texts: readonly string[]): string {
  return `${texts.join("\n")}\n`;
}
