import { heightOf, type Row } from "../drawing/flow-rows.js";

/** A row of a page that may be one of a table. */
export interface PageRow extends Row {
  /** The head of its table: it is drawn again where the table goes on on a further page. */
  readonly head?: Row;
}

/**
 * Fills pages of one height with rows from the top down. Rows that keep with the next stand on one page with it, as long
 * as a page has room for them; white space is dropped at the top of a page.
 */
export function fillPages(rows: readonly PageRow[], height: number): readonly (readonly Row[])[] {
  const pages: Row[][] = [];
  let page: Row[] = [];
  let used = 0;
  for (let i = 0; i < rows.length; ) {
    let end = i;
    while (rows[end]?.keepWithNext === true && end + 1 < rows.length) end += 1;
    const block = rows.slice(i, end + 1);
    i = end + 1;
    if (used > 0 && used + heightOf(block) > height) {
      pages.push(page);
      page = [];
      used = 0;
      const head = block[0]?.head;
      if (head !== undefined) {
        page.push(head);
        used += head.height;
      }
    }
    if (used === 0 && block.every(({ blank }) => blank === true)) continue;
    page.push(...block);
    used += heightOf(block);
  }
  if (page.length > 0) pages.push(page);
  return pages;
}
