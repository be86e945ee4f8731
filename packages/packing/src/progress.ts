/** How far a search is. */
export interface Progress {
  /** Starts finished, and starts to be made unless the best plan is proven before. */
  readonly startsDone: number;
  readonly starts: number;
  /** Places looked at so far. */
  readonly work: number;
  /** The best plan so far. */
  readonly best: { readonly sheets: number; readonly cost: number; readonly everything: boolean } | undefined;
}
