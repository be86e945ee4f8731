/** Picks out what is new beside the publications: groups below a published best, optima that were open. */
import { type Detail, isBetter, type Row } from "./row.js";

/** Something to look at twice, as a sentence, and the instance or group it is of. */
export interface Remarkable {
  readonly kind: "beats-best" | "beats-bound" | "newly-proven" | "meets-published-bound";
  readonly family: string;
  readonly rotation: boolean;
  readonly effort: string;
  /** An instance's id, or a group such as `class 3, n = 60`. */
  readonly id: string;
  readonly measured: number;
  /** Of this run. */
  readonly bound: number | null;
  readonly publishedBound: number | null;
  readonly bestPublished: number | null;
}

/**
 * What one of our rows has that the publications do not.
 * - `beats-best`: an instance or a published group is better than its published best.
 * - `beats-bound`: an instance is better than what is published as its bound; one of the two is wrong.
 * - `newly-proven`: its best is not published, and a certificate of this run proves the plan to be the best.
 * - `meets-published-bound`: its best is not published, and the plan reaches the published bound.
 */
export function remarkableOf(row: Row): readonly Remarkable[] {
  const { family, rotation, question } = row;
  const at = { family, rotation, effort: row.effort ?? row.solver };
  const better = (figure: number | null, than: number | null): boolean =>
    figure !== null && than !== null && isBetter(question, figure, than);
  const instances = row.details.flatMap((detail): Remarkable[] => {
    const kind = kindOf(detail, better);
    const { id, measured, bound, publishedBound, bestPublished } = detail;
    return kind === null || measured === null
      ? []
      : [{ kind, ...at, id, measured, bound, publishedBound, bestPublished }];
  });
  const cells = row.cells.flatMap((cell): Remarkable[] => {
    const { measured, bound, publishedBound, bestPublished } = cell;
    if (measured === null || !better(measured, bestPublished)) return [];
    const id = `class ${cell.class}, n = ${cell.n}`;
    return [{ kind: "beats-best", ...at, id, measured, bound, publishedBound, bestPublished }];
  });
  return [...cells, ...instances];
}

function kindOf(
  { measured, bestPublished, publishedBound, proven }: Detail,
  better: (figure: number | null, than: number | null) => boolean,
): Remarkable["kind"] | null {
  if (better(measured, publishedBound)) return "beats-bound";
  if (better(measured, bestPublished)) return "beats-best";
  if (bestPublished !== null || publishedBound === null) return null;
  if (proven) return "newly-proven";
  return measured === publishedBound ? "meets-published-bound" : null;
}
