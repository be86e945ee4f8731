/**
 * The lengths that parts of a sheet need to have, along one axis. Every layout can be cut so that its parts are sums of
 * piece extents (normal patterns), and of these only the raster points matter: the largest sum that still leaves room for
 * another sum beside it.
 *
 *     |<-- r -->|<---- x, a sum of extents ---->|     r = the largest sum that is at most L - x
 *     |<------------------- L ----------------->|
 *
 * Sources: N. Christofides, C. Whitlock, An algorithm for two-dimensional cutting problems, Operations Research 25 (1977),
 * normal patterns; J. Terno, R. Lindemann, G. Scheithauer, Zuschnittprobleme und ihre praktische Loesung (1987), raster
 * points; J. Beasley, Algorithms for unconstrained two-dimensional guillotine cutting, J. Oper. Res. Soc. 36 (1985), sums
 * without the smallest extents where there would be too many.
 *
 * A part of raster length that is divided without loss gives parts of raster length again: with p(x) the largest sum up to
 * x, p(p(L - a) - c) = p(L - a - c) for sums a and c. So one set, made for the whole length, serves all parts.
 */

/** Sums of extents up to a length. */
export interface ExtentSums {
  readonly length: number;
  /** 0 first, then what each extent adds, longest first. */
  readonly sums: readonly number[];
  /** How many of the sums are made from the longest extent alone, from the two longest, ... */
  readonly counts: readonly number[];
  /** True where all sums are in, so that their raster points lose nothing. */
  readonly complete: boolean;
  /** Sums looked at. */
  readonly steps: number;
}

/** Sums positive extents, of which one at least fits; at most so many sums, at least two. */
export function extentSums(length: number, extents: readonly number[], mostSums: number): ExtentSums {
  const distinct = [...new Set(extents)].filter((extent) => extent <= length).sort((a, b) => b - a);
  const most = Math.max(2, mostSums);
  const known = new Set([0]);
  const sums = [0];
  const counts: number[] = [];
  let steps = 0;
  for (const extent of distinct) {
    const before = sums.length;
    for (let k = 0; k < before; k++) {
      // A sum that is known already goes on from its own place in the list.
      for (let sum = (sums[k] as number) + extent; sum <= length && !known.has(sum); sum += extent) {
        if (sums.length >= most) return { length, sums, counts, complete: false, steps: steps + sums.length };
        known.add(sum);
        sums.push(sum);
      }
    }
    counts.push(sums.length);
    steps += sums.length;
  }
  return { length, sums, counts, complete: true, steps };
}

/** How many first sums to take: those of as many extents as a number of sums allows, at least two sums. */
export function sumsWithin({ sums, counts }: ExtentSums, most: number): number {
  let best = 0;
  for (const count of counts) if (count <= most) best = count;
  return best > 0 ? best : Math.max(2, Math.min(sums.length, most));
}

/** The raster points of the first sums of a list, rising from 0; the last is the largest sum. */
export function rasterPoints({ length, sums }: ExtentSums, count: number): Float64Array {
  const sorted = Float64Array.from(sums.slice(0, count)).sort();
  // Point 0 is there already; where not all sums are in, it need not be a raster point.
  const points = new Float64Array(count + 1);
  let found = 1;
  let below = 0;
  for (let k = count - 1; k >= 0; k--) {
    const room = length - (sorted[k] as number);
    while (below + 1 < count && (sorted[below + 1] as number) <= room) below++;
    const point = sorted[below] as number;
    if (point > (points[found - 1] as number)) points[found++] = point;
  }
  return points.slice(0, found);
}

/** Pairs of points whose sum is at most the last point, each once: the divisions that parts of all lengths may have. */
export function pairsWithin(points: Float64Array): number {
  const longest = points[points.length - 1] as number;
  let pairs = 0;
  let other = points.length - 1;
  for (let k = 1; k <= other; k++) {
    while (other >= k && (points[k] as number) + (points[other] as number) > longest) other--;
    pairs += other - k + 1;
  }
  return pairs;
}

/** Finds the first point that is at least a length; made once, asked often. */
export class PointFinder {
  readonly points: Float64Array;
  private firstInSlot: Int32Array | undefined;
  private perUnit = 0;

  constructor(points: Float64Array) {
    this.points = points;
  }

  /** Index of the first point that is at least a length from 0 to the last point. */
  atLeast(length: number): number {
    // Many rasters are only counted, and never asked.
    const slots = this.firstInSlot ?? this.fillSlots();
    let k = slots[(length * this.perUnit) | 0] as number;
    while ((this.points[k] as number) < length) k++;
    return k;
  }

  /** Index of the last point that is at most a length from 0 on. */
  atMost(length: number): number {
    const last = this.points.length - 1;
    if (length >= (this.points[last] as number)) return last;
    const k = this.atLeast(length);
    return (this.points[k] as number) > length ? k - 1 : k;
  }

  private fillSlots(): Int32Array {
    const { points } = this;
    const longest = points[points.length - 1] as number;
    const most = Math.min(MOST_SLOTS, SLOTS_PER_POINT * points.length);
    let slotWidth = 1;
    // A power of two, so that dividing by it is exact.
    while (longest / slotWidth >= most) slotWidth *= 2;
    this.perUnit = 1 / slotWidth;
    const slots = new Int32Array(Math.floor(longest * this.perUnit) + 1);
    for (let slot = 0, k = 0; slot < slots.length; slot++) {
      while ((points[k] as number) < slot * slotWidth) k++;
      slots[slot] = k;
    }
    this.firstInSlot = slots;
    return slots;
  }
}

const MOST_SLOTS = 1 << 18;

/** So many that most slots hold one point at most. */
const SLOTS_PER_POINT = 8;
