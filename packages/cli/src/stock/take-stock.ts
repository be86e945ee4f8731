import type { Project } from "@sheetwright/cards";
import { withStock } from "@sheetwright/planner";
import { FaultsFound } from "../fault.js";
import type { Io } from "../io.js";
import { listed } from "../words/listed.js";
import { noStock, readStock } from "./read-stock.js";
import { stockFaults } from "./stock-faults.js";
import { STOCK_PLACE } from "./stock-request.js";

/** A project with what a stock file says is on hand. */
export interface TakenStock {
  readonly project: Project;
  readonly revision: number;
  /** What to say of it. */
  readonly notes: readonly string[];
}

/**
 * Reads a stock file and puts what it knows of a project's papers in the place of the project's own counts and offcuts.
 * Rejects with {@link FaultsFound}.
 *
 * @param file the file's path as it was given.
 */
export async function takeStock(project: Project, file: string, io: Io): Promise<TakenStock> {
  const read = await readStock(file, STOCK_PLACE, io);
  if (read === null) throw new FaultsFound([noStock(file, STOCK_PLACE)]);
  const { revision } = read.data;
  const taken = withStock(project, read.data);
  if (taken.faults.length > 0) throw new FaultsFound(stockFaults(taken.faults, file, project.units));
  const others = project.papers
    .flatMap(({ designs }) => designs.map(({ id }) => id))
    .filter((id) => !taken.designs.includes(id));
  const from = taken.designs.length === 0 ? "nothing" : listed(taken.designs);
  const rest = others.length === 0 ? "" : `; ${listed(others)} as the project says`;
  return { project: taken.project, revision, notes: [`From ${file}, revision ${revision}: ${from}${rest}.`] };
}
