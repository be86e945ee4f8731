import type { Point } from "./cut-path.js";
import { STROKE_GLYPHS } from "./stroke-glyphs.js";

/** Capitals are this high in the units of the glyphs. */
export const CAPITAL_HEIGHT = 21;
/** All strokes of a line lie from here, over the capitals, to its foot. */
const LINE_TOP = -3;
const LINE_BOTTOM = 29;
/** From a line to the next, in the units of the glyphs. */
const PITCH = LINE_BOTTOM - LINE_TOP + 2;

// Letters that do not come apart into a plain letter and marks, and signs with an ASCII stand-in.
const STAND_INS: Readonly<Record<string, string>> = {
  ß: "ss",
  æ: "ae",
  Æ: "AE",
  ø: "o",
  Ø: "O",
  œ: "oe",
  Œ: "OE",
  ł: "l",
  Ł: "L",
  đ: "d",
  Đ: "D",
  ı: "i",
  "…": "...",
  "–": "-",
  "—": "-",
  "‘": "'",
  "’": "'",
  "“": '"',
  "”": '"',
  "„": '"',
  "×": "x",
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
};

/**
 * Spells a text with the characters that can be drawn as strokes, printable ASCII: marks over letters are dropped.
 * Gives `null` where some character has no such spelling.
 */
export function spellForStrokes(text: string): string | null {
  let spelled = "";
  for (const character of text.normalize("NFD")) {
    const code = character.codePointAt(0) as number;
    if (code >= 0x300 && code <= 0x36f) continue;
    const drawn = STAND_INS[character] ?? character;
    for (const letter of drawn) if (STROKE_GLYPHS[letter] === undefined) return null;
    spelled += drawn;
  }
  return spelled;
}

/** Lines of text as strokes about the point (0, 0), capitals being `capitals` high. */
export interface StrokeText {
  readonly strokes: readonly (readonly Point[])[];
  /** The box round all strokes and some white space is centred on (0, 0). */
  readonly width: number;
  readonly height: number;
}

/** Lays out lines of printable ASCII, centred one below another. */
export function strokeText(lines: readonly string[], capitals: number): StrokeText {
  const scale = capitals / CAPITAL_HEIGHT;
  const height = (lines.length - 1) * PITCH + LINE_BOTTOM - LINE_TOP;
  const laid = lines.map(layLine);
  const width = laid.reduce((widest, line) => Math.max(widest, line.right - line.left), 0);
  const strokes = laid.flatMap(({ strokes: own, left, right }, index) => {
    const down = index * PITCH - LINE_TOP - height / 2;
    const across = -(left + right) / 2;
    return own.map((stroke) => stroke.map(([x, y]): Point => [(x + across) * scale, (y + down) * scale]));
  });
  return { strokes, width: width * scale, height: height * scale };
}

/** Width of one line, capitals being `capitals` high. */
export function strokeWidth(line: string, capitals: number): number {
  const { left, right } = layLine(line);
  return ((right - left) * capitals) / CAPITAL_HEIGHT;
}

interface Glyph {
  readonly advance: number;
  readonly strokes: readonly (readonly Point[])[];
}

/** Glyphs come apart into points once, when first used. */
const glyphs = new Map<string, Glyph>();

function glyphOf(letter: string): Glyph {
  const known = glyphs.get(letter);
  if (known !== undefined) return known;
  const [advance, data] = STROKE_GLYPHS[letter] ?? [];
  if (advance === undefined || data === undefined) {
    throw new RangeError(`There are no strokes for ${JSON.stringify(letter)}.`);
  }
  const strokes = (data === "" ? [] : data.split(";")).map((stroke) => {
    const numbers = stroke.split(" ").map(Number);
    return Array.from(
      { length: numbers.length / 2 },
      (_, i): Point => [numbers[2 * i] as number, numbers[2 * i + 1] as number],
    );
  });
  const glyph = { advance, strokes };
  glyphs.set(letter, glyph);
  return glyph;
}

interface LaidLine {
  readonly strokes: readonly (readonly Point[])[];
  readonly left: number;
  readonly right: number;
}

function layLine(line: string): LaidLine {
  const strokes: (readonly Point[])[] = [];
  let pen = 0;
  let left = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  for (const letter of line) {
    const glyph = glyphOf(letter);
    for (const stroke of glyph.strokes) {
      const moved = stroke.map(([x, y]): Point => [pen + x, y]);
      for (const [x] of moved) {
        left = Math.min(left, x);
        right = Math.max(right, x);
      }
      strokes.push(moved);
    }
    pen += glyph.advance;
  }
  return strokes.length === 0 ? { strokes, left: 0, right: pen } : { strokes, left, right };
}
