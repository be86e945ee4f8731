import { readdirSync, readFileSync } from "node:fs";
import { parseSize } from "@sheetwright/measure";
import { expect, test } from "vitest";
import { readRatchet } from "../src/packing/ratchet.js";
import { measureYields } from "../src/waste/measure-yields.js";

const kept = (name: string): string => readFileSync(new URL(`../results/${name}`, import.meta.url), "utf8");
const table = kept("waste.md");

test("kept results of waste name no machine and no time", () => {
  for (const text of [table, kept("waste.svg")]) expect(text).not.toMatch(/Node \d|\b\d+(\.\d+)? s\b/);
});

test("kept tables of packing and peers name machine, versions and seconds", () => {
  for (const name of ["packing.md", "peers.md"]) {
    expect(kept(name)).toMatch(/Measured in \d+\.\d s with \d+ jobs? on Node \d.*; @sheetwright\/packing \d/);
  }
});

test("the kept table of scale holds the bar: 100,000 copies take at most twice as long as 1,000", () => {
  const times = /^100,000 copies take as long as 1,000: (.*)\.$/m.exec(kept("scale.md"))?.[1] ?? "";
  const told = [...times.matchAll(/([\d.]+) times at (\w+)/g)].map(([, count, effort]) => [effort, count]);
  expect(told.map(([effort]) => effort)).toEqual(["quick", "standard"]);
  for (const [, count] of told) expect(Number(count)).toBeLessThanOrEqual(2);
});

test("no kept result holds a path of a machine", () => {
  const names = readdirSync(new URL("../results", import.meta.url)).filter((name) => !name.includes("_"));
  expect(names).toEqual(
    expect.arrayContaining(["waste.md", "packing.md", "packing-ratchet.json", "peers.md", "scale.md"]),
  );
  for (const name of names) expect(kept(name)).not.toMatch(/\/(home|root|tmp|work|Users)\/|[A-Z]:\\/);
});

test("the kept ratchet can be read", () => {
  const ratchet = readRatchet(kept("packing-ratchet.json"), "packing-ratchet.json");
  expect(Object.keys(ratchet["bw-mv fixed"] ?? {})).toHaveLength(500);
});

test("kept yields are those of today", () => {
  for (const [size, label] of [
    ["6x6in", "6 x 6 in"],
    ["us-letter", "US Letter sheet, 8 1/2 x 11 in"],
    ["12x12in", "12 x 12 in"],
    ["iso-a4", "ISO A4 sheet, 210 x 297 mm"],
  ] as const) {
    const { width, height } = parseSize(size, { unit: "in" });
    const lines = table.slice(table.indexOf(`## ${label}\n`)).split("\n");
    const rows = lines.map((line) => line.split("|").map((cell) => cell.trim()));
    for (const { piece, counts, usePercent } of measureYields({ id: size, width, height }, () => 0).pieces) {
      const cells = rows.find(([, first]) => first === piece.replace(/ in$/, "")) ?? [];
      const { guillotine, shelf, firstFitShelves, bestGrid, area } = counts;
      const expected = [guillotine, shelf, firstFitShelves, bestGrid, area].map(String);
      expect([size, piece, ...cells.slice(2, -1)]).toEqual([size, piece, ...expected, usePercent.toFixed(1)]);
    }
  }
});
