/**
 * Cuttings by makers, as common practice has them, through the command: how many pieces of one size a sheet gives, and in
 * which positions sheets were cut to strips and these to pieces. All of them are common practice without a source; where
 * that is said, the number was computed besides. Rows y1-y18 and y23-y27 of the table of cutting results.
 */
import { inches } from "@sheetwright/measure";
import { type CutNode, verify } from "@sheetwright/packing";
import { describe, expect, it } from "vitest";
import type { PlanFile } from "../src/plan/plan-file.js";
import { memoryFiles } from "./memory-files.js";
import { runIn } from "./run-in.js";

/** `width x height`, how many, and `turn` where the piece may lie either way. */
type Listed = readonly [size: string, count: number, turn?: "turn"];

async function plan(sheet: string, pieces: readonly Listed[], words = ""): Promise<PlanFile> {
  const rows = pieces.map(([size, count, turn], i) => {
    const [width, height] = size.split(" x ");
    return `piece ${i + 1},${width},${height},${count},${turn === undefined ? "no" : "yes"}`;
  });
  const files = memoryFiles({ "/desk/list.csv": ["name,width,height,quantity,turn", ...rows].join("\n") });
  const line = `plan --pieces list.csv --out out --mode guillotine --keep 1x1in ${words}`.trim().split(" ");
  const { code, stderr } = await runIn([...line, "--sheet", sheet], { files });
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  const file = JSON.parse(String(files.all.get("/desk/out/plan.json"))) as PlanFile;
  expect(verify(file.problem, file.packing)).toEqual([]);
  return file;
}

/** The leftovers of the first layout that are worth keeping, as `short x long` in inches, largest first. */
function leftovers({ problem, packing }: PlanFile): readonly string[] {
  const [sheet] = problem.sheets;
  const found: (readonly [number, number])[] = [];
  const walk = (node: CutNode, width: number, height: number): void => {
    if (node.type === "offcut") found.push([Math.min(width, height), Math.max(width, height)]);
    if (node.type !== "split") return;
    for (const { size, node: part } of node.parts)
      if (node.axis === "x") walk(part, size, height);
      else walk(part, width, size);
  };
  walk(packing.layouts[0]!.tree as CutNode, sheet!.width, sheet!.height);
  const byArea = found.sort((a, b) => b[0] * b[1] - a[0] * a[1]);
  return byArea.map(([short, long]) => `${short / inches(1)} x ${long / inches(1)}`);
}

/** A sheet, a piece that may be turned, how many of it one sheet gives, and what is left where that was published. */
type Yield = readonly [
  source: string,
  sheet: string,
  size: string,
  count: number,
  left: readonly string[] | null,
];

// What is left is told where it is a rectangle of 1 in or more; the rows with a stopped cut give fewer here.
const YIELDS: readonly Yield[] = [
  ["y1: common practice, no source; computed: 4 with a stopped cut, 3 without", "12x12in", "5 x 7", 3, null],
  [
    "y2: common practice, no source; computed: 4 with a stopped cut, 3 without",
    "12x12in",
    "4.5 x 6.5",
    3,
    null,
  ],
  [
    "y3: common practice, no source; computed: 4 with a stopped cut, 3 without",
    "12x12in",
    "5.5 x 6.5",
    3,
    null,
  ],
  [
    "y4: common practice, no source; computed: 16 with a stopped cut, 14 without",
    "12x12in",
    "2.5 x 3.5",
    14,
    null,
  ],
  ["y5: common practice, no source; computed", "us-letter", "2.5 x 3.5", 10, null],
  ["y6: common practice, no source; computed", "22x28in", "2.5 x 3.5", 70, null],
  [
    "y7: common practice, no source; computed: 8 with a stopped cut, 7 without",
    "12x12in",
    "3.5 x 5",
    7,
    null,
  ],
  ["y8: common practice, no source; computed", "22x28in", "5 x 7", 17, null],
  ["y9: common practice, no source", "iso-a4", "127 mm x 177.8 mm", 2, null],
  ["y10: common practice, no source; computed", "iso-a4", "4.25 x 5.5", 2, null],
  ["y11: common practice, no source", "12x12in", "6 x 12", 2, []],
  ["y12: common practice, no source", "12x12in", "5 x 10", 2, ["2 x 12", "2 x 10"]],
  ["y13: common practice, no source; computed", "12x12in", "4 x 8", 4, ["4 x 4"]],
  ["y14: common practice, no source; computed", "12x12in", "3 x 6", 8, []],
  ["y15: common practice, no source", "us-letter", "5.5 x 11", 1, ["3 x 11"]],
  ["y17: common practice, no source", "us-letter", "5.5 x 8.5", 2, []],
  ["y17: common practice, no source", "us-letter", "4.25 x 11", 2, []],
  ["y18: common practice, no source", "iso-a4", "148.5 mm x 210 mm", 2, []],
  ["y18: common practice, no source", "iso-a4", "105 mm x 297 mm", 2, []],
];

