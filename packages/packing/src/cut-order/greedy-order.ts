/**
 * Puts the cuts of a layout in an order with few fence settings, one setting after the other: at each setting, every
 * cut that it serves and that brings its level nearer to its end is made, on every part that is there; then the most
 * useful next setting is chosen. A setting that several levels need is worth a share to each of them, so that it is
 * best chosen once all of them are there. No guarantee: how often it is right is measured in the tests against
 * `exactOrder` and a brute force.
 */

import { type Bench, copyBench, type NextSetting, newBench, nextSettings, workAt } from "./bench.js";
import type { Shape } from "./find-shapes.js";
import { wholeWorth } from "./needs.js";
import { isBetterOrder, type Order, type Setup } from "./order.js";

/** Puts the more useful setting first. */
type Rule = (a: NextSetting, b: NextSetting) => number;

// In the end no quarter turn, then the larger distance, as falling settings keep parts large.
const lastResort: Rule = (a, b) =>
  b.demand - a.demand || Number(b.sameAxis) - Number(a.sameAxis) || b.distance - a.distance;

// A quarter of a setting for each part that others wait on; 0, a half and a whole did no better on random layouts.
const freeingWorth = wholeWorth / 4;

const mostGain: Rule = (a, b) => b.gain - a.gain || lastResort(a, b);

/** What is tried. Freeing other levels first comes first, as it does best on large layouts. */
const rules: readonly Rule[] = [
  (a, b) => b.frees - a.frees || mostGain(a, b),
  (a, b) => b.gain - a.gain + (b.frees - a.frees) * freeingWorth || lastResort(a, b),
  mostGain,
];

/** Settings tried before each step of the look-ahead; more did not help on random layouts. */
const mostTried = 8;

function finishBy(rule: Rule, bench: Bench): Order {
  while (bench.open.length > 0) {
    const best = nextSettings(bench).reduce((a, b) => (rule(a, b) > 0 ? b : a));
    workAt(bench, best.distance);
  }
  return bench;
}

/**
 * The best order by the first `mostRules` of three rules for the next setting. Work for each of them: settings x levels
 * that lie open at once.
 */
export function greedyOrder(shapes: readonly Shape[], setup: Setup, mostRules = rules.length): Order {
  const orders = rules.slice(0, mostRules).map((rule) => finishBy(rule, newBench(shapes, setup)));
  return orders.reduce((best, order) => (isBetterOrder(order, best) ? order : best));
}

/**
 * Looks ahead: before each setting, the eight most useful ones are tried out to the end by each of the rules, and the
 * one that leads to the best order is taken. Never worse than {@link greedyOrder}, and about 24 times its work for
 * every setting.
 */
export function foresightedOrder(shapes: readonly Shape[], setup: Setup): Order {
  let best = greedyOrder(shapes, setup);
  const bench = newBench(shapes, setup);
  while (bench.open.length > 0) {
    let chosen: { readonly distance: number; readonly order: Order } | undefined;
    for (const { distance } of nextSettings(bench).sort(mostGain).slice(0, mostTried)) {
      for (const rule of rules) {
        const trial = copyBench(bench);
        workAt(trial, distance);
        const order = finishBy(rule, trial);
        if (chosen === undefined || isBetterOrder(order, chosen.order)) chosen = { distance, order };
      }
    }
    if (chosen === undefined) break;
    if (isBetterOrder(chosen.order, best)) best = chosen.order;
    workAt(bench, chosen.distance);
  }
  return best;
}
