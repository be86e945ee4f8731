import {
  type Effort,
  type Packing,
  type PackOptions,
  type Problem,
  type Progress,
  packSteps,
  verify,
} from "@sheetwright/packing";

/** How far a plan is. */
export interface PlanProgress {
  /** Index of the group of papers that is searched, and the number of groups. */
  readonly group: number;
  readonly groups: number;
  /**
   * What is looked for: the layouts, strips of die blanks that save paper, folds along the grain, how many sheets more would
   * help, or spare copies.
   */
  readonly aim: "layouts" | "strips" | "grain" | "shortage" | "spares";
  readonly progress: Progress;
}

/** A search of one group that yields its progress; send `true` to end it early. */
export type Search<Found> = Generator<PlanProgress, Found, boolean | undefined>;

/** The searches of one group: they share the options, and the wish to end early. */
export interface GroupSearch {
  /** Searches one problem. The packing is proven right for it. */
  readonly pack: (problem: Problem, aim: PlanProgress["aim"], effort?: Effort) => Search<Packing>;
  /** Whether the search was asked to end early. */
  readonly isStopped: () => boolean;
}

/** Starts the searches of a group. A search that is asked to end early gives its best plan so far, and so do later ones at once. */
export function groupSearch(
  place: Pick<PlanProgress, "group" | "groups">,
  options: PackOptions,
  stopBefore: boolean,
): GroupSearch {
  let stopped = stopBefore;
  return {
    isStopped: () => stopped,
    *pack(problem, aim, effort) {
      const steps = packSteps(problem, effort === undefined ? options : { ...options, effort });
      let step = steps.next();
      while (!step.done) {
        stopped = (yield { ...place, aim, progress: step.value }) === true || stopped;
        step = steps.next(stopped);
      }
      return proven(problem, step.value);
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
