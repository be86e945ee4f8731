/** Colours drawn from that of a paper: edges that show on their own paper, marks of a pattern, ink that can be read. */

import { INK, PAPER } from "../drawing/look.js";

type Rgb = readonly [red: number, green: number, blue: number];

const BLACK = "#000000";

/** Mixes two colours `#rrggbb`: `share` of 256 parts of the second. */
export function mixColours(first: string, second: string, share: number): string {
  const a = rgbOf(first);
  const b = rgbOf(second);
  return hexOf([0, 1, 2].map((i) => Math.round(((a[i] ?? 0) * (256 - share) + (b[i] ?? 0) * share) / 256)));
}

/** The line round a layer: darker than a light paper, lighter than a dark one, so that it shows on its own kind. */
export function edgeColour(paper: string): string {
  return isDark(paper) ? mixColours(paper, PAPER, 104) : mixColours(paper, INK, 110);
}

/** The thicker line on the lower and right edge of a layer, which lifts it off what it lies on. */
export function shadeColour(paper: string): string {
  return isDark(paper) ? mixColours(paper, PAPER, 46) : mixColours(paper, INK, 44);
}

/** The marks of a paper's pattern: near its own colour. */
export function markColour(paper: string): string {
  return isDark(paper) ? mixColours(paper, PAPER, 84) : mixColours(paper, INK, 74);
}

/** The grains of glitter, which catch the light. */
export function glitterColour(paper: string): string {
  return mixColours(paper, PAPER, isDark(paper) ? 110 : 150);
}

/** Ink for words on a paper: dark on light paper, white on dark, and always the better to read. */
export function inkOn(paper: string): string {
  const light = lightnessOf(paper);
  const [best = BLACK] = [INK, PAPER, BLACK].sort(
    (a, b) => contrastOf(lightnessOf(b), light) - contrastOf(lightnessOf(a), light),
  );
  // Black beats the ink of the page on any paper, but the softer colour is kept where it reads well.
  return best === BLACK && contrastOf(lightnessOf(INK), light) >= 6 ? INK : best;
}

function isDark(paper: string): boolean {
  return lightnessOf(paper) < 0.23;
}

/**
 * Relative luminance (WCAG 2.2), with its power of 2.4 taken by square roots, so that it is the same on every machine:
 * x * x * x^(1/4) * x^(1/8) * x^(1/64) * x^(1/128) is x to the power of 2.398.
 */
function lightnessOf(colour: string): number {
  const [red, green, blue] = rgbOf(colour).map((value) => {
    const share = value / 255;
    if (share <= 0.04045) return share / 12.92;
    const x = (share + 0.055) / 1.055;
    const eighth = Math.sqrt(Math.sqrt(Math.sqrt(x)));
    const sixtyFourth = Math.sqrt(Math.sqrt(Math.sqrt(eighth)));
    return x * x * eighth * eighth * eighth * sixtyFourth * Math.sqrt(sixtyFourth);
  });
  return 0.2126 * (red ?? 0) + 0.7152 * (green ?? 0) + 0.0722 * (blue ?? 0);
}

function contrastOf(a: number, b: number): number {
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

function rgbOf(colour: string): Rgb {
  const [, red, green, blue] = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(colour) ?? [];
  if (red === undefined || green === undefined || blue === undefined) {
    throw new RangeError(`Expected a colour as #rrggbb, found ${JSON.stringify(colour)}.`);
  }
  return [Number.parseInt(red, 16), Number.parseInt(green, 16), Number.parseInt(blue, 16)];
}

function hexOf(rgb: readonly number[]): string {
  return `#${rgb.map((value) => value.toString(16).padStart(2, "0")).join("")}`;
}
