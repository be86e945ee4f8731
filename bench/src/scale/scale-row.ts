import type { Growing } from "./scale-options.js";
import type { ScaleFigures, ScaleTask } from "./scale-task.js";

/** One row of the suite. */
export interface ScaleRow extends Omit<ScaleTask, "seed">, ScaleFigures {
  /** What differs from the rows before it. */
  readonly growing: Growing;
}

/** Copies of {@link KINDS} kinds, and kinds with {@link COPIES} copies in all. */
const STEPS: Readonly<Record<Growing, readonly number[]>> = {
  copies: [1, 10, 100, 1_000, 10_000, 100_000],
  kinds: [10, 20, 50, 100, 200, 500, 1_000, 2_000],
};
/** The kinds where copies grow. */
export const KINDS = 20;
/** The copies where kinds grow: at least one of each. */
export const COPIES = 2_000;

/** The kinds and copies of the rows in which something grows, from the least to the most. */
export function scaleSteps(growing: Growing, most: number): readonly Pick<ScaleTask, "kinds" | "copies">[] {
  return STEPS[growing]
    .filter((count) => count <= most)
    .map((count) =>
      growing === "copies" ? { kinds: KINDS, copies: count } : { kinds: count, copies: COPIES },
    );
}

/** How many times as long the row with the most copies takes as the one with 1,000; `null` where one is missing. */
export function timesAsLong(rows: readonly ScaleRow[], effort: ScaleRow["effort"]): number | null {
  const seconds = (copies: number): number | undefined =>
    rows.find((row) => row.growing === "copies" && row.effort === effort && row.copies === copies)?.seconds;
  const few = seconds(1_000);
  const many = seconds(100_000);
  return few === undefined || many === undefined || few === 0 ? null : many / few;
}
