/**
 * Strips: several shapes of a die blank side by side, where that saves paper.
 *
 * The search of packings knows no such choice, so it is asked again with the die blanks divided: as many as lie along the
 * short or the long side of each sheet, the same number of all, and then one piece after another in another number than the
 * best so far. A division is better where it costs less, or costs as much and leaves more paper that is worth keeping,
 * while the largest such leftover of no design gets smaller. Single blanks, the simplest, stand where none is better.
 *
 * It guarantees that strips never cost more than single blanks, and that they are taken only where everything is planned.
 * It does not promise the best division. Effort: so many short searches at most, and one of the effort of the plan.
 */

import type { Piece } from "@sheetwright/cards";
import type { Effort, Packing } from "@sheetwright/packing";
import type { GroupTask } from "../group/group-problem.js";
import { type DividedTask, type Division, divideTask } from "../strips/divide-task.js";
import { mostInStrips, type StripWorkshop, usablePart } from "../strips/strip-forms.js";
import { stripSize } from "../strips/strip-size.js";
import { keptArea, sheetsArea } from "../totals/areas.js";
import { asOneSet } from "./grain-wish.js";
import type { GroupSearch, Search } from "./group-search.js";
import { keepsOffcuts, type SheetDesigns } from "./keeps-offcuts.js";

/** A divided task with its packing, which is right but for its sets. */
export interface DividedPacking extends DividedTask {
  readonly division: Division;
  readonly packing: Packing;
}

/** What was found. */
export interface FoundStrips {
  /** The best; `null` where single blanks are as good, or nothing may be cut in strips. */
  readonly best: DividedPacking | null;
  /** A few divisions that hold everything, the best first, though single blanks may be as good. */
  readonly divisions: readonly Division[];
  /** All that was packed on the way. */
  readonly packings: readonly Packing[];
}

const NO_STRIPS: FoundStrips = { best: null, divisions: [], packings: [] };

/** Searches at most; they take less effort than the plan itself. */
const TRIES: Readonly<Record<Effort, { readonly most: number; readonly by: Effort }>> = {
  quick: { most: 6, by: "quick" },
  standard: { most: 12, by: "quick" },
  thorough: { most: 24, by: "standard" },
};

/**
 * Looks for divisions into strips that are better than single blanks.
 *
 * @param single The group with single blanks.
 */
export function* findStrips(
  task: GroupTask,
  pieces: readonly Piece[],
  workshop: StripWorkshop,
  single: Packing,
  search: GroupSearch,
): Search<FoundStrips> {
  const most = mostInStrips(task, pieces, workshop);
  if (most.size === 0 || search.isStopped()) return NO_STRIPS;
  const { effort } = single.search;
  const sheets = sheetDesigns(task);
  const tried = new Set([keyOf(new Map())]);
  const found: DividedPacking[] = [];
  let best: DividedPacking | null = null;

  const attempt = function* (division: Division): Search<void> {
    tried.add(keyOf(division));
    const divided = divideTask(task, pieces, division, workshop);
    const one: DividedPacking = yield* packDivided(divided, division, search, "strips", TRIES[effort].by);
    found.push(one);
    if (isBetter(sheets, one.packing, best?.packing ?? single)) best = one;
  };
  const isOver = () => search.isStopped() || tried.size > TRIES[effort].most;

  for (const division of divisions(task, pieces, most, workshop)) {
    if (isOver()) break;
    if (!tried.has(keyOf(division))) yield* attempt(division);
  }
  if (most.size > 1) {
    for (const id of most.keys()) {
      const numbers = new Set([1, ...found.map(({ division }) => division.get(id) ?? 1)]);
      for (const holds of numbers) {
        const from: Division = (best as DividedPacking | null)?.division ?? new Map();
        const division = capped(new Map([...from, [id, holds]]), most);
        if (isOver()) break;
        if (!tried.has(keyOf(division))) yield* attempt(division);
      }
    }
  }
  const [second] = found
    .filter((one) => one !== best && one.packing.outcome === "complete")
    .sort((a, b) => byUse(sheets, a.packing, b.packing));
  const others = [best, second].flatMap((one) => (one == null ? [] : [one.division]));
  let chosen: DividedPacking | null = best;
  if (best !== null && TRIES[effort].by !== effort && !search.isStopped()) {
    const short: DividedPacking = best;
    const long = yield* packDivided(short, short.division, search, "strips");
    found.push(long);
    // A longer search may still fall short of a shorter one.
    const isNoWorse = !isBetter(sheets, short.packing, long.packing);
    if (isNoWorse && isBetter(sheets, long.packing, single)) chosen = long;
  }
  return { best: chosen, divisions: others, packings: found.map(({ packing }) => packing) };
}

