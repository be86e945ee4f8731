import { type Project, readProject } from "@sheetwright/cards";
import { type Form, packAsync } from "@sheetwright/packing";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { smallStock } from "../../../packing/test/small-stock.js";
import {
  type Packer,
  type Plan,
  plan,
  planAsync,
  stockOfProject,
  verifyPlan,
  withStock,
} from "../../src/index.js";
import { keptOffcuts } from "../../src/search/aims.js";
import { smallAlternatives } from "./small-alternatives.js";

function read(text: string): Project {
  const { project, faults } = readProject(text);
  if (project === null) throw new Error(faults.map(({ message }) => message).join("\n"));
  return project;
}

const sheetsOf = (found: Plan) =>
  found.groups.flatMap(({ packing }) => packing.layouts.map(({ sheet, run }) => `${run} x ${sheet}`));

const project = (papers: string, cards: string) =>
  read(`{ sheetwright: 1, title: One, papers: { ${papers} }, cards: [${cards}] }`);

describe("the order of aims over all papers of a group", () => {
  // Two 5 x 7 of cream at 0.60 each, or one 8 1/2 x 11 of night at 1.00 that gives both.
  it("the least cost comes first, whichever paper is named first", () => {
    const found = plan(
      project(
        "cream: { cardstock: 5 x 7, cost: 0.6 }, night: { cardstock: us-letter, cost: 1 }",
        "{ name: A, size: 5 x 7, fold: flat, base: [cream, night], copies: 2 }",
      ),
    );
    expect([sheetsOf(found), found.cost]).toEqual([["1 x night"], "1.00"]);
  });

  // Both come to 1.00; one sheet is fewer than two.
  it("then the fewest sheets", () => {
    const found = plan(
      project(
        "cream: { cardstock: 5 x 7, cost: 0.5 }, night: { cardstock: us-letter, cost: 1 }",
        "{ name: A, size: 5 x 7, fold: flat, base: [cream, night], copies: 2 }",
      ),
    );
    expect([sheetsOf(found), found.cost]).toEqual([["1 x night"], "1.00"]);
  });

  // A 3 x 4 out of the 3 x 4 that is there leaves the 8 x 10 whole.
  it("then the largest offcut, those that are left alone among them", () => {
    const found = plan(
      project(
        "cream: { cardstock: us-letter, cost: 1, offcuts: [8 x 10, 3 x 4, 5 x 6] }",
        "{ name: A, size: 3 x 4, fold: flat, base: cream }",
      ),
    );
    expect(sheetsOf(found)).toEqual(["1 x cream/2"]);
  });

  it("offcuts go before sheets that cost something, and before sheets that are free", () => {
    for (const cost of ["1", "0"]) {
      const found = plan(
        project(
          `cream: { cardstock: us-letter, cost: ${cost} }, night: { cardstock: us-letter, cost: ${cost}, offcuts: [5 x 7] }`,
          "{ name: A, size: 5 x 7, fold: flat, base: [cream, night] }",
        ),
      );
      expect(sheetsOf(found)).toEqual(["1 x night/1"]);
    }
  });

  it("a mat comes from an offcut of any paper that will do, and from one of the stock", () => {
    const cards =
      "{ name: A, format: us-a7, base: ember, front: [{ mat: any cardstock of at least 65 lb cover, border: 1/8 }] }";
    const papers =
      "ember: { cardstock: us-letter }, cream: { cardstock: us-letter, weight: 80 lb cover }, night: { cardstock: us-letter, weight: 216 gsm }";
    const plain = project(papers, cards);
    expect(sheetsOf(plan(plain))).toEqual(["1 x ember", "1 x cream"]);
    const offcuts = [{ width: 5 * 40640, height: 7 * 40640, count: 1 }];
    const papersOnHand = stockOfProject(plain).map((one) =>
      one.design === "night" ? { ...one, offcuts } : one,
    );
    const stocked = withStock(plain, { papers: papersOnHand }).project;
    const found = plan(stocked);
    expect(sheetsOf(found)).toEqual(["1 x ember", "1 x night/1"]);
    expect(verifyPlan(stocked, found)).toEqual([]);
  });

  it("cost and sheets of small projects are the least there are, as looking at everything shows", () => {
    const runs = { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 5) };
    let judged = 0;
    fc.assert(
      fc.property(smallAlternatives(), (drawn) => {
        for (const { problem, packing } of plan(drawn, { effort: "quick" }).groups) {
          const copies = problem.kinds.reduce((sum, { quantity }) => sum + (quantity ?? 0), 0);
          const amounts = problem.kinds.reduce((all, { quantity }) => all * ((quantity ?? 0) + 1), 1);
          const choices = problem.sheets.reduce(
            (all, { stock }) => all * (Math.min(stock ?? copies, copies) + 1),
            1,
          );
          // So many take long to look at.
          if (amounts * choices > 5_000) continue;
          judged++;
          const scale = 1_000;
          const sheets = problem.sheets.map((sheet) => ({
            ...sheet,
            cost: (sheet.cost ?? sheet.width * sheet.height) * scale + 1,
          }));
          const least = smallStock({ ...problem, sheets }).leastCost();
          const found = Number(packing.cost) * scale + packing.sheets;
          expect(packing.outcome === "complete" ? found : undefined).toBe(least);
        }
      }),
      runs,
    );
    expect(judged).toBeGreaterThan(runs.numRuns / 2);
  });
});

