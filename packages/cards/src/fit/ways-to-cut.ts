import type { Size, Ticks } from "@sheetwright/measure";
import type { FaceOfPaper } from "../expand/face-index.js";
import type { Piece, PieceForm } from "../expansion.js";
import { allowedTurns, type Turns } from "../fold/turns.js";
import type { Sides } from "../project.js";
import { longestCutFor, type TrimmedSheet } from "./longest-cut-for.js";

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
  /** The longest cut it takes where it fits; `null` where the tool makes none so long. */
  readonly cut: Ticks | null;
}

/** What may be left out of account, to see whether it would help. */
export interface Relaxation {
  readonly pattern?: boolean;
  readonly grain?: boolean;
  readonly trim?: boolean;
  readonly longestCut?: boolean;
}

const NO_TRIM: Sides = { left: 0, right: 0, top: 0, bottom: 0 };

/**
 * All ways to cut a piece from these faces, whatever their number of sheets: each form, each turn that pattern and
 * required grain allow, from the sheet and from each of its offcuts, with a tool that makes cuts up to `longestCut`
 * (`null`: any).
 *
 * @internal
 */
export function waysToCut(
  { forms, grainNeed }: Pick<Piece, "forms" | "grainNeed">,
  faces: readonly FaceOfPaper[],
  longestCut: Ticks | null,
  without: Relaxation = {},
): readonly Way[] {
  const limit = without.longestCut === true ? null : longestCut;
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
        return stock.map(({ onHand, ...sheet }) => {
          const { usable } = sheet;
          const over = {
            width: Math.max(0, lying.width - usable.width),
            height: Math.max(0, lying.height - usable.height),
          };
          const longest = longestCutFor(lying, sheet);
          const cut = limit === null || longest <= limit ? longest : null;
          return { from, form, turned, lying, usable, onHand, over, cut };
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
export function fits({ over, cut }: Way): boolean {
  return over.width === 0 && over.height === 0 && cut !== null;
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
): readonly (TrimmedSheet & Pick<Way, "onHand">)[] {
  const { sheet } = paper;
  const trim = untrimmed ? NO_TRIM : paper.trim;
  const usable = {
    width: Math.max(0, sheet.width - trim.left - trim.right),
    height: Math.max(0, sheet.height - trim.top - trim.bottom),
  };
  const offcuts = design.offcuts.filter(({ count }) => count > 0);
  return [
    { sheet, trim, usable, onHand: design.count !== 0 },
    ...offcuts.map((offcut) => ({ sheet: offcut, trim: NO_TRIM, usable: sizeOf(offcut), onHand: true })),
  ];
}

function sizeOf({ width, height }: Size): Size {
  return { width, height };
}

function turnsOf(turns: Turns | null): readonly boolean[] {
  if (turns === null) return [];
  return turns === "both" ? [false, true] : [turns === "turned"];
}
