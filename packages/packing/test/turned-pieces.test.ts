import { expect, test } from "vitest";
import { type Problem, pack, placements, verify } from "../src/index.js";

/** What is left over of the one sheet that a number of pieces of 5 x 7 is cut from, in inches. */
function leftovers(copies: number): readonly string[] {
  const sheet = { id: "sheet", width: 22, height: 28 };
  const problem: Problem = {
    kinds: [{ id: "panel", quantity: copies, forms: [{ width: 5, height: 7 }] }],
    sheets: [sheet],
    mode: "guillotine",
    aim: "all",
    smallestOffcut: { width: 2, height: 2 },
  };
  const packing = pack(problem, { effort: "standard", seed: 1 });
  expect([packing.sheets, verify(problem, packing)]).toEqual([1, []]);
  return packing.layouts
    .flatMap((layout) => placements(sheet, layout))
    .filter(({ node }) => node.type === "offcut")
    .map(({ width, height }) => `${width} x ${height}`);
}

// Worked out by hand: beside a block of 2 x 5 upright panels (10 x 35) the numbers do not fit; 17 panels cover 595 of 616
// square inches, and what is left can be one part of 3 x 7.
test("turns a lone piece so that what is left stays whole", () => {
  expect(leftovers(17)).toEqual(["7 x 3"]);
  expect(leftovers(14)).toEqual(["7 x 18"]);
});
