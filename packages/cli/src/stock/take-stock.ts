import type { Project } from "@sheetwright/cards";
import { continueProject, type LayoutProgress, withStock } from "@sheetwright/planner";
import { type Fault, FaultsFound, quote } from "../fault.js";
import type { Io } from "../io.js";
import type { ProjectPlanFile } from "../project-plan/project-plan-file.js";
import { counted } from "../words/counted.js";
import { listed } from "../words/listed.js";
import { readCutPlan } from "./read-cut-plan.js";
import { noStock, readStock } from "./read-stock.js";
import type { StockData } from "./stock-data.js";
import { stockFaults } from "./stock-faults.js";
import { STOCK_PLACE } from "./stock-request.js";

/** A project with what a stock file says is on hand. */
export interface TakenStock {
  readonly project: Project;
  /** What a plan from it says of where it comes from. */
  readonly source: NonNullable<ProjectPlanFile["stock"]>;
  /** What to say of it. */
  readonly notes: readonly string[];
}

/**
 * Reads a stock file and puts what it knows of a project's papers in the place of the project's own counts and offcuts.
 * Of a plan that is half carried out, what is booked as cut counts as there. Rejects with {@link FaultsFound}.
 *
 * @param file the file's path as it was given.
 * @param after the path of the plan's folder as it was given; `null`: all is cut anew.
 */
export async function takeStock(
  project: Project,
  file: string,
  after: string | null,
  io: Io,
): Promise<TakenStock> {
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
  const notes = [`From ${file}, revision ${revision}: ${from}${rest}.`];
  if (after === null) return { project: taken.project, source: { revision }, notes };
  const gone = await goOn(taken.project, read.data, after, io);
  return {
    project: gone.project,
    source: { revision, after: gone.identity },
    notes: [...notes, gone.note],
  };
}

/** Takes out of a project what is booked as cut of a plan. */
async function goOn(
  project: Project,
  { booked }: StockData,
  after: string,
  io: Io,
): Promise<{ readonly project: Project; readonly identity: string; readonly note: string }> {
  const cut = await readCutPlan(after, AFTER, io);
  const refuse = (code: string, message: string): FaultsFound =>
    new FaultsFound([{ code, place: { option: AFTER }, message } satisfies Fault]);
  const booking = booked.find(({ plan }) => plan === cut.identity);
  if (booking === undefined) {
    const help = `sheetwright stock book ${after} --done tells what is cut`;
    throw refuse(
      "not-booked",
      `nothing of the plan in ${quote(after)} is booked. ${help}; then go on from it.`,
    );
  }
  if (booking.continuedBy !== undefined) {
    const by = booking.continuedBy.slice(0, 8);
    throw refuse("gone-on", `another plan that is booked, ${by}, went on from this one. Go on from that.`);
  }
  const done = cut.layouts.map(
    ({ name, group, layout }): LayoutProgress => ({
      group,
      layout,
      from: 0,
      to: booking.done[name] ?? 0,
      spoiled: booking.spoiled[name] ?? 0,
    }),
  );
  const isOut = done.some(({ group, to }) => to > 0 && cut.plan.groups[group]?.bags !== undefined);
  if (isOut) {
    const message =
      "sheets of it went out whole in bags, and what guests cut is not known, so no plan can go on from there. " +
      "Plan the bags that are still to be filled as a project of their own.";
    throw refuse("bags-are-out", message);
  }
  const { project: rest, changed } = continueProject(project, cut, done);
  if (changed.length > 0) {
    const message = `${listed(changed)} ${changed.length === 1 ? "was" : "were"} cut, and the project has that no more, or otherwise. Plan anew without --after, or give the project that was cut.`;
    throw refuse("other-pieces", message);
  }
  const pieces = (rest.cutAlready ?? []).reduce((total, { count }) => total + count, 0);
  const spoiled = Object.values(booking.spoiled).reduce((total, count) => total + count, 0);
  const lost = spoiled === 0 ? "" : `, and ${counted(spoiled, "sheet")} spoiled`;
  return {
    project: rest,
    identity: cut.identity,
    note: `After ${after}: ${counted(pieces, "piece")} cut already${lost}.`,
  };
}

const AFTER = "--after";
