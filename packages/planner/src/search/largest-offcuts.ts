/**
 * The largest offcuts among plans of a group that cost the same and cut into as many sheets.
 *
 * The search of packings looks for the least cost. So where a group has several kinds of sheets, designs or offcuts, it is
 * asked again without an offcut that was cut into, and with a piece more that is as large as an offcut larger than the largest
 * so far, the whole width or height of a sheet. Each plan is taken where it is better by the order of aims.
 *
 * It guarantees that a plan gets no worse by that order. It does not promise the largest. Effort: so many short searches at
 * most, and none where the group has one kind of sheet or many copies.
 */

import type { CutNode, Effort, Kind, Layout, Packing, Problem, Sheet } from "@sheetwright/packing";
import type { GroupTask } from "../group/group-problem.js";
import { usablePart } from "../strips/strip-forms.js";
import { compareAims, keptOffcuts, sheetsUsed } from "./aims.js";
import { packCounted } from "./fewest-sheets.js";
import type { GroupSearch, Search } from "./group-search.js";
import { restate } from "./restate.js";

/** Searches at most. */
const TRIES: Readonly<Record<Effort, number>> = { quick: 3, standard: 8, thorough: 16 };

/** Copies of all kinds together from which on none is made. */
const MANY_COPIES = 400;

/** Stands for an offcut that is to be kept; no piece's id has it. */
const KEPT = " kept";

/** Looks for a plan that keeps larger offcuts, and gives the one it was given where there is none. */
export function* largestOffcuts(task: GroupTask, found: Packing, search: GroupSearch): Search<Packing> {
  const { problem } = task;
  const usable = problem.sheets.filter(({ stock }) => stock !== 0);
  const copies = problem.kinds.reduce((sum, { quantity }) => sum + (quantity ?? 0), 0);
  if (found.outcome !== "complete" || usable.length < 2 || copies >= MANY_COPIES) return found;
  let best = found;
  const searches = [found];
  let tries = TRIES[found.search.effort];
  const attempt = function* (asked: Problem): Search<boolean> {
    tries--;
    const one = search.isStopped() ? null : yield* packCounted(asked, found.sheets, search);
    if (one === null) return false;
    searches.push(one);
    if (one.outcome !== "complete") return false;
    const layouts = one.layouts.map(withoutKept).filter(hasPieces);
    const candidate = restate(problem, layouts, found.bound, searches);
    if (compareAims({ task, packing: candidate }, { task, packing: best }) >= 0) return false;
    best = candidate;
    return true;
  };

  const offcuts = new Set(task.sheets.filter(({ offcut }) => offcut !== null).map(({ sheet }) => sheet));
  for (const { id } of byArea(usable)) {
    const used = sheetsUsed(best).get(id) ?? 0;
    if (offcuts.has(id) && used > 0 && tries > 0) yield* attempt(withStock(problem, id, used - 1));
  }
  for (const sheet of byArea(usable)) {
    for (const along of ["width", "height"] as const) {
      let limit = usablePart(sheet)[along];
      while (tries > 0) {
        const [largest] = keptOffcuts({ task, packing: best });
        const size = largerOffcut(sheet, along, largest?.area ?? 0, limit, problem);
        if (size === null) break;
        if (!(yield* attempt(withKept(problem, sheet.id, size)))) limit = size[along] - 1;
      }
    }
  }
  return best;
}

function byArea(sheets: readonly Sheet[]): readonly Sheet[] {
  return [...sheets].sort((a, b) => b.width * b.height - a.width * a.height);
}

function withStock(problem: Problem, id: string, stock: number): Problem {
  return {
    ...problem,
    sheets: problem.sheets.map((sheet) => (sheet.id === id ? { ...sheet, stock } : sheet)),
  };
}

/**
 * An offcut that goes through the whole sheet, its extent along one side halfway between what makes it larger than the
 * largest so far and what leaves room for a piece; `null` where there is none.
 */
function largerOffcut(
  sheet: Sheet,
  along: "width" | "height",
  largest: number,
  limit: number,
  { kinds, smallestOffcut, kerf = 0 }: Problem,
): { readonly width: number; readonly height: number } | null {
  const part = usablePart(sheet);
  const across = along === "width" ? part.height : part.width;
  const smallest = smallestOffcut === undefined ? 1 : Math.max(smallestOffcut.width, smallestOffcut.height);
  if (across < smallest) return null;
  const extents = kinds.flatMap(({ quantity, forms }) =>
    quantity === 0 ? [] : forms.flatMap(({ width, height }) => [width, height]),
  );
  const most = Math.min(limit, part[along] - Math.min(...extents) - kerf);
  const least = Math.max(smallest, Math.floor(largest / across) + 1);
  if (least > most) return null;
  const extent = Math.ceil((least + most) / 2);
  return along === "width" ? { width: extent, height: across } : { width: across, height: extent };
}

function withKept(problem: Problem, sheet: string, size: { width: number; height: number }): Problem {
  const kept: Kind = { id: KEPT, quantity: 1, forms: [{ ...size, sheets: [{ sheet, turns: "upright" }] }] };
  return { ...problem, kinds: [...problem.kinds, kept] };
}

/** A layout with the offcut that was to be kept as what it is. */
function withoutKept(layout: Layout): Layout {
  return { ...layout, tree: leave(layout.tree) };
}

function leave(node: CutNode): CutNode {
  if (node.type === "split")
    return { ...node, parts: node.parts.map((part) => ({ ...part, node: leave(part.node) })) };
  if (node.type !== "piece") return node;
  const shares = node.shares.filter(({ kind }) => kind !== KEPT);
  return shares.length === 0 ? { type: "offcut" } : { ...node, shares };
}

function hasPieces({ tree }: Layout): boolean {
  const holds = (node: CutNode): boolean =>
    node.type === "split" ? node.parts.some((part) => holds(part.node)) : node.type === "piece";
  return holds(tree);
}
