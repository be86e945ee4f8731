import { inches, millimetres } from "@sheetwright/measure";
import { expect, test } from "vitest";
import { readBenchPieces } from "../src/read-bench-pieces.js";

const HEADER = "name,width,height,quantity,turn";
const faultsOf = (text: string): readonly string[] => {
  const read = readBenchPieces(text, "list.csv");
  return read.ok ? [] : read.faults.map(({ where, message }) => `${where}: ${message}`);
};

test("rows become pieces: fractions, inch marks, mm, a byte order mark, columns in any order, comments, empty lines", () => {
  const text =
    '\uFEFF# demo\r\nname,turn,quantity,height,width\r\n\r\nbase,no,12,10,7\r\n"mat, long",YES,3,8 1/4,3-1/4\r\ntag,yes,0,50 mm,2"\r\n';
  expect(readBenchPieces(text, "list.csv")).toEqual({
    ok: true,
    pieces: [
      { name: "base", width: inches(7), height: inches(10), quantity: 12, turn: false },
      { name: "mat, long", width: inches(3.25), height: inches(8.25), quantity: 3, turn: true },
      { name: "tag", width: inches(2), height: millimetres(50), quantity: 0, turn: true },
    ],
  });
});

test("all faults are told at once, each with line and column", () => {
  const text = `# one comment\n${HEADER}\nbase,7,8 1/0,x,no\nbase,-1,2,3,maybe\n,1,1,1,yes\nwide,1,2,3,4,5\n`;
  expect(faultsOf(text).map((fault) => fault.replace(/: .*/s, ""))).toEqual([
    "list.csv:3, column 3 (height)",
    "list.csv:3, column 4 (quantity)",
    "list.csv:4, column 1 (name)",
    "list.csv:4, column 2 (width)",
    "list.csv:4, column 5 (turn)",
    "list.csv:5, column 1 (name)",
    "list.csv:6",
  ]);
});

test.each([
  [
    "an empty list",
    "",
    "list.csv:1: found nothing as the header, expected name,width,height,quantity,turn, each once.",
  ],
  ["a missing column", "name,width,height,quantity\n", /found "name,width,height,quantity" as the header/],
  ["a column given twice", `${HEADER},turn\n`, /as the header/],
  ["a header after comments", "# a\n# b\nname\n", /^list.csv:3: found "name" as the header/],
  ["no pieces", `${HEADER}\n`, "list.csv: the list has no pieces, expected at least one piece to cut."],
  ["nothing wanted", `${HEADER}\na,1,1,0,yes\n`, /every quantity is 0/],
  [
    "too many copies",
    `${HEADER}\na,1,1,100001,yes\n`,
    /found "100001", expected a whole number from 0 to 100000/,
  ],
  ["an open quote", `${HEADER}\n"a,1,1,1,yes\n`, /^list.csv: no CSV: /],
])("%s is refused in plain words", (_, text, expected) => {
  const faults = faultsOf(text);
  expect(faults).toHaveLength(1);
  if (typeof expected === "string") expect(faults[0]).toBe(expected);
  else expect(faults[0]).toMatch(expected);
});
