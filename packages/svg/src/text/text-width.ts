/**
 * How wide a text may come out at most. A drawing is read on machines that do not share fonts, so nothing is measured:
 * each character counts with the widest advance it has among Helvetica (Adobe Core 14 AFM files, 1997; Arial and
 * Liberation Sans share those widths), DejaVu Sans 2.37 and Open Sans 1.10, in thousandths of the font size, rounded up.
 */

// U+0020 to U+007E.
const REGULAR = [
  318, 401, 460, 838, 637, 951, 780, 275, 391, 391, 551, 838, 318, 361, 318, 367, 637, 637, 637, 637, 637,
  637, 637, 637, 637, 637, 337, 337, 838, 838, 838, 557, 1016, 685, 687, 723, 771, 667, 611, 778, 752, 295,
  500, 667, 558, 900, 753, 788, 667, 788, 723, 667, 611, 732, 685, 989, 686, 667, 686, 391, 367, 391, 838,
  557, 500, 613, 635, 550, 635, 616, 353, 635, 634, 278, 278, 580, 278, 975, 634, 612, 635, 635, 412, 521,
  393, 634, 592, 818, 592, 592, 525, 637, 550, 637, 838,
];
const BOLD = [
  349, 457, 521, 838, 696, 1002, 873, 307, 458, 458, 545, 838, 380, 416, 380, 414, 696, 696, 696, 696, 696,
  696, 696, 696, 696, 696, 400, 400, 838, 838, 838, 611, 1000, 774, 763, 734, 831, 684, 684, 821, 837, 373,
  557, 775, 638, 996, 837, 851, 733, 851, 771, 721, 683, 813, 774, 1104, 771, 725, 726, 458, 414, 458, 838,
  557, 500, 675, 716, 593, 716, 679, 436, 716, 712, 343, 343, 666, 343, 1042, 712, 688, 716, 716, 494, 596,
  479, 712, 652, 924, 646, 652, 583, 712, 551, 712, 838,
];

// The same measurement for signs that names of papers and cards often hold; bold, the widest ask for a fifth more.
const SIGNS: Readonly<Record<string, number>> = {
  "…": 1000,
  "–": 557,
  "—": 1000,
  "‘": 318,
  "’": 318,
  "‚": 318,
  "“": 550,
  "”": 550,
  "„": 550,
  "«": 612,
  "»": 612,
  "·": 318,
  "•": 590,
  "×": 838,
  "°": 500,
  "²": 401,
  "³": 401,
  "½": 970,
  "¼": 970,
  "¾": 970,
  ß: 630,
  ł: 310,
  ı: 285,
  // The caron of this letter stands beside it in most fonts.
  ľ: 375,
};
const BOLD_SIGN = 1.22;

/**
 * Widest character of a range of code points: measured likewise up to Arabic; full-width scripts are one em by design;
 * for scripts of South and South-East Asia, ligatures and signs that stand for a phrase these are generous estimates.
 */
const RANGES: readonly (readonly [from: number, to: number, width: number])[] = [
  [0xa0, 0xff, 1000],
  [0x100, 0x17f, 1070],
  [0x370, 0x3ff, 940],
  [0x400, 0x42f, 1100],
  [0x430, 0x45f, 945],
  [0x460, 0x52f, 1210],
  [0x530, 0x58f, 985],
  [0x590, 0x5ff, 715],
  [0x600, 0x6ff, 1230],
  [0x900, 0xdff, 2000],
  [0x1000, 0x109f, 2000],
  [0x1780, 0x17ff, 2000],
  [0x2e3a, 0x2e3b, 3100],
  [0x3000, 0x30ff, 1000],
  [0x3400, 0x4dbf, 1000],
  [0x4e00, 0x9fff, 1000],
  [0xa980, 0xa9df, 12_000],
  [0xaa60, 0xaa7f, 2000],
  [0xac00, 0xd7a3, 1000],
  [0xf900, 0xfaff, 1000],
  [0xfdf0, 0xfdff, 12_000],
  [0xff00, 0xff60, 1000],
  [0x12000, 0x1254f, 12_000],
];
/** Any other character: wider than an emoji of Noto Color Emoji (1.245 em). */
const OTHER = 1300;

/**
 * How far the box of a line of text reaches over its baseline: in Open Sans, the tallest of the fonts counted on. Chromium
 * rounds this to whole user units for text set with geometric precision, so the larger of the two counts.
 */
export function ascentOf(size: number, text = ""): number {
  return Math.max(1.07 * size, Math.round(1.07 * size)) + markRoom(size, text);
}

/** The height of a line's box; boxes of this height one below another never overlap. */
export function lineHeightOf(size: number, text = ""): number {
  // What Chromium rounds off under the baseline it gives back as a whole unit.
  return ascentOf(size, text) + Math.ceil(0.295 * size) + markRoom(size, text);
}

/** Marks that are no part of a letter stand over or under the line that the font keeps for letters. */
function markRoom(size: number, text: string): number {
  return /[\u0300-\u036f]/.test(text) ? Math.ceil(0.4 * size) : 0;
}

/**
 * Chromium rounds the ink of text set with geometric precision out to whole user units, so its box may stick out by up to
 * this much before and after the text.
 */
export const OVERHANG = 1;

/** Kerning, hinting and rounding may widen a line a little over the sum of its advances. */
const ALLOWANCE = 1.02;

/**
 * The greatest width a text may take, in the unit of `size`.
 *
 * @example
 * textWidth("5 x 7", 10) >= 24.5 // => true, its width in Helvetica
 */
export function textWidth(text: string, size: number, bold = false): number {
  let sum = 0;
  for (const character of text) sum += characterWidth(character, bold);
  return (sum / 1000) * size * ALLOWANCE;
}

/** A test for lines: whether a text stays within a width in any usual font. */
export function fitsWidth(width: number, size: number, bold = false): (text: string) => boolean {
  return (text) => textWidth(text, size, bold) <= width;
}

function characterWidth(character: string, bold: boolean): number {
  const table = bold ? BOLD : REGULAR;
  const code = character.codePointAt(0) as number;
  const known = table[code - 0x20];
  if (known !== undefined) return known;
  if (isCombiningMark(code)) return 0;
  const widen = bold ? BOLD_SIGN : 1;
  const sign = SIGNS[character];
  if (sign !== undefined) return sign * widen;
  // An accented letter is as wide as its base letter, but for a horn.
  const [base = "", ...marks] = character.normalize("NFD");
  const plain = table[(base.codePointAt(0) ?? 0) - 0x20];
  if (plain !== undefined && marks.every((mark) => isCombiningMark(mark.codePointAt(0) as number))) {
    return marks.includes("\u031b") ? plain + 130 : plain;
  }
  const range = RANGES.find(([from, to]) => code >= from && code <= to);
  return (range === undefined ? OTHER : range[2]) * widen;
}

function isCombiningMark(code: number): boolean {
  return code >= 0x300 && code <= 0x36f;
}
