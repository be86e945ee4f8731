/**
 * What only the trade knows of a piece, where it lies: scores, top and printed back. Marks are given for the upright
 * form; a piece turned a quarter clockwise has its point (x, y) at (h - y, x), where h is the height of its form.
 */

import type { Ticks } from "@sheetwright/measure";
import type { Kind, Share } from "@sheetwright/packing";
import type { FormMarks, LayoutMarks, SheetMarks } from "@sheetwright/planner";
import type { PlacedPiece } from "./lay-out.js";

/** A side of a piece as it lies on the sheet, which a score is measured from. */
type ScoreEdge = "left" | "top" | "right";

/** The side of a piece as it lies that is the top of its pattern. */
export type TopEdge = "top" | "right";

/** A score of a piece as it lies. */
export interface LyingScore {
  /** True where the line runs from the top of the piece to its bottom. */
  readonly upright: boolean;
  /** How far the line is from the left edge of the piece, or from its top edge where the line is level. */
  readonly at: Ticks;
  /** The edge to line up against, and how far from it the line is. */
  readonly edge: ScoreEdge;
  readonly distance: Ticks;
}

/** What is marked on a place of the sheet: what holds for every piece that comes from it. */
export interface PlaceMarks {
  /** Upright ones first, each from left to right or from top to bottom. */
  readonly scores: readonly LyingScore[];
  /** Where the top of the pattern is; `null` where it does not matter, or differs between pieces of one place. */
  readonly top: TopEdge | null;
  /** For each share whether the printed back shows. */
  readonly backUp: readonly boolean[];
}

/**
 * Looks up the marks of a sheet, or gives `null` where there are none. Throws a RangeError where the colour is not written
 * as #rrggbb.
 */
export function sheetMarksOf(marks: LayoutMarks | undefined, sheet: string): SheetMarks | null {
  if (marks === undefined || !Object.hasOwn(marks.sheets, sheet)) return null;
  const found = marks.sheets[sheet] as SheetMarks;
  if (!/^#[0-9a-fA-F]{6}$/.test(found.colour)) {
    throw new RangeError(
      `marks.sheets[${JSON.stringify(sheet)}].colour: expected a colour as #rrggbb, found ${JSON.stringify(found.colour)}.`,
    );
  }
  return found;
}

/**
 * Looks up the marks of a form, or gives `null` where there are none. Throws a RangeError where the kind has fewer entries
 * than forms, or where a score does not lie inside the form.
 */
export function formMarksOf(marks: LayoutMarks | undefined, kind: Kind, form: number): FormMarks | null {
  if (marks === undefined || !Object.hasOwn(marks.forms, kind.id)) return null;
  const path = `marks.forms[${JSON.stringify(kind.id)}]`;
  const found = marks.forms[kind.id]?.[form];
  const size = kind.forms[form];
  if (found === undefined || size === undefined) {
    throw new RangeError(`${path}: expected marks for each form of the kind, found none for form ${form}.`);
  }
  found.scores.forEach(({ along, at }, index) => {
    if (Number.isInteger(at) && at > 0 && at < size[along]) return;
    throw new RangeError(
      `${path}[${form}].scores[${index}].at: expected whole ticks over 0 and under ${size[along]}, the ${along} of the form; found ${at}.`,
    );
  });
  return found;
}

/** The scores of a form as they lie on the sheet, each once. */
export function lyingScores(
  { scores }: FormMarks,
  form: { readonly width: Ticks; readonly height: Ticks },
  turned: boolean,
): readonly LyingScore[] {
  const all = scores.map(({ along, at }): LyingScore => {
    if (along === "width") {
      return turned
        ? { upright: false, at, edge: "top", distance: at }
        : { upright: true, at, edge: "left", distance: at };
    }
    if (!turned) return { upright: false, at, edge: "top", distance: at };
    const fromLeft = form.height - at;
    // In the middle either edge will do, and the left one comes first to hand.
    const edge = fromLeft === at ? "left" : "right";
    return { upright: true, at: fromLeft, edge, distance: at };
  });
  return all
    .filter((score, index) => all.findIndex((other) => sameLine(other, score)) === index)
    .sort((a, b) => Number(b.upright) - Number(a.upright) || a.at - b.at);
}

/** Works out the marks of placed pieces, in their order. `kinds` holds all that their shares name. */
export function placeMarks(
  pieces: readonly PlacedPiece[],
  kinds: ReadonlyMap<string, Kind>,
  sheet: string,
  marks: LayoutMarks | undefined,
): readonly PlaceMarks[] {
  return pieces.map(({ shares }) => {
    const all = shares.map((share) => shareMarks(share, kinds, marks));
    const [first, ...others] = all.map(({ scores }) => scores);
    const tops = new Set(
      all.flatMap(({ faces }, i) =>
        faces?.topOn.includes(sheet) === true ? [topOf(shares[i] as Share)] : [],
      ),
    );
    const [top] = tops;
    return {
      scores: (first ?? []).filter((score) =>
        others.every((scores) => scores.some((other) => sameLine(other, score))),
      ),
      top: tops.size === 1 && top !== undefined ? top : null,
      backUp: all.map(({ faces }) => faces?.backOn.includes(sheet) === true),
    };
  });
}

/** On which sheets the top is marked, and on which the printed back shows, for copies as they lie. */
export function facesOf(
  form: FormMarks,
  { turned }: Pick<Share, "turned">,
): Pick<FormMarks, "topOn" | "backOn"> {
  return turned ? (form.turned ?? form) : form;
}

/** Where the top of an upright form comes to lie. */
export function topOf({ turned }: Pick<Share, "turned">): TopEdge {
  return turned ? "right" : "top";
}

function shareMarks(share: Share, kinds: ReadonlyMap<string, Kind>, marks: LayoutMarks | undefined) {
  const kind = kinds.get(share.kind);
  const size = kind?.forms[share.form];
  const form = kind === undefined ? null : formMarksOf(marks, kind, share.form);
  const scores = form === null || size === undefined ? [] : lyingScores(form, size, share.turned);
  return { faces: form === null ? null : facesOf(form, share), scores };
}

function sameLine(a: LyingScore, b: LyingScore): boolean {
  return a.upright === b.upright && a.at === b.at;
}
