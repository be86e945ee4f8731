/**
 * Finds a place for the number of each cut: on its own line where that is free, else just beyond the sheet where the
 * line ends there, else close by at the end of a leader, and as the last resort outside the sheet at a longer one.
 *
 * A number may not cover a label, another number, or leave it unclear which line it belongs to, so it keeps clear of
 * every line but its own. Short cuts have the least choice and are placed first. A greedy search over a fixed list of
 * places: O(cuts x places x obstacles), and always the same answer.
 */

import { boxesOverlap } from "./box.js";
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
import {
  coversLabel,
  GAP,
  isInside,
  isTaken,
  LEADER_MET,
  type Line,
  leaderCrosses,
  leaderRunsAlong,
  type NumberedSheet,
  nearby,
  obstacleCost,
  type Surroundings,
  segmentsOf,
} from "./surroundings.js";

/** Badge to the next line that is not its own. */
const LINE_GAP = 0.5;
const STEP = 1;
/** The longest leader inside the sheet, and what it costs, in millimetres of length, to cross another cut. */
const FARTHEST = 24;
const LINE_CROSSED = 8;
/** What it costs to stand on a piece rather than on a leftover. */
const ON_PIECE = 10;
/** More than a badge and its white space measure. */
const REACH = 6;
/** A sheet with more cuts is crowded, and gets clear leaders only. */
const CROWDED = 100;
/** From the sheet's edge to the nearest badges outside, and how many lie one behind the other there. */
const OUTSIDE = 1.6;
const RINGS = 2;
/** How far along the edge a badge may stand from where its leader comes out, in half badges. */
const MOST_SHIFTS = 4;
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

/**
 * Places the numbers of all cuts, in the order given. On a sheet of more than a hundred cuts a number whose leader would
 * run through others is left out, since nobody could follow it.
 */
export function placeCutNumbers(sheet: NumberedSheet): readonly CutNumber[] {
  const { cuts, labels } = sheet;
  const lines = cuts.map((cut) => ({ cut, box: lineBox(cut) }));
  const around: Surroundings = { sheet, lines, labels, badges: [], leaders: [] };
  const byRoom = lines
    .map((line, index) => ({ line, index, length: lengthOf(line.cut) }))
    .sort((a, b) => a.length - b.length || a.index - b.index);

  const result = new Array<CutNumber | null>(cuts.length);
  for (const { line, index } of byRoom) {
    const close = nearby(line, FARTHEST + REACH, around);
    const found =
      onLine(line, close) ?? beyondEnd(line, around) ?? closeBy(line, close) ?? outside(line, around);
    result[index] = found;
    if (found === null) continue;
    around.badges.push(badgeBox(found));
    around.leaders.push(...segmentsOf(found));
  }
  return result.filter((found) => found !== null);
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
        if (obstacleCost([from, to], around) > 0 || others.some((line) => leaderRunsAlong(from, to, line)))
          continue;
        const onPiece = around.sheet.pieces.some((piece) => boxesOverlap(box, piece));
        const crossed = others.filter((line) => leaderCrosses(from, to, line)).length;
        const cost = distance + LINE_CROSSED * crossed + (onPiece ? ON_PIECE : 0);
        if (best === null || cost < best.cost) best = { cost, badge };
      }
      open.push(way);
    }
    ways = open;
  }
  return best?.badge ?? null;
}

/** A leader square to the cut to an edge of the sheet, bent outside where the place there is taken. */
function outside({ cut }: Line, around: Surroundings): CutNumber | null {
  const half = halfWidthOf(cut.number);
  const crowded = around.lines.length > CROWDED;
  const ways = pointsAlong(cut).flatMap((from) => waysOut(cut, from, around));
  let best: { readonly cost: number; readonly badge: CutNumber } | null = null;
  // Each ring round the sheet holds as many badges as fit side by side; unless it is crowded, some ring has a free place.
  for (let ring = 0; ring < RINGS || (best === null && !crowded); ring += 1) {
    const out = OUTSIDE + half + ring * (2 * half + 2 * GAP);
    for (const { from, edge, outwards, cost: inside } of ways) {
      if (crowded && inside >= LEADER_MET) continue;
      for (let shift = -MOST_SHIFTS; shift <= MOST_SHIFTS; shift += 1) {
        const by = shift * (half + GAP / 2);
        const cost = inside + 2 * Math.abs(by) + 25 * ring;
        if (best !== null && cost >= best.cost) continue;
        const to: Point = [
          edge[0] + outwards[0] * out + Math.abs(outwards[1]) * by,
          edge[1] + outwards[1] * out + Math.abs(outwards[0]) * by,
        ];
        const badge: CutNumber = { number: cut.number, x: to[0], y: to[1], leader: [from, edge, to] };
        if (isTaken(badgeBox(badge), around)) continue;
        const whole = cost + obstacleCost([edge, to], around);
        if (best === null || whole < best.cost) best = { cost: whole, badge };
      }
    }
  }
  return best?.badge ?? null;
}

interface WayOut {
  readonly from: Point;
  /** Where the leader leaves the sheet, and which way. */
  readonly edge: Point;
  readonly outwards: Point;
  /** Length to the edge and what is met on the way. */
  readonly cost: number;
}

/** Both ways square to the cut, so that no leader runs along another cut on the same line. */
function waysOut(cut: CutLine, from: Point, around: Surroundings): readonly WayOut[] {
  const { width, height } = around.sheet;
  const [x, y] = from;
  const ways: readonly (readonly [edge: Point, outwards: Point])[] = isLevel(cut)
    ? [
        [
          [x, 0],
          [0, -1],
        ],
        [
          [x, height],
          [0, 1],
        ],
      ]
    : [
        [
          [0, y],
          [-1, 0],
        ],
        [
          [width, y],
          [1, 0],
        ],
      ];
  return ways.map(([edge, outwards]) => ({
    from,
    edge,
    outwards,
    cost: Math.abs(edge[0] - x) + Math.abs(edge[1] - y) + obstacleCost([from, edge], around),
  }));
}

function pointsAlong(cut: CutLine): readonly Point[] {
  const parts = Math.max(4, Math.min(24, Math.floor(lengthOf(cut))));
  return Array.from({ length: parts - 1 }, (_, i) => [
    cut.x1 + ((cut.x2 - cut.x1) * (i + 1)) / parts,
    cut.y1 + ((cut.y2 - cut.y1) * (i + 1)) / parts,
  ]);
}
