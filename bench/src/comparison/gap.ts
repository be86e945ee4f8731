import type { Question } from "../instances/family.js";
import { isBetter } from "./row.js";

/** The better of two bounds, as the question counts; `null` where there is none. */
export function betterBound(question: Question, a: number | null, b: number | null): number | null {
  if (a === null || b === null) return a ?? b;
  // A bound that leaves less room is the better one.
  return isBetter(question, a, b) ? b : a;
}

/** How much worse a result is than a bound; 0 where it reaches it, `null` where one of them is missing. */
export function gapTo(question: Question, measured: number | null, bound: number | null): number | null {
  if (measured === null || bound === null) return null;
  return isBetter(question, bound, measured) ? Math.abs(measured - bound) : 0;
}
