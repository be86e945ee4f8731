/** How marks and the spaces between them share a length. */
export interface Spacing {
  readonly count: number;
  /** Of a mark, in ticks with fractions. */
  readonly mark: number;
  /** Between two marks. */
  readonly space: number;
  /** From a mark's start to the next one's. */
  readonly pitch: number;
  /** Where the first mark starts. */
  readonly first: number;
}

/** What a line has at an end: a mark, a whole space, or half a space (the other half lies round the corner). */
export type LineEnd = "mark" | "space" | "half space";

const SPACES: Readonly<Record<LineEnd, number>> = { mark: 0, space: 1, "half space": 0.5 };

/**
 * Divides a length into marks and spaces, whole ones only. With a mark at both ends n marks of c and n - 1 spaces of g
 * make up n c + (n - 1) g, so that n = max(1, round((L + g) / (c + g))) comes nearest to the length; both are then scaled
 * alike to fill it. A space at an end makes one space more.
 *
 * `counted` is the length that the number is chosen for, where lengths that differ by rounding are to get the same number.
 *
 * @internal
 */
export function spacingOf(
  length: number,
  { mark, space }: { readonly mark: number; readonly space: number },
  [start, end]: readonly [LineEnd, LineEnd],
  counted = length,
): Spacing {
  const extra = SPACES[start] + SPACES[end] - 1;
  const count = Math.max(1, Math.round((counted - extra * space) / (mark + space)));
  const scale = length / (count * mark + (count + extra) * space);
  return {
    count,
    mark: mark * scale,
    space: space * scale,
    pitch: (mark + space) * scale,
    first: SPACES[start] * space * scale,
  };
}

/** The least and the greatest pitch over several stretches, in ticks with fractions. */
export interface PitchRange {
  readonly least: number;
  readonly most: number;
}

/**
 * The range of some pitches, `null` for none.
 *
 * @internal
 */
export function rangeOf(pitches: readonly number[]): PitchRange | null {
  if (pitches.length === 0) return null;
  return {
    least: pitches.reduce((least, pitch) => Math.min(least, pitch)),
    most: pitches.reduce((most, pitch) => Math.max(most, pitch)),
  };
}
