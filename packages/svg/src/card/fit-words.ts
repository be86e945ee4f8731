import type { Box } from "../drawing/box.js";
import type { FittedLabel } from "../drawing/fit-label.js";
import { SMALLEST_TEXT } from "../drawing/look.js";
import { breakLines } from "../text/break-lines.js";
import { ascentOf, fitsWidth, lineHeightOf, OVERHANG, textWidth } from "../text/text-width.js";

/** White space left and right of the words, which also leaves room for the end of a leader. */
const BESIDE = 4.2;
const LARGEST = 9;
/** Letters on one line are no larger than this share of the strip's height. */
const SHARE = 0.5;
const STEP = 0.1;
const MOST_LINES = 4;

/**
 * Fits the words of a sentiment into its strip (millimetres): as large as they go, on the lines that allow the largest
 * letters, upwards on an upright strip where they come out larger so. Gives `null` where they do not go in legibly.
 */
export function fitWords(box: Box, words: string): FittedLabel | null {
  const straight = largest(box.width, box.height, words);
  const upwards = box.height > box.width ? largest(box.height, box.width, words) : null;
  const turned = upwards !== null && (straight === null || upwards.size > 1.6 * straight.size);
  const fitted = turned ? upwards : straight;
  if (fitted === null) return null;

  const { size, lines } = fitted;
  const height = lines.reduce((sum, line) => sum + lineHeightOf(size, line), 0);
  const width = lines.reduce((most, line) => Math.max(most, textWidth(line, size)), 0) + 2 * OVERHANG;
  const x = box.x + box.width / 2;
  const y = box.y + box.height / 2;
  let top = -height / 2;
  // The box of a line has more room over the letters than under them; the eye wants the letters in the middle.
  const lift = lines.length === 1 ? ascentOf(size) - height / 2 - 0.36 * size : 0;
  const placed = lines.map((text) => {
    const down = top + ascentOf(size, text) - lift;
    top += lineHeightOf(size, text);
    return { text, down, size, role: "name" as const };
  });
  const [across, along] = turned ? [height, width] : [width, height];
  return {
    lines: placed,
    x,
    y,
    upwards: turned,
    box: { x: x - across / 2, y: y - along / 2, width: across, height: along },
    shows: "all",
  };
}

interface Fitted {
  readonly size: number;
  readonly lines: readonly string[];
}

function largest(along: number, across: number, words: string): Fitted | null {
  const width = along - 2 * BESIDE;
  for (
    let step = Math.floor(Math.min(LARGEST, SHARE * across) / STEP);
    step * STEP >= SMALLEST_TEXT;
    step -= 1
  ) {
    const size = step * STEP;
    const lines = breakLines(words.split(" "), {
      fits: fitsWidth(width, size),
      lines: MOST_LINES,
      overflow: "refuse",
    });
    if (lines === null) continue;
    const height = lines.reduce((sum, line) => sum + lineHeightOf(size, line), 0);
    if (height <= 0.92 * across) return { size, lines };
  }
  return null;
}
