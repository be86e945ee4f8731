import { inches, millimetres } from "@sheetwright/measure";
import { expect, test } from "vitest";
import { readWasteOptions } from "../../src/waste/waste-options.js";
import type { WrittenOptions } from "../../src/written-options.js";

const faultsOf = (written: WrittenOptions): readonly string[] => {
  const read = readWasteOptions(written);
  return "sheets" in read ? [] : read.map(({ where, message }) => `${where}: ${message}`);
};

test("without options four sheets are measured at quick, with seed 1 and five sets a family", () => {
  expect(readWasteOptions({})).toEqual({
    sheets: [
      { id: "6 x 6 in", name: "6 x 6 in", width: inches(6), height: inches(6), unit: "in" },
      { id: "us-letter", name: "US Letter sheet", width: inches(8.5), height: inches(11), unit: "in" },
      { id: "12 x 12 in", name: "12 x 12 in", width: inches(12), height: inches(12), unit: "in" },
      { id: "iso-a4", name: "ISO A4 sheet", width: millimetres(210), height: millimetres(297), unit: "mm" },
    ],
    seed: 1,
    effort: "quick",
    sets: 5,
    pieces: null,
    json: null,
    out: null,
    differs: [],
  });
});

test("what differs from a run with defaults is named, so that its results get files of their own", () => {
  const read = (written: WrittenOptions) => {
    const options = readWasteOptions(written);
    return "sheets" in options ? options.differs : options;
  };
  expect(read({ sheet: ["12x12in"] })).toEqual(["12 x 12 in"]);
  expect(read({ sheet: ["iso-a4", "us-letter"], seed: ["7"] })).toEqual(["iso-a4 us-letter", "seed 7"]);
  expect(read({ sheet: ["1x1", "2x2", "3x3", "4x4", "5x5"] })).toEqual(["5 sheets"]);
  expect(read({ pieces: ["lists/lantern.csv"], effort: ["standard"] })).toEqual(["lantern", "standard"]);
  expect(read({ sets: ["2"] })).toEqual(["2 sets"]);
  expect(read({ sheet: ["6x6in", "8.5x11in", "12x12in", "iso-a4"] })).not.toEqual([]);
  expect(
    read({ sheet: ["6x6in", "us-letter", "12x12in", "iso-a4"], seed: ["1"], effort: ["quick"], sets: ["5"] }),
  ).toEqual([]);
  // Where files go changes no figure.
  expect(read({ out: ["elsewhere"], json: ["a.json"] })).toEqual([]);
});

test.each<[string, WrittenOptions, RegExp]>([
  ["a misspelt sheet", { sheet: ["us-leter"] }, /^--sheet: .*Did you mean us-letter\?/],
  ["a size without height", { sheet: ["12"] }, /^--sheet: "12" is not a size/],
  ["an envelope as a sheet", { sheet: ["env-us-a7"] }, /^--sheet: /],
  [
    "a sheet too small",
    { sheet: ["1/2 x 12 in"] },
    /^--sheet: found 1\/2 x 12 in, expected sides of 1 to 40 in/,
  ],
  [
    "a sheet too large",
    { sheet: ["12 x 41 in"] },
    /^--sheet: found 12 x 41 in, expected sides of 1 to 40 in/,
  ],
  ["a sheet given twice", { sheet: ["us-letter", "8.5x11in"] }, /^--sheet: 8 1\/2 x 11 in is given twice/],
  ["a seed that is no number", { seed: ["one"] }, /^--seed: found "one", expected a whole number from 0/],
  ["a negative seed", { seed: ["-1"] }, /^--seed: found "-1"/],
  ["an unknown effort", { effort: ["fast"] }, /^--effort: found "fast", expected quick, standard, thorough/],
  ["no sets", { sets: ["0"] }, /^--sets: found "0", expected a whole number from 1 to 1000/],
  ["an option given twice", { seed: ["1", "2"] }, /^--seed: given 2 times, expected once/],
  [
    "an option in the place of a value",
    { out: ["--json"] },
    /^--out: found "--json" where its value should be/,
  ],
  ["sets beside a list", { pieces: ["a.csv"], sets: ["3"] }, /^--sets: the list given with --pieces/],
])("%s is refused in plain words", (_, written, expected) => {
  const faults = faultsOf(written);
  expect(faults).toHaveLength(1);
  expect(faults[0]).toMatch(expected);
});

test("all faults are told at once", () => {
  expect(faultsOf({ sheet: ["x", "y"], seed: ["z"], effort: [""] }).length).toBeGreaterThanOrEqual(4);
});
