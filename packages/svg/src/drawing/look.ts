/**
 * The look of printable sheets: white paper, grey furniture, and one accent for all that the blade does. The accent is
 * the blue of Okabe & Ito's palette (2008), which stays apart from black for colour-blind readers and prints as a dark
 * grey. Lengths are millimetres.
 */

export const FONT_FAMILY = "Helvetica, Arial, 'Liberation Sans', sans-serif";

/** 7 pt is 2.469 mm; no text is smaller than this. */
export const SMALLEST_TEXT = 2.5;

export const INK = "#1d2730";
export const QUIET = "#56616b";
export const RULE = "#b9c1c8";
export const ACCENT = "#0072b2";
/** Scores are the palette's bluish green; what is written of them is darker, to be legible. */
export const SCORE = "#009e73";
export const SCORE_TEXT = "#00694d";
export const PAPER = "#ffffff";
export const PIECE = "#fbf8f1";
export const WASTE = "#dfe3e6";
export const TRIM = "#eef0f2";
export const HATCH = "#8aa4b5";

/** Line widths: the sheet's edge, a cut, a piece's outline, hatching and rules. */
export const EDGE_LINE = 0.45;
export const CUT_LINE = 0.3;
export const SCORE_LINE = 0.3;
export const OUTLINE = 0.18;
export const HAIRLINE = 0.12;
