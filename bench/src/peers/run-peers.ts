import type { Size } from "@sheetwright/packing";
import type { Option } from "commander";
import { type BenchFault, BenchFaults } from "../bench-fault.js";
import type { BenchIo } from "../bench-io.js";
import { comparisonJson } from "../comparison/comparison-json.js";
import {
  type ComparisonOptions,
  comparisonOptions,
  readComparisonOptions,
  turnsFor,
} from "../comparison/comparison-options.js";
import { judgeRows } from "../comparison/judge-rows.js";
import { measureWays, type TaskedWay } from "../comparison/measure-ways.js";
import { ourWays } from "../comparison/our-ways.js";
import { versionsOf } from "../comparison/versions.js";
import type { Family, Instance } from "../instances/family.js";
import { readFamilies } from "../instances/read-families.js";
import { prepareResults, writeResults } from "../results-files.js";
import { EFFORTS, type WrittenOptions } from "../written-options.js";
import { drawPeers } from "./draw-peers.js";
import { canTurn, type Peer, SHEET_PEERS, SQUARE_PEERS } from "./peer.js";
import { writePeers } from "./write-peers.js";

/** The options in the order of the help. */
export function peersOptions(): readonly Option[] {
  return comparisonOptions(EFFORTS);
}

/** Runs the suite `peers`. Throws BenchFaults for wrong usage or input, before anything is measured. */
export async function runPeers(written: WrittenOptions, io: BenchIo): Promise<0 | 1> {
  const options = readPeersOptions(written, io);
  const { families, published } = readFamilies(options.data, options.families, io);
  const compared = families.filter((family) => peersFor(family).length > 0);
  if (compared.length === 0) {
    const names = families.map(({ name }) => name).join(", ");
    const message = `found ${names}, expected a family of equal sheets or of strips, which other packers can pack too.`;
    throw new BenchFaults([{ where: options.families.length > 0 ? "--family" : "--data", message }]);
  }
  const paths = prepareResults("peers", options, io);
  const ways = compared.flatMap((family) =>
    turnsFor(family, options.turns).flatMap((mayTurn) => [
      ...ourWays(options, family, mayTurn),
      ...peerWays(family, mayTurn),
    ]),
  );
  const { rows, faults, seconds } = await measureWays(ways, options.jobs, published, io);
  const asked = new Set<string>(ways.map(({ solver }) => solver));
  const versions = versionsOf([...SHEET_PEERS, ...SQUARE_PEERS].filter((peer) => asked.has(peer)));
  const { machine } = io;
  const text = writePeers(rows, {
    seed: options.seed,
    circumstances: { machine, jobs: options.jobs, versions, seconds },
  });
  io.stdout.write(text);
  const json = comparisonJson("peers", options, { machine, versions, seconds, rows });
  writeResults(
    [
      [paths.table, text],
      [paths.chart, drawPeers(rows, options.seed)],
      [paths.json, `${JSON.stringify(json, null, 2)}\n`],
    ],
    io,
  );
  return judgeRows(rows, faults, io);
}

function readPeersOptions(written: WrittenOptions, io: BenchIo): ComparisonOptions {
  const faults: BenchFault[] = [];
  const options = readComparisonOptions(written, EFFORTS, io.machine.cores, faults);
  if (faults.length > 0) throw new BenchFaults(faults);
  return options;
}

/** Peers can be asked for the fewest equal sheets, or for all pieces of a strip in a square. */
function peersFor({ question }: Family): readonly Peer[] {
  if (question === "sheets") return SHEET_PEERS;
  return question === "strip" ? SQUARE_PEERS : [];
}

function peerWays(family: Family, mayTurn: boolean): readonly TaskedWay[] {
  return peersFor(family)
    .filter((peer) => canTurn(peer) || !mayTurn)
    .map((peer) => ({
      family,
      mayTurn,
      solver: peer,
      effort: null,
      taskOf: (instance) => ({ solver: peer, sheet: sheetOf(instance), pieces: copiesOf(instance), mayTurn }),
    }));
}

function sheetOf({ sheets }: Instance): Size {
  const { width = 0, height = 0 } = sheets[0] ?? {};
  return { width, height };
}

/** One size a copy: peers count no copies. */
function copiesOf({ pieces }: Instance): readonly Size[] {
  return pieces.flatMap(({ width, height, quantity }) =>
    Array.from({ length: quantity }, () => ({ width, height })),
  );
}
