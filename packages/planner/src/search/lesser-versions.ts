import type { Paper, Piece } from "@sheetwright/cards";
import { faceOf, facesById } from "../group/faces-by-id.js";

/** Papers and pieces with fewer ways to cut them. */
export interface LesserVersion {
  readonly papers: readonly Paper[];
  readonly pieces: readonly Piece[];
  /** How much less of each sort of choice there is: of papers, of folds, of offcuts; 0 where there is all. */
  readonly less: readonly number[];
}

/** Whether a version has no choice that another one has not. */
export function isWithin(version: LesserVersion, other: LesserVersion): boolean {
  return version.less.every((less, i) => less >= (other.less[i] ?? 0));
}

/**
 * The pieces of a group as the maker would have written them with fewer choices: each from the first of its papers, or from
 * the first design of that alone; folded in the first way; without offcuts; and all of these together in every way that
 * makes a difference. Every plan for one of these is a plan for the group. Versions with more choices come before those that
 * have less of the same.
 */
export function lesserVersions(papers: readonly Paper[], pieces: readonly Piece[]): readonly LesserVersion[] {
  const faces = facesById(papers);
  const firstPaper = (piece: Piece): Piece => {
    const own = faceOf(faces, piece.faces[0] ?? "").paper;
    return { ...piece, faces: piece.faces.filter((id) => faceOf(faces, id).paper === own) };
  };
  const firstFace = (piece: Piece): Piece => ({ ...piece, faces: piece.faces.slice(0, 1) });
  const firstForm = (piece: Piece): Piece => ({ ...piece, forms: piece.forms.slice(0, 1) });
  const withoutOffcuts = (paper: Paper): Paper => ({
    ...paper,
    designs: paper.designs.map((design) => ({ ...design, offcuts: [] })),
  });

  const used = new Set(pieces.flatMap((piece) => piece.faces.map((id) => faceOf(faces, id).design.id)));
  const hasOffcuts = papers.some(({ designs }) =>
    designs.some(({ id, offcuts }) => used.has(id) && offcuts.some(({ count }) => count > 0)),
  );
  const seen = new Set([keyOf(pieces, false)]);
  const versions: LesserVersion[] = [];
  for (const [lessOffcuts, ofPapers] of [same<Paper>, withoutOffcuts].entries()) {
    if (lessOffcuts > 0 && !hasOffcuts) continue;
    for (const [lessForms, ofForms] of [same<Piece>, firstForm].entries()) {
      for (const [lessFaces, ofFaces] of [same<Piece>, firstPaper, firstFace].entries()) {
        const fewer = pieces.map((piece) => ofForms(ofFaces(piece)));
        const key = keyOf(fewer, lessOffcuts > 0);
        if (seen.has(key)) continue;
        seen.add(key);
        const less = [lessFaces, lessForms, lessOffcuts];
        versions.push({ papers: papers.map(ofPapers), pieces: fewer, less });
      }
    }
  }
  return versions;
}

function same<One>(one: One): One {
  return one;
}

function keyOf(pieces: readonly Piece[], isWithoutOffcuts: boolean): string {
  return JSON.stringify([isWithoutOffcuts, pieces.map(({ faces, forms }) => [faces, forms.length])]);
}
