import type { Project } from "@sheetwright/cards";
import { bonusOf, type PanelWish } from "@sheetwright/planner";
import { type Fault, FaultsFound } from "../fault.js";
import type { Io } from "../io.js";
import { readPieceList } from "../pieces/piece-list.js";
import { readProjectFile } from "../project/read-project-file.js";
import { findProjectPlan } from "../project-plan/find-project-plan.js";
import type { WrittenOptions } from "../request/plan-options.js";
import { type ProjectSearchRequest, readProjectSearch } from "../request/project-search-request.js";
import { tableReader } from "../request/table-reader.js";
import { takeStock } from "../stock/take-stock.js";
import { readText } from "../text/read-text.js";
import { withPacker } from "../threads/with-packer.js";
import { bold } from "../words/emphasis.js";
import { writeBonus } from "../words/write-bonus.js";
import { addBonusOptions, BONUS_OPTIONS, type BonusOptionKey } from "./bonus-options.js";

const BONUS = {
  name: "sheetwright bonus",
  addOptions: addBonusOptions,
  listHelp: "Give the project, and the list behind --panels.",
};

/**
 * Runs `sheetwright bonus`: plans a project, and says what can be made besides from what is left. Resolves to the exit code:
 * 0, or 1 where not even the project itself can be planned. Rejects with {@link FaultsFound} for every mistake.
 *
 * @param rest what stands on the command line beside known options: the project file, and faults.
 */
export async function bonusCommand(written: WrittenOptions, rest: readonly string[], io: Io): Promise<0 | 1> {
  const { request, project, panels, notes } = await readAll(written, rest, io);
  const plan = await findProjectPlan(project, request.search, io);
  if (plan.enough !== "yes") {
    if (request.json) {
      const data = { sheetwright: "bonus", version: 1, enough: plan.enough };
      io.stdout.write(`${JSON.stringify(data, null, 2)}\n`);
    }
    const verdict = bold("Nothing is over: not every copy of the project is complete.", io.stderr, io.env);
    const help = "What is missing is told by sheetwright plan, and what to buy by sheetwright need.";
    io.stderr.write(lines([...notes, verdict, help]));
    return 1;
  }
  // Each card and each panel is a search of its own, so they are short; the plan itself had the effort asked for.
  const { seed } = request.search;
  const bonus = await withPacker(request.search, io, (packer) =>
    bonusOf(project, plan, {
      panels,
      seed,
      packer,
      ...(io.signal === undefined ? {} : { signal: io.signal }),
      ...(io.pause === undefined ? {} : { pause: io.pause }),
    }),
  );
  const endedEarly = bonus.cancelled || plan.search.cancelled;
  if (request.json) {
    const { cancelled: _, ...found } = bonus;
    const units = { length: "tick", ticksPerInch: 40640, shown: bonus.units };
    const data = { sheetwright: "bonus", version: 1, enough: plan.enough, endedEarly, ...found, units };
    io.stdout.write(`${JSON.stringify(data, null, 2)}\n`);
  }
  (request.json ? io.stderr : io.stdout).write(lines(writeBonus(bonus)));
  const early = "Ended early: a longer search may find more.";
  const heard = [...notes, ...(endedEarly ? [early] : [])];
  if (heard.length > 0) io.stderr.write(lines(["", ...heard]));
  return 0;
}

async function readAll(
  written: WrittenOptions,
  rest: readonly string[],
  io: Io,
): Promise<{
  readonly request: ProjectSearchRequest;
  readonly project: Project;
  readonly panels: readonly PanelWish[];
  readonly notes: readonly string[];
}> {
  const reader = tableReader<BonusOptionKey>(BONUS_OPTIONS, written);
  const panelsFile = written.panels === undefined ? null : reader.required("panels");
  const stockFile = written.stock === undefined ? null : reader.required("stock");
  const request = readProjectSearch(written, rest, reader, BONUS);
  const read = request.file === null ? null : await readProjectFile(request.file, BONUS.name, io);
  const faults: Fault[] = [...request.faults, ...(read?.faults ?? [])];
  let panels: readonly PanelWish[] = [];
  if (panelsFile !== null) {
    const help = 'Save the list as "CSV UTF-8", or make sure that this is the list and no spreadsheet file.';
    const text = await readText(panelsFile, { place: { option: "--panels" }, help }, io);
    if (typeof text !== "string") faults.push(text);
    else {
      const list = readPieceList(text, panelsFile, read?.project?.units ?? "in");
      faults.push(...list.faults);
      panels = list.pieces
        .filter(({ quantity }) => quantity > 0)
        .map(({ name, width, height, quantity, turn }) => ({
          name,
          width,
          height,
          wanted: quantity,
          mayTurn: turn,
        }));
    }
  }
  const project = read?.project ?? null;
  if (read === null || project === null || faults.length > 0) throw new FaultsFound(faults);
  if (stockFile === null) return { request, project, panels, notes: read.notes };
  const stock = await takeStock(project, stockFile, null, io);
  return { request, project: stock.project, panels, notes: [...read.notes, ...stock.notes] };
}

function lines(texts: readonly string[]): string {
  return `${texts.join("\n")}\n`;
}
