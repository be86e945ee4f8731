// The project

export { itemKey } from "./item-name.js";
export type {
  Along,
  AnyPaper,
  BandParts,
  BandShares,
  Bands,
  BundleItem,
  Choice,
  CopiesFor,
  CutAlready,
  Design,
  DieCut,
  DieMachine,
  DieMat,
  DieSize,
  EnvelopeWish,
  Extent,
  Extra,
  Face,
  Flat,
  FoldDirection,
  FoldKind,
  Grain,
  GrainNeed,
  InnerBands,
  Insert,
  ItemPack,
  Kits,
  Layer,
  LayerJoin,
  Mat,
  NamedCost,
  Offcut,
  Panel,
  Paper,
  PaperDesign,
  PaperPack,
  PaperWeight,
  Pattern,
  Place,
  Project,
  Rates,
  Ribbon,
  Run,
  Score,
  Seam,
  Sentiment,
  Shadow,
  Sides,
  Silence,
  Slit,
  Stitched,
  Strip,
  SurfaceLayers,
  SurfaceName,
  Trimmer,
} from "./project.js";
export { ProjectError, type ProjectFault } from "./project-fault.js";

// The project file

export type { FilePlace } from "./project-file/fault-list.js";
export { usualDieMachine } from "./project-file/read-die-machine.js";
export {
  type ReadProject,
  type ReadProjectOptions,
  readProject,
  shelfOf,
} from "./project-file/read-project.js";
export { projectSchema } from "./project-file/schema/project-schema.js";

// The shelf file

export { isShelf, type ReadShelf, readShelf, type ShelfNames, type ShelfText } from "./shelf/read-shelf.js";
export { shelfSchema } from "./shelf/shelf-schema.js";

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
export { namedFolds, namedSurfaces } from "./fold/names.js";
export { surfacesOf } from "./fold/surfaces.js";
export { allowedTurns, grainTurns, patternTurns, type Turns } from "./fold/turns.js";

// The cards and the cut list

export { expandProject, findProjectFaults } from "./expand/expand-project.js";
export { type VisibleAreas, visibleAreas } from "./expand/visible-areas.js";
export type {
  Card,
  CardExtra,
  CardLayer,
  CardSeam,
  CardSurface,
  Expansion,
  Item,
  Join,
  Piece,
  PieceDie,
  PieceForm,
  Reveal,
  Rounding,
  StitchMarks,
} from "./expansion.js";

// The finished card

export { type EnvelopeMass, envelopeMass } from "./envelope/envelope-mass.js";
export { type EnvelopeRoom, type EnvelopeVerdict, envelopeRoom } from "./envelope/envelope-room.js";
export { type EnvelopeFit, listEnvelopes } from "./envelope/list-envelopes.js";
export { usualEnvelopes } from "./envelope/usual-envelopes.js";
export {
  type CardEnvelope,
  type FinishedCard,
  finishedCard,
  finishedCards,
} from "./finished/finished-card.js";
export type { CardThickness } from "./thickness/card-thickness.js";
export { closedSize, type FoldedPanel, foldedPanels, placeOnClosed } from "./thickness/folded-panels.js";
export { sayThickness } from "./thickness/say-thickness.js";
export { type Slab, thickestPoint } from "./thickness/thickest-point.js";
export type { CardMass } from "./weight/card-mass.js";
export { type Basis, type PaperMeasures, paperMeasures } from "./weight/paper-measures.js";
export { sayMass } from "./weight/say-mass.js";

// Checks

export type { Check, Severity } from "./checks/check.js";
export { checkProject } from "./checks/check-project.js";
export type { ProjectFaultCode } from "./checks/fault-checks.js";
export { unusedItems } from "./checks/find-unused-items.js";
export type { Finding } from "./checks/finding.js";
export { type CheckCode, projectChecks } from "./checks/project-checks.js";
export { type SilenceableCode, silenceableCodes } from "./checks/silenceable-codes.js";
export { explainNoPaper } from "./fit/explain-no-paper.js";
export type { NoPaper } from "./no-paper.js";
