export type { CheckedCard, CheckedPaper, CheckReport } from "./check/check-report.js";
export type { Fault, Place } from "./fault.js";
export type { Files, Io, Output } from "./io.js";
export { nodeFiles } from "./node-files.js";
export { type PlanFile, planFile, planFileJsonSchema } from "./plan/plan-file.js";
export type { LayoutSummary, PlanSummary } from "./plan/plan-summary.js";
export type { GroupProof } from "./project-plan/group-proof.js";
export {
  type ProjectPlanFile,
  projectPlanFile,
  projectPlanFileJsonSchema,
} from "./project-plan/project-plan-file.js";
export type {
  CardSummary,
  PaperLayout,
  PaperSummary,
  ProjectPlanSummary,
} from "./project-plan/project-plan-summary.js";
export { type ExitCode, run } from "./run.js";
export type { ShapeReport, StitchReport } from "./shape/shape-report.js";
export type { Holder } from "./stock/holder.js";
export { nodeHolder } from "./stock/node-holder.js";
export type { StockSummary } from "./stock/stock-command.js";
export { type StockFile, stockFile, stockFileJsonSchema } from "./stock/stock-file.js";
