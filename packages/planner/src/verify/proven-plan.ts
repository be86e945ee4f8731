import type { Project } from "@sheetwright/cards";
import type { Plan } from "../plan-model.js";
import { verifyPlan } from "./verify-plan.js";

/** Gives a plan out only where it proves right; throws an Error, for a fault of Sheetwright, where it does not. */
export function provenPlan(project: Project, plan: Plan): Plan {
  const findings = verifyPlan(project, plan);
  if (findings.length === 0) return plan;
  const told = findings.slice(0, 10).map(({ path, message }) => `${path}: ${message}`);
  throw new Error(`A plan is not right, which is a fault of Sheetwright. ${told.join(" ")}`);
}
