import {
  type Effort,
  type Packing,
  type PackOptions,
  type Problem,
  type Progress,
  verify,
} from "@sheetwright/packing";

/** How far a plan is. */
export interface PlanProgress {
  /** Index of the group of papers that is searched, and the number of groups. */
  readonly group: number;
  readonly groups: number;
  /**
   * What is looked for: the layouts, strips of die blanks that save paper, folds along the grain, how many sheets more would
   * help, copies that all papers that are short complete together, or spare copies.
   */
  readonly aim: "layouts" | "strips" | "grain" | "shortage" | "sets" | "spares";
  readonly progress: Progress;
}

/** A problem that is to be packed, by whoever drives the plan. */
interface PackRequest extends Omit<PlanProgress, "progress"> {
  readonly problem: Problem;
  readonly options: PackOptions;
}

/** The packing of a request. */
interface PackAnswer {
  readonly packing: Packing;
  /** Whether the plan is to end early; then the packing may be the best so far. */
  readonly stopped: boolean;
}

/** A search that asks for one packing after another. */
export type Search<Found> = Generator<PackRequest, Found, PackAnswer>;

/** The searches of one group: they share the options, and the wish to end early. */
export interface GroupSearch {
  /** Searches one problem. The packing is proven right for it. */
  readonly pack: (problem: Problem, aim: PlanProgress["aim"], effort?: Effort) => Search<Packing>;
  /** Whether the search was asked to end early. */
  readonly isStopped: () => boolean;
}

/** Starts the searches of a group. */
export function groupSearch(
  place: Pick<PlanProgress, "group" | "groups">,
  options: PackOptions,
): GroupSearch {
  let isStopped = false;
  return {
    isStopped: () => isStopped,
    *pack(problem, aim, effort) {
      const own = effort === undefined ? options : { ...options, effort };
      const { packing, stopped } = yield { ...place, aim, problem, options: own };
      isStopped ||= stopped;
      return proven(problem, packing);
    },
  };
}

/** Gives a packing out only where it is right; throws an Error, for a fault of Sheetwright, where it is not. */
export function proven(problem: Problem, packing: Packing): Packing {
  const findings = verify(problem, packing);
  if (findings.length === 0) return packing;
  const told = findings.slice(0, 10).map(({ path, message }) => `${path}: ${message}`);
  throw new Error(`A packing is not right, which is a fault of Sheetwright. ${told.join(" ")}`);
}
