import type { Project } from "@sheetwright/cards";
import type { Kind, Problem } from "@sheetwright/packing";
import { type ComparisonCase, comparisonOf, pieceCases, projectCases } from "@sheetwright/planner";
import { drawComparison } from "@sheetwright/svg";
import { type Fault, FaultsFound } from "../fault.js";
import { writeOneFile } from "../folder/write-one-file.js";
import type { Io } from "../io.js";
import { type PieceList, readPieceList } from "../pieces/piece-list.js";
import { readProjectFile } from "../project/read-project-file.js";
import type { WrittenOptions } from "../request/plan-options.js";
import { readText } from "../text/read-text.js";
import { bold } from "../words/emphasis.js";
import { writeComparison } from "../words/write-comparison.js";
import {
  type CompareRequest,
  comparedFile,
  type PieceCutting,
  readCompareRequest,
} from "./compare-request.js";
import { workOutCases } from "./work-out-cases.js";

/** What helps where the list is no text. */
const LIST_HELP = 'Save the list as "CSV UTF-8", or make sure that this is the list and no spreadsheet file.';

/**
 * Runs `sheetwright compare`: plans pieces or a project on sheets of several sizes for several numbers of copies, and tells
 * what each takes. Resolves to the exit code: 0, or 1 where no size can give every piece. Rejects with {@link FaultsFound}.
 *
 * @param rest what stands on the command line beside known options: the project file, and faults.
 */
export async function compareCommand(
  written: WrittenOptions,
  rest: readonly string[],
  io: Io,
): Promise<0 | 1> {
  const { request, cases, title, notes } = await readAll(written, rest, io);
  const rows = await workOutCases(cases, request, io);
  const comparison = comparisonOf(cases.slice(0, rows.length), rows, request);
  if (request.out !== null) {
    const chart = drawComparison(comparison, { title });
    await writeOneFile(request.out, chart, { ...io, mayReplace: request.force });
  }
  const endedEarly = rows.length < cases.length;
  if (request.json) {
    const data = { sheetwright: "comparison", version: 1, endedEarly, ...comparison };
    io.stdout.write(`${JSON.stringify(data, null, 2)}\n`);
  }
  const text = writeComparison(comparison, { written: request.out });
  (request.json ? io.stderr : io.stdout).write(lines(text));
  const heard = [
    ...notes,
    ...(endedEarly ? ["Ended early: the sizes that are missing were not looked at."] : []),
  ];
  if (heard.length > 0) io.stderr.write(lines(["", ...heard]));
  if (comparison.rows.some(({ sheets }) => sheets !== null)) return 0;
  io.stderr.write(lines(["", bold("No sheet of these sizes gives every piece.", io.stderr, io.env)]));
  return 1;
}

interface Read {
  readonly request: CompareRequest;
  readonly cases: readonly ComparisonCase[];
  readonly title: string;
  readonly notes: readonly string[];
}

async function readAll(written: WrittenOptions, rest: readonly string[], io: Io): Promise<Read> {
  const file = comparedFile(written, rest).project;
  const read = file === null ? null : await readProjectFile(file, "sheetwright compare", io);
  const { request, faults } = readCompareRequest(written, rest, read?.project?.units ?? "in");
  const all: Fault[] = [...faults, ...(read?.faults ?? [])];
  const what = request?.what;
  let list: PieceList | null = null;
  if (what?.of === "pieces") {
    const text = await readText(what.file, { place: { option: "--pieces" }, help: LIST_HELP }, io);
    if (typeof text === "string") list = readPieceList(text, what.file, what.cutting.unit);
    all.push(...(typeof text === "string" ? (list?.faults ?? []) : [text]));
  }
  if (request === null || what === undefined || all.length > 0) throw new FaultsFound(all);
  const project: Project | null = read?.project ?? null;
  const { sizes, copies } = request;
  if (what.of === "project" && project !== null)
    return {
      request,
      cases: projectCases(project, sizes, copies),
      title: project.title,
      notes: read?.notes ?? [],
    };
  if (what.of === "project" || list === null) throw new RangeError("Expected a project or a list of pieces.");
  const cases = pieceCases(problemOf(what.cutting, list), sizes, copies);
  return {
    request,
    cases,
    title: what.file.replace(/^.*[\\/]/, "").replace(/\.[a-z0-9]{1,4}$/i, ""),
    notes: [],
  };
}

/** The pieces of one copy; the sheet stands in for those that are compared. */
function problemOf({ mode, trim, kerf, keep }: PieceCutting, { pieces }: PieceList): Problem {
  const kinds = pieces
    .filter(({ quantity }) => quantity > 0)
    .map(
      ({ name, width, height, quantity, turn }): Kind => ({
        id: name,
        quantity,
        forms: [{ width, height, turns: turn ? "both" : "upright" }],
      }),
    );
  const trims = trim === 0 ? {} : { trim: { left: trim, right: trim, top: trim, bottom: trim } };
  const sheet = { id: "any", width: 1 + 2 * trim, height: 1 + 2 * trim, ...trims };
  return { kinds, sheets: [sheet], mode, aim: "all", kerf, smallestOffcut: keep };
}

function lines(texts: readonly string[]): string {
  return `${texts.join("\n")}\n`;
}
