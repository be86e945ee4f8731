import type { Box } from "../drawing/box.js";
import { freeOfWindow, toMillimetres } from "../drawing/layout-figure.js";
import type { LaidOut } from "../layout/lay-out.js";
import type { ListedPieces, PieceList } from "../layout/list-pieces.js";
import { breakLines } from "../text/break-lines.js";
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
 * list of the printed sheet where the name does not fit or cannot be spelled. Labels stay inside their pieces.
 */
export function strokeLabels(laidOut: LaidOut, list: PieceList): readonly (readonly (readonly Point[])[])[] {
  return laidOut.pieces.flatMap((piece, index) => {
    const entry = list.entryOf[index];
    const label =
      entry === undefined ? null : fitStrokes(freeOfWindow(toMillimetres(piece), piece.window), entry);
    return label === null ? [] : [label];
  });
}

function fitStrokes(box: Box, { words, number }: ListedPieces): readonly (readonly Point[])[] | null {
  const ways = box.height > box.width ? [false, true] : [false];
  const spelled = words.map(spellForStrokes);
  const wordings = spelled.includes(null)
    ? [[String(number)]]
    : [spelled as readonly string[], [String(number)]];
  for (const wording of wordings) {
    for (const upwards of ways) {
      for (const capitals of CAPITALS) {
        const margin = capitals > 2 ? MARGIN : SMALL_MARGIN;
        const along = (upwards ? box.height : box.width) - 2 * margin;
        const across = (upwards ? box.width : box.height) - 2 * margin;
        const text = fitLines(wording, capitals, along, across);
        if (text !== null) return place(text, box, upwards);
      }
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

function place(text: StrokeText, box: Box, upwards: boolean): readonly (readonly Point[])[] {
  const x = box.x + box.width / 2;
  const y = box.y + box.height / 2;
  // Reading upwards is a quarter turn anticlockwise: right becomes up, down becomes right.
  return text.strokes.map((stroke) =>
    stroke.map(([dx, dy]): Point => (upwards ? [x + dy, y - dx] : [x + dx, y + dy])),
  );
}
