import type { Box } from "../drawing/box.js";
import { freeOfWindow } from "../drawing/free-of-window.js";
import { insideShape, meetsShape } from "../drawing/inside-shape.js";
import { lineBoxes, type PieceLine, partsBetween, scoreLine, slitLine } from "../drawing/score-line.js";
import { toMillimetres } from "../drawing/to-millimetres.js";
import { belowTop, placeTop, type TopMark } from "../drawing/top-mark.js";
import type { LaidOut } from "../layout/lay-out.js";
import type { ListedPieces, PieceList } from "../layout/list-pieces.js";
import type { PlaceMarks } from "../layout/lying-marks.js";
import { breakLines, spaced, unbroken } from "../text/break-lines.js";
import type { Point } from "./cut-path.js";
import { type StrokeText, spellForStrokes, strokeText, strokeWidth } from "./stroke-text.js";

/** Heights of capitals, in millimetres, largest first; a pen cannot draw smaller letters well. */
const CAPITALS = [3.2, 2.6, 2] as const;
/** White space to the edges of the piece, and the least of it beside the smallest letters. */
const MARGIN = 1.6;
const SMALL_MARGIN = 0.8;
const MOST_LINES = 3;

/**
 * A label for each piece that has room for one, as strokes in millimetres on the sheet: its name, or its number in the
 * list of the printed sheet where the name does not fit or cannot be spelled; and for each piece whose top matters a
 * triangle that points there. All stay inside their pieces and clear of scores, slits and windows.
 */
export function strokeMarks(
  laidOut: LaidOut,
  list: PieceList,
  marks: readonly PlaceMarks[],
): readonly (readonly (readonly Point[])[])[] {
  return laidOut.pieces.flatMap((piece, index) => {
    const entry = list.entryOf[index];
    const own = marks[index];
    if (entry === undefined || own === undefined) return [];
    const lines: readonly PieceLine[] = [
      ...own.scores.map((score) => scoreLine(piece, score)),
      ...own.slits.map((slit) => slitLine(piece, slit)),
    ];
    const box = toMillimetres(piece);
    const free = freeOfWindow(box, piece.window);
    // What a die presses is not in the file, but the lines of a cutting machine are.
    const shape = own.shape?.die === null && lines.length === 0 ? own.shape : null;
    const inner = (shape === null ? [] : insideShape(shape, piece, free))
      .map((part) => fitBeside([], part, entry))
      .filter((one) => one !== null && shape !== null && !meetsShape(shape, piece, one.box));
    let label = inner[0] ?? fitBeside(lines, free, entry);
    if (own.top === null) return label === null ? [] : [label.strokes];

    const hole = piece.window === null ? [] : [toMillimetres(piece.window)];
    const clear = [...lines.flatMap(lineBoxes), ...hole];
    let top = placeTop(box, own.top, label === null ? clear : [...clear, label.box]);
    if (top === null) {
      label = fitBeside(lines, belowTop(free, own.top), entry);
      top = placeTop(box, own.top, label === null ? clear : [...clear, label.box]);
    }
    // A piece without room for both gets the mark alone, and one without room for that, none.
    if (top === null) {
      label = null;
      top = placeTop(box, own.top, clear);
    }
    return [...(label === null ? [] : [label.strokes]), ...(top === null ? [] : [outline(top)])];
  });
}

/** The outline of a top, drawn in one stroke back to its tip. */
function outline({ points }: TopMark): readonly (readonly Point[])[] {
  return [[...points, points[0]]];
}

/** A label in its place, with the box that its strokes lie in. */
interface StrokeLabel {
  readonly strokes: readonly (readonly Point[])[];
  readonly box: Box;
}

/** The label in the largest part beside the scores that holds its name, or else its number. */
function fitBeside(lines: readonly PieceLine[], free: Box, entry: ListedPieces): StrokeLabel | null {
  const parts = partsBetween(free, lines)
    .map((part, index) => ({ part, index, area: Math.round(part.width * part.height) }))
    .sort((a, b) => b.area - a.area || b.index - a.index)
    .map(({ part }) => part);
  const spelled = entry.words.map(spellHeld);
  const number = [String(entry.number)];
  const wordings = spelled.includes(null) ? [number] : [spelled as readonly string[], number];
  for (const wording of wordings) {
    for (const part of parts) {
      const label = fitStrokes(part, wording);
      if (label !== null) return label;
    }
  }
  return null;
}

/** Spells a word whose parts are held together, and holds them together again. */
function spellHeld(word: string): string | null {
  const spelled = spellForStrokes(spaced(word));
  return spelled === null ? null : unbroken(spelled);
}

function fitStrokes(box: Box, wording: readonly string[]): StrokeLabel | null {
  const ways = box.height > box.width ? [false, true] : [false];
  for (const upwards of ways) {
    for (const capitals of CAPITALS) {
      const margin = capitals > 2 ? MARGIN : SMALL_MARGIN;
      const along = (upwards ? box.height : box.width) - 2 * margin;
      const across = (upwards ? box.width : box.height) - 2 * margin;
      const text = fitLines(wording, capitals, along, across);
      if (text !== null) return place(text, box, upwards);
    }
  }
  return null;
}

function fitLines(
  words: readonly string[],
  capitals: number,
  along: number,
  across: number,
): StrokeText | null {
  for (let lines = 1; lines <= MOST_LINES; lines += 1) {
    const fits = (line: string) => strokeWidth(line, capitals) <= along;
    const broken = breakLines(words, { fits, lines, overflow: "refuse" });
    if (broken === null) continue;
    const text = strokeText(broken, capitals);
    if (text.height <= across && text.width <= along) return text;
  }
  return null;
}

function place(text: StrokeText, box: Box, upwards: boolean): StrokeLabel {
  const x = box.x + box.width / 2;
  const y = box.y + box.height / 2;
  const [width, height] = upwards ? [text.height, text.width] : [text.width, text.height];
  // Reading upwards is a quarter turn anticlockwise: right becomes up, down becomes right.
  const strokes = text.strokes.map((stroke) =>
    stroke.map(([dx, dy]): Point => (upwards ? [x + dy, y - dx] : [x + dx, y + dy])),
  );
  return { strokes, box: { x: x - width / 2, y: y - height / 2, width, height } };
}
