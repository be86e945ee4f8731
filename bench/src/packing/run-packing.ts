import type { BenchIo } from "../bench-io.js";
import { comparisonJson } from "../comparison/comparison-json.js";
import { turnsFor } from "../comparison/comparison-options.js";
import { measureWays, type TaskedWay } from "../comparison/measure-ways.js";
import type { Row } from "../comparison/row.js";
import { versionsOf } from "../comparison/versions.js";
import { problemOf } from "../instances/problem-of.js";
import { readFamilies } from "../instances/read-families.js";
import { prepareResults, writeResults } from "../results-files.js";
import type { WrittenOptions } from "../written-options.js";
import { type PackingOptions, readPackingOptions } from "./packing-options.js";
import { writePacking } from "./write-packing.js";

/** Runs the suite `packing`. Throws BenchFaults for wrong usage or input, before anything is measured. */
export async function runPacking(written: WrittenOptions, io: BenchIo): Promise<0 | 1> {
  const options = readPackingOptions(written, io.machine.cores);
  const { families, published } = readFamilies(options.data, options.families, io);
  const paths = prepareResults("packing", options, io);
  const ways = families.flatMap((family) =>
    turnsFor(family, options.turns).flatMap((mayTurn) => waysOf(options, family, mayTurn)),
  );
  const { rows, faults, seconds } = await measureWays(ways, options.jobs, published, io);
  const versions = versionsOf(["@sheetwright/packing"]);
  const { machine } = io;
  const text = writePacking(rows, {
    seed: options.seed,
    circumstances: { machine, jobs: options.jobs, versions, seconds },
  });
  io.stdout.write(text);
  const json = comparisonJson("packing", options, { machine, versions, seconds, rows });
  writeResults(
    [
      [paths.table, text],
      [paths.json, `${JSON.stringify(json, null, 2)}\n`],
    ],
    io,
  );
  return judge(rows, faults, io);
}

function waysOf(
  { efforts, seed }: PackingOptions,
  family: TaskedWay["family"],
  mayTurn: boolean,
): readonly TaskedWay[] {
  return efforts.map((effort) => ({
    family,
    mayTurn,
    solver: "sheetwright",
    effort,
    taskOf: (instance) => ({
      solver: "sheetwright",
      problem: problemOf(instance, family.question, mayTurn),
      effort,
      seed,
    }),
  }));
}

/** Says what could not be planned and what `verify` found. */
function judge(rows: readonly Row[], faults: readonly string[], io: BenchIo): 0 | 1 {
  for (const fault of faults) io.stderr.write(`A plan failed its check: ${fault}\n`);
  let unplanned = 0;
  for (const { family, rotation, effort, details } of rows) {
    for (const { id } of details.filter(({ sheets }) => sheets === null)) {
      unplanned += 1;
      io.stderr.write(
        `${family} ${id}, ${rotation ? "turned" : "fixed"}, ${effort}: not all pieces were placed on the sheets in stock.\n`,
      );
    }
  }
  return faults.length + unplanned > 0 ? 1 : 0;
}
