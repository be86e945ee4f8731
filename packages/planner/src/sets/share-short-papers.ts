/**
 * Papers that are short, of several groups: complete cards first, over all of these papers together.
 *
 * A group that is planned by itself completes the cards that its own papers are enough for, whatever the others give; so one
 * may cut mats for cards that another cannot finish. The rule of packing for stock that is short (docs/packing.md) is
 * therefore gone through once more, with numbers of copies that every group must give: in each round the largest common share
 * of the cards that still grow, by halving, then one more of each, in the order of the project; a card that cannot have one
 * more grows no longer. The cards are those that some short paper is needed for, and that no paper rules out. Then each group
 * fills what is left with the most value.
 *
 * A group is searched only where nothing that was packed of it before holds what is asked, where its area is enough, and
 * where no less was looked for in vain. It guarantees that the share of the first round, and step by step what follows, is no
 * smaller than what the groups gave by themselves. It does not promise the most copies that are possible.
 */

import type { Card, Paper, Piece } from "@sheetwright/cards";
import type { Effort, Packing, Problem, Sheet, Size } from "@sheetwright/packing";
import type { GroupTask } from "../group/group-problem.js";
import { asOneSet } from "../search/grain-wish.js";
import type { GroupSearch, Search } from "../search/group-search.js";
import { restate } from "../search/restate.js";
import { alongGrain } from "../search/search-group.js";
import { sumOf } from "../totals/areas.js";

/** A group of papers that is short. */
export interface ShortGroup {
  /** Index of the group. */
  readonly group: number;
  readonly task: GroupTask;
  readonly pieces: readonly Piece[];
  /** What was planned of it by itself. */
  readonly packing: Packing;
}

/** Numbers of copies by the number of the card. */
type Copies = ReadonlyMap<Card["number"], number>;

/** Attempts take less effort than the plan itself. */
const ATTEMPT_EFFORT: Readonly<Record<Effort, Effort>> = {
  quick: "quick",
  standard: "quick",
  thorough: "standard",
};

/** What was found. */
export interface SharedPapers {
  /** The groups whose packing changes, by their index. */
  readonly packings: ReadonlyMap<number, Packing>;
  /** Whether the search was asked to end early; then nothing changes. */
  readonly cancelled: boolean;
}

/**
 * Plans short groups anew, so that all of them complete the same copies. Nothing changes where one group by itself has
 * followed the rule already.
 *
 * @param cards Those that can be completed: every other card's pieces are cut from what is left.
 */
export function* shareShortPapers(
  groups: readonly ShortGroup[],
  cards: readonly Card[],
  papers: readonly Paper[],
  effort: Effort,
  searchOf: (group: number) => GroupSearch,
): Search<SharedPapers> {
  // Packing counts no copies of a card whose pieces are in part cut already.
  const isPartlyCut = groups.some(({ pieces }) => pieces.some(({ cutAlready = 0 }) => cutAlready > 0));
  if (groups.length < 2 && !isPartlyCut) return { packings: new Map(), cancelled: false };
  const needed = new Set(
    groups.flatMap(({ pieces }) => pieces.flatMap(({ card, quantity }) => (quantity > 0 ? [card] : []))),
  );
  const wanted: Copies = new Map(
    cards
      .filter(({ number, copies }) => needed.has(number) && copies > 0)
      .map(({ number, copies }) => [number, copies]),
  );
  const stocks = groups.map((one) => shortStock(one, searchOf(one.group), ATTEMPT_EFFORT[effort]));
  const gives = function* (copies: Copies): Search<boolean> {
    for (const stock of stocks) if (!(yield* stock.gives(copies))) return false;
    return true;
  };
  const isStopped = (): boolean => stocks.some(({ search }) => search.isStopped());

  let copies: Copies = new Map([...wanted.keys()].map((card) => [card, 0]));
  // What bags lack they all lack: a copy for each of them first, then what the papers of one pile give besides.
  const steps = new Set(groups.map(({ task }) => task.bags ?? 1));
  for (const step of [...steps].sort((a, b) => b - a))
    copies = yield* mostByRule(wanted, copies, step, gives);
  const packings = new Map<number, Packing>();
  for (const { own, search, known, least } of stocks) {
    if (isStopped()) break;
    const { problem } = own.task;
    const asked = least(copies);
    const kinds = problem.kinds.map((kind, k) => ({ ...kind, least: asked[k] ?? 0 }));
    const filled = yield* search.pack({ ...problem, kinds, sheets: asStock(problem), aim: "fill" }, "sets");
    const [best = own.packing] = [...known, filled].filter((one) => holds(one, asked)).sort(byWorth);
    if (best !== own.packing) {
      const searches = best === filled ? [own.packing, filled] : [own.packing, filled, best];
      const free = restate(problem, best.layouts, own.packing.bound, searches);
      packings.set(own.group, yield* alongGrain(own.task, free, own.pieces, papers, search));
    }
  }
  return isStopped() ? { packings: new Map(), cancelled: true } : { packings, cancelled: false };
}

