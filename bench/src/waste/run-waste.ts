import { isUtf8 } from "node:buffer";
import { basename, dirname, join, relative, resolve } from "node:path";
import { BenchFaults } from "../bench-fault.js";
import { type BenchIo, withFile } from "../bench-io.js";
import { readBenchPieces } from "../read-bench-pieces.js";
import { drawWaste } from "./draw-waste.js";
import { type MeasuredSheet, measureWaste, type SheetWaste, type WasteRequest } from "./measure-waste.js";
import { wasteJson } from "./waste-json.js";
import { readWasteOptions, type WasteOptions, type WrittenWasteOptions } from "./waste-options.js";
import { writeWaste } from "./write-waste.js";

/** Runs the suite `waste`. Throws BenchFaults for wrong usage or input, before anything is measured. */
export function runWaste(written: WrittenWasteOptions, io: BenchIo): 0 | 1 {
  const options = readWasteOptions(written);
  if (!("sheets" in options)) throw new BenchFaults(options);
  const request: WasteRequest = {
    ...options,
    list: options.pieces === null ? null : readList(options.pieces, io),
  };
  const paths = preparePaths(options, io);

  const began = io.now();
  const results = measureWaste(request, { now: io.now, onProgress: progressTo(io) });
  const seconds = io.now() - began;
  if (io.stderr.isTTY) io.stderr.write("\r\u001b[K");

  io.stdout.write(writeWaste(request, results, { machine: io.machine, seconds }));
  const documents: readonly (readonly [path: string, text: string])[] = [
    [paths.table, writeWaste(request, results)],
    [paths.chart, drawWaste(request, results)],
    [paths.json, `${JSON.stringify(wasteJson(request, results, io.machine), null, 2)}\n`],
  ];
  for (const [path, text] of documents) {
    withFile(shown(path, io), "cannot be written", () => io.write(path, text));
  }
  io.stderr.write(`Written: ${documents.map(([path]) => shown(path, io)).join(", ")}\n`);
  return judge(results, io);
}

function readList(path: string, io: BenchIo): NonNullable<WasteRequest["list"]> {
  const bytes = withFile(path, "cannot be read", () => io.read(resolve(io.cwd, path)));
  if (!isUtf8(bytes)) throw new BenchFaults([{ where: path, message: "is not UTF-8 text." }]);
  const read = readBenchPieces(new TextDecoder().decode(bytes), path);
  if (!read.ok) throw new BenchFaults(read.faults);
  return { name: basename(path), pieces: read.pieces };
}

interface Paths {
  readonly table: string;
  readonly chart: string;
  readonly json: string;
}

/** Finds out before the long work whether its results have a place. */
function preparePaths({ out, json, differs }: WasteOptions, io: BenchIo): Paths {
  const folder = out === null ? io.results : resolve(io.cwd, out);
  const stem = join(folder, ["waste", ...differs.map(fileNameOf)].join("_"));
  const jsonPath = json === null ? `${stem}.json` : resolve(io.cwd, json);
  withFile("--out", `${shown(folder, io)} cannot be made`, () => io.makeFolder(folder));
  if (io.look(dirname(jsonPath)) !== "folder") {
    throw new BenchFaults([
      { where: "--json", message: `there is no folder ${shown(dirname(jsonPath), io)}.` },
    ]);
  }
  if (io.look(jsonPath) === "folder") {
    throw new BenchFaults([
      { where: "--json", message: `${shown(jsonPath, io)} is a folder, expected a file.` },
    ]);
  }
  return { table: `${stem}.md`, chart: `${stem}.svg`, json: jsonPath };
}

/** A part of a file name that every file system takes. */
function fileNameOf(text: string): string {
  const plain = text.replace(/[^A-Za-z0-9.]+/g, "-").replace(/^[-.]+|[-.]+$/g, "");
  return plain.slice(0, 60) || "list";
}

function shown(path: string, io: BenchIo): string {
  return relative(io.cwd, path) || ".";
}

function progressTo(io: BenchIo): ((sheet: string, set: string) => void) | undefined {
  if (!io.stderr.isTTY) return undefined;
  return (sheet, set) => io.stderr.write(`\r\u001b[K${sheet}: ${set}`);
}

/** Says what could not be planned and what `verify` found. */
function judge(results: readonly SheetWaste[], io: BenchIo): 0 | 1 {
  const faults = results.flatMap(({ yields, sets }) => [
    ...yields.faults,
    ...sets.flatMap((set) => set.faults),
  ]);
  for (const fault of faults) io.stderr.write(`A plan failed its check: ${fault}\n`);
  const unplanned = results.flatMap(({ sheet, sets }) =>
    sets.filter(({ missing }) => missing.length > 0).map((set) => sayUnplanned(sheet, set)),
  );
  for (const sentence of unplanned) io.stderr.write(sentence);
  return faults.length + unplanned.length > 0 ? 1 : 0;
}

function sayUnplanned(
  { id }: MeasuredSheet,
  { id: set, missing }: { readonly id: string; readonly missing: readonly string[] },
): string {
  return `${set} cannot be cut whole from ${id}; too large for it: ${missing.join(", ")}. Take a larger sheet.\n`;
}
