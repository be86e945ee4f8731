import type { Design, Paper, Project } from "@sheetwright/cards";
import { withBags } from "../kits/with-bags.js";
import type { ComparisonCase } from "./compare-case.js";
import type { ComparedSize } from "./comparison.js";

/**
 * The cases of a project: each number of copies of every card, with all papers as sheets of each size, as many as needed.
 * Papers keep their patterns, their trim and the side that their grain runs along; what is left of them from earlier, and
 * spare copies, are not reckoned with.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: Harbour cards
 * papers: { night: { cardstock: us-letter, count: 5, grain: long } }
 * cards: [{ name: Harbour, format: us-a2, base: night, copies: 8 }]
 * `);
 * const a4 = { id: "iso-a4", name: "A4", width: 336000, height: 475200, cost: null };
 * const [one, ten] = projectCases(project, [a4], [1, 10]);
 * ten.asked.project.papers.map(({ grain, designs }) => [grain, designs[0].count]) // => [["height", null]]
 * compareCase(ten).sheets // => 10
 */
export function projectCases(
  project: Project,
  sizes: readonly ComparedSize[],
  copies: readonly number[],
): readonly ComparisonCase[] {
  // It is papers that are compared: there is as much of every item as needed.
  const items = project.items?.map((item) => ({ ...item, count: null }));
  return sizes.flatMap((size) => {
    const papers = project.papers.map((paper) => resized(paper, size));
    return copies.map((count): ComparisonCase => {
      const cards = project.cards.map((card) => withCopies(card, count));
      return {
        size,
        copies: count,
        asked: {
          of: "project",
          project: withBags({ ...project, papers, ...(items === undefined ? {} : { items }), cards }, count),
        },
      };
    });
  });
}

function resized(paper: Paper, { name, width, height }: ComparedSize): Paper {
  return {
    ...paper,
    sheet: { width, height },
    sheetName: name,
    grain: grainOn(paper, { width, height }),
    designs: paper.designs.map((design) => ({ ...design, count: null, cost: null, offcuts: [] })),
  };
}

/** Grain runs along the longer side, or the shorter one, of a paper of any size; of squares along the same side. */
export function grainOn(
  { grain, sheet }: Paper,
  size: Pick<ComparedSize, "width" | "height">,
): Paper["grain"] {
  if (grain !== "width" && grain !== "height") return grain;
  if (sheet.width === sheet.height || size.width === size.height) return grain;
  const isSame = sheet.width > sheet.height === size.width > size.height;
  if (isSame) return grain;
  return grain === "width" ? "height" : "width";
}

function withCopies(card: Design, count: number): Design {
  return { ...card, copies: count, copiesFor: { guests: count, samples: 0 } };
}