/**
 * The rule, on from some copies and by so many at a time, which all that are wanted are multiples of. `gives` says whether all
 * groups were found to give so many copies; what it gives once it must give again.
 */
export function* mostByRule(
  wanted: Copies,
  from: Copies,
  step: number,
  gives: (copies: Copies) => Search<boolean>,
): Search<Copies> {
  const whole = Math.max(0, ...wanted.values()) / step;
  let copies = from;
  let growing = [...wanted.keys()];
  while (growing.length > 0) {
    const before = copies;
    const share = (part: number): Copies => {
      const more = growing.map((card): [number, number] => {
        const own = Math.floor((((wanted.get(card) ?? 0) / step) * part) / whole) * step;
        return [card, Math.max(own, before.get(card) ?? 0)];
      });
      return new Map([...before, ...more]);
    };
    let part = 0;
    for (let limit = whole; part < limit; ) {
      const middle = Math.floor((part + limit + 1) / 2);
      if (yield* gives(share(middle))) part = middle;
      else limit = middle - 1;
    }
    copies = share(part);
    const still: number[] = [];
    for (const card of growing) {
      const now = copies.get(card) ?? 0;
      if (now >= (wanted.get(card) ?? 0)) continue;
      const oneMore: Copies = new Map([...copies, [card, now + step]]);
      if (!(yield* gives(oneMore))) continue;
      copies = oneMore;
      still.push(card);
    }
    growing = still;
  }
  return copies;
}

/** What is known of a group: packings that were found, and how many copies of its kinds it must give. */
interface ShortStock {
  readonly own: ShortGroup;
  readonly search: GroupSearch;
  /** That of the group by itself first. */
  readonly known: readonly Packing[];
  /** By kind, in the order of the problem. */
  readonly least: (copies: Copies) => readonly number[];
  readonly gives: (copies: Copies) => Search<boolean>;
}

function shortStock(own: ShortGroup, search: GroupSearch, effort: Effort): ShortStock {
  const { problem, bags = 1 } = own.task;
  const pieces = new Map(own.pieces.map((piece) => [piece.id, piece]));
  const known = [own.packing];
  const inVain: (readonly number[])[] = [];
  const stock = sumOf(problem.sheets.map((sheet) => areaOf(sheet) * BigInt(sheet.stock ?? 0)));
  const isLimited = problem.sheets.every((sheet) => (sheet.stock ?? null) !== null);
  const areas = problem.kinds.map(({ forms }) => leastArea(forms));
  const isTooMuch = (asked: readonly number[]): boolean =>
    isLimited && sumOf(areas.map((area, k) => area * BigInt(asked[k]!))) > stock;
  const least = (copies: Copies): readonly number[] =>
    problem.kinds.map(({ id, quantity }) => {
      const { card = 0, cutAlready = 0 } = pieces.get(id) ?? {};
      const inAll = Math.max(0, (copies.get(card) ?? 0) - cutAlready);
      // Bags are all alike, so that as many have a copy as one of them has, times all.
      return Math.min(quantity ?? 0, Math.ceil(inAll / bags));
    });
  return {
    own,
    search,
    known,
    least,
    *gives(copies) {
      const asked = least(copies);
      if (known.some((packing) => holds(packing, asked))) return true;
      if (
        search.isStopped() ||
        isTooMuch(asked) ||
        inVain.some((less) => less.every((count, k) => count <= asked[k]!))
      )
        return false;
      const kinds = problem.kinds.map((kind, k) => ({ ...kind, quantity: asked[k]! }));
      const packing = yield* search.pack({ ...problem, kinds: asOneSet(kinds) }, "sets", effort);
      known.push(packing);
      if (packing.outcome === "complete") return true;
      inVain.push(asked);
      return false;
    },
  };
}

/** The sheets of a problem, as many as there are pieces of those that come as needed. */
function asStock({ kinds, sheets }: Problem): readonly Sheet[] {
  const copies = kinds.reduce((sum, { quantity }) => sum + (quantity ?? 0), 0);
  return sheets.map((sheet) => ({ ...sheet, stock: sheet.stock ?? copies }));
}

function leastArea(forms: readonly Size[]): bigint {
  const [least = 0n] = forms.map(areaOf).sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
  return least;
}

function areaOf({ width, height }: Size): bigint {
  return BigInt(width) * BigInt(height);
}

function holds({ placed }: Packing, least: readonly number[]): boolean {
  return placed.every(({ count }, kind) => count >= (least[kind] ?? 0));
}

/** The most value first; of equals that from the cheaper sheets. */
function byWorth(a: Packing, b: Packing): number {
  const value = BigInt(b.value) - BigInt(a.value);
  const order = value === 0n ? BigInt(a.cost) - BigInt(b.cost) : value;
  return order < 0n ? -1 : order > 0n ? 1 : 0;
}
