/**
 * Divides an amount of whole units by weights, so that the shares add up to it exactly: each gets its exact share rounded
 * down, and what is left goes, a unit each, to those that lost most by that, of equals to the first (largest remainder). All
 * weights 0 count as equal; of no weights nothing is shared out. No weight and no amount is below 0.
 */
export function shareOut(amount: bigint, weights: readonly bigint[]): readonly bigint[] {
  const sum = weights.reduce((total, weight) => total + weight, 0n);
  if (sum === 0n)
    return weights.length === 0
      ? []
      : shareOut(
          amount,
          weights.map(() => 1n),
        );
  const shares = weights.map((weight) => (amount * weight) / sum);
  const left = shares.reduce((rest, share) => rest - share, amount);
  const lost = weights.map((weight, index) => ({ index, part: (amount * weight) % sum }));
  lost.sort((a, b) => (a.part === b.part ? a.index - b.index : a.part < b.part ? 1 : -1));
  for (const { index } of lost.slice(0, Number(left))) shares[index] = (shares[index] ?? 0n) + 1n;
  return shares;
}
