/**
 * What only the trade knows of a piece, where it lies: scores, slits, top and printed back. Marks are given for the upright
 * form; a piece turned a quarter clockwise has its point (x, y) at (h - y, x), where h is the height of its form.
 */

import type { Ticks } from "@sheetwright/measure";
import type { Kind, Share } from "@sheetwright/packing";
import type { FoldDirection, FormMarks, LayoutMarks, SheetMarks } from "@sheetwright/planner";
import type { PlacedPiece } from "./lay-out.js";
import { type LyingShape, lyingShape } from "./lying-shape.js";

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
  /** The way the paper folds there, with the side up that lies up on the sheet. */
  readonly folds: FoldDirection;
}

/** A slit of a piece as it lies: a cut that starts and ends inside it. */
export interface LyingSlit {
  /** True where it runs from the top towards the bottom. */
  readonly upright: boolean;
  /** How far the line is from the left edge of the piece, or from its top edge where the line is level. */
  readonly at: Ticks;
  /** Where it begins and ends on the piece, from the top or the left. */
  readonly from: Ticks;
  readonly to: Ticks;
  /** The edge to line up against, and how far from it the line is. */
  readonly edge: ScoreEdge;
  readonly distance: Ticks;
  /** The edge that its ends are measured from, and how far from it they are, the nearer one first. */
  readonly endsFrom: ScoreEdge;
  readonly ends: readonly [near: Ticks, far: Ticks];
}

/** What is marked on a place of the sheet: what holds for every piece that comes from it. */
export interface PlaceMarks {
  /** Upright ones first, each from left to right or from top to bottom. */
  readonly scores: readonly LyingScore[];
  /** In the same order. */
  readonly slits: readonly LyingSlit[];
  /** Where the top of the pattern is; `null` where it does not matter, or differs between pieces of one place. */
  readonly top: TopEdge | null;
  /** For each share whether the printed back shows. */
  readonly backUp: readonly boolean[];
  /** What is cut out of it; `null` where nothing is, or where pieces of one place differ. */
  readonly shape: LyingShape | null;
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
 * than forms, or where a score or slit does not lie inside the form.
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
  (found.slits ?? []).forEach(({ along, at, from, to }, index) => {
    const [length, across] = along === "width" ? [size.width, size.height] : [size.height, size.width];
    const isWhole = [at, from, to].every(Number.isInteger);
    if (isWhole && at > 0 && at < across && from >= 0 && from < to && to <= length) return;
    throw new RangeError(
      `${path}[${form}].slits[${index}]: expected whole ticks inside the form, from before to; ` +
        `found at ${at}, from ${from} to ${to} along its ${along}.`,
    );
  });
  const { die } = found;
  if (die !== undefined && (die.cut.width > size.width || die.cut.height > size.height)) {
    throw new RangeError(
      `${path}[${form}].die.cut: expected a shape within ${size.width} x ${size.height}, the form; ` +
        `found ${die.cut.width} x ${die.cut.height}.`,
    );
  }
  (found.shapesAt ?? []).forEach(({ x, y }, index) => {
    const [right, bottom] = [x + (die?.cut.width ?? 0), y + (die?.cut.height ?? 0)];
    const isWhole = Number.isInteger(x) && Number.isInteger(y);
    if (die !== undefined && isWhole && x >= 0 && y >= 0 && right <= size.width && bottom <= size.height)
      return;
    throw new RangeError(
      `${path}[${form}].shapesAt[${index}]: expected whole ticks for a shape of a die within the form, ` +
        `${size.width} x ${size.height}; found ${x}, ${y}.`,
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
  const all = scores.map(({ along, at, folds = "mountain" }): LyingScore => {
    if (along === "width") {
      return turned
        ? { upright: false, at, edge: "top", distance: at, folds }
        : { upright: true, at, edge: "left", distance: at, folds };
    }
    if (!turned) return { upright: false, at, edge: "top", distance: at, folds };
    return { upright: true, ...fromRight(form.height, at), folds };
  });
  return all
    .filter((score, index) => all.findIndex((other) => sameLine(other, score)) === index)
    .sort(inOrder);
}

/** The slits of a form as they lie on the sheet. */
export function lyingSlits(
  { slits = [] }: FormMarks,
  form: { readonly width: Ticks; readonly height: Ticks },
  turned: boolean,
): readonly LyingSlit[] {
  return slits
    .map(({ along, at, from, to }): LyingSlit => {
      const ends = [from, to] as const;
      if (along === "width") {
        return turned
          ? { upright: true, ...fromRight(form.height, at), from, to, endsFrom: "top", ends }
          : { upright: false, at, edge: "top", distance: at, from, to, endsFrom: "left", ends };
      }
      if (!turned) return { upright: true, at, edge: "left", distance: at, from, to, endsFrom: "top", ends };
      const turnedEnds = { from: form.height - to, to: form.height - from };
      const endsFrom = turnedEnds.from === from ? "left" : "right";
      return { upright: false, at, edge: "top", distance: at, ...turnedEnds, endsFrom, ends };
    })
    .sort((a, b) => inOrder(a, b) || a.from - b.from);
}

/** A line that a quarter turn has brought from the top edge to the right one. */
function fromRight(height: Ticks, at: Ticks): Pick<LyingScore, "at" | "edge" | "distance"> {
  const fromLeft = height - at;
  // In the middle either edge will do, and the left one comes first to hand.
  return { at: fromLeft, edge: fromLeft === at ? "left" : "right", distance: at };
}

function inOrder(a: Pick<LyingScore, "upright" | "at">, b: Pick<LyingScore, "upright" | "at">): number {
  return Number(b.upright) - Number(a.upright) || a.at - b.at;
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
    const [first, ...others] = all;
    const tops = new Set(
      all.flatMap(({ faces }, i) =>
        faces?.topOn.includes(sheet) === true ? [topOf(shares[i] as Share)] : [],
      ),
    );
    const [top] = tops;
    return {
      scores: (first?.scores ?? []).filter((score) =>
        others.every(({ scores }) =>
          scores.some((other) => sameLine(other, score) && other.folds === score.folds),
        ),
      ),
      slits: (first?.slits ?? []).filter((slit) =>
        others.every(({ slits }) =>
          slits.some((other) => sameLine(other, slit) && other.from === slit.from && other.to === slit.to),
        ),
      ),
      top: tops.size === 1 && top !== undefined ? top : null,
      backUp: all.map(({ faces }) => faces?.backOn.includes(sheet) === true),
      shape: sameShape(all.map(({ shape }) => shape)),
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
  if (form === null || size === undefined) return { faces: null, scores: [], slits: [], shape: null };
  return {
    shape: form.die === undefined ? null : lyingShape({ ...form, die: form.die }, size, share.turned),
    faces: facesOf(form, share),
    scores: lyingScores(form, size, share.turned),
    slits: lyingSlits(form, size, share.turned),
  };
}

function sameShape(shapes: readonly (LyingShape | null)[]): LyingShape | null {
  const [first = null, ...others] = shapes;
  if (first === null || others.includes(null)) return null;
  const written = others.length === 0 ? "" : JSON.stringify(first);
  return others.every((other) => JSON.stringify(other) === written) ? first : null;
}

function sameLine(a: Pick<LyingScore, "upright" | "at">, b: Pick<LyingScore, "upright" | "at">): boolean {
  return a.upright === b.upright && a.at === b.at;
}
