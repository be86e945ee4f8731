import { type StockChange, stockOfProject, withStock } from "@sheetwright/planner";
import { FaultsFound } from "../fault.js";
import type { Io } from "../io.js";
import { readProjectFile } from "../project/read-project-file.js";
import type { WrittenOptions } from "../request/plan-options.js";
import { bookCutPlan } from "./book-cut-plan.js";
import { changeStock, undoStockChange } from "./change-stock.js";
import { readCutPlan } from "./read-cut-plan.js";
import { noStock, readStock } from "./read-stock.js";
import type { StockData } from "./stock-data.js";
import { stockFaults } from "./stock-faults.js";
import type { StockAction } from "./stock-options.js";
import { readStockRequest, STOCK_PLACE, type StockRequest } from "./stock-request.js";
import { writeChanges, writeStock } from "./write-stock.js";

/** What is on hand, as plain data: what `--json` prints. Lengths are ticks. */
export interface StockSummary extends StockData {
  readonly sheetwright: "stock-summary";
  readonly version: 1;
  /** What a booking took and gave back; absent for other actions. */
  readonly changes?: readonly StockChange[];
}

/** What was done: what is on hand now, and what to say of it first. */
interface Done {
  readonly data: StockData;
  readonly said: readonly string[];
  /** What a booking took and gave back; absent for other actions. */
  readonly changes?: readonly StockChange[];
}

/**
 * Runs `sheetwright stock`: shows what is on hand, adds the papers of a project, books a plan that was cut, or takes the last
 * change back. Resolves to the exit code 0; rejects with {@link FaultsFound}, and then nothing was written.
 *
 * @param rest what stands on the command line beside known options: the action, the project or the folder, and faults.
 */
export async function stockCommand(written: WrittenOptions, rest: readonly string[], io: Io): Promise<0> {
  const request = readStockRequest(written, rest);
  const { data, said, changes } = await ACTIONS[request.action](request, io);
  if (request.json) {
    const summary: StockSummary = {
      sheetwright: "stock-summary",
      version: 1,
      ...data,
      ...(changes === undefined ? {} : { changes }),
    };
    io.stdout.write(`${JSON.stringify(summary, null, 2)}\n`);
  }
  const text = [...said, ...(said.length === 0 ? [] : [""]), ...writeStock(data, request.stock)];
  (request.json ? io.stderr : io.stdout).write(`${text.join("\n")}\n`);
  return 0;
}

const ACTIONS: Readonly<Record<StockAction, (request: StockRequest, io: Io) => Promise<Done>>> = {
  show: async ({ stock }, io) => {
    const read = await readStock(stock, STOCK_PLACE, io);
    if (read === null) throw new FaultsFound([noStock(stock, STOCK_PLACE)]);
    return { data: read.data, said: [] };
  },

  add: async ({ what, stock }, io) => {
    const { project, faults } = await readProjectFile(what, "sheetwright stock add", io);
    if (project === null) throw new FaultsFound(faults);
    let added: readonly string[] = [];
    const data = await changeStock(
      stock,
      (before) => {
        const papers = before?.papers ?? [];
        const different = withStock(project, { papers }).faults;
        if (different.length > 0) throw new FaultsFound(stockFaults(different, stock, before?.units ?? "in"));
        const known = new Set(papers.map(({ design }) => design));
        const more = stockOfProject(project).filter(({ design }) => !known.has(design));
        added = more.map(({ name }) => name);
        if (before !== null && more.length === 0) return before;
        const start = before ?? { revision: 0, units: project.units, booked: [] };
        return { ...start, papers: [...papers, ...more] };
      },
      io,
    );
    const said =
      added.length === 0
        ? "Nothing to add: every paper is in the stock already."
        : `Added: ${added.join(", ")}.`;
    return { data, said: [said] };
  },

  book: async ({ what, stock, done, spoiled, keep }, io) => {
    const cut = await readCutPlan(what, "sheetwright stock book", io);
    let changes: readonly StockChange[] = [];
    const data = await changeStock(
      stock,
      (before) => {
        if (before === null) throw new FaultsFound([noStock(stock, STOCK_PLACE)]);
        const booked = bookCutPlan(before, cut, { done, spoiled }, keep, stock);
        changes = booked.changes;
        return booked.data;
      },
      io,
    );
    return { data, said: [`Booked: ${cut.project.title}.`, "", ...writeChanges(changes, data)], changes };
  },

  undo: async ({ stock, force }, io) => {
    const data = await undoStockChange(stock, force, io);
    return { data, said: [`Taken back: ${stock} holds what it held before its last change.`] };
  },
};
