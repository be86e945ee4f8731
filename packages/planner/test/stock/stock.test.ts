import { type Project, readProject } from "@sheetwright/cards";
import { inches } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { projectOf, randomProject } from "../../../cards/test/random-project.js";
import {
  applyStockChange,
  type LayoutProgress,
  type Plan,
  piecesCut,
  plan,
  type Stock,
  stockChange,
  stockOfProject,
  verifyPlan,
  wholePlan,
  withStock,
} from "../../src/index.js";

const TEXT = `sheetwright: 1
title: Evening workshop
copies: 8
papers:
  night: { name: Night blue, cardstock: us-letter, count: 6, grain: long, offcuts: [{ size: 5 1/2 x 8 1/2, count: 2 }] }
  stars: { pad: 6 x 6, designs: { dots: 6, comets: { count: 8, pattern: one-way } } }
cards:
  - name: Lantern
    format: us-a2
    base: night
    front:
      - { panel: stars.comets, border: 1/8 }
`;

function read(text: string): Project {
  const { project, faults } = readProject(text);
  if (project === null) throw new Error(JSON.stringify(faults));
  return project;
}

const project = read(TEXT);
const stock: Stock = { papers: stockOfProject(project) };

describe("a stock in the place of a project's counts", () => {
  it("says what is on hand of the designs that it knows; the others stay as they are", () => {
    const [night] = stock.papers;
    const found = withStock(project, {
      papers: [{ ...night!, sheets: 2, offcuts: [{ width: 100, height: 200, count: 3 }] }],
    });
    expect(found).toMatchObject({ designs: ["night"], faults: [] });
    const counts = found.project.papers.flatMap(({ designs }) => designs.map(({ id, count }) => [id, count]));
    expect(counts).toEqual([
      ["night", 2],
      ["stars.dots", 6],
      ["stars.comets", 8],
    ]);
    expect(found.project.papers[0]?.designs[0]?.offcuts).toEqual([{ width: 100, height: 200, count: 3 }]);
  });

  it("is refused where its sheets are of another size, or their grain runs along another side", () => {
    const [night, dots] = stock.papers;
    const { faults, designs } = withStock(project, {
      papers: [
        { ...night!, grain: "width" },
        { ...dots!, sheet: { width: inches(12), height: inches(12) } },
      ],
    });
    expect(designs).toEqual([]);
    expect(faults.map(({ code, design, at }) => [code, design, at])).toEqual([
      ["other-grain", "night", "grain"],
      ["other-size", "stars.dots", "sheet"],
    ]);
    expect(faults[1]?.message).toContain("in sheets of 12 x 12 in, and the project 6 x 6 in");
  });

  it("gives the same plan as the project whose counts it was made from", () => {
    const stocked = withStock(project, stock).project;
    expect(JSON.stringify(plan(stocked, { effort: "quick" }))).toBe(
      JSON.stringify(plan(project, { effort: "quick" })),
    );
  });

  it("lets offcuts go before new sheets", () => {
    const found = plan(project, { effort: "quick" });
    expect(found.use[0]).toMatchObject({ design: "night", offcutsUsed: 2, used: 3 });
  });
});

