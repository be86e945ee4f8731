// The problem

export type {
  Aim,
  Form,
  Hidden,
  Kind,
  Mode,
  Problem,
  Rectangle,
  SetShare,
  Sheet,
  SheetTurns,
  Size,
  Trim,
  Turns,
} from "./model.js";
export { checkProblem, LARGEST_COUNT, LARGEST_LENGTH } from "./problem/check-problem.js";
export { ProblemError, type ProblemFaultCode, type ProblemFinding } from "./problem/problem-error.js";

// The search

export { wantsSolver } from "./columns/wants-solver.js";
export { howMany, type Yield, type YieldOptions, type YieldSheet } from "./how-many.js";
export {
  type PackAsyncOptions,
  type PackOptions,
  pack,
  packAsync,
  packSteps,
} from "./pack.js";
export { type PackSpreadOptions, packSpread, type StartWatch } from "./pack-spread.js";
export type { Progress } from "./progress.js";
export type {
  LinearColumn,
  LinearEntry,
  LinearProgram,
  LinearRow,
  LinearSolution,
  LinearSolver,
  SolverLimits,
} from "./solver.js";
export {
  type FirstPlans,
  joinStarts,
  packStart,
  type StartResult,
  type StartTask,
  startCount,
  startSteps,
} from "./spread-starts.js";

// The answer and its proof

export type {
  Bound,
  Certificate,
  CutNode,
  DualFeasible,
  Effort,
  FittedValue,
  FunctionPair,
  KindCount,
  KindPrice,
  Layout,
  LeftoverLeaf,
  Outcome,
  Packing,
  PieceLeaf,
  SearchRecord,
  Share,
  SheetWeights,
  Split,
  SplitPart,
  StoppedCuts,
  Window,
} from "./model.js";
export { type Finding, type FindingCode, type FindingValue, findingCodes } from "./verify/finding.js";
export { verify } from "./verify/verify.js";

// The work at the trimmer

export { type ArrangeOptions, arrange } from "./arrange.js";
export { countCuts } from "./cut-order/count-cuts.js";
export { CutOrderError } from "./cut-order/cut-order-error.js";
export { cutOrder } from "./cut-order.js";
export type { Cut, CutOrder, CutOrderOptions, CutPart, Edge } from "./cutting.js";
export { type Placement, placements } from "./placements.js";
