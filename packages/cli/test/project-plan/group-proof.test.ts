import type { Paper, PaperDesign } from "@sheetwright/cards";
import type { Bound, Packing, Sheet } from "@sheetwright/packing";
import { describe, expect, it } from "vitest";
import { groupProof } from "../../src/project-plan/group-proof.js";

const design = (id: string, cost: string | null): PaperDesign => ({
  id,
  name: id,
  count: null,
  cost,
  front: { id, name: id, pattern: "none", colour: "#ffffff" },
  back: null,
  offcuts: [],
});
const paper = (id: string, cost: string | null): Paper => ({
  id,
  name: id,
  material: "cardstock",
  sheet: { width: 100, height: 100 },
  sheetName: null,
  trim: { left: 0, right: 0, top: 0, bottom: 0 },
  grain: "unknown",
  grainBasis: null,
  weight: null,
  thickness: null,
  designs: [design(id, cost)],
});

interface Case {
  readonly sheets: readonly Sheet[];
  readonly costs?: readonly (string | null)[];
  readonly cost: string;
  readonly least: string | null;
  readonly proven?: boolean;
  readonly outcome?: Packing["outcome"];
  /** The least cost of all ways to cut die blanks in strips. */
  readonly endless?: string;
}

function proof({ sheets, costs, cost, least, proven = false, outcome = "complete", endless }: Case) {
  const whole = sheets.filter(({ id }) => !id.includes("/"));
  const bound: Bound = { aim: "all", cost: least, sheets: 1, certificate: { type: "weights", sheets: [] } };
  const packing: Packing = {
    version: 1,
    mode: "guillotine",
    aim: "all",
    outcome,
    layouts: [],
    placed: [],
    missing: [],
    sheets: 1,
    cost,
    value: "0",
    bound,
    proven,
    search: { effort: "quick", seed: 1, lp: "none", starts: 1, steps: 0, work: 1, ended: "finished" },
  };
  const designs = whole.map(({ id }) => id);
  const problem = { kinds: [], sheets, mode: "guillotine", aim: "all" } as const;
  const ofStrips =
    endless === undefined
      ? {}
      : { endless: { problem, packing: { ...packing, bound: { ...bound, cost: endless } } } };
  const {
    proven: what,
    above,
    measure,
  } = groupProof(
    {
      designs,
      problem,
      packing,
      ...ofStrips,
      sheets: sheets.map(({ id }) => {
        const [of = "", offcut] = id.split("/");
        return { sheet: id, design: of, offcut: offcut === undefined ? null : Number(offcut) };
      }),
    },
    designs.map((id, index) => paper(id, costs?.[index] ?? null)),
  );
  return [what, above, measure];
}

const night: Sheet = { id: "night", width: 100, height: 100 };
const offcut: Sheet = { id: "night/1", width: 50, height: 50, cost: 0 };
const cream: Sheet = { id: "cream", width: 100, height: 100 };
const large: Sheet = { id: "large", width: 200, height: 100 };

describe("what is proven of papers planned together", () => {
  it("is the fewest whole sheets where all cost the same; offcuts cost nothing", () => {
    expect(proof({ sheets: [night, offcut], cost: "30000", least: "30000", proven: true })).toEqual([
      "fewest",
      0,
      "area",
    ]);
    // A bound of 2 1/2 sheets: no plan takes fewer than 3.
    expect(proof({ sheets: [night, cream], cost: "30000", least: "25000" })).toEqual(["fewest", 0, "area"]);
    expect(proof({ sheets: [night], cost: "50000", least: "30000" })).toEqual(["sheets", 2, "area"]);
    expect(proof({ sheets: [night], cost: "50000", least: "29999" })).toEqual(["sheets", 2, "area"]);
    expect(proof({ sheets: [night], cost: "50000", least: "20000" })).toEqual(["sheets", 3, "area"]);
  });

  it("is the least cost, or how far from it, where sheets cost differently", () => {
    const sheets = [
      { ...night, cost: 3000 },
      { ...cream, cost: 16000 },
    ];
    const costs = ["0.30", "1.60"];
    expect(proof({ sheets, costs, cost: "19000", least: "19000", proven: true })).toEqual([
      "least",
      0,
      "cost",
    ]);
    expect(proof({ sheets, costs, cost: "19000", least: "18999" })).toEqual(["percent", 0.1, "cost"]);
    expect(proof({ sheets, costs, cost: "30000", least: "20000" })).toEqual(["percent", 50, "cost"]);
    expect(proof({ sheets, costs, cost: "30000", least: "0" })).toEqual(["nothing", 0, "cost"]);
  });

  it("holds for all ways to cut die blanks in strips, where these may be cut so", () => {
    const sure = { sheets: [night], cost: "30000", least: "30000", proven: true };
    expect(proof({ ...sure, endless: "20000" })).toEqual(["sheets", 1, "area"]);
    expect(proof({ ...sure, endless: "25000" })).toEqual(["fewest", 0, "area"]);
    const priced = { ...sure, sheets: [night, large], costs: ["0.30", "0.50"] };
    expect(proof({ ...priced, endless: "20000" })).toEqual(["percent", 50, "cost"]);
    expect(proof({ ...priced, endless: "30000" })).toEqual(["least", 0, "cost"]);
  });

  it("speaks of paper where a cost is missing", () => {
    expect(proof({ sheets: [night, large], costs: ["0.30", null], cost: "30000", least: "20000" })).toEqual([
      "percent",
      50,
      "area",
    ]);
  });

  it("is nothing where pieces are missing", () => {
    expect(proof({ sheets: [night], cost: "50000", least: null, outcome: "short" })).toEqual([
      "nothing",
      0,
      "area",
    ]);
    expect(proof({ sheets: [night], cost: "50000", least: "60000", outcome: "not-found" })).toEqual([
      "nothing",
      0,
      "area",
    ]);
  });
});
