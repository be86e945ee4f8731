import type { Rates } from "@sheetwright/cards";
import { costText, costUnits } from "../group/cost-units.js";
import type { Plan, PlanCosts } from "../plan-model.js";

/** A hundredth of the currency in units of a cost times units of minutes, with sixty minutes to the hour. */
const HUNDREDTH = 60n * 1_000_000n;

/**
 * What the work on the copies and spares that a plan completes costs, and that with the paper. Exact up to the last step:
 * the cost of work is rounded up to hundredths.
 *
 * @param paper Cost of the sheets used; `null` where it is not known.
 */
export function planCosts(rates: Rates, complete: Plan["complete"], paper: string | null): PlanCosts {
  const { currency, hour, minutesPerCard } = rates;
  const copies = complete.reduce((sum, one) => sum + one.complete + (one.spares?.made ?? 0), 0);
  const minutes = minutesPerCard === null ? null : BigInt(copies) * costUnits(minutesPerCard);
  const hundredths =
    minutes === null || hour === null ? null : (minutes * costUnits(hour) + HUNDREDTH - 1n) / HUNDREDTH;
  const work = hundredths === null ? null : hundredths * 100n;
  return {
    currency,
    copies,
    minutes: minutes === null ? null : minutesText(minutes),
    work: work === null ? null : costText(work),
    total: work === null || paper === null ? null : costText(work + costUnits(paper)),
  };
}

/** Minutes in their shortest form: `156`, `97.5`. */
function minutesText(units: bigint): string {
  return costText(units).replace(/\.?0+$/, "");
}
