/** Published results of the literature: sums of sheets by class and number of pieces, and utilisations. */
import { z } from "zod";
import type { BenchFault } from "../bench-fault.js";

/** Sheets that a group of instances takes together, by method. `lb`, `proven` and `best` are no methods. */
export interface PublishedSums {
  readonly best: number;
  readonly bound: number;
  readonly byMethod: ReadonlyMap<string, number>;
}

/** What is known from publications. */
export interface PublishedResults {
  /** What a method's short name stands for. */
  readonly methods: ReadonlyMap<string, string>;
  /** Sums of ten instances of a class with n pieces, edge-to-edge cuts; `null` where nothing is published. */
  sumsOf(
    family: string,
    cell: { readonly class: number; readonly n: number },
    turned: boolean,
  ): PublishedSums | null;
  /** The best mean utilisation of a family with several sheet sizes, in percent, and its method. */
  utilisationOf(
    family: string,
    turned: boolean,
  ): { readonly percent: number; readonly method: string } | null;
}

/** Where no file gives anything. */
export const NOTHING_PUBLISHED: PublishedResults = {
  methods: new Map(),
  sumsOf: () => null,
  utilisationOf: () => null,
};

/** The family that the published sums are of. */
const SUMMED_FAMILY = "bw-mv";
/** The tables of utilisations, by family. */
const UTILISATION_TABLES: Readonly<Record<string, string>> = {
  "hopper-turton-m": "hopperTurtonM",
  "ortmann-vs": "ortmann",
};

const figures = z.record(z.string(), z.number().nullable());
const schema = z.looseObject({
  algorithms: z.record(z.string(), z.string()).default({}),
  binSums: z.array(z.looseObject({ class: z.int(), n: z.int(), OG: figures, RG: figures })).default([]),
  utilisation2VSBP_OG: z.record(z.string(), z.record(z.string(), figures)).default({}),
});

/** Reads what a file of published results holds as JSON; gives all faults where there are any. */
export function readPublishedResults(
  document: unknown,
  file: string,
): PublishedResults | { readonly faults: readonly BenchFault[] } {
  const read = schema.safeParse(document);
  if (!read.success) {
    return {
      faults: read.error.issues.map(({ path, message }) => ({
        where: `${file}, ${path.join(".")}`,
        message: `${message}.`,
      })),
    };
  }
  const { algorithms, binSums, utilisation2VSBP_OG: utilisations } = read.data;
  return {
    methods: new Map(Object.entries(algorithms)),
    sumsOf(family, cell, turned) {
      if (family !== SUMMED_FAMILY) return null;
      const row = binSums.find((each) => each.class === cell.class && each.n === cell.n);
      const { best, lb, proven: _, ...methods } = row?.[turned ? "RG" : "OG"] ?? {};
      if (best == null || lb == null) return null;
      return { best, bound: lb, byMethod: methodsOf(methods) };
    },
    utilisationOf(family, turned) {
      const table = UTILISATION_TABLES[family];
      // The published tables are of pieces that may not be turned.
      if (turned || table === undefined) return null;
      const means = methodsOf(utilisations[table]?.average ?? {});
      let best: { percent: number; method: string } | null = null;
      for (const [method, percent] of means) if (percent > (best?.percent ?? 0)) best = { percent, method };
      return best;
    },
  };
}

function methodsOf(row: Readonly<Record<string, number | null>>): ReadonlyMap<string, number> {
  return new Map(Object.entries(row).filter((entry): entry is [string, number] => entry[1] !== null));
}
