import { describe, expect, test } from "vitest";
import { checkProject, readProject } from "../../src/index.js";

/** The findings of these codes in a project of one card, of this paper. */
function found(paper: string, card: string, ...codes: readonly string[]) {
  const { project, faults } = readProject(
    `sheetwright: 1\ntitle: x\npapers: { night: { ${paper} } }\ncards: [{ name: Rooftops, base: night, ${card} }]\n`,
  );
  expect(faults).toEqual([]);
  return project === null ? [] : checkProject(project).filter(({ code }) => codes.includes(code));
}

describe("heavy paper that is folded is scored first", () => {
  const scores = (paper: string, card = "size: 4 x 5") => found(paper, card, "score-first").length > 0;

  // Pre-crease from 150 g/m2; score from 0.006 in (paper-merchant pages and bookbinding handbooks; folding guides).
  test.each([
    ["weight: 149 gsm", false],
    ["weight: 150 gsm", true],
    ["weight: 80 lb cover", true],
    ["weight: 65 lb", true],
    ["weight: 24 lb bond", false],
    ["weight: 80 lb text", false],
    ["thickness: 0.005 in", false],
    ["thickness: 0.006 in", true],
    ["thickness: 0.15 mm", false],
    ["weight: 120 gsm, thickness: 0.2 mm", true],
  ])("from the weight and the thickness of the trade on: %s", (label, expected) => {
    expect(scores(`cardstock: us-letter, grain: long, ${label}`)).toBe(expected);
  });

  test("only where the label says so, and something folds", () => {
    expect(scores("cardstock: us-letter, grain: long")).toBe(false);
    expect(scores("cardstock: us-letter, grain: long, weight: 216 gsm", "size: 4 x 5, fold: flat")).toBe(
      false,
    );
  });

  test("in the words of the label", () => {
    const [finding] = found(
      "cardstock: us-letter, grain: long, weight: 80 lb cover",
      "size: 4 x 5",
      "score-first",
    );
    expect(finding).toMatchObject({ severity: "note", path: "papers.night" });
    expect(finding?.message).toBe(
      "The folds of night, which weighs 216 g/m2, may crack. Score each before you fold it, on the side that the cut list names.",
    );
    const [thick] = found(
      "cardstock: us-letter, grain: long, thickness: 0.012 in",
      "size: 4 x 5",
      "score-first",
    );
    expect(thick?.message).toMatch(/^The folds of night, which is 0\.012 in thick, may crack\. /);
  });
});

// A fold parallel to the grain is smoother and cracks less (paper-merchant pages and bookbinding handbooks).
describe("folds across the grain are told before the plan where a pattern fixes them", () => {
  const across = (paper: string, card: string) => found(paper, card, "fold-across-grain").length > 0;
  const striped = "cardstock: us-letter, pattern: two-way, grain:";

  test.each([
    [`${striped} short`, "size: 4 x 5, fold: side", true],
    [`${striped} long`, "size: 4 x 5, fold: side", false],
    [`${striped} long`, "size: 4 x 5, fold: top", true],
    [`${striped} short`, "size: 4 x 5, fold: top", false],
    // The plan may choose the fold, or turn a plain paper.
    [`${striped} short`, "size: 4 x 5, fold: either", false],
    ["cardstock: us-letter, grain: short", "size: 4 x 5, fold: side", false],
    [`${striped} none`, "size: 4 x 5, fold: side", false],
    [`${striped} unknown`, "size: 4 x 5, fold: side", false],
    [`${striped} short`, "size: 4 x 5, fold: flat", false],
  ])("%s, %s", (paper, card, expected) => {
    expect(across(paper, card)).toBe(expected);
  });

  test("with what helps", () => {
    const [finding] = found(`${striped} short`, "size: 4 x 5, fold: side", "fold-across-grain");
    expect(finding).toMatchObject({ severity: "warning", path: "cards[0]" });
    expect(finding?.message).toBe(
      "Every fold of Rooftops lies across the grain: the pattern of night (two-way) forbids the quarter turn that would bring " +
        "it along. Score it before you fold it, and fold it slowly; or fold it at the top, or take a paper without a pattern.",
    );
    const [other] = found(
      "cardstock: us-letter, pattern: one-way",
      "size: 4 x 6, fold: top",
      "fold-across-grain",
    );
    expect(other?.message).toContain("across the grain (assumed): the pattern of night (one-way)");
  });
});
