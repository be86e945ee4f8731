/** In which sizes a kind can be cut from a sheet, by its forms and turns alone. */

import type { Size } from "../model.js";
import type { KindFacts, ProblemFacts, SheetFacts } from "./read-problem.js";

/** A size that a kind can have on a sheet, with the size of its hidden part. */
export interface Way extends Size {
  readonly hidden: Size | null;
}

/** The ways that a kind can lie on a sheet, among those that fit its usable part. */
export function waysToLie(kind: KindFacts, sheet: SheetFacts): readonly Way[] {
  const ways: Way[] = [];
  for (const { width, height, turnsOn, hidden } of kind.forms) {
    const turns = turnsOn(sheet.id);
    if (turns === "upright" || turns === "both") ways.push({ width, height, hidden });
    if (turns === "turned" || turns === "both") {
      const turnedHidden = hidden && { width: hidden.height, height: hidden.width };
      ways.push({ width: height, height: width, hidden: turnedHidden });
    }
  }
  return ways.filter((way) => way.width <= sheet.usable.width && way.height <= sheet.usable.height);
}

/** Whether any wanted kind is small enough, one way or the other, to come out of a hidden part. */
export function isWindowOfUse(facts: ProblemFacts, hidden: Size): boolean {
  const short = Math.min(hidden.width, hidden.height);
  const long = Math.max(hidden.width, hidden.height);
  for (const { quantity, forms } of facts.kinds.values()) {
    if (quantity === 0n) continue;
    if (
      forms.some(({ width, height }) => Math.min(width, height) <= short && Math.max(width, height) <= long)
    ) {
      return true;
    }
  }
  return false;
}
