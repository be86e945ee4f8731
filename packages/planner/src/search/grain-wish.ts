/**
 * The wish that grain runs along the fold, or as a layer asks for it: a tie-break, after pieces placed, cost, sheets and the
 * largest offcuts.
 *
 * The search knows no such wish, so it is asked again with fewer ways to lie: a kind, or some of its copies, may only lie
 * where its grain is not across. What comes of it is a plan for the first problem too.
 */

import { type Grain, grainTurns, type Paper, type Piece } from "@sheetwright/cards";
import type { CutNode, Form, Kind, Layout, PieceLeaf, Problem, Share, Turns } from "@sheetwright/packing";
import type { GroupTask } from "../group/group-problem.js";

/** What is needed to judge how the grain lies in the layouts of a group. */
export interface GrainWish {
  readonly problem: Problem;
  /** The pieces with a wish, in the order of the labels. */
  readonly wishing: readonly Piece[];
  /** By the id of the sheet. */
  readonly grains: ReadonlyMap<string, Grain>;
  /** The design of each sheet, by the id of the sheet. */
  readonly designs: ReadonlyMap<string, string>;
}

/** Collects the pieces of a group that would rather lie along the grain and may lie otherwise. */
export function grainWish(task: GroupTask, pieces: readonly Piece[], papers: readonly Paper[]): GrainWish {
  const { problem } = task;
  const ofDesign = new Map(papers.flatMap(({ designs, grain }) => designs.map(({ id }) => [id, grain])));
  const grains = new Map(task.sheets.map(({ sheet, design }) => [sheet, ofDesign.get(design) ?? "unknown"]));
  const designs = new Map(task.sheets.map(({ sheet, design }) => [sheet, design]));
  const kinds = new Map(problem.kinds.map((kind) => [kind.id, kind]));
  const wishing = pieces.filter((piece) => {
    const kind = kinds.get(piece.id);
    if (kind === undefined || piece.grainNeed !== "prefer") return false;
    const wish = { problem, wishing: [], grains, designs };
    return isRestricted(kind, alongForms(wish, piece, kind)) && canLieAlong(wish, piece, kind);
  });
  return { problem, wishing, grains, designs };
}

/** How many copies of each wishing piece lie across the grain. */
export function countAcross(wish: GrainWish, layouts: readonly Layout[]): ReadonlyMap<string, number> {
  const counts = new Map(wish.wishing.map(({ id }) => [id, 0]));
  const pieces = new Map(wish.wishing.map((piece) => [piece.id, piece]));
  for (const layout of layouts) {
    for (const { shares } of piecesOf(layout.tree)) {
      for (const { kind, form, turned, count } of shares) {
        const piece = pieces.get(kind);
        if (piece && isAcross(wish, piece, form, turned, layout.sheet))
          counts.set(kind, (counts.get(kind) ?? 0) + count);
      }
    }
  }
  return counts;
}

/**
 * The problem with so many copies of each piece kept from lying across. Where these are fewer than all, the kind is split
 * in two, the id of the kept copies ending in {@link KEPT}.
 *
 * @param allOrNothing True where only a plan with all pieces is of use.
 */
export function keepAlong(
  wish: GrainWish,
  kept: ReadonlyMap<string, number>,
  allOrNothing: boolean,
): Problem {
  const pieces = new Map(wish.wishing.map((piece) => [piece.id, piece]));
  const kinds = wish.problem.kinds.flatMap((kind): Kind[] => {
    const piece = pieces.get(kind.id);
    const count = Math.min(kept.get(kind.id) ?? 0, kind.quantity ?? 0);
    if (piece === undefined || count === 0) return [kind];
    const along = { ...kind, forms: alongForms(wish, piece, kind) };
    if (count === kind.quantity) return [along];
    return [
      { ...along, id: kind.id + KEPT, quantity: count },
      { ...kind, quantity: (kind.quantity ?? 0) - count },
    ];
  });
  return { ...wish.problem, kinds: allOrNothing ? asOneSet(kinds) : kinds };
}

