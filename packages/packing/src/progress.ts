/** How far a search is. */
export interface Progress {
  /** Part of the work that is done, from 0 to 1; a plan that is proven ends it sooner. */
  readonly share: number;
  /** Starts finished, and starts to be made unless the best plan is proven before. */
  readonly startsDone: number;
  readonly starts: number;
  /** Places looked at so far. */
  readonly work: number;
  /** The best plan so far. */
  readonly best: { readonly sheets: number; readonly cost: number; readonly everything: boolean } | undefined;
}