describe("offcuts", () => {
  const used = (text: string) => {
    const asked = read(text);
    const one = plan(asked, { effort: "quick" });
    expect(verifyPlan(asked, one)).toEqual([]);
    expect(one.enough).toBe("yes");
    return one;
  };

  it("go before new sheets that cost nothing either, without making the others dearer", () => {
    const free = (cost: string) => `sheetwright: 1
title: Gifts
papers:
  gift: { cardstock: us-letter, count: 6, cost: 0, offcuts: [{ size: 8 1/2 x 5 1/2, count: 3 }] }
  night: { cardstock: us-letter, count: 6, cost: ${cost} }
cards: [{ name: Plain, size: 8 1/2 x 5, fold: flat, base: [gift, night], copies: 5 }]
`;
    for (const cost of ["0.5", "0.0001", "900"]) {
      const one = used(free(cost));
      expect(one.use).toMatchObject([
        { design: "gift", used: 1, offcutsUsed: 3 },
        { design: "night", used: 0 },
      ]);
      expect(one.cost).toBe("0.00");
    }
  });

  it("go before new sheets where these cost nothing at all, or their cost is not known", () => {
    for (const cost of [", cost: 0", ""]) {
      const one = used(`sheetwright: 1
title: Gifts
papers: { gift: { cardstock: us-letter, count: 6${cost}, offcuts: [{ size: 8 1/2 x 5 1/2, count: 4 }] } }
cards: [{ name: Plain, size: 8 1/2 x 5, fold: flat, base: gift, copies: 4 }]
`);
      expect(one.use).toMatchObject([{ used: 0, offcutsUsed: 4 }]);
    }
  });
});

describe("what is cut", () => {
  const found = plan(project, { effort: "quick" });

  it("leaves the stock, and what is worth keeping comes back", () => {
    const changes = stockChange(found, wholePlan(found));
    const { stock: after, faults } = applyStockChange(stock, changes, "in");
    expect(faults).toEqual([]);
    for (const { design, used, offcutsUsed } of found.use) {
      const before = stock.papers.find((one) => one.design === design)!;
      const now = after.papers.find((one) => one.design === design)!;
      expect(now.sheets).toBe(before.sheets! - used);
      const kept = found.leftovers.filter((one) => one.design === design && one.keep);
      const number = (all: readonly { readonly count: number }[]) =>
        all.reduce((sum, one) => sum + one.count, 0);
      expect(number(now.offcuts)).toBe(number(before.offcuts) - offcutsUsed + number(kept));
    }
  });

  it("takes spoiled sheets and gets nothing from them", () => {
    const first: LayoutProgress = { group: 0, layout: 0, from: 0, to: 0, spoiled: 1 };
    const [change, ...others] = stockChange(found, [first]);
    expect(others).toEqual([]);
    expect(change).toMatchObject({ design: "night", left: [] });
    expect(piecesCut(found, [first])).toEqual(new Map());
  });

  it("is refused where less is on hand, another size is, or the paper is not known", () => {
    const changes = stockChange(found, wholePlan(found));
    const [night, dots, comets] = stock.papers;
    const codes = (papers: Stock["papers"]) => {
      const { stock: after, faults } = applyStockChange({ papers }, changes, "in");
      expect(after.papers).toBe(papers);
      return faults.map(({ code, design, at }) => [code, design, at]);
    };
    expect(codes([dots!, comets!])).toEqual([["not-in-stock", "night", null]]);
    expect(codes([{ ...night!, sheets: 2 }, comets!])).toEqual([["not-enough", "night", "sheets"]]);
    expect(codes([{ ...night!, offcuts: [{ ...night!.offcuts[0]!, count: 1 }] }, comets!])).toEqual([
      ["not-enough", "night", { width: inches(5.5), height: inches(8.5) }],
    ]);
    expect(codes([{ ...night!, sheet: { width: 1, height: 1 } }, comets!])).toEqual([
      ["other-size", "night", "sheet"],
    ]);
  });

  it("leaves sheets that are not counted as they are", () => {
    const papers = stock.papers.map((paper) => ({ ...paper, sheets: null }));
    const { stock: after, faults } = applyStockChange({ papers }, stockChange(found, wholePlan(found)), "in");
    expect(faults).toEqual([]);
    expect(after.papers.map(({ sheets }) => sheets)).toEqual([null, null, null]);
  });

  it("also leaves narrow strips, where these are worth keeping", () => {
    const narrow = read(`sheetwright: 1
title: Bands
papers: { night: { cardstock: us-letter, count: 1 } }
cards: [{ name: Plain, size: 8 x 11, fold: flat, base: night }]
`);
    const one = plan(narrow, { effort: "quick" });
    expect(stockChange(one, wholePlan(one))[0]?.left).toEqual([]);
    const strip = { width: inches(0.5), height: inches(10) };
    const left = [{ width: inches(0.5), height: inches(11), count: 1 }];
    expect(stockChange(one, wholePlan(one), strip)[0]?.left).toEqual(left);
    expect(stockChange(one, wholePlan(one), { width: strip.height, height: strip.width })[0]?.left).toEqual(
      left,
    );
  });

  it("gives the pieces of a shared place one after another, as the cut list names them", () => {
    const share = (kind: string, count: number) => ({ kind, form: 0, turned: false, count });
    const tree = { type: "piece" as const, shares: [share("b", 1), share("a", 2)] };
    const sheet = { id: "night", width: 5, height: 7 };
    const kinds = ["a", "b"].map((id) => ({ id, quantity: 2, forms: [{ width: 5, height: 7 }] }));
    const [group] = found.groups;
    const shared = {
      groups: [
        {
          ...group!,
          problem: { ...group!.problem, kinds, sheets: [sheet] },
          packing: { ...group!.packing, layouts: [{ sheet: "night", run: 4, tree }] },
        },
      ],
    };
    const of = (from: number, to: number) => [
      ...piecesCut(shared, [{ group: 0, layout: 0, from, to, spoiled: 0 }]),
    ];
    expect([of(0, 1), of(1, 3), of(3, 4)]).toEqual([
      [["a", 1]],
      [
        ["a", 1],
        ["b", 1],
      ],
      [],
    ]);
    // On the last sheet of the run the place is an offcut.
    const left = (from: number, to: number) =>
      stockChange({ ...shared, papers: found.papers }, [{ group: 0, layout: 0, from, to, spoiled: 0 }], {
        width: 5,
        height: 5,
      })[0]?.left;
    expect([left(0, 3), left(3, 4)]).toEqual([[], [{ width: 5, height: 7, count: 1 }]]);
  });

  it("that the plan has not is refused", () => {
    const part = { group: 0, layout: 0, from: 0, to: 1, spoiled: 0 };
    for (const wrong of [
      { group: 9 },
      { layout: 99 },
      { to: 999 },
      { from: 2 },
      { spoiled: -1 },
      { spoiled: 0.5 },
    ])
      expect(() => stockChange(found, [{ ...part, ...wrong }])).toThrow(RangeError);
  });
});

