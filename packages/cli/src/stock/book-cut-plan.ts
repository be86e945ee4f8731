import type { Size } from "@sheetwright/measure";
import { applyStockChange, type StockChange, stockChange } from "@sheetwright/planner";
import { type Fault, FaultsFound } from "../fault.js";
import { bookLayouts, type SaidDone } from "./book-layouts.js";
import type { CutPlan } from "./read-cut-plan.js";
import type { Booking, StockData } from "./stock-data.js";
import { stockFaults } from "./stock-faults.js";

/** A stock with a plan booked, and what that took and gave back. */
export interface BookedCutPlan {
  readonly data: StockData;
  readonly changes: readonly StockChange[];
}

/**
 * Books what was cut of a plan since it was booked last: takes that from the stock, adds what is left, and notes it under
 * the plan's identity. Throws {@link FaultsFound} where nothing is new, or the stock has less than was taken.
 *
 * @param keep a size of leftovers that is kept besides what the plan keeps.
 * @param file the stock file's path as it was given, for the faults.
 */
export function bookCutPlan(
  stock: StockData,
  cut: CutPlan,
  said: SaidDone,
  keep: Size | null,
  file: string,
): BookedCutPlan {
  const earlier = stock.booked.find(({ plan }) => plan === cut.identity);
  const continued = [earlier, stock.booked.find(({ plan }) => plan === cut.after)].find(
    (one) => (one?.continuedBy ?? cut.identity) !== cut.identity,
  );
  if (continued !== undefined) throw new FaultsFound([isContinued(continued, earlier)]);
  const found = bookLayouts(cut, said, earlier);
  if ("faults" in found) throw new FaultsFound(found.faults);
  const changes = stockChange(cut.plan, found.progress, keep ?? undefined);
  const changed = applyStockChange(stock, changes, stock.units);
  if (changed.faults.length > 0) throw new FaultsFound(stockFaults(changed.faults, file, stock.units));
  const booked =
    earlier === undefined
      ? [...stock.booked, found.booking]
      : stock.booked.map((one) => (one === earlier ? found.booking : one));
  return { data: { ...stock, ...changed.stock, booked: booked.map(withNext(cut)) }, changes };
}

/** Notes a plan at the one that it goes on from. */
function withNext({ identity, after }: CutPlan): (booking: Booking) => Booking {
  return (booking) => (booking.plan === after ? { ...booking, continuedBy: identity } : booking);
}

/** What is cut by the one plan is not to be cut by the other as well. */
function isContinued({ title, continuedBy = "" }: Booking, own: Booking | undefined): Fault {
  const which =
    own?.continuedBy === continuedBy ? "this plan" : `the plan of ${title} that this one goes on from`;
  const message =
    `${which} was gone on from by another plan that is booked, ${continuedBy.slice(0, 8)}, so no more of it is cut. ` +
    "Go on from that one, or plan anew.";
  return { code: "gone-on", place: { option: "sheetwright stock book" }, message };
}
