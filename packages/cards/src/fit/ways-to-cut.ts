import type { Size, Ticks } from "@sheetwright/measure";
import type { FaceOfPaper } from "../expand/face-index.js";
import type { Piece, PieceForm } from "../expansion.js";
import { allowedTurns, type Turns } from "../fold/turns.js";

/** One way to cut a piece from one thing on hand, and how far it is from fitting. */
export interface Way {
  readonly from: FaceOfPaper;
  readonly form: PieceForm;
  readonly turned: boolean;
  /** The piece as it lies on the sheet. */
  readonly lying: Size;
  /** What the sheet gives inside its trim, or an offcut. */
  readonly usable: Size;
  /** False where no such sheet is on hand. */
  readonly onHand: boolean;
  /** By how much the piece is too large; 0 where a side fits. */
  readonly over: Size;
}

/** What may be left out of account, to see whether it would help. */
export interface Relaxation {
  readonly pattern?: boolean;
  readonly grain?: boolean;
  readonly trim?: boolean;
}

/**
 * All ways to cut a piece from these faces, whatever their number of sheets: each form, each turn that pattern and
 * required grain allow, from the sheet and from each of its offcuts.
 *
 * @internal
 */
export function waysToCut(
  { forms, grainNeed }: Pick<Piece, "forms" | "grainNeed">,
  faces: readonly FaceOfPaper[],
  without: Relaxation = {},
): readonly Way[] {
  const need = without.grain === true ? "ignore" : grainNeed;
  return faces.flatMap((from) => {
    const { face, paper } = from;
    const stock = stockOf(from, without.trim === true);
    const pattern = without.pattern === true ? "none" : face.pattern;
    return forms.flatMap((form) =>
      turnsOf(allowedTurns(form, pattern, paper.grain, need)).flatMap((turned) => {
        const lying = turned
          ? { width: form.height, height: form.width }
          : { width: form.width, height: form.height };
        return stock.map(({ usable, onHand }) => {
          const over = {
            width: Math.max(0, lying.width - usable.width),
            height: Math.max(0, lying.height - usable.height),
          };
          return { from, form, turned, lying, usable, onHand, over };
        });
      }),
    );
  });
}

/**
 * Whether the piece can be cut that way.
 *
 * @internal
 */
export function fits({ over }: Way): boolean {
  return over.width === 0 && over.height === 0;
}

/**
 * The way that comes nearest to fitting: the least excess of both sides together, the first of equals.
 *
 * @internal
 */
export function nearestWay(ways: readonly Way[]): Way | null {
  return ways.reduce<Way | null>(
    (best, way) => (best === null || excess(way) < excess(best) ? way : best),
    null,
  );
}

function excess({ over }: Way): Ticks {
  return over.width + over.height;
}

function stockOf(
  { paper, design }: FaceOfPaper,
  untrimmed: boolean,
): readonly Pick<Way, "usable" | "onHand">[] {
  const { sheet, trim } = paper;
  const { left, right, top, bottom } = untrimmed ? { left: 0, right: 0, top: 0, bottom: 0 } : trim;
  const usable = {
    width: Math.max(0, sheet.width - left - right),
    height: Math.max(0, sheet.height - top - bottom),
  };
  const offcuts = design.offcuts.filter(({ count }) => count > 0);
  return [
    { usable, onHand: design.count !== 0 },
    ...offcuts.map(({ width, height }) => ({ usable: { width, height }, onHand: true })),
  ];
}

function turnsOf(turns: Turns | null): readonly boolean[] {
  if (turns === null) return [];
  return turns === "both" ? [false, true] : [turns === "turned"];
}