// A plan takes some tenths of a second: a tenth of the usual runs, of small projects.
const runs = { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 10) };
const projects = randomProject({ cards: 2, copies: 4, layers: 3 }).map(projectOf);

const areaOf = ({ width, height }: { readonly width: number; readonly height: number }): bigint =>
  BigInt(width) * BigInt(height);
const sum = (areas: readonly bigint[]): bigint => areas.reduce((total, area) => total + area, 0n);
const areaOn = ({ sheet, sheets, offcuts }: Stock["papers"][number]): bigint =>
  BigInt(sheets ?? 0) * areaOf(sheet) + sum(offcuts.map((one) => BigInt(one.count) * areaOf(one)));

/** Area of everything that a plan's leaves hold or lose, from its problems alone: pieces, then what is not kept and trim. */
function piecesAndLost(found: Plan, design: string): { readonly pieces: bigint; readonly waste: bigint } {
  let pieces = 0n;
  for (const { packing, problem, sheets } of found.groups) {
    for (const { sheet, tree } of packing.layouts) {
      if (sheets.find((one) => one.sheet === sheet)?.design !== design) continue;
      const ahead = [tree];
      for (let node = ahead.pop(); node !== undefined; node = ahead.pop()) {
        if (node.type === "split") ahead.push(...node.parts.map((part) => part.node));
        if (node.type !== "piece") continue;
        for (const { kind, form, count } of node.shares) {
          const size = problem.kinds.find(({ id }) => id === kind)!.forms[form]!;
          pieces += BigInt(count) * areaOf(size);
        }
      }
    }
  }
  const waste = sum(
    found.leftovers
      .filter((one) => one.design === design && !one.keep)
      .map((one) => BigInt(one.count) * areaOf(one)),
  );
  return { pieces, waste };
}

