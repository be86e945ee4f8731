import { inches } from "@sheetwright/measure";
import { expect, test } from "vitest";
import { FILLS } from "../../src/chart/look.js";
import { drawWaste } from "../../src/waste/draw-waste.js";
import { measureWaste, type WasteRequest } from "../../src/waste/measure-waste.js";
import { sumSets } from "../../src/waste/sum-sets.js";
import { all, number, read, textOf } from "../chart/read-svg.js";

const sheetOf = (width: number, height: number) => ({
  id: `${width} x ${height} in`,
  name: `${width} x ${height} in`,
  width: inches(width),
  height: inches(height),
  unit: "in" as const,
});
const request: WasteRequest = {
  sheets: [sheetOf(6, 6), sheetOf(8, 12), sheetOf(5, 7)],
  seed: 1,
  effort: "quick",
  sets: 1,
  list: null,
};
const results = measureWaste(request, { now: () => 0 });
const drawn = drawWaste(request, results);

test("the chart is well-formed, at a stated size in mm, and everything lies on it", () => {
  const root = read(drawn);
  const [, , width = 0, height = 0] = (root.attributes.viewBox ?? "").split(" ").map(Number);
  expect(root.attributes.width).toBe(`${width}mm`);
  expect(root.attributes.height).toBe(`${height}mm`);
  for (const rect of all(root, "rect")) {
    expect(number(rect, "x")).toBeGreaterThanOrEqual(0);
    expect(number(rect, "y")).toBeGreaterThanOrEqual(0);
    expect(number(rect, "x") + number(rect, "width")).toBeLessThanOrEqual(width);
    expect(number(rect, "y") + number(rect, "height")).toBeLessThanOrEqual(height);
  }
  for (const text of all(root, "text")) {
    expect(number(text, "x")).toBeGreaterThanOrEqual(0);
    expect(number(text, "y")).toBeLessThanOrEqual(height);
  }
});

test("no text is under 7 pt in print", () => {
  for (const text of all(read(drawn), "text")) {
    expect((number(text, "font-size") / 25.4) * 72).toBeGreaterThanOrEqual(7);
  }
});

test("every bar is as long as the waste it shows, on one scale", () => {
  const bars = all(read(drawn), "rect").filter(({ children }) => children.length > 0);
  const groups = results.reduce((sum, { sets }) => sum + 1 + sets.length, 0);
  expect(bars).toHaveLength(4 * groups);
  const measured = bars.map((bar) => ({
    width: number(bar, "width"),
    percent: Number(/: ([\d.]+) %$/.exec(textOf(bar.children[0]))?.[1]),
  }));
  const longest = measured.reduce((most, bar) => (bar.percent > most.percent ? bar : most));
  for (const { width, percent } of measured) {
    expect(Math.abs(width - (longest.width * percent) / longest.percent)).toBeLessThan(0.01);
  }
});

test("the bars show the figures that were measured, in the order of the legend", () => {
  const bars = all(read(drawn), "rect").filter(({ children }) => children.length > 0);
  const titles = bars.map((bar) => textOf(bar.children[0]));
  const [first] = results;
  const strips = first?.sets.filter(({ family }) => family === "strips") ?? [];
  const used = sumSets(sheetOf(6, 6), strips).ways.guillotine.usePercent ?? Number.NaN;
  expect(titles).toContain(`strips, Sheetwright, edge to edge: ${(100 - used).toFixed(1)} %`);
  expect(bars.slice(0, 4).map((bar) => bar.attributes.fill)).toEqual([...FILLS]);
});

test("the same figures give the same bytes", () => {
  expect(drawWaste(request, measureWaste(request, { now: () => 9 }))).toBe(drawn);
});

test("a list with a name of signs that mean something in XML, and one that cannot be cut, is drawn all the same", () => {
  const piece = { name: "a", width: inches(7), height: inches(1), quantity: 2, turn: true };
  const name = '<b>&"\u0007 a very long name of a list.csv';
  const listed = { ...request, sheets: [sheetOf(6, 6), sheetOf(8, 12)], list: { name, pieces: [piece] } };
  const root = read(drawWaste(listed, measureWaste(listed, { now: () => 0 })));
  const texts = all(root, "text").map(textOf);
  expect(texts.filter((text) => text === "not possible")).toHaveLength(4);
  expect(texts.some((text) => text.endsWith("…"))).toBe(true);
});

test("a sheet that no common piece fits has no bars for them", () => {
  const small = { ...request, sheets: [sheetOf(1, 12)] };
  const root = read(drawWaste(small, measureWaste(small, { now: () => 0 })));
  expect(all(root, "text").map(textOf)).not.toContain("common pieces");
});
