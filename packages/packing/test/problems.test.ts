import fc from "fast-check";
import { expect, test } from "vitest";
import type { Problem } from "../src/index.js";
import { anyProblem } from "./problems.js";

test("random problems have now and then whatever a problem may have", () => {
  const has: Readonly<Record<string, (problem: Problem) => boolean>> = {
    "several sheets": ({ sheets }) => sheets.length > 1,
    stock: ({ sheets }) => sheets.some(({ stock }) => stock !== undefined),
    cost: ({ sheets }) => sheets.some(({ cost }) => cost !== undefined),
    trim: ({ sheets }) => sheets.some(({ trim }) => trim !== undefined),
    "longest cut": ({ sheets }) => sheets.some(({ longestCut }) => longestCut !== undefined),
    "a longest cut shorter than the sheet": ({ sheets }) =>
      sheets.some(({ width, height, longestCut }) => Math.max(width, height) > (longestCut ?? 1000)),
    stages: ({ stages }) => stages !== undefined,
    kerf: ({ kerf }) => kerf !== 0,
    "smallest offcut": ({ smallestOffcut }) => smallestOffcut !== undefined,
    shelf: ({ mode }) => mode === "shelf",
    fill: ({ aim }) => aim === "fill",
    "no most": ({ kinds }) => kinds.some(({ quantity }) => quantity === null),
    least: ({ kinds }) => kinds.some(({ least }) => least !== undefined),
    value: ({ kinds }) => kinds.some(({ value }) => value !== undefined),
    together: ({ kinds }) => kinds.filter(({ together }) => together !== undefined).length > 1,
    set: ({ kinds }) => kinds.some(({ set }) => set !== undefined),
    "two forms": ({ kinds }) => kinds.some(({ forms }) => forms.length > 1),
    turns: ({ kinds }) => kinds.some(({ forms }) => forms.some(({ turns }) => turns !== undefined)),
    "own sheets": ({ kinds }) => kinds.some(({ forms }) => forms.some(({ sheets }) => sheets !== undefined)),
    hidden: ({ kinds }) => kinds.some(({ forms }) => forms.some(({ hidden }) => hidden !== undefined)),
  };
  const sample = fc.sample(anyProblem, 500);
  const rare = Object.entries(has).filter(([, isThere]) => sample.filter(isThere).length < 15);
  expect(rare.map(([name]) => name)).toEqual([]);
});
