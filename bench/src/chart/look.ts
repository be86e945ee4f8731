/**
 * The look of charts: white paper, ink and grey, fills from the palette of Okabe & Ito (2008). The fills go from dark to
 * light in the order of the bars, so that they stay apart for colour-blind readers and on a grey printer. Lengths are mm.
 */

export const FONT_FAMILY = "Helvetica, Arial, 'Liberation Sans', sans-serif";
export const INK = "#1d2730";
export const QUIET = "#56616b";
export const RULE = "#d5dade";
export const PAPER = "#ffffff";

/** Blue, bluish green, orange, yellow. */
export const FILLS = ["#0072b2", "#009e73", "#e69f00", "#f0e442"] as const;

/** Black, sky blue, reddish purple and vermillion: for what stands beside the bars above. */
export const OTHER_FILLS = ["#56b4e9", "#d55e00", "#cc79a7", "#000000"] as const;

/** 7 pt is 2.469 mm; no text is smaller than this. */
export const SMALL_TEXT = 2.5;
export const TEXT = 2.8;
export const PANEL_TITLE = 3.2;
export const TITLE = 5;

export const HAIRLINE = 0.12;
export const MARK_LINE = 0.45;
