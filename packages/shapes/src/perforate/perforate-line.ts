import type { Ticks } from "@sheetwright/measure";
import { distance, type Point, rounded } from "../outline/point.js";
import { spacingOf } from "../stitch/spacing.js";
import type { Hole } from "./hole.js";
import { type PerforationPitch, pitchOf } from "./pitch.js";

/** What a perforation line has at an end. */
export interface LineEnds {
  /** `cut` where the line reaches a free edge, `tie` where a corner must hold. Default: `cut`. */
  readonly start?: "cut" | "tie" | undefined;
  readonly end?: "cut" | "tie" | undefined;
}

/** How a line of cuts and ties should be. */
export type TearOptions = PerforationPitch &
  LineEnds & {
    /** How many times as long as a tie a cut is. Default: 2 (our choice: more tears off easier, less holds longer). */
    readonly cutToTie?: number | undefined;
  };

/** A line of cuts with ties between them. */
export interface TearLine {
  readonly cuts: readonly (readonly [from: Point, to: Point])[];
  /** From one cut's start to the next one's, in ticks with fractions. */
  readonly pitch: number;
  /** In ticks with fractions. */
  readonly cut: number;
  /** In ticks with fractions. */
  readonly tie: number;
}

/** Cuts and ties of less than this are lost in the knife's width: 0.05 mm. */
const FINEST: Ticks = 80;

/**
 * Divides a straight line into cuts and ties for tearing off: whole ones only, all cuts equal and all ties, the pitch as
 * near as possible to the wish.
 *
 * Ends of cuts are whole ticks on the line to half a tick. Throws a RangeError for a line without length, and for a pitch
 * or ratio that leaves less than 0.05 mm for a cut or a tie.
 *
 * @example
 * const { cuts, pitch } = perforateLine({ x: 0, y: 0 }, { x: 81280, y: 0 }, { teethPerInch: 8, cutToTie: 3 });
 * cuts.length // => 16
 * Math.round(pitch) // => 5161
 * cuts[0][0] // => { x: 0, y: 0 }
 * cuts[15][1] // => { x: 81280, y: 0 }
 */
export function perforateLine(from: Point, to: Point, options: TearOptions): TearLine {
  const { start = "cut", end = "cut", cutToTie = 2 } = options;
  const length = lengthOfLine(from, to);
  const wish = pitchOf(options);
  const space = wish / (1 + cutToTie);
  if (!(cutToTie > 0 && space >= FINEST && wish - space >= FINEST)) {
    throw new RangeError(
      `Expected a cut-to-tie ratio that leaves 0.05 mm of ${Math.floor(wish)} ticks for both, found ${String(cutToTie)}. A ratio nearer to 1 or fewer teeth would help.`,
    );
  }
  const ends = [start === "cut" ? "mark" : "space", end === "cut" ? "mark" : "space"] as const;
  const spacing = spacingOf(length, { mark: wish - space, space }, ends);
  const at = (place: number) =>
    rounded(from.x + ((to.x - from.x) * place) / length, from.y + ((to.y - from.y) * place) / length);
  const cuts = Array.from({ length: spacing.count }, (_, index) => {
    const place = spacing.first + index * spacing.pitch;
    return [at(place), at(place + spacing.mark)] as const;
  });
  return { cuts, pitch: spacing.pitch, cut: spacing.mark, tie: spacing.space };
}

/** How a line of holes should be. */
export type HoleOptions = PerforationPitch & {
  /** Default: half of the pitch that is wished, to the next even tick. */
  readonly diameter?: Ticks | undefined;
};

/** A line of holes. */
export interface HoleLine {
  readonly holes: readonly Hole[];
  /** From hole to hole, in ticks with fractions. */
  readonly pitch: number;
}

/**
 * Punches a straight line with a row of equal holes, one at each end and the pitch as near as possible to the wish.
 *
 * Centres are whole ticks on the line to half a tick. Throws a RangeError for a line without length, and for holes that
 * would run together.
 *
 * @example
 * const { holes, pitch } = perforateWithHoles({ x: 0, y: 0 }, { x: 64000, y: 0 }, { gauge: 12 });
 * holes.length // => 25
 * holes[1] // => { centre: { x: 2667, y: 0 }, diameter: 1334 }
 * Math.round(pitch) // => 2667
 */
export function perforateWithHoles(from: Point, to: Point, options: HoleOptions): HoleLine {
  const length = lengthOfLine(from, to);
  const wish = pitchOf(options);
  const steps = Math.max(1, Math.round(length / wish));
  const pitch = length / steps;
  const diameter = holeDiameter(options, wish, pitch);
  const holes = Array.from({ length: steps + 1 }, (_, index) => ({
    centre: rounded(from.x + ((to.x - from.x) * index) / steps, from.y + ((to.y - from.y) * index) / steps),
    diameter,
  }));
  return { holes, pitch };
}

/**
 * The diameter asked for, or half of the wished pitch to an even number of ticks; less where the least pitch that came
 * about leaves too little between holes.
 *
 * @internal
 */
export function holeDiameter(
  { diameter }: { readonly diameter?: Ticks | undefined },
  wish: number,
  least: number,
): Ticks {
  if (diameter === undefined) return 2 * Math.round(Math.min(wish / 4, (2 * least) / 5));
  if (!Number.isInteger(diameter) || diameter < FINEST || diameter >= least) {
    throw new RangeError(
      `Expected holes of whole ticks, from ${FINEST} to less than their pitch of ${Math.floor(least)}, found ${String(diameter)}. Half of the pitch is usual.`,
    );
  }
  return diameter;
}

function lengthOfLine(from: Point, to: Point): number {
  const length = distance(from, to);
  if (!(length > 0)) {
    throw new RangeError(
      `Expected a line between two different points, found one from ${from.x}, ${from.y} to ${to.x}, ${to.y}.`,
    );
  }
  return length;
}
