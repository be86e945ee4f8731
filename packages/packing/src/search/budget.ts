import type { Effort } from "../model.js";

/** What an effort may do; counted in work, never in time. */
export interface Budget {
  /** Places to look at for first plans, all together. */
  readonly work: number;
  /** First plans at most. */
  readonly most: number;
  /** Steps towards a best layout of one sheet from limited copies. */
  readonly exact: number;
  /** Starts of ruin and recreate, each from the best first plan. */
  readonly starts: number;
  /** The same where starts with blocks come before them: of mixes of sheets each start tries a few only. */
  readonly afterBlocks: number;
  /** Work of one such start for 100 pieces or more; for fewer it is less in proportion. */
  readonly each: number;
  /** Elementary steps of the start with columns, where copies outnumber kinds; a million take one or two milliseconds. */
  readonly columns: number;
  /** Pairs of pieces that the start which joins them looks at. */
  readonly joins: number;
  /** Starts that plan with blocks of joined pieces. */
  readonly blocks: number;
  /** Whether starts try mixes of sheets of several sizes one by one, which takes more work than a lower cost alone. */
  readonly mixes: boolean;
  /** Tries to lay the layouts found once more, all together. */
  readonly tries: number;
}

/** The budget of each effort. */
export const BUDGETS: Readonly<Record<Effort, Budget>> = {
  quick: {
    work: 2_000_000,
    most: 100,
    exact: 400_000,
    starts: 1,
    afterBlocks: 1,
    each: 800_000,
    columns: 20_000_000,
    joins: 400_000,
    blocks: 0,
    mixes: false,
    tries: 240,
  },
  standard: {
    work: 15_000_000,
    most: 2_000,
    exact: 24_000_000,
    starts: 2,
    afterBlocks: 1,
    each: 15_000_000,
    columns: 300_000_000,
    joins: 12_000_000,
    blocks: 1,
    mixes: true,
    tries: 800,
  },
  thorough: {
    work: 100_000_000,
    most: 10_000,
    exact: 200_000_000,
    starts: 4,
    afterBlocks: 6,
    each: 75_000_000,
    columns: 1_000_000_000,
    joins: 60_000_000,
    blocks: 3,
    mixes: true,
    tries: 4_000,
  },
};
