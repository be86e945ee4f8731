import type { Project } from "@sheetwright/cards";
import { TICKS_PER_INCH } from "@sheetwright/measure";
import type { Effort } from "@sheetwright/packing";
import { type Plan, plan, verifyPlan } from "@sheetwright/planner";
import { PROJECT_WAYS } from "./project-ways.js";

/** A project planned in one way. */
export interface AlternativeFigures {
  readonly project: string;
  readonly way: string;
  /** Whether every piece of every copy is planned. */
  readonly complete: boolean;
  /** Whole sheets cut into, and offcuts from earlier. */
  readonly sheets: number;
  readonly offcuts: number;
  /** Cost of the sheets as decimal text; `null` where some paper that is used has none. */
  readonly cost: string | null;
  /** Area of the whole sheets in square inches, rounded. */
  readonly area: number;
  readonly verified: boolean;
}

/** Plans projects in all ways. */
export function measureAlternatives(
  projects: readonly { readonly name: string; readonly project: Project }[],
  effort: Effort,
  onProject: (name: string) => void,
): readonly AlternativeFigures[] {
  return projects.flatMap(({ name, project }) => {
    onProject(name);
    return PROJECT_WAYS.map(({ name: way, of }): AlternativeFigures => {
      const asked = of(project);
      const found = plan(asked, { effort });
      return {
        project: name,
        way,
        complete: found.enough === "yes",
        sheets: found.use.reduce((sum, { used }) => sum + used, 0),
        offcuts: found.use.reduce((sum, { offcutsUsed }) => sum + offcutsUsed, 0),
        cost: found.cost,
        area: areaOf(found),
        verified: verifyPlan(asked, found).length === 0,
      };
    });
  });
}

function areaOf({ use, papers }: Plan): number {
  const sheets = new Map(
    papers.flatMap(({ designs, sheet }) => designs.map(({ id }) => [id, sheet] as const)),
  );
  const area = use.reduce((sum, { design, used }) => {
    const { width = 0, height = 0 } = sheets.get(design) ?? {};
    return sum + (used * width * height) / (TICKS_PER_INCH * TICKS_PER_INCH);
  }, 0);
  return Math.round(area);
}
