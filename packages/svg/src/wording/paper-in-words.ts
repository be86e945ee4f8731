import type { Face, Paper, Piece } from "@sheetwright/planner";
import { displayName } from "./display-name.js";

/** A face of a paper that a piece may be cut from. */
export interface KnownFace {
  readonly face: Face;
  readonly paper: Paper;
  /** Whether it is the printed back of a sheet. */
  readonly back: boolean;
}

/** The faces of all papers, by their ids. */
export function facesOf(papers: readonly Paper[]): ReadonlyMap<string, KnownFace> {
  const known = papers.flatMap((paper) =>
    paper.designs.flatMap(({ front, back }) =>
      (back === null ? [front] : [front, back]).map(
        (face) => [face.id, { face, paper, back: face === back }] as const,
      ),
    ),
  );
  return new Map(known);
}

/**
 * The papers that a piece may be cut from, as a reader knows them: `Night blue`, `Stars: comets`, `any of Stars`. Faces
 * that no paper has are left out.
 *
 * @example
 * paperInWords({ faces: [] }, []) // => ""
 */
export function paperInWords(piece: Pick<Piece, "faces">, papers: readonly Paper[]): string {
  return paperNameOf(piece, facesOf(papers));
}

/** The same where the faces are at hand. */
export function paperNameOf(piece: Pick<Piece, "faces">, faces: ReadonlyMap<string, KnownFace>): string {
  const known = piece.faces.flatMap((id) => faces.get(id) ?? []);
  const [first] = known;
  const fronts = first?.paper.designs.map(({ front }) => front.id) ?? [];
  const wholePad =
    known.length > 1 && known.length === fronts.length && fronts.every((id) => piece.faces.includes(id));
  if (first !== undefined && wholePad) return `any of ${displayName(first.paper)}`;
  const papers = [...new Set(known.map(({ paper }) => paper))];
  return papers
    .map((paper) => {
      const names = known.filter((one) => one.paper === paper).map(({ face }) => displayName(face));
      const listed = [...new Set(names)].join(" or ");
      return paper.material === "pad" || paper.designs.length > 1
        ? `${displayName(paper)}: ${listed}`
        : listed;
    })
    .join(" or ");
}
