import { LONGEST_LENGTH, type Ticks } from "@sheetwright/measure";
import { signedAreaOf } from "../measure/area.js";
import { boxOf } from "../measure/box.js";
import { quarterTurned } from "../outline/move.js";
import type { Outline } from "../outline/outline.js";
import { type Border, leastBorder, mostBorder } from "./border.js";
import { type Die, outlineOfDie } from "./die.js";

/** A border that misses by no more than this shows what is wanted: both outlines may be two ticks off their ideal shapes. */
const SAME_BORDER: Ticks = 4;

/** A die under an outline. */
export interface DieUnder {
  readonly die: Die;
  /** Whether it lies a quarter turn round from how it is listed. */
  readonly isTurned: boolean;
  /** The border that it really gives. */
  readonly border: Border;
}

/** Which die of a list goes under an outline. */
export interface NextUp {
  /** The smallest that shows the border; `null` if none does. */
  readonly next: DieUnder | null;
  /** The one that comes nearest to it if none shows it: that with the widest least border. Else `null`. */
  readonly nearest: DieUnder | null;
  /** How much the nearest one lacks: it would need twice as much more across. 0 where one was found. */
  readonly missing: Ticks;
}

interface Candidate {
  readonly die: Die;
  readonly outline: Outline;
  readonly isTurned: boolean;
}

/**
 * The smallest die of a list that shows at least a border all round an outline that is glued on it, middle of box on middle
 * of box. Dies of all shapes are compared, by their real lines; of several the one that takes the least paper, of equal
 * ones the first. A die that is wide may be turned to be high. The border may be up to four ticks (0.0025 mm) short, as
 * far as outlines are exact.
 *
 * Throws a RangeError for a reveal that is no whole number of ticks from 0 to 10 m, and a ShapeError where a shape of the
 * list makes no sense.
 *
 * @example
 * const set = dieSet({ shape: "circle", diameter: 40640 }, { from: 40640, to: 121920 });
 * const disc = outlineOf({ shape: "circle", diameter: 81280 });
 * nextUp(disc, 5080, set).next // => { die: set[5], isTurned: false, border: { least: 5080, most: 5080 } }
 * nextUp(disc, 40640, set).missing // => 20320
 */
export function nextUp(outline: Outline, reveal: Ticks, dies: readonly Die[]): NextUp {
  if (!(Number.isInteger(reveal) && reveal >= 0 && reveal <= LONGEST_LENGTH)) {
    throw new RangeError(
      `The border that is to show: expected a whole number of ticks up to 10 m, found ${String(reveal)}.`,
    );
  }
  const candidates = dies.flatMap(waysToLay);
  const areas = new Map(candidates.map((candidate) => [candidate, signedAreaOf(candidate.outline.outer)]));
  const sorted = [...candidates].sort((a, b) => (areas.get(a) as number) - (areas.get(b) as number));
  const box = boxOf(outline);
  for (const candidate of sorted) {
    const under = boxOf(candidate.outline);
    // No border is wider than the boxes leave.
    const room = Math.min(under.width - box.width, under.height - box.height) + 2 * SAME_BORDER;
    if (room < 2 * reveal) continue;
    const least = leastBorder(outline, candidate.outline);
    if (least + SAME_BORDER >= reveal)
      return { next: dieUnder(outline, candidate, least), nearest: null, missing: 0 };
  }
  let nearest: Candidate | null = null;
  let widest = Number.NEGATIVE_INFINITY;
  for (const candidate of candidates) {
    const least = leastBorder(outline, candidate.outline);
    if (least > widest) {
      nearest = candidate;
      widest = least;
    }
  }
  if (nearest === null) return { next: null, nearest: null, missing: reveal };
  return { next: null, nearest: dieUnder(outline, nearest, widest), missing: reveal - widest };
}

/** As it is listed, and turned where that makes a difference to its box. */
function waysToLay(die: Die): readonly Candidate[] {
  const outline = outlineOfDie(die);
  const { width, height } = boxOf(outline);
  const listed = { die, outline, isTurned: false };
  return width === height ? [listed] : [listed, { die, outline: quarterTurned(outline, 1), isTurned: true }];
}

function dieUnder(upper: Outline, { die, outline, isTurned }: Candidate, least: Ticks): DieUnder {
  return { die, isTurned, border: { least, most: mostBorder(upper, outline) } };
}
