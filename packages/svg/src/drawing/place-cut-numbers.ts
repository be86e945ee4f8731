/**
 * Finds a place for the number of each cut: on its own line where that is free, else just beyond the sheet where the
 * line ends there, else close by at the end of a leader, and as the last resort outside the sheet at a longer one.
 *
 * A number may not cover a label, another number, or leave it unclear which line it belongs to, so it keeps clear of
 * every line but its own. Short cuts have the least choice and are placed first. A greedy search over a fixed list of
 * places: O(cuts x places x obstacles), and always the same answer.
 */

import { type Box, boxesOverlap, segmentCrossesBox } from "./box.js";
import {
  badgeBox,
  type CutLine,
  type CutNumber,
  HALF_HEIGHT,
  halfWidthOf,
  isLevel,
  lengthOf,
  lineBox,
  type Point,
} from "./cut-number.js";

/** Badge to badge, badge to label, and badge to the sheet's edge. */
const GAP = 0.35;
/** Badge to the next line that is not its own. */
const LINE_GAP = 0.5;
const STEP = 1;
/** The longest leader inside the sheet, and what it costs, in millimetres of length, to cross another cut. */
const FARTHEST = 24;
const LINE_CROSSED = 8;
/** The price of a leader through a label, and through a badge: more than any leader is long. */
const LABEL_CROSSED = 100_000;
const BADGE_CROSSED = 400_000;
/** From the sheet's edge to the nearest badges outside. */
const OUTSIDE = 1.6;
const DIAGONAL = Math.sqrt(0.5);
const DIRECTIONS: readonly Point[] = [
  [0, 1],
  [1, 0],
  [0, -1],
  [-1, 0],
  [DIAGONAL, DIAGONAL],
  [DIAGONAL, -DIAGONAL],
  [-DIAGONAL, DIAGONAL],
  [-DIAGONAL, -DIAGONAL],
];

type Segment = readonly [x1: number, y1: number, x2: number, y2: number];

/** A cut with its box, which is looked at over and over. */
interface Line {
  readonly cut: CutLine;
  readonly box: Box;
}

/** All that a badge must keep clear of; `badges` and `leaders` grow. */
interface Surroundings {
  readonly sheet: { readonly width: number; readonly height: number };
  readonly lines: readonly Line[];
  readonly labels: readonly Box[];
  readonly badges: Box[];
  readonly leaders: Segment[];
}

/** Places the numbers of all cuts, in the order given. `labels` are boxes that stay uncovered. */
export function placeCutNumbers(
  cuts: readonly CutLine[],
  labels: readonly Box[],
  sheet: { readonly width: number; readonly height: number },
): readonly CutNumber[] {
  const lines = cuts.map((cut) => ({ cut, box: lineBox(cut) }));
  const around: Surroundings = { sheet, lines, labels, badges: [], leaders: [] };
  const byRoom = lines
    .map((line, index) => ({ line, index, length: lengthOf(line.cut) }))
    .sort((a, b) => a.length - b.length || a.index - b.index);

  const result = new Array<CutNumber>(cuts.length);
  for (const { line, index } of byRoom) {
    const found =
      onLine(line, around) ?? beyondEnd(line, around) ?? closeBy(line, around) ?? outside(line, around);
    around.badges.push(badgeBox(found));
    around.leaders.push(...segmentsOf(found));
    result[index] = found;
  }
  return result;
}

function segmentsOf({ leader }: CutNumber): readonly Segment[] {
  return leader.slice(1).map(([x, y], i) => [...(leader[i] as Point), x, y] as const);
}

function isInside(box: Box, sheet: Surroundings["sheet"]): boolean {
  return (
    box.x >= GAP &&
    box.y >= GAP &&
    box.x + box.width <= sheet.width - GAP &&
    box.y + box.height <= sheet.height - GAP
  );
}

function isTaken(box: Box, { badges, leaders }: Surroundings): boolean {
  return (
    badges.some((other) => boxesOverlap(box, other, GAP)) ||
    leaders.some((leader) => segmentCrossesBox(...leader, box))
  );
}

function coversLabel(box: Box, { labels }: Surroundings): boolean {
  return labels.some((label) => boxesOverlap(box, label, GAP));
}

/** Walks along the line from its start. */
function onLine({ cut, box: { x, y } }: Line, around: Surroundings): CutNumber | null {
  const level = isLevel(cut);
  const half = level ? halfWidthOf(cut.number) : HALF_HEIGHT;
  const others = around.lines.filter((other) => other.cut !== cut && !onSameLine(other.cut, cut));
  for (let at = half + 2; at <= lengthOf(cut) - half - 0.6; at += STEP) {
    const badge: CutNumber = {
      number: cut.number,
      x: level ? x + at : x,
      y: level ? y : y + at,
      leader: [],
    };
    const box = badgeBox(badge);
    if (!isInside(box, around.sheet) || coversLabel(box, around) || isTaken(box, around)) continue;
    if (others.some((other) => boxesOverlap(box, other.box, LINE_GAP))) continue;
    return badge;
  }
  return null;
}

/** Cuts end to end on one line, such as those of strips beside each other, do not hide each other. */
function onSameLine(a: CutLine, b: CutLine): boolean {
  return isLevel(a) === isLevel(b) && (isLevel(a) ? a.y1 === b.y1 : a.x1 === b.x1);
}

