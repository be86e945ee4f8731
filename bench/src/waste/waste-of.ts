/** Waste in percent with one decimal, from the use in percent; `null` stays `null`. */
export function wasteOf(usePercent: number | null): number | null {
  return usePercent === null ? null : Math.round(1000 - usePercent * 10) / 10;
}
