// The problem

// The search
export { howMany, type Yield, type YieldOptions, type YieldSheet } from "./how-many.js";
export type {
  Aim,
  Bound,
  Certificate,
  CutNode,
  DualFeasible,
  Effort,
  Form,
  Hidden,
  Kind,
  KindCount,
  Layout,
  LeftoverLeaf,
  Mode,
  Outcome,
  Packing,
  PieceLeaf,
  Problem,
  Rectangle,
  SearchRecord,
  SetShare,
  Share,
  Sheet,
  SheetTurns,
  SheetWeights,
  Size,
  Split,
  SplitPart,
  StoppedCuts,
  Trim,
  Turns,
  Window,
} from "./model.js";
export {
  type PackAsyncOptions,
  type PackOptions,
  type Progress,
  pack,
  packAsync,
  packSteps,
} from "./pack.js";
export { checkProblem, LARGEST_COUNT, LARGEST_LENGTH } from "./problem/check-problem.js";
export { ProblemError, type ProblemFaultCode, type ProblemFinding } from "./problem/problem-error.js";