/** Where the cut runs out over the sheet's edge, just beyond that end. */
function beyondEnd({ cut, box }: Line, around: Surroundings): CutNumber | null {
  const { width, height } = around.sheet;
  const { x, y, width: along, height: down } = box;
  const out = OUTSIDE + (isLevel(cut) ? halfWidthOf(cut.number) : HALF_HEIGHT);
  const ends: readonly { readonly reached: boolean; readonly end: Point; readonly to: Point }[] = isLevel(cut)
    ? [
        { reached: x === 0, end: [0, y], to: [-out, y] },
        { reached: x + along === width, end: [width, y], to: [width + out, y] },
      ]
    : [
        { reached: y === 0, end: [x, 0], to: [x, -out] },
        { reached: y + down === height, end: [x, height], to: [x, height + out] },
      ];
  for (const { reached, end, to } of ends) {
    const badge: CutNumber = { number: cut.number, x: to[0], y: to[1], leader: [end, to] };
    if (reached && !isTaken(badgeBox(badge), around)) return badge;
  }
  return null;
}

/** Off the line, but inside the sheet and clear of everything, at the end of a leader as short as can be. */
function closeBy({ cut }: Line, around: Surroundings): CutNumber | null {
  const half = halfWidthOf(cut.number);
  const others = around.lines.filter((line) => line.cut !== cut);
  // Each way out is followed until it leaves the sheet or its leader is in the way of something.
  let ways = pointsAlong(cut).flatMap((from) => DIRECTIONS.map((direction) => ({ from, direction })));
  let best: { readonly cost: number; readonly badge: CutNumber } | null = null;
  for (let distance = HALF_HEIGHT + STEP; distance <= FARTHEST; distance += STEP) {
    if (best !== null && best.cost <= distance) break;
    const open: typeof ways = [];
    for (const way of ways) {
      const { from, direction } = way;
      const x = from[0] + direction[0] * distance;
      const y = from[1] + direction[1] * distance;
      const box = { x: x - half, y: y - HALF_HEIGHT, width: 2 * half, height: 2 * HALF_HEIGHT };
      if (!isInside(box, around.sheet)) continue;
      const taken =
        coversLabel(box, around) ||
        isTaken(box, around) ||
        around.lines.some((line) => boxesOverlap(box, line.box, LINE_GAP));
      if (!taken) {
        const to: Point = [x, y];
        const badge: CutNumber = { number: cut.number, x, y, leader: [from, to] };
        if (obstacleCost(badge, around) > 0 || others.some((line) => leaderRunsAlong(from, to, line)))
          continue;
        const cost = distance + LINE_CROSSED * others.filter((line) => leaderCrosses(from, to, line)).length;
        if (best === null || cost < best.cost) best = { cost, badge };
      }
      open.push(way);
    }
    ways = open;
  }
  return best?.badge ?? null;
}

/** A leader square to the cut to an edge of the sheet, bent outside where the place there is taken. */
function outside({ cut }: Line, around: Surroundings): CutNumber {
  const { width, height } = around.sheet;
  const half = halfWidthOf(cut.number);
  let best: { readonly cost: number; readonly badge: CutNumber } | null = null;
  // Each ring round the sheet holds as many badges as fit side by side, so some ring always has a free place.
  for (let ring = 0; best === null || ring < 2; ring += 1) {
    const out = OUTSIDE + half + ring * (2 * half + 2 * GAP);
    for (const [x, y] of pointsAlong(cut)) {
      for (let shift = -4; shift <= 4; shift += 1) {
        const by = shift * (half + GAP / 2);
        // Square to the cut, so that no leader runs along another cut on the same line.
        const ways: readonly (readonly [edge: Point, to: Point])[] = isLevel(cut)
          ? [
              [
                [x, 0],
                [x + by, -out],
              ],
              [
                [x, height],
                [x + by, height + out],
              ],
            ]
          : [
              [
                [0, y],
                [-out, y + by],
              ],
              [
                [width, y],
                [width + out, y + by],
              ],
            ];
        for (const [edge, to] of ways) {
          const length = Math.abs(edge[0] - x) + Math.abs(edge[1] - y) + 2 * Math.abs(by) + 25 * ring;
          if (best !== null && length >= best.cost) continue;
          const badge: CutNumber = { number: cut.number, x: to[0], y: to[1], leader: [[x, y], edge, to] };
          if (isTaken(badgeBox(badge), around)) continue;
          const cost = length + obstacleCost(badge, around);
          if (best === null || cost < best.cost) best = { cost, badge };
        }
      }
    }
  }
  return best.badge;
}

/** A price on every label and badge that the leader runs through. */
function obstacleCost(badge: CutNumber, { labels, badges }: Surroundings): number {
  let cost = 0;
  for (const [x1, y1, x2, y2] of segmentsOf(badge)) {
    for (const label of labels) if (segmentCrossesBox(x1, y1, x2, y2, label)) cost += LABEL_CROSSED;
    for (const other of badges) if (segmentCrossesBox(x1, y1, x2, y2, other)) cost += BADGE_CROSSED;
  }
  return cost;
}

function pointsAlong(cut: CutLine): readonly Point[] {
  const parts = Math.max(3, Math.min(24, Math.floor(lengthOf(cut) / 2)));
  return Array.from({ length: parts - 1 }, (_, i) => [
    cut.x1 + ((cut.x2 - cut.x1) * (i + 1)) / parts,
    cut.y1 + ((cut.y2 - cut.y1) * (i + 1)) / parts,
  ]);
}

/** Whether a leader passes over a cut; touching it with an end does not count. */
function leaderCrosses(
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
function leaderRunsAlong(
  [x1, y1]: Point,
  [x2, y2]: Point,
  { cut, box: { x, y, width, height } }: Line,
): boolean {
  return isLevel(cut)
    ? y1 === y && y2 === y && Math.min(x1, x2) < x + width && x < Math.max(x1, x2)
    : x1 === x && x2 === x && Math.min(y1, y2) < y + height && y < Math.max(y1, y2);
}
