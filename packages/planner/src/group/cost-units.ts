/** Money in whole units of 1/10,000 of the currency, so that sums are exact. */

const DECIMALS = 4;
const UNITS = 10_000n;

/** Reads decimal text with up to four decimals, such as `0.35`, as 1/10,000 of the currency. Throws a RangeError for other text. */
export function costUnits(text: string): bigint {
  const parts = /^(?<whole>\d+)(?:\.(?<part>\d{1,4}))?$/.exec(text)?.groups;
  if (parts === undefined)
    throw new RangeError(`Expected a cost with at most ${DECIMALS} decimals, found "${text}".`);
  return BigInt(parts.whole ?? "") * UNITS + BigInt((parts.part ?? "").padEnd(DECIMALS, "0"));
}

/** Writes 1/10,000 of the currency as decimal text with two decimals, or as many more as it takes: `1.05`, `0.3333`. */
export function costText(units: bigint): string {
  const part = (units % UNITS).toString().padStart(DECIMALS, "0");
  return `${units / UNITS}.${part.slice(0, 2)}${part.slice(2).replace(/0+$/, "")}`;
}
