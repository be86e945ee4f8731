import { type Detail, isBetter, type Row } from "./row.js";

/** The best bound known of an instance, from this run or published; `null` where there is none. */
export function bestBoundOf(
  { question }: Pick<Row, "question">,
  { bound, publishedBound }: Detail,
): number | null {
  if (bound === null || publishedBound === null) return bound ?? publishedBound;
  return isBetter(question, bound, publishedBound) ? publishedBound : bound;
}

/** How much worse results are than the best bounds known, and what these bounds add up to. */
export interface Gap {
  readonly amount: number;
  readonly bound: number;
}

/** Sums the gaps of instances; `null` where a result or a bound is missing. */
export function gapOf(row: Pick<Row, "question">, details: readonly Detail[]): Gap | null {
  let amount = 0;
  let total = 0;
  for (const detail of details) {
    const bound = bestBoundOf(row, detail);
    if (bound === null || detail.measured === null) return null;
    amount += isBetter(row.question, bound, detail.measured) ? Math.abs(detail.measured - bound) : 0;
    total += bound;
  }
  return { amount, bound: total };
}
