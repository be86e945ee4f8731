import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  GRAMS_PER_OUNCE,
  grammageOf,
  inches,
  massOf,
  type PaperGrade,
  paperGrades,
  poundsOf,
} from "../../src/index.js";

describe("the weight of paper", () => {
  // Paper-weight tables in printer manuals; basis-weight conversion pages of paper mills and converters.
  it.each<[PaperGrade, number, number]>([
    ["bond", 374, 3.75973],
    ["text", 950, 1.48015],
    ["cover", 520, 2.70411],
    ["bristol", 641.25, 2.19281],
    ["index", 777.75, 1.80796],
    ["tag", 864, 1.62748],
  ])("has for %s the basic area and the factor of the published tables", (grade, area, factor) => {
    const [short, long] = paperGrades.find(({ id }) => id === grade)?.basicSize ?? [0, 0];
    expect(short * long).toBe(area);
    expect(grammageOf(1, grade)).toBeCloseTo(factor, 5);
  });

  // Worked examples; mills round the factors, so within 0.5 %.
  it.each<[PaperGrade, number, number, string]>([
    ["text", 90, 133.218, "printer manuals"],
    ["cover", 100, 270.42, "printer manuals"],
    ["bond", 28, 105.3, "paper mills and converters"],
    ["text", 40, 59.24, "paper mills and converters"],
    ["cover", 65, 175, "paper-weight comparison chart"],
    ["cover", 80, 216, "paper-weight comparison chart"],
    ["cover", 100, 270, "paper-weight comparison chart"],
    ["cover", 130, 352, "paper-weight comparison chart"],
    ["cover", 150, 406, "paper-weight comparison chart"],
    ["text", 80, 118.4, "paper mills and converters"],
    ["cover", 65, 176, "caliper charts of the paper trade"],
  ])("gives for %s of %d lb the %d g/m2 of a worked example (%s)", (grade, pounds, published) => {
    expect(Math.abs(grammageOf(pounds, grade) / published - 1)).toBeLessThan(0.005);
  });

  // The equivalence table of a printer manual, whole; a star marks pounds of text that the table rounds to a label's.
  // Within 2.5 g/m2 or 2.5 %, since the table rounds pounds to whole ones; bond has one row in one place more.
  const TABLE = [
    [16, 41, 22, 27, 33, 37, 60],
    [17, 43, 24, 29, 35, 39, 64],
    [20, 50, 28, 34, 42, 46, 75],
    [21, 54, 30, 36, 44, 49, 80],
    [24, 60, 33, 41, 50, 55, 90],
    [27, 68, 37, 45, 55, 61, 100],
    [28, 70, 39, 49, 58, 65, 105],
    [29, 74, 41, 50, 61, 68, 110],
    [32, 80, 44, 55, 67, 74, 120],
    [36, 90, 50, 62, 75, 83, 135],
    [39, 100, 55, 67, 82, 91, 148],
    [40, 101, 55, 68, 83, 92, 150],
    [43, 110, 60, 74, 90, 100, 163],
    [45, 115, 63, 77, 94, 104, 170],
    [47, 119, 65, 80, 97, 108, 176],
    [51, 128, 70, 86, 105, 117, 190],
    [53, 134, 74, 90, 110, 122, 199],
    [54, 137, 75, 93, 113, 125, 203],
    [58, 146, 80, 98, 120, 133, 216],
    [65, 165, 90, 111, 135, 150, 244],
    [66, 169, 92, 114, 138, 154, 250],
    [67, 171, 94, 115, 140, 155, 253],
    [70, 178, 98, 120, 146, 162, 264],
    [72, 183, 100, 123, 150, 166, 271],
  ] as const;
  const GRADES = ["bond", "text", "cover", "bristol", "index", "tag"] as const;
  it.each(
    TABLE.flatMap((row) =>
      GRADES.map((grade, column) => [grade, row[column] ?? 0, row.at(-1) ?? 0] as const),
    ),
  )("gives for %s of %d lb the %d g/m2 of a printer manual's table", (grade, pounds, grammage) => {
    expect(Math.abs(grammageOf(pounds, grade) - grammage)).toBeLessThanOrEqual(
      Math.max(2.5, 0.025 * grammage),
    );
  });

  it("finds pounds and grams from each other", () => {
    fc.assert(
      fc.property(fc.constantFrom(...GRADES), fc.integer({ min: 1, max: 4000 }), (grade, tenths) => {
        expect(poundsOf(grammageOf(tenths / 10, grade), grade)).toBeCloseTo(tenths / 10, 9);
      }),
    );
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])("refuses %d", (weight) => {
    expect(() => grammageOf(weight, "cover")).toThrow(/^pounds: expected a number above 0/);
    expect(() => poundsOf(weight, "cover")).toThrow(/^grammage: expected a number above 0/);
  });

  it("refuses a grade that it does not know, and names those it knows", () => {
    expect(() => grammageOf(80, "vellum" as PaperGrade)).toThrow(
      'grade: expected one of bond, text, cover, bristol, index, tag, found "vellum".',
    );
  });
});

describe("what a piece of paper weighs", () => {
  // Computed: area by g/m2, rounded to a milligram and to a ten-thousandth of an ounce.
  it.each([
    [5.5, 8.5, grammageOf(80, "cover"), 6.525, 0.2302],
    [5.5, 8.5, grammageOf(110, "cover"), 8.972, 0.3165],
    [4, 5.25, grammageOf(65, "cover"), 2.381, 0.084],
    [3.75, 5, 180, 2.177, 0.0768],
    [3.75, 5, grammageOf(65, "cover"), 2.126, 0.075],
    [8.5, 11, grammageOf(20, "bond"), 4.536, 0.16],
    [8.5, 11, grammageOf(80, "cover"), 13.05, 0.4603],
    [12, 12, grammageOf(65, "cover"), 16.329, 0.576],
  ])("gives for %d x %d in at %d g/m2 the mass that follows", (width, height, grammage, grams, ounces) => {
    const mass = massOf({ width: inches(width), height: inches(height) }, grammage);
    expect(Math.abs(mass - grams)).toBeLessThanOrEqual(0.0011);
    expect(Math.abs(mass / GRAMS_PER_OUNCE - ounces)).toBeLessThanOrEqual(0.0001);
  });
});
