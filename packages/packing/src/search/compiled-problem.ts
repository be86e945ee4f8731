import type { Form, Kind, Problem, Size, Turns } from "../model.js";
import { usablePart } from "../placements.js";

/** One way in which a kind may lie on one sheet: the extents it takes there. */
export interface Lay {
  readonly form: number;
  readonly turned: boolean;
  readonly width: number;
  readonly height: number;
  /** The part of it, as it lies, that a window may open and some wanted kind is small enough to come from. */
  readonly hidden: Size | undefined;
}

/** A sheet as the search sees it: its usable part and what it costs. */
export interface CompiledSheet {
  readonly index: number;
  readonly id: string;
  readonly width: number;
  readonly height: number;
  /** Infinity where there is no limit. */
  readonly stock: number;
  readonly cost: number;
  /** Infinity where there is no limit. */
  readonly longestCut: number;
}

/** A kind as the search sees it. */
export interface CompiledKind {
  readonly index: number;
  readonly id: string;
  /** Infinity where there is no limit. */
  readonly quantity: number;
  readonly least: number;
  readonly value: number;
  /** Number of its group, or -1. */
  readonly group: number;
  /** By sheet index: the ways to lie there that fit the usable part, none twice the same extents. */
  readonly lays: readonly (readonly Lay[])[];
  /** True where it fits some sheet. */
  readonly fits: boolean;
}

/** A checked problem as arrays and numbers, ready for the search. */
export interface CompiledProblem {
  readonly source: Problem;
  readonly kinds: readonly CompiledKind[];
  readonly sheets: readonly CompiledSheet[];
  readonly kerf: number;
  /** Infinity where there is no limit. */
  readonly stages: number;
  readonly shelf: boolean;
  readonly groups: number;
  /** No piece is narrower or lower than this as it lies; what is smaller is waste. */
  readonly smallest: Size;
}

/** Pieces on one sheet that a layout can hold at most; a tree lists them one by one. */
export const MOST_ON_SHEET = 10_000;

/** Turns a problem that {@link checkProblem} found sound into the arrays of the search. */
export function compileProblem(problem: Problem): CompiledProblem {
  const sheets = problem.sheets.map((sheet, index): CompiledSheet => {
    const usable = usablePart(sheet);
    return {
      index,
      id: sheet.id,
      width: usable.width,
      height: usable.height,
      stock: sheet.stock ?? Number.POSITIVE_INFINITY,
      cost: sheet.cost ?? sheet.width * sheet.height,
      longestCut: sheet.longestCut ?? Number.POSITIVE_INFINITY,
    };
  });
  const groups = new Map<string, number>();
  const kinds = problem.kinds.map((kind, index): CompiledKind => {
    const lays = sheets.map((sheet) => laysOn(problem, kind, sheet));
    return {
      index,
      id: kind.id,
      quantity: kind.quantity ?? Number.POSITIVE_INFINITY,
      least: problem.aim === "all" ? (kind.quantity ?? 0) : (kind.least ?? 0),
      value: kindValue(kind),
      group: kind.together === undefined ? -1 : groupNumber(groups, kind.together),
      lays,
      fits: lays.some((list) => list.length > 0),
    };
  });
  return {
    source: problem,
    kinds,
    sheets,
    kerf: problem.kerf ?? 0,
    stages:
      problem.mode === "shelf"
        ? Math.min(3, problem.stages ?? 3)
        : (problem.stages ?? Number.POSITIVE_INFINITY),
    shelf: problem.mode === "shelf",
    groups: groups.size,
    smallest: smallestExtents(kinds),
  };
}

/** What one copy is worth: its value, or the area of its first form. */
function kindValue(kind: Kind): number {
  const first = kind.forms[0];
  return kind.value ?? (first === undefined ? 0 : first.width * first.height);
}

function smallestExtents(kinds: readonly CompiledKind[]): Size {
  let width = Number.POSITIVE_INFINITY;
  let height = Number.POSITIVE_INFINITY;
  for (const kind of kinds) {
    for (const lay of kind.quantity > 0 ? kind.lays.flat() : []) {
      width = Math.min(width, lay.width);
      height = Math.min(height, lay.height);
    }
  }
  return { width, height };
}

function groupNumber(groups: Map<string, number>, key: string): number {
  const known = groups.get(key);
  if (known !== undefined) return known;
  groups.set(key, groups.size);
  return groups.size - 1;
}

function laysOn(problem: Problem, kind: Kind, sheet: CompiledSheet): readonly Lay[] {
  const lays: Lay[] = [];
  const add = (form: number, turned: boolean, size: Size, hidden: Size | undefined): void => {
    const { width, height } = turned ? quarterTurn(size) : size;
    if (width > sheet.width || height > sheet.height) return;
    const lies = hidden && turned ? quarterTurn(hidden) : hidden;
    if (lays.some((lay) => lay.width === width && lay.height === height && isSameSize(lay.hidden, lies)))
      return;
    lays.push({ form, turned, width, height, hidden: lies });
  };
  kind.forms.forEach((form, index) => {
    const turns = turnsOn(form, sheet.id);
    if (turns === undefined) return;
    const hidden = form.hidden && isOfUse(problem, form.hidden) ? form.hidden : undefined;
    if (turns !== "turned") add(index, false, form, hidden);
    if (turns !== "upright") add(index, true, form, hidden);
  });
  return lays;
}

function quarterTurn({ width, height }: Size): Size {
  return { width: height, height: width };
}

function isSameSize(a: Size | undefined, b: Size | undefined): boolean {
  return a?.width === b?.width && a?.height === b?.height;
}

/** Whether some wanted kind is small enough, either way round, to come from a hidden part. */
function isOfUse(problem: Problem, hidden: Size): boolean {
  const short = Math.min(hidden.width, hidden.height);
  const long = Math.max(hidden.width, hidden.height);
  return problem.kinds.some(
    (kind) =>
      kind.quantity !== 0 &&
      kind.forms.some(
        ({ width, height }) => Math.min(width, height) <= short && Math.max(width, height) <= long,
      ),
  );
}

/** The turns a form may take on a sheet, or undefined where it may not be cut from it. */
function turnsOn(form: Form, sheetId: string): Turns | undefined {
  const own = form.turns ?? "both";
  if (form.sheets === undefined) return own;
  const use = form.sheets.find((entry) => entry.sheet === sheetId);
  return use === undefined ? undefined : (use.turns ?? own);
}
