/**
 * The ratchet: what `quick` with seed 1 gave of every instance. A run that gives less of one fails, so that no change makes
 * the search worse unseen; a run that gives more says so, for the ratchet to be renewed.
 */
import { z } from "zod";
import { BenchFaults } from "../bench-fault.js";
import { isBetter, type Row } from "../comparison/row.js";
import { turnsOf } from "../comparison/write-figures.js";
import { RATCHET } from "./packing-options.js";

/** What was measured, by family and turns (`bw-mv fixed`) and by the instance's id. */
export type Ratchet = Readonly<Record<string, Readonly<Record<string, number>>>>;

/** An instance that differs from the ratchet. */
interface RatchetChange {
  /** Family, turns and id. */
  readonly name: string;
  readonly measure: string;
  /** `null` where not every piece could be placed. */
  readonly now: number | null;
  readonly kept: number;
}

/** A run beside the ratchet. */
export interface RatchetComparison {
  readonly compared: number;
  readonly worse: readonly RatchetChange[];
  readonly better: readonly RatchetChange[];
  /** Instances that it does not hold. */
  readonly missing: number;
}

const schema = z.object({
  version: z.literal(1),
  effort: z.literal(RATCHET.effort),
  seed: z.literal(RATCHET.seed),
  measured: z.record(z.string(), z.record(z.string(), z.int().min(0))),
});

/** Reads the file of a ratchet. Throws BenchFaults where it is none. */
export function readRatchet(text: string, file: string): Ratchet {
  try {
    return schema.parse(JSON.parse(text)).measured;
  } catch (error) {
    if (!(error instanceof SyntaxError || error instanceof z.ZodError)) throw error;
    const message =
      "holds no ratchet of this version. Restore it, or write it anew with --effort quick --renew-ratchet.";
    throw new BenchFaults([{ where: file, message }], { cause: error });
  }
}

/** Writes a ratchet: what was measured now, and the rest as it was. */
export function writeRatchet(rows: readonly Row[], earlier: Ratchet): string {
  const now = ratchetRows(rows).map((row) => {
    const details = row.details.flatMap(({ id, measured }) =>
      measured === null ? [] : [[id, measured] as const],
    );
    return [nameOf(row), Object.fromEntries(details)] as const;
  });
  const measured = { ...earlier, ...Object.fromEntries(now) };
  const sorted = Object.fromEntries(Object.entries(measured).sort(([a], [b]) => (a < b ? -1 : 1)));
  return `${JSON.stringify({ version: 1, ...RATCHET, measured: sorted }, null, 2)}\n`;
}

/** Compares what was measured with what is kept. */
export function compareWithRatchet(rows: readonly Row[], ratchet: Ratchet): RatchetComparison {
  const worse: RatchetChange[] = [];
  const better: RatchetChange[] = [];
  let compared = 0;
  let missing = 0;
  for (const row of ratchetRows(rows)) {
    const own = new Map(Object.entries(ratchet[nameOf(row)] ?? {}));
    for (const { id, measured } of row.details) {
      const kept = own.get(id);
      if (kept === undefined) {
        missing += 1;
        continue;
      }
      compared += 1;
      const change = { name: `${nameOf(row)} ${id}`, measure: row.measure, now: measured, kept };
      if (measured === null || isBetter(row.question, kept, measured)) worse.push(change);
      else if (measured !== kept) better.push(change);
    }
  }
  return { compared, worse, better, missing };
}

/** Says what changed, one line an instance. */
export function writeRatchetComparison({ compared, worse, better, missing }: RatchetComparison): string {
  const line = ({ name, measure, now, kept }: RatchetChange): string =>
    `  ${name}: ${now ?? "not all pieces placed"}, ${kept} in the ratchet (${measure})\n`;
  const total = `Ratchet: ${compared} instances compared, ${worse.length} worse, ${better.length} better.`;
  const unknown = missing === 0 ? "" : ` It does not hold ${missing} more.`;
  const renew = better.length + missing === 0 ? "" : " --renew-ratchet writes it anew.";
  return [
    `${total}${unknown}${renew}\n`,
    ...(worse.length > 0 ? ["Worse than the ratchet:\n", ...worse.map(line)] : []),
    ...(better.length > 0 ? ["Better than the ratchet:\n", ...better.map(line)] : []),
  ].join("");
}

function ratchetRows(rows: readonly Row[]): readonly Row[] {
  return rows.filter(({ effort, solver }) => solver === "sheetwright" && effort === RATCHET.effort);
}

function nameOf(row: Row): string {
  return `${row.family} ${turnsOf(row)}`;
}
