import { isUtf8 } from "node:buffer";
import { basename, resolve } from "node:path";
import { BenchFaults } from "../bench-fault.js";
import { type BenchIo, withFile } from "../bench-io.js";
import { readBenchPieces } from "../read-bench-pieces.js";
import { prepareResults, writeResults } from "../results-files.js";
import type { WrittenOptions } from "../written-options.js";
import { drawWaste } from "./draw-waste.js";
import { type MeasuredSheet, measureWaste, type SheetWaste, type WasteRequest } from "./measure-waste.js";
import { wasteJson } from "./waste-json.js";
import { readWasteOptions } from "./waste-options.js";
import { writeWaste } from "./write-waste.js";

/** Runs the suite `waste`. Throws BenchFaults for wrong usage or input, before anything is measured. */
export function runWaste(written: WrittenOptions, io: BenchIo): 0 | 1 {
  const options = readWasteOptions(written);
  if (!("sheets" in options)) throw new BenchFaults(options);
  const request: WasteRequest = {
    ...options,
    list: options.pieces === null ? null : readList(options.pieces, io),
  };
  const paths = prepareResults("waste", options, io);

  const began = io.now();
  const results = measureWaste(request, { now: io.now, onProgress: progressTo(io) });
  const seconds = io.now() - began;
  if (io.stderr.isTTY) io.stderr.write("\r\u001b[K");

  io.stdout.write(writeWaste(request, results, { machine: io.machine, seconds }));
  const documents = [
    [paths.table, writeWaste(request, results)],
    [paths.chart, drawWaste(request, results)],
    [paths.json, `${JSON.stringify(wasteJson(request, results, io.machine), null, 2)}\n`],
  ] as const;
  writeResults(documents, io);
  return judge(results, io);
}

function readList(path: string, io: BenchIo): NonNullable<WasteRequest["list"]> {
  const bytes = withFile(path, "cannot be read", () => io.read(resolve(io.cwd, path)));
  if (!isUtf8(bytes)) throw new BenchFaults([{ where: path, message: "is not UTF-8 text." }]);
  const read = readBenchPieces(new TextDecoder().decode(bytes), path);
  if (!read.ok) throw new BenchFaults(read.faults);
  return { name: basename(path), pieces: read.pieces };
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
