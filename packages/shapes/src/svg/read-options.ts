import { LONGEST_LENGTH, TICKS_PER_MM, type Ticks } from "@sheetwright/measure";
import { CURVE_TOLERANCE } from "../curve/fit-arcs.js";

/** How outlines are read from an SVG file or path data. */
export interface OutlineReadOptions {
  /**
   * How many user units make an inch: 96 by SVG 2, 72 or 90 for files of programs that mean those, 25.4 for path data in
   * millimetres. Has no effect on a file that states its size in mm, cm, in, pt or pc together with a viewBox. Default: 96.
   */
  readonly unitsPerInch?: number | undefined;
  /** How far an outline may lie from a curve of the file, in ticks: 2 or more. Default: 16 (0.01 mm). */
  readonly tolerance?: Ticks | undefined;
  /** How far apart the ends of a line may lie to be joined by a straight line, in ticks. Default: 16 (0.01 mm). */
  readonly closeGaps?: Ticks | undefined;
  /** Whether a path that crosses itself is read as its fill rule says; otherwise it is refused. Default: false. */
  readonly mergeCrossings?: boolean | undefined;
  /**
   * Parts and windows smaller than this are dropped, in ticks: four times the area by the perimeter, which is the diameter
   * of a disc, the side of a square, twice the width of a strip. Default: 160 (0.1 mm).
   */
  readonly specks?: Ticks | undefined;
  /** What is left out with a note instead of being refused. Default: nothing. */
  readonly leaveOut?: readonly ("open-paths" | "text")[] | undefined;
  /** How much is read at most. Default: `READ_LIMITS`. */
  readonly limits?: Partial<ReadLimits> | undefined;
}

/** How much is read at most; a file beyond is refused before it costs time. */
export interface ReadLimits {
  /** Characters of the file or of path data. */
  readonly characters: number;
  /** Elements, those counted again that are drawn again by `use`. */
  readonly elements: number;
  /** Elements in each other. */
  readonly depth: number;
  /** Path commands and corners of polygons in the whole file. */
  readonly commands: number;
  /** Corners of all lines once their curves are chords of two ticks. */
  readonly corners: number;
}

/** Far more than a drawing for a die or a cutting machine has, and still read within about a second. */
export const READ_LIMITS: ReadLimits = {
  characters: 4_000_000,
  elements: 20_000,
  depth: 64,
  commands: 100_000,
  corners: 100_000,
};

/**
 * All options with their defaults. Throws a RangeError for one that makes no sense.
 *
 * @internal
 */
export interface ReadSettings {
  readonly unitsPerInch: number;
  readonly tolerance: Ticks;
  readonly closeGaps: Ticks;
  readonly mergeCrossings: boolean;
  readonly specks: Ticks;
  readonly leaveOut: readonly ("open-paths" | "text")[];
  readonly limits: ReadLimits;
}

/** @internal */
export function settingsOf(options: OutlineReadOptions): ReadSettings {
  const {
    unitsPerInch = 96,
    tolerance = CURVE_TOLERANCE,
    closeGaps = CURVE_TOLERANCE,
    mergeCrossings = false,
    specks = TICKS_PER_MM / 10,
    leaveOut = [],
    limits = {},
  } = options;
  within("unitsPerInch", unitsPerInch, 0.001, 1_000_000);
  within("tolerance", tolerance, 2, TICKS_PER_MM);
  within("closeGaps", closeGaps, 0, LONGEST_LENGTH);
  within("specks", specks, 0, LONGEST_LENGTH);
  return {
    unitsPerInch,
    tolerance,
    closeGaps,
    mergeCrossings,
    specks,
    leaveOut,
    limits: { ...READ_LIMITS, ...limits },
  };
}

function within(name: string, value: number, least: number, most: number): void {
  if (!(value >= least && value <= most)) {
    throw new RangeError(`Expected ${name} from ${least} to ${most}, found ${String(value)}.`);
  }
}
