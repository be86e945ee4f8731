/**
 * Puts a line of stitches inside an outline: the sewn look of a die's edge.
 *
 * The line is the outline shrunk by the distance, with round corners, so that it keeps that distance everywhere; it also
 * goes round windows that come near. Smooth stretches between two corners are divided each by itself into whole stitches
 * of equal length with equal gaps (see `spacingOf`); a line without corners gets a whole number round, one stitch or hole
 * on the axis that it is symmetric about.
 */

import { LONGEST_LENGTH, TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from "@sheetwright/measure";
import { offset } from "../offset/offset.js";
import { type Outline, ringsOf } from "../outline/outline.js";
import type { Point } from "../outline/point.js";
import type { Hole } from "../perforate/hole.js";
import { type CountedRun, countedRuns } from "./counted-runs.js";
import { FEWEST_ROUND, placeHoles } from "./place-holes.js";
import { stretchOf } from "./run.js";
import { type PitchRange, rangeOf, type Spacing, spacingOf } from "./spacing.js";

/** How a line of stitches should look. */
export interface StitchOptions {
  /** From the edge to the line. Default: 1/8 in (common practice: 2 to 3 mm, about 1/8 in). */
  readonly inset?: Ticks | undefined;
  /** `dashes`: cut or drawn stitches. `holes`: pricked ones. Default: `dashes`. */
  readonly marks?: "dashes" | "holes" | undefined;
  /** How long a stitch should be. Default: 2 mm (from memory: 1.5 to 2.5 mm). */
  readonly dash?: Ticks | undefined;
  /** How far apart stitches should be. Default: 1 mm (from memory: 0.7 to 1.2 mm). */
  readonly gap?: Ticks | undefined;
  /** Stitches to the inch, instead of `dash` or `gap` or both: without these a stitch takes two thirds of its pitch. */
  readonly perInch?: number | undefined;
  /** Of pricked holes. Default: 1 mm, or a third of the pitch where that is less (from memory: a coarse needle). */
  readonly holeDiameter?: Ticks | undefined;
  /**
   * `met`: stitches end at each corner of the line, as where cloth is turned with the needle down; a hole lies there.
   * Stretches of a single stitch keep it off their corners. `free`: corners lie in the middle of a gap. Default: `met`.
   */
  readonly corners?: "met" | "free" | undefined;
  /** Whether windows have their line too. Default: only the outer edge has one. */
  readonly windows?: boolean | undefined;
}

/** A stitch as the points along it: two where it is straight, more where it bends with the line. */
export type Dash = readonly Point[];

/** A line of stitches. */
export interface Stitches {
  readonly dashes: readonly Dash[];
  readonly holes: readonly Hole[];
  /**
   * The pitch that came about, from the start of a stitch to the next one's, least and most over the stretches of the
   * line: in ticks with fractions. `null` where no stretch has two stitches.
   */
  readonly pitch: PitchRange | null;
  /**
   * Stretches between two corners without a stitch, because it would be shorter than half of the wish, or because less than
   * three of them would go round the whole line.
   */
  readonly tooShort: number;
  /** What the line is: of one part, of several where the outline is too narrow in between, or none is left. */
  readonly line: "whole" | "split" | "vanished";
}

/**
 * Puts whole stitches along a line inside an outline, as dashes or as pricked holes.
 *
 * Points are whole ticks, on the line to about a tick, so that the distance from the edge holds to 0.01 mm. Throws a
 * RangeError for lengths that are no whole ticks or too small to be cut (0.1 mm), for holes that would run together or
 * through the edge, and where `dash`, `gap` and `perInch` are all given.
 *
 * @example
 * const square = outlineOf({ shape: "rectangle", width: 162560, height: 162560 });
 * const { dashes, pitch, line } = stitch(square, { dash: 3200, gap: 1600 });
 * dashes.length // => 128
 * dashes[0] // => [{ x: 5080, y: 5080 }, { x: 8288, y: 5080 }]
 * Math.round(pitch.least) === Math.round(pitch.most) // => true
 * line // => "whole"
 */
export function stitch(outline: Outline, options: StitchOptions = {}): Stitches {
  const { inset = TICKS_PER_INCH / 8, marks = "dashes", corners = "met", windows = false } = options;
  checkLength("a distance of the stitches from the edge", inset, 1);
  const { dash, gap } = wishedStitch(options);
  const parts = offset([outline], -inset).outlines;
  const rings = parts.flatMap((part) => (windows ? ringsOf(part) : [part.outer]));
  const runs = countedRuns(rings);
  const line = parts.length === 0 ? "vanished" : parts.length === 1 ? "whole" : "split";
  if (marks === "dashes") {
    const sewn = runs.map((ofRing) => sew(ofRing, dash, gap, corners));
    return {
      dashes: sewn.flatMap(({ dashes }) => dashes),
      holes: [],
      pitch: rangeOf(sewn.flatMap(({ pitches }) => pitches)),
      tooShort: sewn.reduce((sum, { tooShort }) => sum + tooShort, 0),
      line,
    };
  }
  const diameter = options.holeDiameter ?? 2 * Math.round(Math.min(TICKS_PER_MM, (dash + gap) / 3) / 2);
  const placed = runs.map((ofRing) => placeHoles(ofRing, dash + gap, corners));
  const pitch = rangeOf(placed.flatMap(({ pitches }) => pitches));
  checkHole(diameter, Math.min(dash + gap, pitch?.least ?? dash + gap), inset);
  return {
    dashes: [],
    holes: placed.flatMap(({ centres }) => centres.map((centre) => ({ centre, diameter }))),
    pitch,
    tooShort: placed.reduce((sum, { tooShort }) => sum + tooShort, 0),
    line,
  };
}

interface Sewn {
  readonly dashes: readonly Dash[];
  readonly pitches: readonly number[];
  readonly tooShort: number;
}

/** Sews the stretches of one ring. */
function sew(runs: readonly CountedRun[], dash: number, gap: number, corners: "met" | "free"): Sewn {
  const dashes: Dash[] = [];
  const pitches: number[] = [];
  let tooShort = 0;
  for (const { run, counted } of runs) {
    const { count, mark, pitch, first } = spacingFor({ run, counted }, dash, gap, corners);
    if ((mark * counted) / run.length < dash / 2) {
      tooShort += 1;
      continue;
    }
    if (count > 1) pitches.push(pitch);
    // The first stitch of a closed line lies across its start.
    const start = run.isClosed ? -mark / 2 : first;
    for (let index = 0; index < count; index += 1) {
      const from = start + index * pitch;
      dashes.push(stretchOf(run, from, from + mark));
    }
  }
  return dashes.length < FEWEST_ROUND
    ? { dashes: [], pitches: [], tooShort: runs.length }
    : { dashes, pitches, tooShort };
}

function spacingFor(
  { run, counted }: CountedRun,
  dash: number,
  gap: number,
  corners: "met" | "free",
): Spacing {
  const wish = { mark: dash, space: gap };
  // Half a gap at both ends of a closed line is the gap between its last stitch and its first.
  const free = () => spacingOf(run.length, wish, ["half space", "half space"], counted);
  if (run.isClosed || corners === "free") return free();
  const met = spacingOf(run.length, wish, ["mark", "mark"], counted);
  // A single stitch that met its neighbours at both corners would make one cut of them all, and what is inside falls out.
  return met.count === 1 ? free() : met;
}

/** Shorter stitches and gaps are no more than a knife's width: 0.1 mm. */
const FINEST: Ticks = TICKS_PER_MM / 10;

function wishedStitch({ dash, gap, perInch }: StitchOptions): {
  readonly dash: number;
  readonly gap: number;
} {
  if (dash !== undefined) checkLength("a stitch", dash, FINEST);
  if (gap !== undefined) checkLength("a gap between stitches", gap, FINEST);
  if (perInch === undefined) return { dash: dash ?? 2 * TICKS_PER_MM, gap: gap ?? TICKS_PER_MM };
  if (dash !== undefined && gap !== undefined) {
    throw new RangeError(
      "Expected the length of a stitch, the gap, and stitches per inch: two of them at most. Found all three; leave one out.",
    );
  }
  const pitch = TICKS_PER_INCH / perInch;
  const stitchLength = dash ?? (gap === undefined ? (2 * pitch) / 3 : pitch - gap);
  const space = gap ?? pitch - stitchLength;
  if (!(perInch > 0 && stitchLength >= FINEST && space >= FINEST)) {
    const given =
      dash !== undefined
        ? ` with stitches of ${dash} ticks`
        : gap !== undefined
          ? ` with gaps of ${gap} ticks`
          : "";
    throw new RangeError(
      `Expected a number of stitches per inch that leaves 0.1 mm for each stitch and each gap, found ${String(perInch)}${given}. Fewer stitches per inch would help.`,
    );
  }
  return { dash: stitchLength, gap: space };
}

function checkLength(what: string, value: number, least: Ticks): void {
  if (!Number.isInteger(value) || value < least || value > LONGEST_LENGTH) {
    throw new RangeError(
      `Expected ${what} in whole ticks, at least ${least} and up to 10 m, found ${String(value)}.`,
    );
  }
}

function checkHole(diameter: number, pitch: number, inset: Ticks): void {
  checkLength("a hole's diameter", diameter, FINEST);
  if (diameter >= pitch) {
    throw new RangeError(
      `Expected holes of less than their pitch, ${Math.floor(pitch)} ticks, found ${diameter}: they would run together. Smaller holes or fewer of them would help.`,
    );
  }
  if (diameter >= 2 * inset) {
    throw new RangeError(
      `Expected holes of less than twice their distance from the edge, ${2 * inset} ticks, found ${diameter}: they would run through the edge. Smaller holes or more distance would help.`,
    );
  }
}
