/**
 * Guillotine best fit on free rectangles: pieces in some order, each into the free rectangle that it fits best, with all
 * open sheets in view; a new sheet where there is none.
 *
 * Source: J. Jylanki, A thousand ways to pack the bin (2010), guillotine variants; leftovers merge only within one level
 * of cuts (see cut-forest.ts), so every result is cuttable. Pieces x free rectangles steps. No guarantee on waste.
 */
import type { CompiledProblem, CompiledSheet, Lay } from "./compiled-problem.js";
import {
  canCut,
  copyForest,
  cutPiece,
  type FirstCut,
  type Forest,
  type Free,
  openSheet,
  plantForest,
} from "./cut-forest.js";
import { isDue, type Meter } from "./meter.js";
import type { RandomStream } from "./random-stream.js";
import type { Rules } from "./rules.js";

/** What is still to be cut, and from what. */
export interface Demand {
  /** Copies by kind index. */
  readonly wanted: readonly number[];
  /** Sheets left by sheet index. */
  readonly stock: readonly number[];
}

interface Place {
  readonly free: Free;
  readonly lay: Lay;
  readonly first: FirstCut;
}

/** Kinds in placing order; `copies` of each come one after the other, kinds of one group as one entry. */
interface QueueEntry {
  readonly members: readonly { readonly kind: number; readonly copies: number }[];
  /** True where all members must lie on one sheet. */
  readonly whole: boolean;
}

/** One start of best fit. Returns undefined where it was stopped on the way. */
export function* bestFit(
  problem: CompiledProblem,
  demand: Demand,
  rules: Rules,
  random: RandomStream,
  meter: Meter,
): Generator<void, Forest | undefined, void> {
  let forest = plantForest(problem);
  const stock = [...demand.stock];
  let queue = queueOf(problem, demand.wanted, rules, random);
  let onlyLast = rules.oneByOne;
  while (queue.length > 0) {
    const left: QueueEntry[] = [];
    let placed = false;
    for (const entry of queue) {
      if (entry.whole) {
        const grown = placeGroup(forest, entry, rules, stock, meter);
        if (grown) {
          forest = grown;
          placed = true;
        }
        continue;
      }
      const member = entry.members[0] as QueueEntry["members"][number];
      for (let copy = 0; copy < member.copies; copy++) {
        const place =
          findPlace(forest, member.kind, rules, random, meter, onlyLast) ??
          (onlyLast && placed ? undefined : openFor(forest, member.kind, rules, stock));
        if (place === undefined) {
          if (onlyLast)
            left.push({ members: [{ kind: member.kind, copies: member.copies - copy }], whole: false });
          break;
        }
        placed = true;
        cutPiece(forest, place.free, member.kind, place.lay, place.first);
        if (isDue(meter)) {
          yield;
          if (meter.stopped) return undefined;
        }
      }
    }
    // One sheet at a time: what found no room waits for the next sheet; what no sheet takes is given up.
    if (!placed) {
      if (!onlyLast) break;
      onlyLast = false;
    }
    queue = left;
  }
  return forest;
}

/** Kinds in the order in which a start places them: required copies first, then by the rules' key. */
function queueOf(
  problem: CompiledProblem,
  wanted: readonly number[],
  rules: Rules,
  random: RandomStream,
): QueueEntry[] {
  const fill = problem.source.aim === "fill";
  const entries: { rank: number; key: number; entry: QueueEntry }[] = [];
  const groups = new Map<number, { key: number; members: { kind: number; copies: number }[] }>();
  for (const kind of problem.kinds) {
    const copies = wanted[kind.index] ?? 0;
    if (copies <= 0) continue;
    const lay = firstLay(kind.lays);
    if (lay === undefined) continue;
    const disturbed = 1 + rules.noise * (random.unit() - 0.5);
    const density = fill ? kind.value / (lay.width * lay.height) : 1;
    const key = rules.order(lay.width, lay.height) * disturbed * density;
    if (kind.group >= 0) {
      const group = groups.get(kind.group) ?? { key: 0, members: [] };
      group.key = Math.max(group.key, key);
      group.members.push({ kind: kind.index, copies });
      groups.set(kind.group, group);
      continue;
    }
    const least = fill ? Math.min(kind.least, copies) : copies;
    const add = (part: number, rank: number): void => {
      if (part > 0)
        entries.push({ rank, key, entry: { members: [{ kind: kind.index, copies: part }], whole: false } });
    };
    add(least, 1);
    add(copies - least, 0);
  }
  // Groups need a sheet with much room, so they come while the sheets are fresh.
  for (const { key, members } of groups.values())
    entries.push({ rank: 2, key, entry: { members, whole: true } });
  entries.sort((a, b) => b.rank - a.rank || b.key - a.key || firstKind(a.entry) - firstKind(b.entry));
  return entries.map((item) => item.entry);
}

function firstKind(entry: QueueEntry): number {
  return entry.members[0]?.kind ?? 0;
}

function firstLay(lays: readonly (readonly Lay[])[]): Lay | undefined {
  for (const list of lays) if (list[0]) return list[0];
  return undefined;
}

