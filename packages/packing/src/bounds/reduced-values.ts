/** Rounds without a better bound after which the steps become half as long. */
const PATIENCE = 8;

/** The first step aims so far below the best bound, as a share of it. */
const AIM = 0.05;

/** Steps shorter than this share of the first are not worth a round. */
const SHORTEST = 1 / 512;

/** Rounds that are enough for any problem, and those after which nothing is to be hoped for where none was better. */
const MOST_ROUNDS = 400;
const HOPELESS_ROUNDS = 80;

/**
 * Values of kinds, reduced so that the best layouts from copies without limit come to as little as possible together with
 * what the limits then give back: sum of (value - reduced value) x limit. That sum is a bound on the value of any layout
 * within the limits, whatever the reduced values are. By subgradients (M. Held, P. Wolfe, H. Crowder, Validation of
 * subgradient optimization, Mathematical Programming 6 (1974)), in floating point: no bound rests on how good they are.
 *
 * Yields where the layouts do.
 *
 * @param values positive; `limits` may be infinite, such kinds keep their value.
 * @param bestLayout gives the most value by reduced values, and counts the copies of such a layout into `chosen`; undefined
 *   once there is no work left for it.
 * @returns undefined where nothing is better than the values themselves.
 */
export function* reducedValues(
  values: Float64Array,
  limits: Float64Array,
  bestLayout: (reduced: Float64Array, chosen: Float64Array) => Generator<void, number | undefined, void>,
): Generator<void, Float64Array | undefined, void> {
  const size = values.length;
  let least = Number.POSITIVE_INFINITY;
  let best = values;
  let reduced = values;
  let length = 1;
  let misses = 0;
  for (let round = 0; round < MOST_ROUNDS && length >= SHORTEST; round++) {
    if (round === HOPELESS_ROUNDS && best === values) break;
    const chosen = new Float64Array(size);
    let bound = yield* bestLayout(reduced, chosen);
    if (bound === undefined) break;
    for (let k = 0; k < size; k++) {
      const taken = (values[k] as number) - (reduced[k] as number);
      if (taken > 0) bound += taken * (limits[k] as number);
    }
    if (bound < least) {
      least = bound;
      best = reduced;
      misses = 0;
    } else if (++misses >= PATIENCE) {
      length /= 2;
      misses = 0;
    }
    // Along the copies beyond the limits; what would take a value out of its range does not count.
    const slope = new Float64Array(size);
    let square = 0;
    for (let k = 0; k < size; k++) {
      const limit = limits[k] as number;
      const beyond = Number.isFinite(limit) ? (chosen[k] as number) - limit : 0;
      if (beyond < 0 && reduced[k] === values[k]) continue;
      if (beyond > 0 && reduced[k] === 0) continue;
      slope[k] = beyond;
      square += beyond * beyond;
    }
    if (square === 0) break;
    const step = (length * AIM * least) / square;
    // After a miss from the best ones again.
    reduced = (misses === 0 ? best : reduced).map((value, k) =>
      Math.min(values[k] as number, Math.max(0, value - step * (slope[k] as number))),
    );
  }
  return best === values ? undefined : best;
}
