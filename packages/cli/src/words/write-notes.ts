import { formatLength, TICKS_PER_INCH, type Ticks } from "@sheetwright/measure";
import type { PlanSummary } from "../plan/plan-summary.js";
import { counted } from "./counted.js";

/** The usual cut of a craft trimmer (common practice): a longer one is worth a word. */
const USUAL_TRIMMER: Ticks = 12 * TICKS_PER_INCH;

/** What a person needs to know besides the plan. In our own words; the maker of the tool has the last one. */
export const BLADE_CAUTION = [
  "A blade that cuts card cuts fingers. Keep hands off its line, cut narrow parts along a metal ruler,",
  "close or lock the blade whenever you stop, and do first what the maker of your tool says.",
] as const;

/**
 * Writes what is to be minded in a plan: a search that was ended early, narrow parts and long cuts. Gives lines, each note
 * after an empty one.
 *
 * @param settings how the two limits are called where they are set.
 */
export function writeNotes(
  summary: Pick<PlanSummary, "narrowCuts" | "longestCut" | "hold" | "endedEarly" | "units">,
  settings: { readonly hold: string; readonly longestCut: string },
): readonly string[] {
  const { narrowCuts, longestCut, units } = summary;
  const length = (ticks: Ticks): string => formatLength(ticks, { unit: units.shown });
  const notes: string[] = [];
  if (summary.endedEarly) {
    notes.push(
      "The search was ended early: this is the best plan so far, and another run may give another one.",
    );
  }
  if (narrowCuts > 0) {
    const [verb, them] = narrowCuts === 1 ? ["holds", "it"] : ["hold", "them"];
    const narrow = `${counted(narrowCuts, "cut")} ${verb} a part narrower than ${length(summary.hold)} (${settings.hold})`;
    notes.push(`${narrow}; the cut lists mark ${them}: cut along a metal ruler.`);
  }
  if (longestCut > USUAL_TRIMMER) {
    notes.push(
      `The longest cut is ${length(longestCut)}. If that is more than your tool cuts, set ${settings.longestCut}.`,
    );
  }
  return notes.flatMap((note) => ["", note]);
}
