import { breakLines, spaced } from "../text/break-lines.js";
import { ascentOf, fitsWidth, lineHeightOf, OVERHANG, textWidth } from "../text/text-width.js";
import type { Box } from "./box.js";
import { SMALLEST_TEXT } from "./look.js";

/** What there is to say about a place, most important first. */
export interface LabelText {
  /** The name in the parts between which a line may break. */
  readonly words: readonly string[];
  /** Whether a name that is too long may end in an ellipsis; otherwise the number stands for it. */
  readonly mayShorten: boolean;
  /** The size in words, or `null`. */
  readonly size: string | null;
  /** What stands for the name where it does not fit, or `null`. */
  readonly number: string | null;
}

/** A line of a label; `down` leads from the label's centre to its baseline, across the reading direction. */
export interface LabelLine {
  readonly text: string;
  readonly down: number;
  readonly size: number;
  readonly role: "name" | "size" | "number";
}

/** A label in its place, all lines centred on one point. */
export interface FittedLabel {
  readonly lines: readonly LabelLine[];
  readonly x: number;
  readonly y: number;
  /** True where it reads from bottom to top: the same label turned a quarter about its centre. */
  readonly upwards: boolean;
  /** What the label takes up at most, inside the box it was fitted to. */
  readonly box: Box;
  /** `number`: only the number stands there. `short`: the number and a shortened name. */
  readonly shows: "all" | "name" | "short" | "number";
}

type Part = Pick<LabelLine, "text" | "size" | "role">;

/** Text of names, largest first, and of the size under it. */
const NAME_SIZES = [
  { name: 4.2, under: 3.3 },
  { name: 3.3, under: 2.7 },
  { name: 2.8, under: SMALLEST_TEXT },
] as const;
const NUMBER_SIZES = [3.3, 2.8, SMALLEST_TEXT] as const;
const MOST_NAME_LINES = 3;
/** From a baseline to the next: a share of the size above it and one of the size below. */
const UNDER_LINE = 0.32;
const OVER_LINE = 0.95;
/** White space kept between a label and the lines round it: along and across its reading direction. */
interface Margin {
  readonly along: number;
  readonly across: number;
}
const MARGIN: Margin = { along: 1.4, across: 1.2 };
const SMALL_MARGIN: Margin = { along: OVERHANG, across: 0.2 };

/**
 * Fits a label into a box (millimetres): the largest text that holds name and size, read straight before upwards; then
 * the smallest text; then a shortened name behind its number; the name alone; the number alone. Gives `null` where not
 * even the number fits. Judged by the widest usual fonts, so the label stays inside the box on any machine.
 */
export function fitLabel(box: Box, text: LabelText): FittedLabel | null {
  const straight = sidesOf(box, false);
  const upwards = box.height > box.width ? sidesOf(box, true) : null;
  const ways = upwards === null ? [straight] : [straight, upwards];

  for (const way of ways) {
    for (const { name, under } of NAME_SIZES) {
      const parts = wholeLabel(way, text, name, under);
      if (parts !== null) return place(box, parts, way.upwards, "all");
    }
  }
  for (const way of ways) {
    const parts = wholeLabel(way, text, SMALLEST_TEXT, SMALLEST_TEXT);
    if (parts !== null) return place(box, parts, way.upwards, "all");
  }
  for (const way of ways) {
    const parts = shortLabel(way, text);
    if (parts !== null) return place(box, parts, way.upwards, "short");
  }
  for (const way of ways) {
    const parts = nameAlone(way, text);
    if (parts !== null) return place(box, parts, way.upwards, "name");
  }
  return text.number === null ? null : fitNumber(box, text.number);
}

/** Fits the number alone, or gives `null` where it does not fit. */
export function fitNumber(box: Box, number: string): FittedLabel | null {
  const ways = box.height > box.width ? [sidesOf(box, false), sidesOf(box, true)] : [sidesOf(box, false)];
  for (const size of NUMBER_SIZES) {
    for (const way of ways) {
      const parts: readonly Part[] = [{ text: number, size, role: "number" }];
      if (fits(parts, way, SMALL_MARGIN)) return place(box, parts, way.upwards, "number");
    }
  }
  return null;
}

/** One line of text about a point, as a label that is in its place already. */
export function textAbout(x: number, y: number, text: string, size: number, upwards: boolean): FittedLabel {
  return place({ x, y, width: 0, height: 0 }, [{ text, size, role: "size" }], upwards, "all");
}

