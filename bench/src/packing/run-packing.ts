import { join } from "node:path";
import { type BenchIo, withFile } from "../bench-io.js";
import { comparisonJson } from "../comparison/comparison-json.js";
import { turnsFor } from "../comparison/comparison-options.js";
import { judgeRows } from "../comparison/judge-rows.js";
import { measureWays } from "../comparison/measure-ways.js";
import { ourWays } from "../comparison/our-ways.js";
import type { Row } from "../comparison/row.js";
import { versionsOf } from "../comparison/versions.js";
import { readFamilies } from "../instances/read-families.js";
import { prepareResults, shownPath, writeResults } from "../results-files.js";
import type { WrittenOptions } from "../written-options.js";
import { drawPacking } from "./draw-packing.js";
import { isRatchetRun, readPackingOptions } from "./packing-options.js";
import {
  compareWithRatchet,
  type Ratchet,
  readRatchet,
  writeRatchet,
  writeRatchetComparison,
} from "./ratchet.js";
import { writePacking } from "./write-packing.js";

/** Runs the suite `packing`. Throws BenchFaults for wrong usage or input, before anything is measured. */
export async function runPacking(written: WrittenOptions, io: BenchIo): Promise<0 | 1> {
  const options = readPackingOptions(written, io.machine.cores);
  const { families, published } = readFamilies(options.data, options.families, io);
  const paths = prepareResults("packing", options, io);
  const ratchet = isRatchetRun(options) ? loadRatchet(io) : null;
  const ways = families.flatMap((family) =>
    turnsFor(family, options.turns).flatMap((mayTurn) => ourWays(options, family, mayTurn)),
  );
  const { rows, faults, seconds } = await measureWays(ways, options.jobs, published, io);
  const versions = versionsOf([]);
  const { machine } = io;
  const { seed, jobs } = options;
  const text = writePacking(rows, {
    seed,
    methods: published.methods,
    circumstances: { machine, jobs, versions, seconds },
  });
  const json = comparisonJson("packing", options, { machine, versions, seconds, rows });
  io.stdout.write(text);
  writeResults(
    [
      [paths.table, text],
      [paths.chart, drawPacking(rows, seed)],
      [paths.json, `${JSON.stringify(json, null, 2)}\n`],
    ],
    io,
  );
  const judged = judgeRows(rows, faults, io);
  if (ratchet === null) return judged;
  const held = options.renewRatchet
    ? renewRatchet(rows, ratchet, judged, io)
    : holdRatchet(rows, ratchet, io);
  return judged === 0 ? held : judged;
}

function ratchetPath(io: BenchIo): string {
  return join(io.results, "packing-ratchet.json");
}

function loadRatchet(io: BenchIo): Ratchet {
  const path = ratchetPath(io);
  if (io.look(path) !== "file") return {};
  const shown = shownPath(path, io);
  return readRatchet(
    withFile(shown, "cannot be read", () => new TextDecoder().decode(io.read(path))),
    shown,
  );
}

function holdRatchet(rows: readonly Row[], ratchet: Ratchet, io: BenchIo): 0 | 1 {
  const comparison = compareWithRatchet(rows, ratchet);
  io.stderr.write(writeRatchetComparison(comparison));
  return comparison.worse.length > 0 ? 1 : 0;
}

/** A run with a faulty plan renews nothing. */
function renewRatchet(rows: readonly Row[], ratchet: Ratchet, judged: 0 | 1, io: BenchIo): 0 | 1 {
  io.stderr.write(writeRatchetComparison(compareWithRatchet(rows, ratchet)));
  if (judged !== 0) {
    io.stderr.write("The ratchet stays as it was, since not every plan is right and whole.\n");
    return 1;
  }
  writeResults([[ratchetPath(io), writeRatchet(rows, ratchet)]], io);
  return 0;
}
