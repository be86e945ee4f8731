/** Small changes of a project that would save paper. All plain data. */

import type { Project } from "@sheetwright/cards";
import type { Unit } from "@sheetwright/measure";
import type { Effort } from "@sheetwright/packing";

/** What {@link findSavings} answers. Each change is for itself: what several save together is another matter. */
export interface Savings {
  readonly title: string;
  readonly units: Unit;
  /** The sign or name of the currency; `null` where not given. */
  readonly currency: string | null;
  /** What the project takes as it is; `null` where not every piece of it can be planned, and nothing is tried then. */
  readonly asItIs: SavingFigures | null;
  /**
   * The changes that save most, the best first; of changes of one subject only the best, of numbers of copies the
   * fewest less that save anything.
   */
  readonly savings: readonly Saving[];
  /** Changes that were planned, and those that really save. */
  readonly tried: number;
  readonly saving: number;
  readonly search: {
    readonly effort: Effort;
    readonly seed: number;
    /** True where the search was ended early, so that not all changes were tried. */
    readonly cancelled: boolean;
  };
}

/** What a plan takes of whole sheets, as many as needed. */
export interface SavingFigures {
  /** Cost of the sheets, as decimal text; `null` where a used paper has no cost. */
  readonly cost: string | null;
  readonly sheets: number;
  /** Designs of papers that are cut into, with their sheets. */
  readonly papers: readonly { readonly design: string; readonly name: string; readonly sheets: number }[];
}

/** A change that saves. */
export interface Saving {
  /** The change as a wish: `let the strip pieces turn on Comets`. */
  readonly words: string;
  /** Where in the project file it is made, and what to write there. */
  readonly path: string;
  readonly write: string;
  /** What the changed project takes. */
  readonly takes: SavingFigures;
  /** Cost saved, as decimal text; `null` where costs are not known. Area decides then. */
  readonly costSaved: string | null;
  /** Sheets saved; below 0 where more sheets are taken that cost less, or are smaller. */
  readonly sheetsSaved: number;
  /** Area of sheets saved, in percent of those that the project takes as it is, with one decimal; not below 0. */
  readonly areaPercent: number;
  /**
   * True where the papers that the change touches are proven to be planned best as they are: then it saves by itself, and no
   * longer search could save as much without it by those papers.
   */
  readonly proven: boolean;
}

/** A change to try. */
export interface Change {
  /** What it is of: of several changes of one subject the best is told. */
  readonly subject: string;
  /** True where the first of its subject that saves is told instead, and the others are not tried. */
  readonly isLeast?: true | undefined;
  readonly words: string;
  readonly path: string;
  readonly write: string;
  /** The project with the change made. */
  readonly project: Project;
}
