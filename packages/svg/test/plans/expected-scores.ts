import { type LaidOut, layOut } from "../../src/layout/lay-out.js";
import type { Plan } from "./build.js";
import type { MarkedPlan } from "./random-marks.js";

/** A score on the sheet in ticks, from its upper or left end on, over windows too. */
export interface ExpectedScore {
  /** Index into the pieces of the first layout, those of the sheet before those in windows. */
  readonly piece: number;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly folds: string;
}

/** A slit likewise. */
export type ExpectedSlit = Omit<ExpectedScore, "folds">;

/** The first layout of a plan, its pieces in the order in which they are drawn. */
export function laidOutOf({ problem, packing }: Plan): LaidOut {
  const [layout] = packing.layouts;
  const sheet = problem.sheets.find(({ id }) => id === layout?.sheet);
  if (layout === undefined || sheet === undefined) throw new Error("A plan has a layout and its sheet.");
  const laidOut = layOut(sheet, layout, problem.kerf ?? 0);
  return { ...laidOut, pieces: [...laidOut.pieces].sort((a, b) => a.level - b.level) };
}

/** Where the scores of the first layout come to lie, worked out point by point from the upright forms. */
export function expectedScores(plan: MarkedPlan): readonly ExpectedScore[] {
  return laidOutOf(plan).pieces.flatMap((placed, piece) => {
    const lines = placed.shares.map(({ kind: id, form, turned }) => {
      const size = plan.problem.kinds.find((each) => each.id === id)?.forms[form];
      if (size === undefined) throw new Error("A share has a form.");
      const seen = new Set<string>();
      const scores = (plan.marks.forms[id]?.[form]?.scores ?? []).filter(({ along, at }) => {
        const isNew = !seen.has(`${along} ${at}`);
        seen.add(`${along} ${at}`);
        return isNew;
      });
      return scores.map(({ along, at, folds = "mountain" }) => {
        const ends: readonly (readonly [number, number])[] =
          along === "width"
            ? [
                [at, 0],
                [at, size.height],
              ]
            : [
                [0, at],
                [size.width, at],
              ];
        return [...endsOn(placed, ends, size.height, turned), folds] as const;
      });
    });
    return commonTo(lines).map(([[x1, y1], [x2, y2], folds]) => ({ piece, x1, y1, x2, y2, folds }));
  });
}

/** Where the slits of the first layout come to lie, over windows too. */
export function expectedSlits(plan: MarkedPlan): readonly ExpectedSlit[] {
  return laidOutOf(plan).pieces.flatMap((placed, piece) => {
    const lines = placed.shares.map(({ kind: id, form, turned }) => {
      const size = plan.problem.kinds.find((each) => each.id === id)?.forms[form];
      if (size === undefined) throw new Error("A share has a form.");
      return (plan.marks.forms[id]?.[form]?.slits ?? []).map(({ along, at, from, to }) => {
        const ends: readonly (readonly [number, number])[] =
          along === "width"
            ? [
                [from, at],
                [to, at],
              ]
            : [
                [at, from],
                [at, to],
              ];
        return endsOn(placed, ends, size.height, turned);
      });
    });
    return commonTo(lines).map(([[x1, y1], [x2, y2]]) => ({ piece, x1, y1, x2, y2 }));
  });
}

type Point = readonly [number, number];

/** A quarter turn clockwise brings (x, y) to (height - y, x). */
function endsOn(
  placed: { readonly x: number; readonly y: number },
  ends: readonly Point[],
  height: number,
  turned: boolean,
): readonly [Point, Point] {
  const lying = turned ? ends.map(([x, y]) => [height - y, x] as const) : ends;
  const [first, last] = lying
    .map(([x, y]) => [placed.x + x, placed.y + y] as const)
    .sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  if (first === undefined || last === undefined) throw new Error("A line has two ends.");
  return [first, last];
}

/** The lines of the first that are among those of all others, each once. */
function commonTo<T>(lines: readonly (readonly T[])[]): readonly T[] {
  const [first = [], ...others] = lines;
  const common = new Map(
    first
      .filter((line) => others.every((own) => own.some((other) => String(other) === String(line))))
      .map((line) => [String(line), line]),
  );
  return [...common.values()];
}
