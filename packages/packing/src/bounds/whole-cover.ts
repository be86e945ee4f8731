/** A sheet that carries weight. */
export interface Supply {
  readonly capacity: bigint;
  readonly cost: bigint;
  /** Undefined where there is no limit. */
  readonly stock: bigint | undefined;
}

/** Choices of sheets that one more kind of sheet may make; with more the cover is taken in parts. */
const MOST_CHOICES = 4_000;

interface Choice {
  readonly cost: bigint;
  readonly weight: bigint;
}

/**
 * The least cost of whole sheets that carry a demand: of one kind of sheet after the other every number, up to the stock and
 * to what the demand takes, with each choice of those before it; a choice is left out where another costs no more and
 * carries no less. Of the last kind as many as are still needed.
 *
 * Undefined where one kind makes more than {@link MOST_CHOICES} choices, or where the stock does not carry the demand.
 */
export function wholeCover(supply: readonly Supply[], demand: bigint): bigint | undefined {
  const last = supply.at(-1);
  if (demand <= 0n) return 0n;
  if (last === undefined) return undefined;
  let choices: readonly Choice[] = [{ cost: 0n, weight: 0n }];
  for (const { capacity, cost, stock } of supply.slice(0, -1)) {
    const needed = (demand + capacity - 1n) / capacity;
    const most = stock !== undefined && stock < needed ? stock : needed;
    if (BigInt(choices.length) * (most + 1n) > BigInt(MOST_CHOICES)) return undefined;
    const more: Choice[] = [];
    for (const choice of choices) {
      for (let sheets = 0n; sheets <= most; sheets++) {
        const weight = choice.weight + sheets * capacity;
        more.push({ cost: choice.cost + sheets * cost, weight: weight < demand ? weight : demand });
      }
    }
    choices = withoutWorse(more);
  }
  let least: bigint | undefined;
  for (const { cost, weight } of choices) {
    const needed = (demand - weight + last.capacity - 1n) / last.capacity;
    if (last.stock !== undefined && needed > last.stock) continue;
    const total = cost + needed * last.cost;
    if (least === undefined || total < least) least = total;
  }
  return least;
}

/** Leaves out every choice that costs no less and carries no more than another. */
function withoutWorse(choices: Choice[]): readonly Choice[] {
  choices.sort((a, b) => compare(a.cost, b.cost) || compare(b.weight, a.weight));
  let most = -1n;
  return choices.filter(({ weight }) => {
    if (weight <= most) return false;
    most = weight;
    return true;
  });
}

function compare(a: bigint, b: bigint): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
