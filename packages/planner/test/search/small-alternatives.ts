// Small projects whose pieces may come from several papers, made at random: few enough sheets and copies to look at every
// way to cut them. Pieces are large beside the sheets, so that which paper they come from decides about the cost.

import { type Project, readProject } from "@sheetwright/cards";
import fc from "fast-check";

const SHEETS = ["6 x 8", "5 x 7", "8 x 10", "7 x 7"];
const OFFCUTS = ["3 x 4", "4 x 5", "5 x 5", "2 x 5"];
const FRONTS = ["2 x 3", "3 x 3", "2 x 5"];
const PANELS = ["2 x 2", "1 x 3", "3 x 4", "4 x 5"];
const COSTS = ["0", "0.25", "0.5", "0.5", "1", null];

/** The choices that a piece may have. */
const CHOICES = ["cream", "[cream, night]", "[night, stars]", "[stars, cream, night]", "any cardstock"];

const paper = fc.record({
  sheet: fc.constantFrom(...SHEETS),
  cost: fc.constantFrom(...COSTS),
  count: fc.constantFrom(null, null, 1, 2, 3),
  offcuts: fc.uniqueArray(fc.constantFrom(...OFFCUTS), { maxLength: 2 }),
  pattern: fc.constantFrom("none", "none", "none", "two-way"),
});

/** How large the projects are. */
export interface SmallAlternativesOptions {
  /** Most cards. Default 2. */
  readonly cards?: number;
  /** Most copies of a card. Default 3. */
  readonly copies?: number;
}

/** Projects of three papers that all have a cost, or none. */
export function smallAlternatives({
  cards: mostCards = 2,
  copies: mostCopies = 3,
}: SmallAlternativesOptions = {}): fc.Arbitrary<Project> {
  const card = fc.record({
    front: fc.constantFrom(...FRONTS),
    fold: fc.constantFrom("flat", "side", "either", "either"),
    base: fc.constantFrom(...CHOICES),
    panel: fc.option(fc.record({ size: fc.constantFrom(...PANELS), paper: fc.constantFrom(...CHOICES) }), {
      nil: null,
    }),
    copies: fc.integer({ min: 1, max: mostCopies }),
  });
  const bundle = fc.record({
    papers: fc.tuple(paper, paper, paper),
    priced: fc.boolean(),
    cards: fc.array(card, { minLength: 1, maxLength: mostCards }),
  });
  return bundle.map(({ papers, priced, cards }) => {
    const names = ["cream", "night", "stars"];
    const file = {
      sheetwright: 1,
      title: "Small",
      papers: Object.fromEntries(
        papers.map(({ sheet, cost, count, offcuts, pattern }, index) => [
          names[index] ?? "",
          {
            cardstock: sheet,
            ...(priced ? { cost: cost ?? "0.75" } : {}),
            ...(count === null ? {} : { count }),
            offcuts: offcuts.filter((offcut) => isWithin(offcut, sheet)),
            pattern,
          },
        ]),
      ),
      cards: cards.map(({ front, fold, base, panel, copies }, index) => ({
        name: `Card ${index + 1}`,
        size: front,
        fold,
        base: choiceOf(base),
        copies,
        ...(panel === null || !isWithin(panel.size, front)
          ? {}
          : { front: [{ panel: choiceOf(panel.paper), size: panel.size }] }),
      })),
    };
    const { project, faults } = readProject(JSON.stringify(file));
    if (project === null)
      throw new Error(faults.map(({ path, message }) => `${path}: ${message}`).join("\n"));
    return project;
  });
}

function choiceOf(text: string): string | readonly string[] {
  return text.startsWith("[") ? text.slice(1, -1).split(", ") : text;
}

function isWithin(part: string, whole: string): boolean {
  const [width = 0, height = 0] = part.split(" x ").map(Number);
  const [w = 0, h = 0] = whole.split(" x ").map(Number);
  return width <= w && height <= h;
}
