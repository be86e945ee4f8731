import type { Card, Paper, PaperDesign } from "@sheetwright/cards";
import type { PaperGroup } from "@sheetwright/planner";
import { describe, expect, it } from "vitest";
import { fileNames } from "../../src/project-plan/file-names.js";

const design = (id: string): PaperDesign => ({
  id,
  name: id,
  count: null,
  cost: null,
  front: { id, name: id, pattern: "none", colour: "#ffffff" },
  back: null,
  offcuts: [],
});
const paper = (id: string, ...designs: readonly string[]): Paper => ({
  id,
  name: id,
  material: designs.length === 0 ? "cardstock" : "pad",
  sheet: { width: 100, height: 100 },
  sheetName: null,
  trim: { left: 0, right: 0, top: 0, bottom: 0 },
  grain: "unknown",
  grainBasis: null,
  weight: null,
  thickness: null,
  designs: designs.length === 0 ? [design(id)] : designs.map((one) => design(`${id}.${one}`)),
});

/** A group of one design with some layouts, the last of them from an offcut. */
function group(id: string, layouts: number): PaperGroup {
  const sheets = [
    { sheet: id, design: id, offcut: null },
    { sheet: `${id}/1`, design: id, offcut: 1 },
  ];
  const tree = { type: "waste" } as const;
  return {
    designs: [id],
    sheets,
    problem: { kinds: [], sheets: [], mode: "guillotine", aim: "all" },
    packing: {
      version: 1,
      mode: "guillotine",
      aim: "all",
      outcome: "complete",
      layouts: Array.from({ length: layouts }, (_, index) => ({
        sheet: index === layouts - 1 ? `${id}/1` : id,
        run: 1,
        tree,
      })),
      placed: [],
      missing: [],
      sheets: layouts,
      cost: "0",
      value: "0",
      bound: { aim: "all", cost: "0", sheets: 0, certificate: { type: "weights", sheets: [] } },
      proven: true,
      search: { effort: "quick", seed: 1, lp: "none", starts: 1, steps: 0, work: 1, ended: "proven" },
    },
  };
}

const card = (number: number, name: string): Card => ({
  number,
  name,
  format: null,
  front: { width: 1, height: 1 },
  copies: 1,
  copiesFor: { guests: 1, samples: 0 },
  flats: [],
  base: `${number}a`,
  surfaces: [],
  layers: [],
  seams: [],
  joins: [],
  roundings: [],
});
const layoutNames = (...ids: readonly (readonly [Paper, ...string[]])[]): readonly (readonly string[])[] =>
  fileNames({
    papers: ids.map(([one]) => one),
    cards: [],
    groups: ids.flatMap(([one]) => one.designs.map(({ id }) => group(id, 1))),
  }).layouts;
const cardNames = (...names: readonly string[]): readonly string[] =>
  fileNames({ papers: [], groups: [], cards: names.map((name, index) => card(index + 1, name)) }).cards;

describe("the names of a plan's files", () => {
  it("are the paper's and a number among its layouts, offcuts counted on", () => {
    const papers = [paper("night"), paper("stars", "dots", "comets")];
    const groups = [group("night", 3), group("stars.comets", 1), group("stars.dots", 2)];
    expect(fileNames({ papers, groups, cards: [] }).layouts).toEqual([
      ["sheet-night-1", "sheet-night-2", "sheet-night-3"],
      ["sheet-stars-comets-1"],
      ["sheet-stars-dots-1", "sheet-stars-dots-2"],
    ]);
  });

  it("tell papers apart whose ids differ in signs or capitals only", () => {
    expect(layoutNames([paper("sea-moss")], [paper("sea", "moss")], [paper("Sea_Moss")]).flat()).toEqual([
      "sheet-sea-moss-1",
      "sheet-sea-moss-2-1",
      "sheet-sea-moss-3-1",
    ]);
  });

  it("begin with a letter behind the word sheet, whatever the id", () => {
    expect(layoutNames([paper("日")], [paper("日2")]).flat()).toEqual(["sheet-paper-1", "sheet-paper-2-1"]);
  });

  it("are a card's number and name in plain letters", () => {
    expect(
      cardNames(
        "Rooftops",
        "Über den Dächern",
        "  Good night!  ",
        "星",
        "../../etc",
        "A\u0000B",
        "Straße Ærø",
      ),
    ).toEqual([
      "card-1-rooftops",
      "card-2-uber-den-dachern",
      "card-3-good-night",
      "card-4",
      "card-5-etc",
      "card-6-a-b",
      "card-7-strasse-aero",
    ]);
  });

  it("stay short and end in a letter", () => {
    expect(cardNames(`${"x".repeat(39)} yes`)).toEqual([`card-1-${"x".repeat(39)}`]);
  });

  it("of a sheet of no paper of the plan are a fault of the program", () => {
    expect(() => fileNames({ papers: [], groups: [group("night", 1)], cards: [] })).toThrow(RangeError);
  });
});
