/** What a piece of advice is about. */
export type AdviceCode =
  | "unused-paper"
  | "bare-seam"
  | "narrow-cover"
  | "hidden-layer"
  | "grain-unknown"
  | "no-paper";

/** Something a maker may want to know before she cuts; nothing that keeps her from it. */
export interface Advice {
  readonly code: AdviceCode;
  /** Where it stands in the project, such as `cards[2].front[0].seam`. */
  readonly path: string;
  /** All of it in full sentences. */
  readonly message: string;
}
