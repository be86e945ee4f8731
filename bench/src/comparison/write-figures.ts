/** How figures of rows read in tables. */
import { markdownTable } from "markdown-table";
import type { Row } from "./row.js";

/** A table whose first columns are words and whose others are figures. */
export function figuresTable(
  head: readonly string[],
  lines: readonly (readonly string[])[],
  words: number,
): string {
  return markdownTable(
    [head, ...lines].map((line) => line.map((cell) => cell.replaceAll("|", "\\|"))),
    { align: head.map((_, i) => (i < words ? "l" : "r")) },
  );
}

/** `fixed` or `turned`. */
export function turnsOf({ rotation }: Pick<Row, "rotation">): string {
  return rotation ? "turned" : "fixed";
}

/** The efforts of rows, each once. */
export function effortsOf(rows: readonly Pick<Row, "effort">[]): string {
  return [...new Set(rows.flatMap(({ effort }) => (effort === null ? [] : [effort])))].join(", ");
}

/** A whole number, or a dash for none. */
export function whole(count: number | null): string {
  return count === null ? "-" : String(count);
}

/** A difference with its sign. */
export function signed(difference: number): string {
  return difference > 0 ? `+${difference}` : String(difference);
}

/** A figure with a number of decimals, or a dash for none. */
export function decimal(figure: number | null, decimals: number): string {
  return figure === null ? "-" : figure.toFixed(decimals);
}
