import { type Piece, type PieceForm, usualDieMachine } from "@sheetwright/cards";
import type { PaperGroup } from "../plan-model.js";
import type { ProjectFacts, SheetFacts } from "./project-facts.js";

/** What one copy of a kind is: a piece, or a strip for several of its shapes. */
export interface CutFacts {
  readonly piece: Piece;
  /** Shapes in a strip; 1 for a piece by itself. */
  readonly holds: number;
  readonly name: string;
  /** The sizes that it may be cut in, upright as the piece. */
  readonly forms: readonly PieceForm[];
}

/** More shapes in one strip are hard to feed straight: common practice, no source. */
export const MOST_SHAPES = 12;

/** What each kind of a group is, by its id, from its list of strips; kinds that are nothing are absent. */
export function readCuts(
  { problem, strips = [] }: PaperGroup,
  facts: ProjectFacts,
): ReadonlyMap<string, CutFacts> {
  return new Map(
    problem.kinds.flatMap(({ id }): [string, CutFacts][] => {
      const strip = strips.find(({ kind }) => kind === id);
      const piece = facts.pieces.get(strip?.piece ?? id);
      if (piece === undefined) return [];
      if (strip === undefined) return [[id, { piece, holds: 1, name: piece.label, forms: piece.forms }]];
      const forms = strip.along.flatMap((side) => stripForm(piece, strip.holds, side, facts) ?? []);
      const name = `${piece.label.slice(0, -" die blank".length)}, strip of ${strip.holds}`;
      return [[id, { piece, holds: strip.holds, name, forms }]];
    }),
  );
}

type Side = "width" | "height";

/** Margin on each side of a shape along one side of its blank, from the blank itself; half a tick more may be on one. */
function marginAlong({ die, forms: [blank] }: Piece, side: Side): number {
  if (die === undefined || blank === undefined) return 0;
  return Math.max(0, Math.trunc((blank[side] - die.cut[side]) / 2));
}

/**
 * A strip for so many shapes: a margin, then shape and margin for each, and what is lacking to the next mark. `null` where
 * there is no margin to share.
 */
function stripForm(piece: Piece, holds: number, side: Side, { project }: ProjectFacts): PieceForm | null {
  const margin = marginAlong(piece, side);
  const [blank] = piece.forms;
  if (margin === 0 || piece.die === undefined || blank === undefined) return null;
  const length = margin + holds * (piece.die.cut[side] + margin);
  const over = length % project.precision;
  return { ...blank, [side]: over === 0 ? length : length - over + project.precision };
}

/** Why a piece may not be cut in a strip of a form; `null` where it may. */
export function whyNoStrip(
  piece: Piece,
  form: PieceForm,
  { project }: ProjectFacts,
): "forbidden" | "too-wide" | null {
  const machine = project.dieMachine ?? usualDieMachine(project.units);
  const { die, forms } = piece;
  const [blank] = forms;
  if (machine.strips === false || die === undefined || die.name === null) return "forbidden";
  if (blank === undefined || forms.length > 1) return "forbidden";
  const { width, height } = machine.platform;
  const [narrow, wide] = width < height ? [width, height] : [height, width];
  const lies = (a: number, b: number): boolean => a <= narrow && b <= wide;
  const isBetween = lies(blank.width, blank.height) || lies(blank.height, blank.width);
  const passes = form.width <= narrow || form.height <= narrow;
  return isBetween && passes ? null : "too-wide";
}

/**
 * The least that each copy of a piece takes of any strip, one form for each side that it may be cut in strips along: shape
 * and one margin, less a cut. Empty where it may not.
 *
 * @param mayLie Whether a form may lie on a sheet, upright or turned, by pattern and grain.
 */
export function endlessForms(
  piece: Piece,
  wanted: number,
  sheets: readonly SheetFacts[],
  mayLie: (sheet: SheetFacts, turned: boolean) => boolean,
  facts: ProjectFacts,
): readonly PieceForm[] {
  const { kerf } = facts.project.trimmer;
  if (wanted < 2) return [];
  const shares = (["width", "height"] as const).flatMap((side): PieceForm[] => {
    const two = stripForm(piece, 2, side, facts);
    const [blank] = piece.forms;
    if (two === null || blank === undefined || piece.die === undefined) return [];
    const share = piece.die.cut[side] + marginAlong(piece, side) - kerf;
    if (share <= 0 || whyNoStrip(piece, two, facts) !== null) return [];
    const isSomewhere = sheets.some(
      (sheet) =>
        sheet.stock !== 0 &&
        [false, true].some((turned) => {
          const [width, height] = turned ? [two.height, two.width] : [two.width, two.height];
          return mayLie(sheet, turned) && width <= sheet.usable.width && height <= sheet.usable.height;
        }),
    );
    return isSomewhere ? [{ ...blank, [side]: share }] : [];
  });
  const [first, second] = shares;
  // A share that is another one turned, where both may turn, says nothing new.
  const isSame = first?.width === second?.height && first?.height === second?.width;
  const { die, forms } = piece;
  const isSquare = die?.cut.width === die?.cut.height && forms[0]?.width === forms[0]?.height;
  const turnsFreely = sheets.every((sheet) => mayLie(sheet, true) === mayLie(sheet, false));
  return isSame && isSquare && turnsFreely ? shares.slice(0, 1) : shares;
}

/** The outcome of a group: short only where no strips help either. */
export function provenOutcome({ packing, endless }: PaperGroup): PaperGroup["packing"]["outcome"] {
  const { outcome } = packing;
  if (outcome !== "short" || endless === undefined) return outcome;
  return endless.packing.outcome === "short" ? "short" : "not-found";
}
