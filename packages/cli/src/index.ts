export type { Fault, Place } from "./fault.js";
export type { Files, Io, Output } from "./io.js";
export { nodeFiles } from "./node-files.js";
export { type PlanFile, planFile, planFileJsonSchema } from "./plan/plan-file.js";
export type { LayoutSummary, PlanSummary } from "./plan/plan-summary.js";
export { type ExitCode, run } from "./run.js";
