import { type Detail, isBetter, type Row } from "../comparison/row.js";
import { figuresTable, turnsOf, whole } from "../comparison/write-figures.js";

/** The instances whose best is published one by one and is not reached, as a table; in words where there are none. */
export function writeMissedOptima(rows: readonly Row[]): readonly string[] {
  const known = rows.filter((row) => row.known > 0);
  if (known.length === 0) return [];
  const lines = known.flatMap((row) =>
    row.details
      .filter((detail) => isMissed(row, detail))
      .map(({ id, measured, bound, bestPublished }) => [
        row.family,
        id,
        turnsOf(row),
        row.effort ?? "",
        whole(measured),
        whole(bound),
        whole(bestPublished),
      ]),
  );
  if (lines.length === 0) return ["Every best that is published of an instance alone is reached."];
  const head = ["family", "instance", "turns", "effort", "found", "bound", "best published"];
  return ["Instances whose best is published and not reached:", figuresTable(head, lines, 4)];
}

function isMissed({ question }: Row, { measured, bestPublished }: Detail): boolean {
  if (bestPublished === null) return false;
  return measured === null || isBetter(question, bestPublished, measured);
}
