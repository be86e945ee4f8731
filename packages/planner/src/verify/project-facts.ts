/**
 * What a project says of papers and pieces, in the form the checks of a plan ask for. Written from the meaning of the
 * project alone: nothing here is shared with what makes a plan.
 */

import type { Expansion, Face, Paper, PaperDesign, Piece, PieceForm, Project } from "@sheetwright/cards";

/** One sheet that there is: a whole one or an offcut. */
export interface SheetFacts {
  readonly id: string;
  readonly paper: Paper;
  readonly design: PaperDesign;
  readonly offcut: number | null;
  readonly width: number;
  readonly height: number;
  /** What lies inside the trim. */
  readonly usable: { readonly width: number; readonly height: number };
  /** `null`: as many as needed. */
  readonly stock: number | null;
}

/** A project with its papers sorted for look-up. */
export interface ProjectFacts {
  readonly project: Project;
  readonly expansion: Expansion;
  readonly sheets: ReadonlyMap<string, SheetFacts>;
  readonly pieces: ReadonlyMap<string, Piece>;
  /** Pieces that fit no sheet in any way they may lie. */
  readonly homeless: ReadonlySet<string>;
  /** Cards that cannot be completed: a piece of theirs fits no sheet, or there is no sheet it may be cut from. */
  readonly hopeless: ReadonlySet<number>;
}

/** Looks a project and what it works out to through. */
export function readFacts(project: Project, expansion: Expansion): ProjectFacts {
  const sheets = new Map<string, SheetFacts>();
  for (const paper of expansion.papers) {
    for (const design of paper.designs) {
      const { width, height } = paper.sheet;
      const { left, right, top, bottom } = paper.trim;
      const usable = { width: width - left - right, height: height - top - bottom };
      const common = { paper, design };
      sheets.set(design.id, {
        id: design.id,
        ...common,
        offcut: null,
        width,
        height,
        usable,
        stock: design.count,
      });
      for (const [i, offcut] of design.offcuts.entries()) {
        const size = { width: offcut.width, height: offcut.height };
        const id = `${design.id}/${i + 1}`;
        sheets.set(id, { id, ...common, offcut: i + 1, ...size, usable: size, stock: offcut.count });
      }
    }
  }
  const pieces = new Map(expansion.pieces.map((piece) => [piece.id, piece]));
  const homeless = expansion.pieces.filter(
    (piece) => ![...sheets.values()].some((sheet) => fits(piece, sheet, project.trimmer.longestCut)),
  );
  const stocked = [...sheets.values()].filter(({ stock }) => stock !== 0).map(({ design }) => design);
  const lacking = expansion.pieces.filter(
    (piece) => !stocked.some((design) => facesOn(piece, design).length > 0),
  );
  return {
    project,
    expansion,
    sheets,
    pieces,
    homeless: new Set(homeless.map(({ id }) => id)),
    hopeless: new Set(
      [...homeless, ...lacking].filter(({ quantity }) => quantity > 0).map(({ card }) => card),
    ),
  };
}

/** The faces of a design that a piece may be cut from. */
export function facesOn(piece: Piece, design: PaperDesign): readonly Face[] {
  const faces = design.back === null ? [design.front] : [design.front, design.back];
  return faces.filter(({ id }) => piece.faces.includes(id));
}

/** Whether the pattern of some face that a piece may have lets it lie so. */
export function patternAllows(piece: Piece, design: PaperDesign, turned: boolean): boolean {
  return facesOn(piece, design).some(({ pattern }) => !turned || pattern === "none");
}

/** Whether a required grain lets a form lie so; paper without grain lets it lie in any way, unknown grain in none. */
export function grainAllows(piece: Piece, form: PieceForm, paper: Paper, turned: boolean): boolean {
  if (piece.grainNeed !== "require" || form.grainAlong === null || paper.grain === "none") return true;
  if (paper.grain === "unknown") return false;
  const liesAlong = turned ? (form.grainAlong === "width" ? "height" : "width") : form.grainAlong;
  return liesAlong === paper.grain;
}

/** Whether a form of a piece may be cut from a sheet lying so, by paper, pattern and grain. */
export function mayLie(
  piece: Piece,
  form: PieceForm,
  { design, paper }: SheetFacts,
  turned: boolean,
): boolean {
  return (
    facesOn(piece, design).length > 0 &&
    patternAllows(piece, design, turned) &&
    grainAllows(piece, form, paper, turned)
  );
}

function fits(piece: Piece, sheet: SheetFacts, longestCut: number | null): boolean {
  const { paper, design, usable, offcut, stock } = sheet;
  // A paper that is used up can be bought again, an offcut cannot.
  if (offcut !== null && stock === 0) return false;
  return piece.forms.some((form) =>
    [false, true].some((turned) => {
      const width = turned ? form.height : form.width;
      const height = turned ? form.width : form.height;
      return (
        patternAllows(piece, design, turned) &&
        grainAllows(piece, form, paper, turned) &&
        width <= usable.width &&
        height <= usable.height &&
        (longestCut === null || canBeFreed(width, height, sheet, longestCut))
      );
    }),
  );
}

/** Whether some order of cuts, none longer than the limit, trims the sheet and frees a piece from what remains. */
function canBeFreed(width: number, height: number, sheet: SheetFacts, limit: number): boolean {
  const { usable, paper, offcut } = sheet;
  const { left, right, top, bottom } = paper.trim;
  const trimmed = offcut === null;
  if (trimmed && left + right > 0 && sheet.height > limit) return false;
  if (trimmed && top + bottom > 0 && usable.width > limit) return false;
  if (width === usable.width && height === usable.height) return true;
  if (width === usable.width) return usable.width <= limit;
  if (height === usable.height) return usable.height <= limit;
  return (usable.width <= limit && height <= limit) || (usable.height <= limit && width <= limit);
}