/** The room for text: `along` the reading direction, and `across` it. */
interface Way {
  readonly along: number;
  readonly across: number;
  readonly upwards: boolean;
}

function sidesOf(box: Box, upwards: boolean): Way {
  return upwards
    ? { along: box.height, across: box.width, upwards }
    : { along: box.width, across: box.height, upwards };
}

function marginFor(size: number): Margin {
  return size > SMALLEST_TEXT ? MARGIN : SMALL_MARGIN;
}

function fits(parts: readonly Part[], way: Way, margin: Margin): boolean {
  const height = baselinesOf(parts).height;
  return (
    height <= way.across - 2 * margin.across &&
    parts.every(({ text, size }) => textWidth(text, size) <= way.along - 2 * margin.along)
  );
}

function wholeLabel(way: Way, text: LabelText, size: number, under: number): readonly Part[] | null {
  const margin = marginFor(size);
  const along = way.along - 2 * margin.along;
  const below: readonly Part[] = text.size === null ? [] : [{ text: text.size, size: under, role: "size" }];
  for (let lines = 1; lines <= MOST_NAME_LINES; lines += 1) {
    const name = breakLines(text.words, { fits: fitsWidth(along, size), lines, overflow: "refuse" });
    if (name === null) continue;
    const parts = [...name.map((line) => ({ text: line, size, role: "name" }) as const), ...below];
    if (fits(parts, way, margin)) return parts;
  }
  // A flat strip may have room for both beside each other only.
  if (text.size === null) return null;
  const inline: readonly Part[] = [
    { text: `${spaced(text.words.join(" "))}, ${text.size}`, size, role: "name" },
  ];
  return fits(inline, way, margin) ? inline : null;
}

function shortLabel(way: Way, text: LabelText): readonly Part[] | null {
  if (!text.mayShorten || text.number === null) return null;
  const size = SMALLEST_TEXT;
  const below: readonly Part[] = text.size === null ? [] : [{ text: text.size, size, role: "size" }];
  const words = [text.number, ...text.words];
  for (let lines = 1; lines <= MOST_NAME_LINES; lines += 1) {
    const width = way.along - 2 * SMALL_MARGIN.along;
    const name = breakLines(words, { fits: fitsWidth(width, size), lines, overflow: "shorten" });
    // A few letters of a name help nobody.
    if (name === null || name.join("").length < text.number.length + 7) continue;
    const parts = [...name.map((line) => ({ text: line, size, role: "name" }) as const), ...below];
    if (fits(parts, way, SMALL_MARGIN)) return parts;
  }
  return null;
}

function nameAlone(way: Way, text: LabelText): readonly Part[] | null {
  return wholeLabel(way, { ...text, size: null }, SMALLEST_TEXT, SMALLEST_TEXT);
}

/** Baselines from the top of the lines on. Lines of one label may stand closer than boxes of lines that are apart. */
function baselinesOf(parts: readonly Part[]): {
  readonly baselines: readonly number[];
  readonly height: number;
} {
  const baselines: number[] = [];
  let bottom = 0;
  parts.forEach(({ size, text }, i) => {
    const before = parts[i - 1];
    const last = baselines.at(-1);
    const baseline =
      before === undefined || last === undefined
        ? ascentOf(size, text)
        : last + UNDER_LINE * before.size + OVER_LINE * size;
    baselines.push(baseline);
    bottom = Math.max(bottom, baseline + lineHeightOf(size, text) - ascentOf(size, text));
  });
  return { baselines, height: bottom };
}

function place(box: Box, parts: readonly Part[], upwards: boolean, shows: FittedLabel["shows"]): FittedLabel {
  const along =
    parts.reduce((widest, { text, size }) => Math.max(widest, textWidth(text, size)), 0) + 2 * OVERHANG;
  const { baselines, height: across } = baselinesOf(parts);
  const x = box.x + box.width / 2;
  const y = box.y + box.height / 2;
  const width = upwards ? across : along;
  const height = upwards ? along : across;
  return {
    lines: parts.map((part, i) => ({ ...part, down: (baselines[i] ?? 0) - across / 2 })),
    x,
    y,
    upwards,
    box: { x: x - width / 2, y: y - height / 2, width, height },
    shows,
  };
}
