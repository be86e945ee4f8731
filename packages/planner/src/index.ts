// The plan

export { type Packer, type PlanAsyncOptions, type PlanOptions, plan, planAsync, planSteps } from "./plan.js";
export type {
  CompleteCopies,
  FoldGrain,
  FormMarks,
  LayoutMarks,
  PaperGroup,
  PaperLeftover,
  PaperUse,
  Plan,
  PlanCosts,
  SheetMarks,
  Shortage,
} from "./plan-model.js";
export type { PlanProgress } from "./search/group-search.js";

// Its proof

export { type PlanFinding, type PlanFindingCode, planFindingCodes } from "./verify/plan-finding.js";
export { verifyPlan } from "./verify/verify-plan.js";

// Sizes of sheets compared

export { type CompareOptions, type ComparisonCase, compareCase } from "./compare/compare-case.js";
export { compareSizes, comparisonOf } from "./compare/compare-sizes.js";
export type { ComparedSize, Comparison, ComparisonRow } from "./compare/comparison.js";
export { pieceCases } from "./compare/piece-cases.js";
export { projectCases } from "./compare/project-cases.js";

// What is told of it

export { cardsAsCut } from "./cards-as-cut.js";
export { layoutMarks } from "./layout-marks.js";
export { findLeftovers, type Leftover } from "./totals/find-leftovers.js";

// The cards and papers that a plan tells of

export type {
  Card,
  CardLayer,
  CardSeam,
  CardSurface,
  CopiesFor,
  Expansion,
  Face,
  Flat,
  FoldDirection,
  Grain,
  GrainNeed,
  Item,
  Join,
  NoPaper,
  Offcut,
  Paper,
  PaperDesign,
  PaperWeight,
  Pattern,
  Piece,
  PieceDie,
  PieceForm,
  Reveal,
  Rounding,
  Score,
  Sides,
  Slit,
  StitchMarks,
  SurfaceName,
} from "@sheetwright/cards";

// What its groups are made of

export type { Effort, Packing, Problem, Progress } from "@sheetwright/packing";
