import { BenchFaults } from "../bench-fault.js";
import type { BenchIo } from "../bench-io.js";
import { prepareResults, writeResults } from "../results-files.js";
import type { WrittenOptions } from "../written-options.js";
import { measureShapes, type ShapeMeasure } from "./measure-shapes.js";
import { readShapesOptions } from "./shapes-options.js";
import { writeShapes } from "./write-shapes.js";

/** Chords within two ticks of arcs cut off less than this of any outline here, in millionths of its area. */
const SAME_AREA = 200;

/** Runs the suite `shapes`. Throws BenchFaults for wrong usage, before anything is measured. */
export function runShapes(written: WrittenOptions, io: BenchIo): 0 | 1 {
  const options = readShapesOptions(written);
  if (!("rounds" in options)) throw new BenchFaults(options);
  const paths = prepareResults("shapes", options, io);
  const began = io.now();
  const measures = measureShapes(
    options.rounds,
    io.now,
    io.stderr.isTTY ? (what) => io.stderr.write(`\r\u001b[K${what}`) : undefined,
  );
  const seconds = io.now() - began;
  if (io.stderr.isTTY) io.stderr.write("\r\u001b[K");
  const text = writeShapes(options.rounds, measures, { machine: io.machine, seconds });
  io.stdout.write(text);
  const figures = {
    suite: "shapes",
    version: 1,
    options: { rounds: options.rounds },
    machine: io.machine,
    seconds,
    rows: measures,
  };
  writeResults(
    [
      [paths.table, text],
      [paths.json, `${JSON.stringify(figures, null, 2)}\n`],
    ],
    io,
  );
  const faults = measures.filter((measure) => !agrees(measure));
  for (const { operation, outlines } of faults) {
    io.stderr.write(`The area of ${operation} of ${outlines} differs from that of clipper2-ts.\n`);
  }
  return faults.length > 0 ? 1 : 0;
}

/** polygon-clipping fails on some input by itself, so that only clipper2-ts is a judge. */
function agrees({ clipper }: ShapeMeasure): boolean {
  return clipper === null || (clipper !== "failed" && Math.abs(clipper.areaOff) < SAME_AREA);
}
