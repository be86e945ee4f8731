import { difference } from "../clip/combine.js";
import { type Outline, ringsOf } from "../outline/outline.js";
import { countedRuns } from "../stitch/counted-runs.js";
import { placeHoles } from "../stitch/place-holes.js";
import { type PitchRange, rangeOf } from "../stitch/spacing.js";
import { discOf, type Hole } from "./hole.js";
import { type HoleOptions, holeDiameter } from "./perforate-line.js";
import { pitchOf } from "./pitch.js";

/** How a stamp edge should be. */
export type StampEdgeOptions = HoleOptions & {
  /** Whether windows are bitten too. Default: only the outer edge. */
  readonly windows?: boolean | undefined;
};

/** An outline bitten by holes along its edge. */
export interface StampEdge {
  /** What is left of the outline: one as a rule, more where holes cut through. */
  readonly outlines: readonly Outline[];
  /** The holes, their centres on the edge. */
  readonly holes: readonly Hole[];
  /**
   * From hole to hole, least and most over the stretches between corners: in ticks with fractions. `null` where no stretch
   * is long enough for two holes.
   */
  readonly pitch: PitchRange | null;
  /** Stretches between corners shorter than half the pitch, without holes of their own. */
  readonly tooShort: number;
}

/**
 * Gives an outline the toothed edge of a stamp: holes with their centres on the edge, one at each corner and equal ones
 * between, bite half circles out of it. The teeth reach the old edge, so that the size stays.
 *
 * Throws a RangeError for a pitch out of range and for holes that would run together.
 *
 * @example
 * const label = outlineOf({ shape: "rectangle", width: 64000, height: 48000 });
 * const { outlines, holes, pitch } = stampEdge(label, { gauge: 10 });
 * holes.length // => 70
 * pitch // => { least: 3200, most: 3200 }
 * boxOf(outlines[0]) // => { x: 0, y: 0, width: 64000, height: 48000 }
 */
export function stampEdge(outline: Outline, options: StampEdgeOptions): StampEdge {
  const wish = pitchOf(options);
  const rings = options.windows === true ? ringsOf(outline) : [outline.outer];
  const placed = countedRuns(rings).map((runs) => placeHoles(runs, wish, "met"));
  const pitch = rangeOf(placed.flatMap(({ pitches }) => pitches));
  const diameter = holeDiameter(options, wish, pitch?.least ?? wish);
  const holes = placed.flatMap(({ centres }) => centres.map((centre) => ({ centre, diameter })));
  return {
    outlines: difference([outline], holes.map(discOf)),
    holes,
    pitch,
    tooShort: placed.reduce((sum, each) => sum + each.tooShort, 0),
  };
}
