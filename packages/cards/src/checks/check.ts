/**
 * How much a finding counts: an `error` keeps a project from being planned as asked, a `warning` may spoil cards, a `note`
 * is good to know.
 */
export type Severity = "error" | "warning" | "note";

/** One rule that projects are checked by, in words for a page that lists them all. */
export interface Check {
  /** Its stable name, such as `bare-seam`. */
  readonly code: string;
  readonly severity: Severity;
  /** What it finds, in a few words. */
  readonly title: string;
  /** The rule, in full sentences. */
  readonly rule: string;
  /** Where the rule comes from: a publication, common practice, or how this program works. */
  readonly source: string;
  /** What helps, in full sentences. */
  readonly advice: string;
}