describe("any plan", () => {
  it("balances: what was on hand is what is left, the pieces and the waste", () => {
    fc.assert(
      fc.property(projects, (drawn) => {
        // Kerf and trim are lost in cuts and edges; without them areas add up to the last square tick.
        const even: Project = {
          ...drawn,
          trimmer: { ...drawn.trimmer, kerf: 0 },
          papers: drawn.papers.map((paper) => ({ ...paper, trim: { left: 0, right: 0, top: 0, bottom: 0 } })),
        };
        const found = plan(even, { effort: "quick" });
        const before: Stock = { papers: stockOfProject(even) };
        const done = wholePlan(found);
        const { stock: after, faults } = applyStockChange(before, stockChange(found, done), "in");
        expect(faults).toEqual([]);
        for (const [index, paper] of before.papers.entries()) {
          const now = after.papers[index]!;
          const used = found.use.find(({ design }) => design === paper.design)?.used ?? 0;
          const uncounted = paper.sheets === null ? BigInt(used) * areaOf(paper.sheet) : 0n;
          const { pieces, waste } = piecesAndLost(found, paper.design);
          expect(areaOn(paper) + uncounted).toBe(areaOn(now) + pieces + waste);
          if (paper.sheets !== null) expect(now.sheets).toBe(paper.sheets - used);
        }
        const cut = new Map(
          found.groups.flatMap((group) => [
            ...piecesCut({ groups: [group] }, wholePlan({ groups: [group] })),
          ]),
        );
        for (const { id, quantity } of found.pieces)
          if (found.enough === "yes") expect(cut.get(id) ?? 0).toBeGreaterThanOrEqual(quantity);
      }),
      runs,
    );
  }, 400_000);

  it("booked in two parts comes to the same as booked at once", () => {
    fc.assert(
      fc.property(projects, fc.nat(), (drawn, at) => {
        const found = plan(drawn, { effort: "quick" });
        const before: Stock = { papers: stockOfProject(drawn) };
        const whole = wholePlan(found);
        const first = whole.map((one, i) => ({ ...one, to: (at + i) % (one.to + 1) }));
        const second = whole.map((one, i) => ({ ...one, from: first[i]!.to }));
        const half = applyStockChange(before, stockChange(found, first), "in");
        const both = applyStockChange(half.stock, stockChange(found, second), "in");
        expect([...half.faults, ...both.faults]).toEqual([]);
        expect(both.stock).toEqual(applyStockChange(before, stockChange(found, whole), "in").stock);
        const [a, b, all] = [first, second, whole].map((done) => piecesCut(found, done));
        for (const [piece, count] of all!) expect((a!.get(piece) ?? 0) + (b!.get(piece) ?? 0)).toBe(count);
      }),
      runs,
    );
  }, 400_000);

  it("can be made again from the stock that it was made from, and leaves one that can be planned with", () => {
    fc.assert(
      fc.property(projects, (drawn) => {
        const before: Stock = { papers: stockOfProject(drawn) };
        const { project: stocked, faults } = withStock(drawn, before);
        expect(faults).toEqual([]);
        const found = plan(stocked, { effort: "quick" });
        expect(verifyPlan(stocked, found)).toEqual([]);
        const { stock: after } = applyStockChange(before, stockChange(found, wholePlan(found)), "in");
        const next = withStock(drawn, after).project;
        expect(verifyPlan(next, plan(next, { effort: "quick" }))).toEqual([]);
      }),
      runs,
    );
  }, 400_000);
});