/** Packs a divided task, as one set. */
export function* packDivided(
  divided: DividedTask,
  division: Division,
  search: GroupSearch,
  aim: "strips" | "spares",
  effort?: Effort,
): Search<DividedPacking> {
  const { problem } = divided.task;
  const packing = yield* search.pack({ ...problem, kinds: asOneSet(problem.kinds) }, aim, effort);
  return { ...divided, division, packing };
}

/** Whether a packing costs less than another one, or costs as much and leaves more. One that lacks a piece is always worse. */
export function isBetter(sheets: SheetDesigns, a: Packing, b: Packing): boolean {
  if (a.outcome !== "complete") return false;
  if (b.outcome !== "complete") return true;
  const order = byUse(sheets, a, b);
  return order < 0 && (BigInt(a.cost) < BigInt(b.cost) || keepsOffcuts(sheets, a, b));
}

/** Negative where the first costs less, or as much and uses up less paper; positive where the second does. */
function byUse(sheets: SheetDesigns, a: Packing, b: Packing): number {
  const cost = BigInt(a.cost) - BigInt(b.cost);
  const paper = cost === 0n ? usedUp(sheets, a) - usedUp(sheets, b) : cost;
  return paper < 0n ? -1 : paper > 0n ? 1 : 0;
}

/** The sheets of a group with their designs. */
export function sheetDesigns({ problem, sheets }: GroupTask): SheetDesigns {
  return { problem, designs: new Map(sheets.map(({ sheet, design }) => [sheet, design])) };
}

/** The area of the sheets cut into, without what of them is worth keeping. */
function usedUp({ problem }: SheetDesigns, packing: Packing): bigint {
  return sheetsArea(problem, packing) - keptArea(problem, packing);
}

/** As many as lie along each side of each sheet, then the same number of all, the most first. */
function divisions(
  { problem }: GroupTask,
  pieces: readonly Piece[],
  most: Division,
  workshop: StripWorkshop,
): readonly Division[] {
  const sides = problem.sheets
    .filter(({ stock }) => stock !== 0)
    .map(usablePart)
    .flatMap(({ width, height }) => [Math.min(width, height), Math.max(width, height)]);
  const alongSides = [...new Set(sides)].map(
    (side): Division =>
      new Map(
        pieces
          .filter(({ id }) => most.has(id))
          .map((piece) => [piece.id, mostAlong(piece, side, most.get(piece.id) ?? 1, workshop)]),
      ),
  );
  const longest = Math.max(...most.values());
  const same = Array.from(
    { length: longest - 1 },
    (_, i): Division => new Map([...most].map(([id]) => [id, longest - i])),
  );
  return [...alongSides, ...same].map((division) => capped(division, most));
}

function mostAlong(piece: Piece, side: number, limit: number, { precision }: StripWorkshop): number {
  for (let holds = limit; holds > 1; holds--) {
    const lengths = (["width", "height"] as const).map(
      (along) => stripSize(piece, holds, along, precision)?.[along],
    );
    if (lengths.some((length) => length !== undefined && length <= side)) return holds;
  }
  return 1;
}

/** With no more shapes in a strip than it can hold, and without pieces that are cut one by one. */
function capped(division: Division, most: Division): Division {
  return new Map(
    [...most]
      .map(([id, limit]) => [id, Math.min(limit, division.get(id) ?? 1)] as const)
      .filter(([, holds]) => holds > 1),
  );
}

function keyOf(division: Division): string {
  return JSON.stringify([...division]);
}
