/** Writes the measurements of one copy of a card as plain text, at most 76 columns wide. */

import { formatSize } from "@sheetwright/measure";
import { columnsOf, hangingLines, rightAligned } from "../cut-list/text-columns.js";
import { breakLines } from "../text/break-lines.js";
import {
  type CardOptions,
  type CardSource,
  cardFacts,
  copiesInWords,
  foldInWords,
  formatInWords,
} from "./card-facts.js";
import { type MeasuredPiece, measurementsOf } from "./measurements.js";
import { otherUnit } from "./place-in-words.js";

const COLUMNS = 76;
/** No label or paper takes more than this of a line; the rest of it goes under its beginning. */
const WIDEST = 20;
const BETWEEN = 2;
const INDENT = 2;

/**
 * Writes the measurements of the card with the number `number`: each piece with paper, size in inches and millimetres and
 * place, the steps from the bottom to the top, what was rounded, and a caution. Lengths of the source are ticks of
 * 1/1600 mm. The text is Unicode and ends in a line feed. Throws a RangeError where there is no such card, or where it
 * names pieces or faces that are not there.
 */
export function writeMeasurements(source: CardSource, number: number, options: CardOptions = {}): string {
  const facts = cardFacts(source, number, options);
  const { pieces, markNote, steps, roundings, caution } = measurementsOf(facts);
  const second = otherUnit(facts.unit);
  const { width, height } = facts.card.front;
  const title = hangingLines("", `${number} ${facts.name}: measurements for one copy`, COLUMNS);
  const closed = `${formatInWords(facts)} (${formatSize(width, height, { unit: second })}), ${foldInWords(facts.card)}`;
  const blocks: (readonly string[])[] = [
    [
      ...title,
      "=".repeat(Math.min(COLUMNS, Math.max(...title.map(columnsOf)))),
      ...hangingLines("", closed, COLUMNS),
      ...hangingLines("", `To be made: ${copiesInWords(facts.card)}`, COLUMNS),
    ],
    [
      "Pieces",
      ...pieceLines(pieces, facts.unit, second),
      ...(markNote === null ? [] : hangingLines("  ", markNote, COLUMNS)),
    ],
    ["Steps, from the bottom to the top", ...stepLines(steps)],
  ];
  if (roundings.length > 0) {
    blocks.push(["Rounded", ...roundings.flatMap((said) => hangingLines("  ", said, COLUMNS))]);
  }
  blocks.push(["Before you cut", ...hangingLines("  ", caution, COLUMNS)]);
  return `${blocks.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

function stepLines(steps: readonly string[]): readonly string[] {
  const digits = Math.max(2, String(steps.length).length);
  return steps.flatMap((step, i) =>
    hangingLines(`  ${rightAligned(String(i + 1), digits)}. `, step, COLUMNS),
  );
}

function pieceLines(pieces: readonly MeasuredPiece[], first: string, second: string): readonly string[] {
  const widest = (texts: readonly string[]) =>
    texts.reduce((most, text) => Math.max(most, columnsOf(text)), 0);
  const sizes = [
    widest([first, ...pieces.flatMap((piece) => piece.sizes.map((size) => size.first))]),
    widest([second, ...pieces.flatMap((piece) => piece.sizes.map((size) => size.second))]),
  ];
  const room = COLUMNS - INDENT - 3 * BETWEEN - sizes.reduce((sum, width) => sum + width, 0);
  const labels = pieces.map(({ piece }) => piece.label);
  const papers = pieces.map(({ piece }) => piece.paperName);
  const [label, paper] = shared(room, widest(["piece", ...labels]), widest(["paper", ...papers]));
  const widths = [label, paper, ...sizes];

  const set = (row: readonly (readonly string[])[]) => {
    const height = Math.max(...row.map((lines) => lines.length));
    return Array.from({ length: height }, (_, line) => {
      const cells = row.map((lines, column) => padded(lines[line] ?? "", widths[column] ?? 0));
      return (" ".repeat(INDENT) + cells.join(" ".repeat(BETWEEN))).trimEnd();
    });
  };
  return [
    ...set([["piece"], ["paper"], [first], [second]]),
    ...pieces.flatMap(({ piece, sizes: both, notes }) => [
      ...set([
        cell(piece.label, label),
        cell(piece.paperName, paper),
        both.map((size) => size.first),
        both.map((size) => size.second),
      ]),
      ...(notes.length === 0 ? [] : hangingLines(" ".repeat(INDENT + 4), notes.join("; "), COLUMNS)),
    ]),
  ];
}

/** What two columns get of the room for both: what they need up to WIDEST; where that is too much, half of it at least. */
function shared(room: number, first: number, second: number): readonly [number, number] {
  const [one, two] = [Math.min(first, WIDEST), Math.min(second, WIDEST)];
  if (one + two <= room) return [one, two];
  const half = Math.floor(room / 2);
  return one <= half ? [one, room - one] : two <= half ? [room - two, two] : [half, room - half];
}

function cell(text: string, columns: number): readonly string[] {
  const fits = (line: string) => columnsOf(line) <= columns;
  return breakLines(text.split(" "), { fits, overflow: "anywhere" }) ?? [text];
}

function padded(text: string, columns: number): string {
  return text + " ".repeat(Math.max(0, columns - columnsOf(text)));
}
