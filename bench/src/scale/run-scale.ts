import { BenchFaults } from "../bench-fault.js";
import type { BenchIo } from "../bench-io.js";
import { prepareResults, writeResults } from "../results-files.js";
import type { WrittenOptions } from "../written-options.js";
import { drawScale } from "./draw-scale.js";
import { readScaleOptions, type ScaleOptions } from "./scale-options.js";
import { type ScaleRow, scaleSteps } from "./scale-row.js";
import { writeScale } from "./write-scale.js";

/** Runs the suite `scale`. Rejects with BenchFaults for wrong usage, before anything is measured. */
export async function runScale(written: WrittenOptions, io: BenchIo): Promise<0 | 1> {
  const options = readScaleOptions(written);
  if (!("efforts" in options)) throw new BenchFaults(options);
  const paths = prepareResults("scale", options, io);
  const began = io.now();
  const rows = await measureScale(options, io);
  const seconds = io.now() - began;
  if (io.stderr.isTTY) io.stderr.write("\r\u001b[K");
  const text = writeScale(options, rows, { machine: io.machine, seconds });
  io.stdout.write(text);
  const { efforts, growing, most, seed } = options;
  const figures = {
    suite: "scale",
    version: 1,
    options: { efforts, growing, most, seed },
    machine: io.machine,
    seconds,
    rows: rows.map(({ faults, ...row }) => ({ ...row, verified: faults.length === 0 })),
  };
  writeResults(
    [
      [paths.table, text],
      [paths.chart, drawScale(options, rows)],
      [paths.json, `${JSON.stringify(figures, null, 2)}\n`],
    ],
    io,
  );
  const faults = rows.flatMap((row) => row.faults);
  for (const fault of faults) io.stderr.write(`A plan failed its check: ${fault}\n`);
  return faults.length > 0 ? 1 : 0;
}

/** One row after another, so that none takes time or memory from another. */
async function measureScale(
  { efforts, growing, most, seed }: ScaleOptions,
  io: BenchIo,
): Promise<readonly ScaleRow[]> {
  const rows: ScaleRow[] = [];
  for (const what of growing) {
    for (const effort of efforts) {
      for (const { kinds, copies } of scaleSteps(what, most)) {
        if (io.stderr.isTTY) io.stderr.write(`\r\u001b[K${kinds} kinds, ${copies} copies, ${effort}`);
        const figures = await io.runAlone({ kinds, copies, effort, seed });
        rows.push({ growing: what, kinds, copies, effort, ...figures });
      }
    }
  }
  return rows;
}
