import { inches, millimetres } from "@sheetwright/measure";
import { expect, test } from "vitest";
import { bothUnits, placeInWords } from "../../src/card/place-in-words.js";

const sides = (left: number, right: number, top: number, bottom: number) => ({
  left: inches(left),
  right: inches(right),
  top: inches(top),
  bottom: inches(bottom),
});
const plain = (text: string) => text.replaceAll("\u00a0", " ");

test.each([
  [sides(0.125, 0.125, 0.125, 0.125), "1/8 in border all round"],
  [sides(0, 0, 0, 0), "covers it all"],
  [sides(0.25, 0.25, 0.5, 0.5), "1/4 in left and right, 1/2 in top and bottom"],
  [sides(0, 0, 1, 2.5), "edge to edge across, top 1 in, bottom 2 1/2 in"],
  [sides(0.25, 3, 0, 0), "left 1/4 in, right 3 in, edge to edge upright"],
  [sides(0, 3, 1, 1), "left 0 in, right 3 in, 1 in top and bottom"],
])("says %o", (border, words) => {
  expect(plain(placeInWords(border, "in"))).toBe(words);
});

test("says a length in both units, the maker's first", () => {
  expect(plain(bothUnits(inches(5), "in"))).toBe("5 in (127 mm)");
  expect(plain(bothUnits(millimetres(105), "mm"))).toBe("105 mm (~4 9/64 in)");
});
