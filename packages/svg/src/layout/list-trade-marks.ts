/** What the lists say of scores, slits, tops and printed backs, kind by kind. */

import type { Kind, Size } from "@sheetwright/packing";
import type { FormMarks, LayoutMarks } from "@sheetwright/planner";
import { displayName } from "../wording/display-name.js";
import type { PlacedPiece } from "./lay-out.js";
import {
  facesOf,
  formMarksOf,
  type LyingScore,
  type LyingSlit,
  lyingScores,
  lyingSlits,
  type TopEdge,
  topOf,
} from "./lying-marks.js";

/** The marks of all copies of one form on a sheet. */
export interface ListedMarks {
  /** The kind's name. */
  readonly name: string;
  readonly size: Size;
  /** Whether other forms of the kind are listed too, so that the name alone does not tell which. */
  readonly severalForms: boolean;
  /** Scores of the copies that lie upright and of those that lie turned; `null` where none does, empty without scores. */
  readonly upright: readonly LyingScore[] | null;
  readonly turned: readonly LyingScore[] | null;
  /** Slits likewise. */
  readonly slits: {
    readonly upright: readonly LyingSlit[] | null;
    readonly turned: readonly LyingSlit[] | null;
  };
  /** The die that cuts its shape out of it; `null` where none does. */
  readonly die: NonNullable<FormMarks["die"]> | null;
  /** Where it cuts them, in a strip for several; `null` where it cuts one, in the middle. */
  readonly shapesAt: NonNullable<FormMarks["shapesAt"]> | null;
  /** Where the top of the pattern comes to lie; empty where it does not matter. */
  readonly tops: readonly TopEdge[];
  readonly backUp: boolean;
}

/** Lists the marked forms among pieces, kinds in the order of the problem. */
export function listMarks(
  kinds: readonly Kind[],
  pieces: readonly PlacedPiece[],
  sheet: string,
  marks: LayoutMarks | undefined,
): readonly ListedMarks[] {
  if (marks === undefined) return [];
  const shares = pieces.flatMap((piece) => piece.shares);
  return kinds.flatMap((kind) => {
    const own = shares.filter((share) => share.kind === kind.id);
    const listed = kind.forms.flatMap((size, form): readonly ListedMarks[] => {
      const copies = own.filter((share) => share.form === form);
      const found = copies.length === 0 ? null : formMarksOf(marks, kind, form);
      if (found === null) return [];
      const lying = <T>(of: (turned: boolean) => readonly T[], turned: boolean) =>
        copies.some((share) => share.turned === turned) ? of(turned) : null;
      const scores = (turned: boolean) => lyingScores(found, size, turned);
      const slits = (turned: boolean) => lyingSlits(found, size, turned);
      const topped = copies.filter((share) => facesOf(found, share).topOn.includes(sheet));
      return [
        {
          name: displayName(kind),
          size: { width: size.width, height: size.height },
          severalForms: false,
          upright: lying(scores, false),
          turned: lying(scores, true),
          slits: { upright: lying(slits, false), turned: lying(slits, true) },
          die: found.die ?? null,
          shapesAt: found.shapesAt ?? null,
          tops: (["top", "right"] as const).filter((edge) => topped.some((share) => topOf(share) === edge)),
          backUp: copies.some((share) => facesOf(found, share).backOn.includes(sheet)),
        },
      ];
    });
    return listed.map((entry) => ({ ...entry, severalForms: listed.length > 1 }));
  });
}

/** Whether a form has scores. */
export function hasScores({ upright, turned }: Pick<ListedMarks, "upright" | "turned">): boolean {
  return (upright ?? []).length > 0 || (turned ?? []).length > 0;
}

/** Whether a form has slits. */
export function hasSlits({ slits: { upright, turned } }: Pick<ListedMarks, "slits">): boolean {
  return (upright ?? []).length > 0 || (turned ?? []).length > 0;
}
