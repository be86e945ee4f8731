import type { Paper, Piece } from "@sheetwright/cards";
import { faceOf, facesById } from "../group/faces-by-id.js";

/** Papers and pieces with fewer ways to cut them. */
export interface LesserVersion {
  readonly papers: readonly Paper[];
  readonly pieces: readonly Piece[];
}

/**
 * The pieces of a group as the maker would have written them with fewer choices: each from the first of its papers, or from
 * the first design of that alone; folded in the first way; without offcuts; and all of these together in every way that
 * makes a difference. Every plan for one of these is a plan for the group.
 */
export function lesserVersions(papers: readonly Paper[], pieces: readonly Piece[]): readonly LesserVersion[] {
  const faces = facesById(papers);
  const firstPaper = (piece: Piece): Piece => {
    const own = faceOf(faces, piece.faces[0] ?? "").paper;
    return { ...piece, faces: piece.faces.filter((id) => faceOf(faces, id).paper === own) };
  };
  const firstFace = (piece: Piece): Piece => ({ ...piece, faces: piece.faces.slice(0, 1) });
  const firstForm = (piece: Piece): Piece => ({ ...piece, forms: piece.forms.slice(0, 1) });
  const asIs = (piece: Piece): Piece => piece;
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
  for (const offcuts of hasOffcuts ? [true, false] : [true]) {
    for (const ofForms of [asIs, firstForm]) {
      for (const ofFaces of [asIs, firstPaper, firstFace]) {
        const fewer = pieces.map((piece) => ofForms(ofFaces(piece)));
        const key = keyOf(fewer, !offcuts);
        if (seen.has(key)) continue;
        seen.add(key);
        versions.push({ papers: offcuts ? papers : papers.map(withoutOffcuts), pieces: fewer });
      }
    }
  }
  return versions;
}

function keyOf(pieces: readonly Piece[], isWithoutOffcuts: boolean): string {
  return JSON.stringify([isWithoutOffcuts, pieces.map(({ faces, forms }) => [faces, forms.length])]);
}
