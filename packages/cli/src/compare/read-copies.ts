/** Numbers of copies, rising and each once, or why they cannot be read. */
export type ReadCopies =
  | { readonly copies: readonly number[] }
  | { readonly code: string; readonly message: string };

/** More copies than anybody makes by hand. */
const MOST_COPIES = 1_000;

/** Reads numbers of copies: one, several with commas, and ranges: `12`, `1,6,12`, `1-50`. */
export function readCopies(text: string): ReadCopies {
  const found = new Set<number>();
  for (const part of text.split(",").map((word) => word.trim())) {
    const [, first, last = first] = /^(\d+)(?:\s*[-–]\s*(\d+))?$/.exec(part) ?? [];
    if (first === undefined || last === undefined) {
      const what = part === "" ? "found nothing" : `found "${part}"`;
      return {
        code: "not-a-number",
        message: `${what}, expected whole numbers of copies, such as 12, 1-50 or 1,6,12.`,
      };
    }
    const [from, to] = [Number(first), Number(last)];
    if (from < 1 || to > MOST_COPIES || from > to) {
      const expected = from > to ? "the smaller number first" : `numbers from 1 to ${MOST_COPIES}`;
      return { code: "not-a-number", message: `found "${part}", expected ${expected}, such as 1-50.` };
    }
    for (let count = from; count <= to; count++) found.add(count);
  }
  return { copies: [...found].sort((a, b) => a - b) };
}
