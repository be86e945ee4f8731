/** What cut numbers and their leaders must keep clear of, and tests for it. */

import { type Box, boxesOverlap, segmentCrossesBox } from "./box.js";
import { type CutLine, type CutNumber, isLevel, type Point } from "./cut-number.js";

/** Badge to badge, badge to label, and badge to the sheet's edge. */
export const GAP = 0.35;
/** The price of a leader through a label, another leader, or a badge: more than any leader is long. */
const LABEL_CROSSED = 100_000;
export const LEADER_MET = 30_000;
const BADGE_CROSSED = 400_000;
/** Leaders nearer than this seem to be one. */
const LEADER_GAP = 0.4;

export type Segment = readonly [x1: number, y1: number, x2: number, y2: number];

/** A cut with its box, which is looked at over and over. */
export interface Line {
  readonly cut: CutLine;
  readonly box: Box;
}

/** What lies on a sheet that is numbered, in millimetres from its top left corner. */
export interface NumberedSheet {
  readonly width: number;
  readonly height: number;
  readonly cuts: readonly CutLine[];
  /** Boxes that stay uncovered. */
  readonly labels: readonly Box[];
  /** Where a number beside its cut is better not put, since it would seem to belong there. */
  readonly pieces: readonly Box[];
}

/** All that a badge must keep clear of; `badges` and `leaders` grow. */
export interface Surroundings {
  readonly sheet: NumberedSheet;
  readonly lines: readonly Line[];
  readonly labels: readonly Box[];
  readonly badges: Box[];
  readonly leaders: Segment[];
}

/** The surroundings within a distance of a cut. */
export function nearby(
  { box }: Line,
  distance: number,
  { sheet, lines, labels, badges, leaders }: Surroundings,
): Surroundings {
  const isNear = (other: Box) => boxesOverlap(box, other, distance);
  return {
    sheet: { ...sheet, pieces: sheet.pieces.filter(isNear) },
    lines: lines.filter((line) => isNear(line.box)),
    labels: labels.filter(isNear),
    badges: badges.filter(isNear),
    leaders: leaders.filter(([x1, y1, x2, y2]) =>
      isNear({
        x: Math.min(x1, x2),
        y: Math.min(y1, y2),
        width: Math.abs(x2 - x1),
        height: Math.abs(y2 - y1),
      }),
    ),
  };
}

export function segmentsOf({ leader }: CutNumber): readonly Segment[] {
  return leader.slice(1).map(([x, y], i) => [...(leader[i] as Point), x, y] as const);
}

/** Whether a badge lies on the sheet, clear of its edges. */
export function isInside(box: Box, sheet: Surroundings["sheet"]): boolean {
  return (
    box.x >= GAP &&
    box.y >= GAP &&
    box.x + box.width <= sheet.width - GAP &&
    box.y + box.height <= sheet.height - GAP
  );
}

/** Whether a badge or leader is there already. */
export function isTaken(box: Box, { badges, leaders }: Surroundings): boolean {
  return (
    badges.some((other) => boxesOverlap(box, other, GAP)) ||
    leaders.some((leader) => segmentCrossesBox(...leader, box))
  );
}

/** Whether a badge would cover a label. */
export function coversLabel(box: Box, { labels }: Surroundings): boolean {
  return labels.some((label) => boxesOverlap(box, label, GAP));
}

/** A price on every label, badge and other leader that a straight leader meets. */
export function obstacleCost(
  [[x1, y1], [x2, y2]]: readonly [from: Point, to: Point],
  { labels, badges, leaders }: Surroundings,
): number {
  let cost = 0;
  for (const other of leaders) if (leadersMeet(x1, y1, x2, y2, other)) cost += LEADER_MET;
  for (const label of labels) if (segmentCrossesBox(x1, y1, x2, y2, label)) cost += LABEL_CROSSED;
  for (const other of badges) if (segmentCrossesBox(x1, y1, x2, y2, other)) cost += BADGE_CROSSED;
  return cost;
}

/** Whether the boxes round two leaders overlap: exact for level and upright ones, which nearly all are. */
function leadersMeet(x1: number, y1: number, x2: number, y2: number, [a1, b1, a2, b2]: Segment): boolean {
  return (
    Math.min(x1, x2) - LEADER_GAP < Math.max(a1, a2) &&
    Math.min(a1, a2) - LEADER_GAP < Math.max(x1, x2) &&
    Math.min(y1, y2) - LEADER_GAP < Math.max(b1, b2) &&
    Math.min(b1, b2) - LEADER_GAP < Math.max(y1, y2)
  );
}

/** Whether a leader passes over a cut; touching it with an end does not count. */
export function leaderCrosses(
  [x1, y1]: Point,
  [x2, y2]: Point,
  { cut, box: { x, y, width, height } }: Line,
): boolean {
  const level = isLevel(cut);
  const [before, after] = level ? [y1 - y, y2 - y] : [x1 - x, x2 - x];
  if (before * after >= 0) return false;
  const share = before / (before - after);
  const at = level ? x1 + (x2 - x1) * share - x : y1 + (y2 - y1) * share - y;
  return at >= 0 && at <= (level ? width : height);
}

/** Whether a leader lies on a cut for some of its length, and so seems to belong to it. */
export function leaderRunsAlong(
  [x1, y1]: Point,
  [x2, y2]: Point,
  { cut, box: { x, y, width, height } }: Line,
): boolean {
  return isLevel(cut)
    ? y1 === y && y2 === y && Math.min(x1, x2) < x + width && x < Math.max(x1, x2)
    : x1 === x && x2 === x && Math.min(y1, y2) < y + height && y < Math.max(y1, y2);
}
