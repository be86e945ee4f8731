import type { Face, Paper, PaperDesign, Project } from "../project.js";

/** A face that pieces may be cut from, with the paper it is of. */
export interface FaceOfPaper {
  readonly face: Face;
  readonly design: PaperDesign;
  readonly paper: Paper;
}

/**
 * All faces of a project's papers by id, in the order of the papers: of each design its front, then its back.
 *
 * @internal
 */
export function indexFaces({ papers }: Pick<Project, "papers">): ReadonlyMap<string, FaceOfPaper> {
  const faces = new Map<string, FaceOfPaper>();
  for (const paper of papers) {
    for (const design of paper.designs) {
      for (const face of [design.front, design.back]) {
        if (face !== null && !faces.has(face.id)) faces.set(face.id, { face, design, paper });
      }
    }
  }
  return faces;
}
