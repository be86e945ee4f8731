import { expect, test } from "vitest";
import { solveTask } from "../../src/solve/solve-task.js";
import { bench } from "../bench-in-memory.js";
import { all, number, read, textOf } from "../chart/read-svg.js";
import { filesOf, MEDALS, RIBBONS, STAMPS, TILES } from "../made-up-families.js";

const DATA = filesOf("/place/data", [TILES, RIBBONS, MEDALS, STAMPS]);
const chartOf = async (line: string): Promise<string> => {
  const { files } = await bench(line, DATA);
  return [...files].find(([path]) => path.endsWith(".svg"))?.[1] ?? "";
};

test.each([
  ["packing --data data --effort quick --effort standard"],
  ["packing --data data --effort quick --family tiles"],
  ["peers --data data --effort quick"],
])("the chart of %s is well-formed, and everything lies on it", async (line) => {
  const root = read(await chartOf(line));
  const [, , width = 0, height = 0] = (root.attributes.viewBox ?? "").split(" ").map(Number);
  for (const rect of all(root, "rect")) {
    expect(number(rect, "x")).toBeGreaterThanOrEqual(0);
    expect(number(rect, "y")).toBeGreaterThanOrEqual(0);
    expect(number(rect, "x") + number(rect, "width")).toBeLessThanOrEqual(width);
    expect(number(rect, "y") + number(rect, "height")).toBeLessThanOrEqual(height);
  }
  for (const text of all(root, "text")) {
    expect((number(text, "font-size") / 25.4) * 72).toBeGreaterThanOrEqual(7);
    // No font is measured: 0.56 of the size is a little more than its mean advance.
    const length = textOf(text).length * number(text, "font-size") * 0.56;
    const from = number(text, "x") - (text.attributes["text-anchor"] === "middle" ? length / 2 : 0);
    expect(from + length).toBeLessThanOrEqual(width);
    expect(number(text, "y")).toBeLessThanOrEqual(height);
  }
});

test("a bar is as long as the gap to the bound it shows", async () => {
  // As if every plan took a sheet more than it does.
  const { files } = await bench("packing --data data --effort quick --family tiles", DATA, 0.25, {
    openPool: () => ({
      run: (task) => {
        const answer = solveTask(task, () => 0);
        return Promise.resolve({ ...answer, sheets: (answer.sheets ?? 0) + 1 });
      },
      close: () => Promise.resolve(),
    }),
  });
  const root = read(files.get("/place/results/packing_tiles_quick.svg") ?? "");
  const bars = all(root, "rect").filter(({ children }) => children.length > 0);
  const said = bars.map((bar) => ({ title: textOf(bar.children[0]), width: number(bar, "width") }));
  // By hand: 3 + 2 + 3 sheets where 2 + 1 + 2 are the fewest.
  expect(said.slice(0, 3).map(({ title }) => title)).toEqual([
    "all, Sheetwright, quick: 60.00 %",
    "class 1, Sheetwright, quick: 66.67 %",
    "class 2, Sheetwright, quick: 50.00 %",
  ]);
  expect(Math.abs((said[0]?.width ?? 0) / 60 - (said[2]?.width ?? 0) / 50)).toBeLessThan(0.001);
});
