import type { Project } from "@sheetwright/cards";
import { inches } from "@sheetwright/measure";
import { expect } from "vitest";
import { face, paper, paperDesign } from "../../cards/test/small-project.js";
import { type Paper, type PaperDesign, type Plan, plan, verifyPlan } from "../src/index.js";

// What the tests of plans say in one word.

/** So many copies, all for guests. */
export const made = (copies: number) => ({ copies, copiesFor: { guests: copies, samples: 0 } });

/** So many copies, all for guests, and so many spares wished for. */
export const madeWithSpares = (copies: number, spares: number) => ({
  copies,
  copiesFor: { guests: copies, samples: 0, spares },
});

/** Letter sheets of one paper, its grain along the long side unless said otherwise. */
export function letterPaper(id: string, more: Partial<Paper> = {}, design: Partial<PaperDesign> = {}): Paper {
  return paper(id, inches(8.5), inches(11), {
    grain: "height",
    designs: [paperDesign(id, design)],
    ...more,
  });
}

/** A pad of 6 x 6 sheets with these designs. */
export function pad(id: string, designs: Readonly<Record<string, Partial<PaperDesign>>>): Paper {
  return paper(id, inches(6), inches(6), {
    name: "Stars",
    material: "pad",
    designs: Object.entries(designs).map(([key, more]) =>
      paperDesign(`${id}.${key}`, { name: key, front: face(`${id}.${key}`), ...more }),
    ),
  });
}

/** Plans with quick effort, and fails where the plan does not prove right. */
export function provenPlan(project: Project, seed = 1): Plan {
  const found = plan(project, { effort: "quick", seed });
  expect(verifyPlan(project, found)).toEqual([]);
  return found;
}
