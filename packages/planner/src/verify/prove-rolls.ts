/**
 * Proves that lengths cannot be cut from fewer rolls, for the check of what a plan claims. It shares no code with what cuts
 * them, only what is known of the problem: bounds by dual feasible functions (Fekete and Schepers, Mathematical Programming
 * 91, 2001), of a roll only what lengths can fill of it, and in small cases every way to fill one roll after another.
 */

/** By length, how many are to be cut. */
export type Lengths = ReadonlyMap<number, number>;

/** Where there are more cases than these the bounds alone are asked: one for each number of each length, none among them. */
const SMALL = 20_000;
/** A roll of more parts than these, times lengths, is not gone through. */
const MOST_PARTS = 2_000_000;
const FINEST = 60;

/** Whether no way of cutting does with fewer than so many rolls. */
export function takesAtLeast(rolls: number, lengths: Lengths, roll: number): boolean {
  const wanted = [...lengths].filter(([, count]) => count > 0).sort(([a], [b]) => b - a);
  if (rolls <= 0) return true;
  if (byWeights(wanted, roll).some(({ sum, full }) => sum > BigInt(rolls - 1) * full)) return true;
  const cases = wanted.reduce((product, [, count]) => Math.min(product * (count + 1), SMALL + 1), 1);
  return cases <= SMALL && !canBeCut(rolls - 1, wanted, roll, new Map());
}

type Wanted = readonly (readonly [length: number, count: number])[];

/** Weights of all lengths together, and the most that one roll can have of them. */
interface Weighed {
  readonly sum: bigint;
  readonly full: bigint;
}

function byWeights(wanted: Wanted, roll: number): readonly Weighed[] {
  const weigh = (weight: (length: number) => number, full: number): Weighed => ({
    sum: wanted.reduce((sum, [length, count]) => sum + BigInt(weight(length)) * BigInt(count), 0n),
    full: BigInt(full),
  });
  const found = [weigh((length) => length, mostFilled(wanted, roll))];
  for (const [least] of wanted) {
    if (least > roll - least) continue;
    found.push(weigh((length) => (length < least ? 0 : roll - length < least ? roll : length), roll));
  }
  for (let k = 1; k <= FINEST; k += 1) {
    const full = k * (k + 1);
    found.push(
      weigh((length) => {
        const rest = (length * (k + 1)) % roll;
        const whole = (length * (k + 1) - rest) / roll;
        return rest === 0 ? (whole * full) / (k + 1) : (whole * full) / k;
      }, full),
    );
  }
  return found;
}

/** What some of the lengths can fill of a roll at most, as a set of sums; the whole roll where there are too many. */
function mostFilled(wanted: Wanted, roll: number): number {
  const step = wanted.reduce((all, [length]) => common(all, length), 0);
  if (step === 0) return roll;
  const parts = (roll - (roll % step)) / step;
  if ((parts + 1) * wanted.length > MOST_PARTS) return roll;
  // How many of the length in hand a sum takes; -1 where it cannot be had.
  let taken = new Int32Array(parts + 1).fill(-1);
  taken[0] = 0;
  for (const [length, count] of wanted) {
    const size = length / step;
    const next = new Int32Array(parts + 1).fill(-1);
    for (let sum = 0; sum <= parts; sum += 1) {
      if ((taken[sum] ?? -1) >= 0) next[sum] = 0;
      else if (sum >= size && (next[sum - size] ?? -1) >= 0 && (next[sum - size] ?? 0) < count)
        next[sum] = (next[sum - size] ?? 0) + 1;
    }
    taken = next;
  }
  return taken.findLastIndex((one) => one >= 0) * step;
}

/** Whether so many rolls do, by giving the next one the longest length that is left and everything that may go with it. */
function canBeCut(rolls: number, wanted: Wanted, roll: number, known: Map<string, number>): boolean {
  const left = wanted.filter(([, count]) => count > 0);
  const [first, ...others] = left;
  if (first === undefined) return true;
  if (rolls <= 0) return false;
  const key = left.map((one) => one.join("x")).join(" ");
  // So many were too few before.
  if (rolls <= (known.get(key) ?? 0)) return false;
  const rest: Wanted = [[first[0], first[1] - 1], ...others];
  for (const after of fillings(rest, roll - first[0]))
    if (canBeCut(rolls - 1, after, roll, known)) return true;
  known.set(key, Math.max(rolls, known.get(key) ?? 0));
  return false;
}

/** What is left after each way to fill a roll to which nothing more could be added. */
function* fillings(left: Wanted, free: number, from = 0): Generator<Wanted> {
  const one = left[from];
  if (one === undefined) {
    if (left.every(([length, count]) => count === 0 || length > free)) yield left;
    return;
  }
  const [length, count] = one;
  for (let taken = Math.min(count, Math.floor(free / length)); taken >= 0; taken -= 1) {
    const after = left.map((other, i) => (i === from ? ([length, count - taken] as const) : other));
    yield* fillings(after, free - taken * length, from + 1);
  }
}

function common(a: number, b: number): number {
  return b === 0 ? a : common(b, a % b);
}