/** Every choice of papers in data of a project, changed. */
function withChoices<Data>(data: Data, change: (faces: readonly string[]) => readonly string[]): Data {
  return JSON.parse(
    JSON.stringify(data, (key, value) => (key === "faces" && Array.isArray(value) ? change(value) : value)),
  );
}

/** What a maker would have written without a choice of papers, of folds, or without offcuts. */
const LESSER: Readonly<Record<string, (project: Project) => Project>> = {
  "several papers": (whole) => withChoices(whole, (faces) => faces.slice(0, 1)),
  "either flat": (whole) => ({
    ...whole,
    cards: whole.cards.map((card) => ({ ...card, flats: card.flats.slice(0, 1) })),
  }),
  offcuts: (whole) => ({
    ...whole,
    papers: whole.papers.map((paper) => ({
      ...paper,
      designs: paper.designs.map((design) => ({ ...design, offcuts: [] })),
    })),
  }),
};

/** What the sheets of a plan cost; without prices, their area. */
function costOf(found: Plan): number {
  if (found.cost !== null) return Number(found.cost);
  return found.use.reduce((sum, { design, used }) => {
    const paper = found.papers.find(({ designs }) => designs.some(({ id }) => id === design));
    return sum + used * (paper?.sheet.width ?? 0) * (paper?.sheet.height ?? 0);
  }, 0);
}

describe("a choice never costs more than going without it", () => {
  const runs = { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 12) };
  const projects = fc.oneof(smallAlternatives(), smallAlternatives({ cards: 3, copies: 15 }));

  it.each(Object.keys(LESSER))("%s", (what) => {
    fc.assert(
      fc.property(projects, fc.subarray(Object.keys(LESSER)), (drawn, others) => {
        const without = (names: readonly string[]) =>
          names.reduce((whole, name) => LESSER[name]?.(whole) ?? whole, drawn);
        const own = others.filter((name) => name !== what);
        const [on, off] = [without(own), without([...own, what])];
        const [found, lesser] = [on, off].map((one) => plan(one, { effort: "quick" }));
        expect(verifyPlan(on, found!)).toEqual([]);
        if (lesser!.enough !== "yes") return;
        expect(found!.enough).toBe("yes");
        expect(costOf(found!)).toBeLessThanOrEqual(costOf(lesser!));
      }),
      runs,
    );
  });

  it("what would be planned without the choice is taken where the search with it does worse", async () => {
    const chosen = project(
      "cream: { cardstock: us-letter, cost: 0.5 }, night: { cardstock: us-letter, cost: 1 }",
      "{ name: A, format: us-a2, base: [cream, night], copies: 400 }",
    );
    // Stands in for a search that does not find the cheaper paper where it has both. So many copies have no offcuts looked for.
    const dear: Packer = async (problem, options) => {
      if (problem.sheets.length === 1) return packAsync(problem, options);
      const fromNight = (form: Form): Form => ({
        ...form,
        sheets: (form.sheets ?? []).filter(({ sheet }) => sheet === "night"),
      });
      const kinds = problem.kinds.map((kind) => ({ ...kind, forms: kind.forms.map(fromNight) }));
      const best = await packAsync(problem, options);
      const found = await packAsync({ ...problem, kinds }, options);
      if (found.outcome !== "complete") return best;
      const { bound } = best;
      return { ...found, bound, proven: false, search: { ...found.search, ended: "finished" } };
    };
    const found = await planAsync(chosen, { effort: "quick", packer: dear });
    expect([sheetsOf(found), found.cost]).toEqual([["200 x cream"], "100.00"]);
    expect(verifyPlan(chosen, found)).toEqual([]);
  });

  it("nothing is searched again where the first plan is proven to cost the least", () => {
    const found = plan(
      project(
        "cream: { cardstock: us-letter }, night: { cardstock: us-letter }",
        "{ name: A, format: us-a2, base: [cream, night], copies: 2 }",
      ),
    );
    const alone = plan(
      project("cream: { cardstock: us-letter }", "{ name: A, format: us-a2, base: cream, copies: 2 }"),
    );
    expect(found.groups[0]?.packing.proven).toBe(true);
    expect(found.groups[0]?.packing.search.starts).toBe(alone.groups[0]?.packing.search.starts);
  });
});

describe("offcuts that are kept", () => {
  it("are those that are left alone, and leftovers worth keeping", () => {
    const one = project(
      "cream: { cardstock: us-letter, offcuts: [{ size: 5 x 7, count: 2 }, 3 x 1] }",
      "{ name: A, size: 3 x 7, fold: flat, base: cream }",
    );
    const [group] = plan(one).groups;
    const inches = 40640 * 40640;
    expect(keptOffcuts({ task: group!, packing: group!.packing })).toEqual([
      { area: 35 * inches, count: 1 },
      { area: 14 * inches, count: 1 },
    ]);
  });
});
