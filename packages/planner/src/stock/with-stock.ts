import type { Paper, PaperDesign, Project } from "@sheetwright/cards";
import { formatSize } from "@sheetwright/measure";
import type { Stock, StockFault, StockPaper } from "./stock.js";

/** A project with the counts and offcuts of a stock, and the designs of it that the stock knows. */
export interface StockedProject {
  readonly project: Project;
  /** In the order of the project; all others stay as the project says. */
  readonly designs: readonly string[];
  /** Designs that are another paper in the stock; these stay as the project says. */
  readonly faults: readonly StockFault[];
}

/**
 * Puts what is on hand in the place of the counts and offcuts of a project, design by design. A design that the stock
 * does not know stays as it is. A grain that one of the two does not know is no fault.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: One card
 * papers: { night: { cardstock: us-letter, count: 5 }, cream: { cardstock: us-letter, count: 5 } }
 * cards: [{ name: Plain, format: us-a2, base: night }]
 * `);
 * const [night] = stockOfProject(project);
 * const found = withStock(project, { papers: [{ ...night, sheets: 2 }] });
 * found.project.papers.map(({ designs }) => designs[0].count) // => [2, 5]
 * found.designs // => ["night"]
 * const other = { papers: [{ ...night, sheet: { width: 40640, height: 40640 } }] };
 * withStock(project, other).faults[0].code // => "other-size"
 */
export function withStock(project: Project, stock: Stock): StockedProject {
  const known = new Map(stock.papers.map((paper) => [paper.design, paper]));
  const designs: string[] = [];
  const faults: StockFault[] = [];
  const papers = project.papers.map((paper): Paper => {
    const stocked = paper.designs.map((design): PaperDesign => {
      const found = known.get(design.id);
      if (found === undefined) return design;
      const wrong = differences(paper, found, project);
      faults.push(...wrong);
      if (wrong.length > 0) return design;
      designs.push(design.id);
      return { ...design, count: found.sheets, offcuts: found.offcuts.filter(({ count }) => count > 0) };
    });
    return { ...paper, designs: stocked };
  });
  return { project: { ...project, papers }, designs, faults };
}

function differences(paper: Paper, found: StockPaper, { units: unit }: Project): readonly StockFault[] {
  const faults: StockFault[] = [];
  const { design, name } = found;
  if (found.sheet.width !== paper.sheet.width || found.sheet.height !== paper.sheet.height) {
    const [has, wanted] = [found.sheet, paper.sheet].map(({ width, height }) =>
      formatSize(width, height, { unit }),
    );
    faults.push({
      code: "other-size",
      design,
      at: "sheet",
      found: `${has}`,
      expected: `${wanted}`,
      message:
        `The stock has ${name} in sheets of ${has}, and the project ${wanted}. If these are two papers, give the one ` +
        "in the project another key; if they are one, correct the size where it is wrong.",
    });
  }
  const isKnown = (grain: Paper["grain"]): boolean => grain !== "unknown";
  if (found.grain !== paper.grain && isKnown(found.grain) && isKnown(paper.grain)) {
    faults.push({
      code: "other-grain",
      design,
      at: "grain",
      found: found.grain,
      expected: paper.grain,
      message:
        `The grain of ${name} is ${found.grain} in the stock, and ${paper.grain} in the project. Its offcuts lie as ` +
        "the stock says, so correct the one that is wrong.",
    });
  }
  return faults;
}
