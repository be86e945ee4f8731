import type { SvgElement } from "../writer/svg-element.js";

/** A strip of a column: its height, and what it draws with its top left corner at (x, y). All in millimetres. */
export interface Row {
  readonly height: number;
  readonly draw: (x: number, y: number) => readonly SvgElement[];
  /** True where the row may not stand at the foot of a column with the next row in another. */
  readonly keepWithNext?: boolean;
  /** True for white space, which is dropped at the top of a column. */
  readonly blank?: boolean;
}

/** Rows in columns of equal height. */
export interface Flow {
  readonly columns: readonly (readonly Row[])[];
  /** Height that the fullest column takes. */
  readonly height: number;
}

/**
 * Flows rows into as few columns as their height allows, then evens the columns out down to `preferred`. A column may
 * grow to `most`; a row higher than that gets a column of its own.
 */
export function flowRows(rows: readonly Row[], preferred: number, most: number): Flow {
  const fewest = fillDown(rows, Math.max(preferred, most)).length;
  let height = preferred;
  while (fillDown(rows, height).length > fewest) height += 2;
  const columns = fillDown(rows, height);
  return { columns, height: columns.reduce((tallest, column) => Math.max(tallest, heightOf(column)), 0) };
}

/** The height of rows one below another. */
export function heightOf(rows: readonly Row[]): number {
  return rows.reduce((sum, row) => sum + row.height, 0);
}

/** A row that may be one of a table. */
export interface TableRow extends Row {
  /** The head of its table: it is drawn again where the table goes on further on. */
  readonly head?: Row;
}

/**
 * Fills columns, or pages, of one height with rows from the top down. Rows that keep with the next stand together, as long
 * as there is room for them; white space is dropped at the top.
 */
export function fillDown(rows: readonly TableRow[], height: number): readonly (readonly Row[])[] {
  const columns: Row[][] = [];
  let column: Row[] = [];
  let used = 0;
  for (let i = 0; i < rows.length; ) {
    let end = i;
    while (rows[end]?.keepWithNext === true && end + 1 < rows.length) end += 1;
    const block = rows.slice(i, end + 1);
    i = end + 1;
    if (used > 0 && used + heightOf(block) > height) {
      const head = block[0]?.head;
      columns.push(column);
      column = head === undefined ? [] : [head];
      used = heightOf(column);
    }
    if (used === 0 && block.every(({ blank }) => blank === true)) continue;
    column.push(...block);
    used += heightOf(block);
  }
  if (column.length > 0) columns.push(column);
  return columns;
}
