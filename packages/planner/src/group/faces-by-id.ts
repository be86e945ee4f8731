import type { Face, Paper, PaperDesign } from "@sheetwright/cards";

/** One face of the sheets of a paper's design. */
export interface SheetFace {
  readonly paper: Paper;
  readonly design: PaperDesign;
  readonly face: Face;
  readonly isBack: boolean;
}

/** Every face of the papers by its id: `night`, `night.back`, `stars.comets`. */
export function facesById(papers: readonly Paper[]): ReadonlyMap<string, SheetFace> {
  const faces = new Map<string, SheetFace>();
  for (const paper of papers) {
    for (const design of paper.designs) {
      faces.set(design.front.id, { paper, design, face: design.front, isBack: false });
      if (design.back !== null) faces.set(design.back.id, { paper, design, face: design.back, isBack: true });
    }
  }
  return faces;
}

/** The face of an id; a RangeError where there is none, which no sound project leads to. */
export function faceOf(faces: ReadonlyMap<string, SheetFace>, id: string): SheetFace {
  const face = faces.get(id);
  if (face === undefined) throw new RangeError(`Expected the id of a face of the papers, found "${id}".`);
  return face;
}
