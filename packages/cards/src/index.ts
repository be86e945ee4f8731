// The project

export type {
  Along,
  Bands,
  Choice,
  Design,
  Extent,
  Face,
  Flat,
  FoldDirection,
  FoldKind,
  Grain,
  GrainNeed,
  Layer,
  Mat,
  Offcut,
  Panel,
  Paper,
  PaperDesign,
  PaperWeight,
  Pattern,
  Place,
  Project,
  Run,
  Score,
  Sentiment,
  Sides,
  Slit,
  Strip,
  SurfaceLayers,
  SurfaceName,
  Trimmer,
} from "./project.js";
export { ProjectError, type ProjectFault, type ProjectFaultCode } from "./project-fault.js";

// The project file

export type { FilePlace } from "./project-file/fault-list.js";
export { type ReadProject, type ReadProjectOptions, readProject } from "./project-file/read-project.js";
export { projectSchema } from "./project-file/schema/project-schema.js";

// The fold and the grain

export {
  type FoldWish,
  flatsOf,
  formatFront,
  frontOfPiece,
  type NamedFoldWish,
  type OwnFold,
  usualFold,
} from "./fold/flats.js";
export type { FoldMeasures, NamedFold } from "./fold/fold-panels.js";
export { type FoldVerdict, foldVerdict, grainForFold } from "./fold/fold-verdict.js";
export { surfacesOf } from "./fold/surfaces.js";
export { allowedTurns, grainTurns, patternTurns, type Turns } from "./fold/turns.js";

// The cards and the cut list

export { expandProject, findProjectFaults } from "./expand/expand-project.js";
export { type VisibleAreas, visibleAreas } from "./expand/visible-areas.js";
export type { Card, CardLayer, CardSurface, Expansion, Piece, PieceForm, Rounding } from "./expansion.js";

// What to tell the maker

export type { Advice, AdviceCode } from "./advice/advice.js";
export { adviseOn } from "./advice/advise-on.js";
export { explainNoPaper } from "./fit/explain-no-paper.js";
export type { NoPaper } from "./no-paper.js";
