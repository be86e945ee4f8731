import type { Project } from "@sheetwright/cards";
import { withoutBags } from "../kits/with-bags.js";
import type { Plan } from "../plan-model.js";
import { applyStockChange } from "../stock/apply-stock-change.js";
import { wholePlan } from "../stock/layout-progress.js";
import { stockChange } from "../stock/stock-change.js";
import { stockOfProject } from "../stock/stock-of-project.js";
import { withStock } from "../stock/with-stock.js";

/**
 * A project with what is on hand once a plan of it is cut: sheets that are left, and leftovers worth keeping as offcuts. Of
 * sheets that come as needed none are left. Throws a RangeError where the plan is not of the project.
 */
export function projectAfter(project: Project, plan: Plan): Project {
  const changes = stockChange(plan, wholePlan(plan));
  const { stock, faults } = applyStockChange({ papers: stockOfProject(project) }, changes, project.units);
  if (faults.length > 0) throw new RangeError(faults.map(({ message }) => message).join(" "));
  const after = withStock(project, stock).project;
  // What is left lies in one pile again; of a roll that is cut nothing is counted on.
  const whole = withoutBags(after);
  const used = new Map((plan.itemUse ?? []).map((use) => [use.item, use.used]));
  const items = whole.items?.map((item) => ({
    ...item,
    count: item.count === null ? null : item.count - (used.get(item.name) ?? 0),
  }));
  return {
    ...whole,
    ...(items === undefined ? {} : { items }),
    papers: whole.papers.map((paper) => ({
      ...paper,
      designs: paper.designs.map((design) => ({ ...design, count: design.count ?? 0 })),
    })),
  };
}
