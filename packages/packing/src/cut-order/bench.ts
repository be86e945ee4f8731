/** Work in hand while an order of cuts is being made, one setting of the fence after the other. */

import { afterCut, isCut, wholeLevel } from "./find-cuts.js";
import type { Shape } from "./find-shapes.js";
import type { Rest } from "./hold-rule.js";
import { findOffers, gainOf, type Needs, needsOf, type Offer, wholeWorth } from "./needs.js";
import type { Order, Setup, Step } from "./order.js";

/** What is left of each level, and how the trimmer is set; changed in place by {@link workAt}. */
export interface Bench extends Order {
  readonly shapes: readonly Shape[];
  readonly rests: Rest[];
  readonly needs: Needs[];
  /** What can be done next to each level; worked out when it is asked for. */
  readonly offers: (readonly Offer[] | undefined)[];
  /** For each size, the levels that need a setting for it. */
  readonly demand: Map<number, number>;
  /** For each shape, the places that must still be cut free before all its members are there. */
  readonly waiting: number[];
  /** Shapes that are there and not cut to the end. */
  open: number[];
  distance: number | undefined;
  axis: "x" | "y" | undefined;
  readonly steps: Step[];
  settings: number;
  quarterTurns: number;
}

function worthOf(bench: Bench, size: number): number {
  return Math.floor(wholeWorth / Math.max(1, bench.demand.get(size) ?? 0));
}

function countDemand(bench: Bench, { counts, spared }: Needs, by: 1 | -1): void {
  for (const size of counts.keys()) {
    if (size !== spared) bench.demand.set(size, (bench.demand.get(size) ?? 0) + by);
  }
}

function renewNeeds(bench: Bench, shape: number): void {
  countDemand(bench, bench.needs[shape]!, -1);
  const needs = needsOf(bench.shapes[shape]!, bench.rests[shape]!, (size) => worthOf(bench, size));
  bench.needs[shape] = needs;
  countDemand(bench, needs, 1);
}

/** All levels uncut, and those on the bench that wait for none. */
export function newBench(shapes: readonly Shape[], setup: Setup): Bench {
  const rests = shapes.map(wholeLevel);
  const bench: Bench = {
    shapes,
    rests,
    needs: shapes.map((shape, i) => ({
      ...needsOf(shape, rests[i]!, () => wholeWorth),
      spared: undefined,
    })),
    offers: new Array(shapes.length),
    demand: new Map(),
    waiting: shapes.map(({ parents }) => parents.length),
    open: [],
    distance: setup.distance,
    axis: setup.axis,
    steps: [],
    settings: 0,
    quarterTurns: 0,
  };
  // First every size counts, then each level spares the one that fewest others share.
  for (const needs of bench.needs) countDemand(bench, needs, 1);
  for (let i = 0; i < shapes.length; i++) {
    renewNeeds(bench, i);
    if (bench.waiting[i] === 0) bench.open.push(i);
  }
  return bench;
}

/** A bench to try something out on. */
export function copyBench(bench: Bench): Bench {
  return {
    ...bench,
    rests: [...bench.rests],
    needs: [...bench.needs],
    offers: [...bench.offers],
    demand: new Map(bench.demand),
    waiting: [...bench.waiting],
    open: [...bench.open],
    steps: [...bench.steps],
  };
}

function offersOf(bench: Bench, shape: number): readonly Offer[] {
  bench.offers[shape] ??= findOffers(bench.shapes[shape]!, bench.rests[shape]!);
  return bench.offers[shape];
}

function gainFor(bench: Bench, shape: number, offer: Offer): number {
  const worth = (size: number): number => worthOf(bench, size);
  return gainOf(bench.shapes[shape]!, bench.rests[shape]!, bench.needs[shape]!, offer, worth);
}

function freePart(bench: Bench, shape: number, part: number): void {
  const child = bench.shapes[shape]!.children[part]!;
  if (child < 0) return;
  bench.waiting[child]! -= 1;
  if (bench.waiting[child] !== 0) return;
  bench.open.push(child);
  renewNeeds(bench, child);
}

