import { type Flat, readProject } from "@sheetwright/cards";
import { inches } from "@sheetwright/measure";
import { describe, expect, test } from "vitest";
import { byBorder, card, choice, face, panel, project } from "../../cards/test/small-project.js";
import { layoutMarks, plan } from "../src/index.js";
import { letterPaper, made, pad, provenPlan } from "./bench-project.js";

const inch = inches(1);
const back = face("night.back", { pattern: "none", colour: "#445566" });
const papers = [
  letterPaper("night", {}, { back, front: face("night", { pattern: "one-way", colour: "#22304f" }) }),
  pad("stars", {
    dots: {},
    comets: { front: face("stars.comets", { pattern: "one-way", colour: "#aabbcc" }) },
  }),
];
const marksOf = (base: readonly string[], layer: readonly string[], group: number) => {
  const layers = [panel(byBorder(inch / 8), { paper: choice(...layer) })];
  const one = card(4 * inch, 5 * inch, layers, { base: choice(...base), ...made(2) });
  return layoutMarks(provenPlan(project([one], { papers })), group);
};

describe("marks on a group's layouts", () => {
  test("tell grain, pattern and colour of each sheet, and the scores of each form", () => {
    const marks = marksOf(["night"], ["stars.dots"], 0);
    expect(marks.sheets).toEqual({ night: { grain: "height", pattern: "one-way", colour: "#22304f" } });
    expect(marks.forms).toEqual({
      "1a": [{ scores: [{ along: "width", at: 4 * inch, folds: "mountain" }], topOn: ["night"], backOn: [] }],
    });
  });

  test("tell of grain that is only assumed", () => {
    const assumed = papers.map((paper) => ({ ...paper, grainBasis: "assumed" as const }));
    const plan = provenPlan(
      project([card(4 * inch, 5 * inch, [], made(1))], { papers: assumed.slice(0, 1) }),
    );
    expect(layoutMarks(plan, 0).sheets).toMatchObject({ night: { grain: "height", grainIsAssumed: true } });
  });

  test("tell which way each score folds, and the slits of a form", () => {
    const shutter: Pick<Flat, "scores" | "slits"> = {
      scores: [
        { along: "width", at: inch, folds: "both" },
        { along: "width", at: 4 * inch, folds: "valley" },
      ],
      slits: [{ along: "width", at: inch, from: inch, to: 4 * inch }],
    };
    const plan = provenPlan(project([card(4 * inch, 5 * inch, [], made(1))], { papers }));
    const pieces = plan.pieces.map((piece) => ({
      ...piece,
      forms: piece.forms.map((form) => ({ ...form, ...shutter })),
    }));
    expect(layoutMarks({ ...plan, pieces }, 0).forms["1a"]).toMatchObject([shutter]);
  });

  test("name the sheets on which the top is marked: those with a one-way pattern", () => {
    const { forms } = marksOf(["night"], ["stars.dots", "stars.comets"], 1);
    expect(forms["1b"]).toEqual([{ scores: [], topOn: ["stars.comets"], backOn: [] }]);
  });

  test("name the sheets from which a piece is cut with the back showing", () => {
    expect(marksOf(["night.back"], ["stars.dots"], 0).forms["1a"]).toMatchObject([
      { topOn: [], backOn: ["night"] },
    ]);
  });

  test("tell turned copies apart where only one face may be turned", () => {
    expect(marksOf(["night", "night.back"], ["stars.dots"], 0).forms["1a"]).toMatchObject([
      { topOn: ["night"], backOn: [], turned: { topOn: [], backOn: ["night"] } },
    ]);
  });

  test("are of a group that there is", () => {
    expect(() => marksOf(["night"], ["stars.dots"], 2)).toThrow(
      new RangeError("Expected the index of one of 2 groups of papers, found 2."),
    );
  });
});

test("says by which die a die blank is cut", () => {
  const { project } = readProject(`{ sheetwright: 1, title: One, papers: { cream: { cardstock: us-letter } },
    dies: { star: 3 x 3 }, cards: [{ name: Plain, format: us-a2, base: cream, front: [{ die: star, paper: cream }] }] }`);
  if (project === null) throw new Error("The project has faults.");
  const { forms } = layoutMarks(plan(project, { effort: "quick" }), 0);
  expect(forms["1b"]?.[0]?.die).toEqual({ name: "star", cut: { width: 3 * 40_640, height: 3 * 40_640 } });
  expect(forms["1a"]?.[0]).not.toHaveProperty("die");
});