describe("pieces of one size from one sheet", () => {
  it.each(YIELDS)("are as many as published (%s)", async (_, sheet, size, count, left) => {
    const all = await plan(sheet, [[size, count, "turn"]]);
    expect(all.packing).toMatchObject({ sheets: 1, proven: true });
    if (left !== null) expect(leftovers(all)).toEqual(left);
    const more = await plan(sheet, [[size, count + 1, "turn"]]);
    expect(more.packing).toMatchObject({ sheets: 2, proven: true });
  });

  it("leave 3 x 7 in whole beside seventeen of 5 x 7 in from 22 x 28 in (y8: common practice, no source; computed)", async () => {
    expect(leftovers(await plan("22x28in", [["5 x 7", 17, "turn"]]))).toEqual(["3 x 7"]);
  });

  it("are twenty from ten sheets of A4 (y9: common practice, no source)", async () => {
    const { packing } = await plan("iso-a4", [["127 mm x 177.8 mm", 20, "turn"]]);
    expect(packing).toMatchObject({ sheets: 10, proven: true });
  });
});

describe("bases of a card from one sheet", () => {
  it("are two of 5 1/2 x 8 in and one of 4 x 11 in from 12 x 12 in (y16: common practice, no source)", async () => {
    const bases = await plan("12x12in", [
      ["5.5 x 8", 2, "turn"],
      ["4 x 11", 1, "turn"],
    ]);
    expect(bases.packing).toMatchObject({ sheets: 1, proven: true });
    // Published as 1 x 8 and 1 x 4; in one strip here, which is more.
    expect(leftovers(bases)).toEqual(["1 x 12"]);
  });
});

describe("the settings of the trimmer", () => {
  // A published position is where the fence is set for a cut; none of them repeats.
  it.each([
    [
      "y23: common practice, no source; computed: cuts at 9.75, 8.5, 7.25, 5.75, 4.25, 2.25",
      "us-letter",
      [
        ["8.5 x 1.25", 3],
        ["8.5 x 1.5", 2],
        ["8.5 x 2", 1],
        ["8.5 x 2.25", 1],
      ],
      6,
    ],
    [
      "y24: common practice, no source; computed: cuts at 8.25, 5.75, 3.25",
      "2.25x8.5in",
      [
        ["2.25 x 3.25", 1],
        ["2.25 x 2.5", 2],
      ],
      3,
    ],
    [
      "y25: common practice, no source; computed: cuts at 6.25, 5.25, 3",
      "2x8.5in",
      [
        ["2 x 3", 1],
        ["2 x 2.25", 2],
        ["2 x 1", 1],
      ],
      3,
    ],
    [
      "y26: common practice, no source; computed: cuts at 7.75, 6.5, 5.25",
      "1.5x8.5in",
      [
        ["1.5 x 5.25", 1],
        ["1.5 x 1.25", 2],
        ["1.5 x 0.75", 1],
      ],
      3,
    ],
    [
      "y27: common practice, no source; computed: cuts at 5.5, 10.5, 9.75 and 6.5",
      "us-letter",
      [
        ["5.5 x 10.5", 1],
        ["3 x 6.5", 1],
        ["3 x 3.25", 1],
        ["3 x 1.25", 1],
      ],
      4,
    ],
  ] as const)("are no more than in the cutting published (%s)", async (_, sheet, pieces, published) => {
    const { packing, cutOrders } = await plan(sheet, pieces);
    expect(packing.sheets).toBe(1);
    expect(cutOrders.map(({ settings }) => settings <= published)).toEqual([true]);
  });
});
