import { breakLines } from "../text/break-lines.js";

/** Columns that a text takes where every character is as wide: two for full-width scripts and emoji, none for marks. */
export function columnsOf(text: string): number {
  let columns = 0;
  for (const character of text) columns += widthOf(character.codePointAt(0) as number);
  return columns;
}

// Unicode Standard Annex 11: the blocks whose characters are Wide or Fullwidth.
const WIDE: readonly (readonly [number, number])[] = [
  [0x1100, 0x115f],
  [0x2e80, 0x303e],
  [0x3041, 0xa4cf],
  [0xa960, 0xa97f],
  [0xac00, 0xd7a3],
  [0xf900, 0xfaff],
  [0xfe30, 0xfe6f],
  [0xff00, 0xff60],
  [0xffe0, 0xffe6],
  [0x16fe0, 0x18dff],
  [0x1aff0, 0x1b2ff],
  [0x1f000, 0x1faff],
  [0x20000, 0x3fffd],
];

function widthOf(code: number): number {
  if (code >= 0x300 && code <= 0x36f) return 0;
  return WIDE.some(([from, to]) => code >= from && code <= to) ? 2 : 1;
}

/** Breaks text into lines of at most `columns`: the first after `first`, the others indented as far. */
export function hangingLines(first: string, text: string, columns: number): readonly string[] {
  const indent = columnsOf(first);
  const fits = (line: string) => indent + columnsOf(line) <= columns;
  const lines = breakLines(text.split(" "), { fits, overflow: "anywhere" }) ?? [text];
  return lines.map((line, index) => `${index === 0 ? first : " ".repeat(indent)}${line}`.trimEnd());
}

/** Puts white space before a text until it takes `columns`. */
export function rightAligned(text: string, columns: number): string {
  return " ".repeat(Math.max(0, columns - columnsOf(text))) + text;
}
