/** What is told of the sheet as a whole: arrows and words that stand beside it and below it. */

import type { SheetMarks } from "@sheetwright/planner";
import { ascentOf, lineHeightOf, textWidth } from "../text/text-width.js";
import { formatNumber } from "../writer/format-number.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import { arrowHeadPath } from "./draw-score.js";
import { OUTLINE, QUIET } from "./look.js";
import { textElement } from "./text-element.js";

/** An arrow whose word stands in the middle of its shaft. */
interface Arrow {
  readonly id: string;
  readonly word: string;
  /** Whether the start has a head too. */
  readonly double: boolean;
}

/** What stands where; nothing where the sheet has no marks. */
export interface SheetArrows {
  /** Arrows that run upwards, beside the sheet from the bottom up. */
  readonly beside: readonly Arrow[];
  /** The arrow that runs to the right below the sheet, or words. */
  readonly below: Arrow | string | null;
}

const TEXT = 2.8;
const SHAFT = 8;
const AIR = 1.4;
const HEAD = 2;
const HALF_HEAD = 0.75;
/** From an arrow to the next. */
const BETWEEN = 6;

/** What an arrow takes across its direction. */
export const ARROW_BREADTH = lineHeightOf(TEXT);

/**
 * Chooses the arrows of a sheet that lies with its pattern upright. That the grain is not known, or not there, is said only
 * where something is folded.
 */
export function sheetArrows(marks: SheetMarks | null, isFolded: boolean): SheetArrows {
  if (marks === null) return { beside: [], below: null };
  const { grain, pattern, grainIsAssumed = false } = marks;
  const grainArrow: Arrow = { id: "grain", word: grainIsAssumed ? "grain (assumed)" : "grain", double: true };
  const patternArrows: Readonly<Record<SheetMarks["pattern"], readonly Arrow[]>> = {
    none: [],
    "two-way": [{ id: "pattern", word: "pattern", double: true }],
    "one-way": [{ id: "pattern", word: "pattern up", double: false }],
  };
  const words: Readonly<Record<SheetMarks["grain"], SheetArrows["below"]>> = {
    width: grainArrow,
    height: null,
    unknown: isFolded ? "grain unknown: bend test" : null,
    none: isFolded ? "paper without grain" : null,
  };
  return {
    beside: [...(grain === "height" ? [grainArrow] : []), ...patternArrows[pattern]],
    below: words[grain],
  };
}

/** How long arrows one after another are. */
export function lengthOfArrows(arrows: readonly Arrow[]): number {
  return arrows.reduce((sum, arrow, i) => sum + arrowLength(arrow) + (i === 0 ? 0 : BETWEEN), 0);
}

/** How long what stands below the sheet is. */
export function lengthOfBelow(below: SheetArrows["below"]): number {
  if (below === null) return 0;
  return typeof below === "string" ? textWidth(below, TEXT) : arrowLength(below);
}

/** Draws arrows that run upwards from the bottom, centred on x. */
export function drawBeside(arrows: readonly Arrow[], x: number, bottom: number): readonly SvgElement[] {
  let at = bottom;
  return arrows.map((arrow) => {
    const length = arrowLength(arrow);
    const drawn = drawArrow(arrow, x, at, 0, -1);
    at -= length + BETWEEN;
    return drawn;
  });
}

/** Draws what stands below the sheet, from its left end on, centred on y. */
export function drawBelow(below: SheetArrows["below"], x: number, y: number): readonly SvgElement[] {
  if (below === null) return [];
  if (typeof below !== "string") return [drawArrow(below, x, y, 1, 0)];
  const text = textElement({ text: below, x, y: y + baseline(below), size: TEXT, colour: QUIET });
  return [element("g", { id: "grain" }, [text])];
}

function arrowLength({ word }: Arrow): number {
  return 2 * (SHAFT + AIR) + textWidth(word, TEXT);
}

/** From the middle of a line of text to its baseline. */
function baseline(text: string): number {
  return ascentOf(TEXT, text) - lineHeightOf(TEXT, text) / 2;
}

function drawArrow(arrow: Arrow, x: number, y: number, alongX: number, alongY: number): SvgElement {
  const length = arrowLength(arrow);
  const point = (at: number) => [x + alongX * at, y + alongY * at] as const;
  const shaft = (from: number, to: number) => {
    const [[x1, y1], [x2, y2]] = [point(from), point(to)];
    return element("line", { x1, y1, x2, y2, stroke: QUIET, "stroke-width": 1.4 * OUTLINE });
  };
  const head = (at: number, towards: number) => {
    const [tipX, tipY] = point(at);
    const d = arrowHeadPath(tipX, tipY, alongX * towards, alongY * towards, HEAD, HALF_HEAD);
    return element("path", { d, fill: QUIET });
  };
  const [cx, cy] = point(length / 2);
  return element("g", { id: arrow.id }, [
    shaft(arrow.double ? HEAD / 2 : 0, SHAFT),
    shaft(length - SHAFT, length - HEAD / 2),
    ...(arrow.double ? [head(0, -1)] : []),
    head(length, 1),
    element(
      "text",
      {
        x: cx,
        y: cy + baseline(arrow.word),
        "font-size": TEXT,
        fill: QUIET,
        "text-anchor": "middle",
        transform: alongY === 0 ? undefined : `rotate(-90 ${formatNumber(cx)} ${formatNumber(cy)})`,
      },
      [arrow.word],
    ),
  ]);
}