function makeCuts(bench: Bench, shape: number, { cuts }: Offer): void {
  const { axis } = bench.shapes[shape]!;
  for (const cut of cuts) {
    const rest = bench.rests[shape]!;
    const after = afterCut(rest, cut);
    bench.rests[shape] = after;
    bench.steps.push({ shape, cut });
    if (cut.takes !== "remainder") freePart(bench, shape, cut.takes === "first" ? rest.first : rest.last);
    if (isCut(after)) freePart(bench, shape, after.first);
  }
  renewNeeds(bench, shape);
  bench.offers[shape] = undefined;
  if (bench.axis !== undefined && bench.axis !== axis) bench.quarterTurns += 1;
  bench.axis = axis;
}

/** The offer of most gain, at least `leastGain`, that a setting serves on one level. */
function bestOffer(bench: Bench, shape: number, distance: number, leastGain: number): Offer | undefined {
  let best: Offer | undefined;
  let bestGain = leastGain;
  for (const offer of offersOf(bench, shape)) {
    if (offer.distance !== distance) continue;
    const gain = gainFor(bench, shape, offer);
    if (gain < bestGain || (gain === bestGain && best !== undefined)) continue;
    best = offer;
    bestGain = gain;
  }
  return best;
}

function clearAway(bench: Bench): void {
  bench.open = bench.open.filter((shape) => !isCut(bench.rests[shape]!));
}

/** Makes every cut of some gain that one setting serves, on one axis after the other. */
export function workAt(bench: Bench, distance: number): void {
  if (bench.distance !== distance) bench.settings += 1;
  bench.distance = distance;
  const stepsBefore = bench.steps.length;
  const workOn = (axis: "x" | "y"): boolean => {
    const before = bench.steps.length;
    // Levels that are cut free on the way join the end of the list.
    for (let i = 0; i < bench.open.length; i++) {
      const shape = bench.open[i]!;
      if (bench.shapes[shape]!.axis !== axis) continue;
      for (
        let offer = bestOffer(bench, shape, distance, 1);
        offer !== undefined;
        offer = bestOffer(bench, shape, distance, 1)
      ) {
        makeCuts(bench, shape, offer);
      }
    }
    clearAway(bench);
    return bench.steps.length > before;
  };
  const start = bench.axis ?? "x";
  const other = start === "x" ? "y" : "x";
  while (workOn(start) || workOn(other)) {
    // Until neither direction has anything left for this setting.
  }
  if (bench.steps.length > stepsBefore) return;
  // No cut here shortens the work, yet one must be made: the first that the setting serves.
  for (const shape of bench.open) {
    const offer = bestOffer(bench, shape, distance, 0);
    if (offer === undefined) continue;
    makeCuts(bench, shape, offer);
    break;
  }
  clearAway(bench);
}

/** What one setting would do. */
export interface NextSetting {
  readonly distance: number;
  /** Worth of the settings not needed any more afterwards; see {@link gainOf}. */
  readonly gain: number;
  /** Parts cut free on which other levels wait. */
  readonly frees: number;
  /** Levels that need this setting, those not there yet included. */
  readonly demand: number;
  /** Whether it serves a cut without a quarter turn. */
  readonly sameAxis: boolean;
}

function freedBy({ children }: Shape, rest: Rest, { after }: Offer): number {
  let freed = 0;
  const count = (part: number): void => {
    if (children[part]! >= 0) freed += 1;
  };
  for (let i = rest.first; i < after.first; i++) count(i);
  for (let i = after.last + 1; i <= rest.last; i++) count(i);
  if (isCut(after)) count(after.first);
  return freed;
}

/** Every setting that a cut can be made at now. */
export function nextSettings(bench: Bench): NextSetting[] {
  const found = new Map<number, NextSetting>();
  for (const shape of bench.open) {
    const straight = bench.axis === undefined || bench.shapes[shape]!.axis === bench.axis;
    const best = new Map<number, { gain: number; frees: number }>();
    for (const offer of offersOf(bench, shape)) {
      const gain = gainFor(bench, shape, offer);
      const known = best.get(offer.distance);
      if (known !== undefined && known.gain >= gain) continue;
      best.set(offer.distance, { gain, frees: freedBy(bench.shapes[shape]!, bench.rests[shape]!, offer) });
    }
    for (const [distance, { gain, frees }] of best) {
      const known = found.get(distance);
      found.set(distance, {
        distance,
        gain: gain + (known?.gain ?? 0),
        frees: frees + (known?.frees ?? 0),
        demand: bench.demand.get(distance) ?? 0,
        sameAxis: (straight && gain > 0) || (known?.sameAxis ?? false),
      });
    }
  }
  return [...found.values()];
}
