import type { Project } from "@sheetwright/cards";
import { offcutCounts } from "./offcut-counts.js";
import type { StockPaper } from "./stock.js";

/**
 * The papers of a project as a stock has them: each design with its count and its offcuts, in the order of the project.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: One card
 * papers: { night: { cardstock: us-letter, count: 5, grain: long, offcuts: [4 x 8 1/2] } }
 * cards: [{ name: Plain, format: us-a2, base: night }]
 * `);
 * const [night] = stockOfProject(project);
 * [night.design, night.sheets, night.grain] // => ["night", 5, "height"]
 * night.offcuts // => [{ width: 162560, height: 345440, count: 1 }]
 */
export function stockOfProject({ papers }: Pick<Project, "papers">): readonly StockPaper[] {
  return papers.flatMap(({ name, material, sheet, grain, designs }) =>
    designs.map(
      (design): StockPaper => ({
        design: design.id,
        name: material === "pad" ? `${name}: ${design.name}` : design.name,
        sheet: { width: sheet.width, height: sheet.height },
        grain,
        sheets: design.count,
        offcuts: offcutCounts(design.offcuts).all(),
      }),
    ),
  );
}
