import { inches } from "@sheetwright/measure";
import { expect, test } from "vitest";
import type { ListedPiece } from "../../src/listed-piece.js";
import { measureWaste, type WasteRequest } from "../../src/waste/measure-waste.js";
import { writeWaste } from "../../src/waste/write-waste.js";

const sheet = { id: "pad", name: "pad", width: inches(3), height: inches(2), unit: "in" as const };
const pieces: readonly ListedPiece[] = [
  { name: "mat", width: inches(2), height: inches(2), quantity: 2, turn: false },
  { name: "tag", width: inches(1), height: inches(2), quantity: 2, turn: false },
];
const request: WasteRequest = {
  sheets: [sheet],
  seed: 1,
  effort: "quick",
  sets: 5,
  list: { name: "tags|mats.csv", pieces },
};
const results = measureWaste(request, { now: () => 0 });

// By hand: a mat and a tag fill a sheet of 3 x 2; by kind, two mats take two sheets and two tags one more.
test("the tables of a small list read as worked out by hand", () => {
  expect(writeWaste(request, results)).toContain(`## pad, 3 x 2 in

### Pieces of one size from one sheet

| piece (in) | guillotine | shelf | first-fit shelves |  grid | bound | use % |
| :--------- | ---------: | ----: | ----------------: | ----: | ----: | ----: |
| 2 x 3      |          1 |     1 |                 1 |     1 |     1 | 100.0 |
| mean use % |      100.0 | 100.0 |             100.0 | 100.0 | 100.0 |       |

Guillotine gives more than the grid for 0 of 1 piece. 33 more of the common pieces are larger than the sheet.

### Mixed pieces, sheets used

| sets           | of | kinds | copies | guillotine | shelf | first-fit shelves | grid by kind | bound | proven | waste % | at least % |
| :------------- | -: | ----: | -----: | ---------: | ----: | ----------------: | -----------: | ----: | -----: | ------: | ---------: |
| tags\\|mats.csv |  1 |     2 |      4 |          2 |     2 |                 2 |            3 |     2 | 1 of 1 |     0.0 |        0.0 |
`);
});

test("times and the machine are in the text only where they are given", () => {
  const machine = { node: "20.19.0", platform: "linux x64", cpu: "abacus", cores: 1 };
  const plain = writeWaste(request, results);
  const full = writeWaste(request, results, { machine, seconds: 1.25 });
  expect(full).toContain("Measured in 1.3 s on Node 20.19.0, linux x64, 1 core (abacus).");
  expect(full).toContain("guillotine s");
  expect(plain).not.toMatch(/\d s\b|Node|abacus|guillotine s/);
});

test("several sheets are compared in one table at the end", () => {
  const sheets = [sheet, { ...sheet, id: "strip", name: "strip", width: inches(12), height: inches(1) }];
  const two: WasteRequest = { ...request, sheets };
  const text = writeWaste(two, measureWaste(two, { now: () => 0 }));
  const overview = text.slice(text.indexOf("## All sheets")).split("\n");
  expect(overview.find((line) => line.startsWith("| pad"))).toMatch(
    /100\.0 \| +100\.0 \| +3 \| +2 \| +2 \| +2 \| +2 \|/,
  );
  expect(overview.find((line) => line.startsWith("| strip"))).toMatch(/^\| strip +(\| +- ){9}\|$/);
  expect(text).toContain("No common piece fits on this sheet.");
  expect(text).toContain(
    "Not planned from tags|mats.csv on this sheet: mat (2 x 2 in, not to be turned), tag (1 x 2 in, not to be turned).",
  );
});