function findPlace(
  forest: Forest,
  kind: number,
  rules: Rules,
  random: RandomStream | undefined,
  meter: Meter,
  onlyLast: boolean,
): Place | undefined {
  const { problem } = forest;
  const lays = problem.kinds[kind]?.lays ?? [];
  const lastBin = forest.bins.length - 1;
  let best: Free | undefined;
  let bestLay: Lay | undefined;
  let bestFirst: FirstCut = "across";
  let bestScore = Number.POSITIVE_INFINITY;
  // Now and then the best place is passed over: plain greed repeats its mistakes.
  const passOver = isWhim(rules, random);
  const onlyLay = isWhim(rules, random) && random ? random.below(2) : undefined;
  let second: Place | undefined;
  for (const free of forest.free) {
    if (onlyLast && free.bin.index !== lastBin) continue;
    const ways = lays[free.bin.sheet.index] ?? [];
    for (let way = 0; way < ways.length; way++) {
      if (onlyLay !== undefined && way !== onlyLay % ways.length) continue;
      const lay = ways[way] as Lay;
      meter.work++;
      const across = free.width - lay.width;
      const down = free.height - lay.height;
      if (across < 0 || down < 0) continue;
      const score = rules.fit(across, down, lay.width, lay.height);
      if (score >= bestScore) continue;
      const first = chooseCut(problem, free, lay, rules);
      if (first === undefined) continue;
      if (passOver && best && bestLay) second = { free: best, lay: bestLay, first: bestFirst };
      best = free;
      bestLay = lay;
      bestFirst = first;
      bestScore = score;
    }
  }
  if (best === undefined || bestLay === undefined) return undefined;
  if (second) return second;
  if (isWhim(rules, random)) {
    const other = bestFirst === "across" ? "down" : "across";
    if (canCut(problem, best, bestLay.width, bestLay.height, other)) bestFirst = other;
  }
  return { free: best, lay: bestLay, first: bestFirst };
}

function isWhim(rules: Rules, random: RandomStream | undefined): boolean {
  return rules.whim > 0 && random !== undefined && random.below(rules.whim) === 0;
}

function chooseCut(problem: CompiledProblem, free: Free, lay: Lay, rules: Rules): FirstCut | undefined {
  const across = rules.split(free.width - lay.width, free.height - lay.height, free.width, free.height);
  const preferred = across ? "across" : "down";
  if (canCut(problem, free, lay.width, lay.height, preferred)) return preferred;
  const other = across ? "down" : "across";
  return canCut(problem, free, lay.width, lay.height, other) ? other : undefined;
}

/** Opens the sheet that the rules like best among those that can give the kind. */
function openFor(forest: Forest, kind: number, rules: Rules, stock: number[]): Place | undefined {
  const lays = forest.problem.kinds[kind]?.lays ?? [];
  const sheets = forest.problem.sheets
    .filter((sheet) => (stock[sheet.index] ?? 0) > 0 && (lays[sheet.index]?.length ?? 0) > 0)
    .sort((a, b) => price(rules, a) - price(rules, b) || a.index - b.index);
  for (const sheet of sheets) {
    const free = openSheet(forest, sheet);
    let best: Place | undefined;
    let bestScore = Number.POSITIVE_INFINITY;
    for (const lay of lays[sheet.index] ?? []) {
      const first = chooseCut(forest.problem, free, lay, rules);
      const score = rules.fit(free.width - lay.width, free.height - lay.height, lay.width, lay.height);
      if (first === undefined || score >= bestScore) continue;
      bestScore = score;
      best = { free, lay, first };
    }
    if (best) {
      stock[sheet.index] = (stock[sheet.index] ?? 0) - 1;
      return best;
    }
    forest.bins.pop();
    forest.free.pop();
  }
  return undefined;
}

function price(rules: Rules, sheet: CompiledSheet): number {
  return rules.sheet(sheet.cost, sheet.width * sheet.height);
}

/** Places a whole group on one sheet, open or new, or nothing of it. */
function placeGroup(
  forest: Forest,
  entry: QueueEntry,
  rules: Rules,
  stock: number[],
  meter: Meter,
): Forest | undefined {
  for (let index = 0; index < forest.bins.length; index++) {
    const trial = copyForest(forest);
    if (fillBin(trial, index, entry, rules, meter)) return trial;
  }
  const sheets = forest.problem.sheets
    .filter((sheet) => (stock[sheet.index] ?? 0) > 0)
    .sort((a, b) => price(rules, a) - price(rules, b) || a.index - b.index);
  for (const sheet of sheets) {
    const trial = copyForest(forest);
    openSheet(trial, sheet);
    if (!fillBin(trial, trial.bins.length - 1, entry, rules, meter)) continue;
    stock[sheet.index] = (stock[sheet.index] ?? 0) - 1;
    return trial;
  }
  return undefined;
}

function fillBin(trial: Forest, bin: number, entry: QueueEntry, rules: Rules, meter: Meter): boolean {
  const own: Forest = {
    problem: trial.problem,
    bins: trial.bins,
    free: trial.free.filter((free) => free.bin.index === bin),
  };
  for (const { kind, copies } of entry.members) {
    for (let copy = 0; copy < copies; copy++) {
      const place = findPlace(own, kind, rules, undefined, meter, false);
      if (place === undefined) return false;
      cutPiece(own, place.free, kind, place.lay, place.first);
    }
  }
  const others = trial.free.filter((free) => free.bin.index !== bin);
  trial.free.splice(0, trial.free.length, ...others, ...own.free);
  return true;
}