/** Stands behind the id of the copies of a piece that may not lie across; no piece's id has it. */
const KEPT = " along";

/** The layouts with split kinds joined again. */
export function joinKept(layouts: readonly Layout[]): readonly Layout[] {
  return layouts.map((layout) => ({ ...layout, tree: joinIn(layout.tree) }));
}

function joinIn(node: CutNode): CutNode {
  if (node.type === "split")
    return { ...node, parts: node.parts.map((part) => ({ ...part, node: joinIn(part.node) })) };
  if (node.type !== "piece" || !node.shares.some(({ kind }) => kind.endsWith(KEPT))) return node;
  const shares: Share[] = [];
  for (const share of node.shares) {
    const kind = share.kind.endsWith(KEPT) ? share.kind.slice(0, -KEPT.length) : share.kind;
    const same = shares.findIndex(
      (one) => one.kind === kind && one.form === share.form && one.turned === share.turned,
    );
    if (same < 0) shares.push({ ...share, kind });
    else shares[same] = { ...share, kind, count: share.count + shares[same]!.count };
  }
  return { ...node, shares };
}

/**
 * A search that falls short goes on to look for complete sets, which is of no use here: only a plan with all pieces is
 * taken. All pieces in one set that exists once leave nothing to look for.
 */
export function asOneSet(kinds: readonly Kind[]): readonly Kind[] {
  return kinds.map((kind) => ({ ...kind, set: { of: "all", each: Math.max(1, kind.quantity ?? 0) } }));
}

/** The forms of a kind without the ways to lie that have the grain across. */
function alongForms(wish: GrainWish, piece: Piece, kind: Kind): readonly Form[] {
  return kind.forms.map((form, index) => ({
    ...form,
    sheets: (form.sheets ?? []).flatMap(({ sheet, turns = "both" }) => {
      const ways = [false, true].filter(
        (turned) => turns !== (turned ? "upright" : "turned") && !isAcross(wish, piece, index, turned, sheet),
      );
      if (ways.length === 0) return [];
      const left: Turns = ways.length === 2 ? "both" : ways[0] ? "turned" : "upright";
      return [{ sheet, turns: left }];
    }),
  }));
}

function isAcross(wish: GrainWish, piece: Piece, form: number, turned: boolean, sheet: string): boolean {
  const along = grainTurns(piece.forms[form]?.grainAlong ?? null, wish.grains.get(sheet) ?? "unknown");
  return along !== null && turned !== (along === "turned");
}

function isRestricted(kind: Kind, forms: readonly Form[]): boolean {
  return kind.forms.some((form, i) => JSON.stringify(form.sheets) !== JSON.stringify(forms[i]?.sheets));
}

/** Whether one copy fits some sheet on hand without lying across. */
function canLieAlong(wish: GrainWish, piece: Piece, kind: Kind): boolean {
  const sheets = new Map(wish.problem.sheets.map((sheet) => [sheet.id, sheet]));
  return alongForms(wish, piece, kind).some(({ width, height, sheets: allowed = [] }) =>
    allowed.some(({ sheet: id, turns }) => {
      const sheet = sheets.get(id);
      if (sheet === undefined || sheet.stock === 0) return false;
      const { left = 0, right = 0, top = 0, bottom = 0 } = sheet.trim ?? {};
      const fits = (w: number, h: number): boolean =>
        w <= sheet.width - left - right && h <= sheet.height - top - bottom;
      return (turns !== "turned" && fits(width, height)) || (turns !== "upright" && fits(height, width));
    }),
  );
}

/** Every piece of a cut tree without windows. */
function piecesOf(tree: CutNode): readonly PieceLeaf[] {
  const found: PieceLeaf[] = [];
  const ahead = [tree];
  for (let node = ahead.pop(); node !== undefined; node = ahead.pop()) {
    if (node.type === "piece") found.push(node);
    else if (node.type === "split") ahead.push(...node.parts.map((part) => part.node));
  }
  return found;
}
