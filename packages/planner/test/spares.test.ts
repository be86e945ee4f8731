import type { Project } from "@sheetwright/cards";
import { inches, parseLength } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { projectOf, randomProject } from "../../cards/test/random-project.js";
import { byBorder, card, choice, mat, panel, project } from "../../cards/test/small-project.js";
import { type Plan, plan, planAsync, verifyPlan } from "../src/index.js";
import { letterPaper, made, madeWithSpares, provenPlan } from "./bench-project.js";

const inch = inches(1);
const length = (text: string): number => parseLength(text, { unit: "in" });

// A letter sheet gives two bases of US A2, and four fronts of it.
const base = (number: number, copies: object, layers: Parameters<typeof card>[2] = []) =>
  card(length("4 1/4"), length("5 1/2"), layers, {
    number,
    path: `cards[${number - 1}]`,
    base: choice("night"),
    ...copies,
  });
const night = (count: number | null, cost: string | null = null) => letterPaper("night", {}, { count, cost });
const front = mat(byBorder(0), { paper: choice("cream") });

/** Copies and spares of each card: `12, and 1 of 2 spares`. */
const answer = (wanted: Project): readonly string[] =>
  provenPlan(wanted).complete.map(({ complete, wanted: asked, spares }) => {
    const copies = complete === asked ? `${asked}` : `${complete} of ${asked}`;
    return spares === undefined ? copies : `${copies}, and ${spares.made} of ${spares.wished} spares`;
  });

describe("spare copies", () => {
  test.each([
    [6, "12, and 0 of 3 spares"],
    [7, "12, and 2 of 3 spares"],
    [8, "12, and 3 of 3 spares"],
    [20, "12, and 3 of 3 spares"],
    [null, "12, and 3 of 3 spares"],
  ])("are as many as %s sheets give beyond the copies", (count, expected) => {
    const wanted = project([base(1, madeWithSpares(12, 3))], { papers: [night(count)] });
    expect(answer(wanted)).toEqual([expected]);
  });

  test("are none where the copies lack something, and what they lack is told without them", () => {
    const papers = [night(5)];
    const found = provenPlan(project([base(1, madeWithSpares(12, 3))], { papers }));
    expect(found.complete).toEqual([{ card: 1, wanted: 12, complete: 10, spares: { wished: 3, made: 0 } }]);
    const without = provenPlan(project([base(1, made(12))], { papers }));
    expect(found.shortages).toEqual(without.shortages);
    expect(found.groups).toEqual(without.groups);
  });

  test("have all their pieces, from every paper that they need", () => {
    const cards = [base(1, madeWithSpares(4, 4), [front])];
    // Bases for eight, fronts for six.
    const papers = [night(4), letterPaper("cream", {}, { count: 1, offcuts: [offcut(2)] })];
    expect(answer(project(cards, { papers }))).toEqual(["4, and 2 of 4 spares"]);
  });

  test("are planned with the copies, counted in sheets, leftovers, folds and cost", () => {
    const wanted = project([base(1, madeWithSpares(3, 2))], { papers: [night(9, "0.35")] });
    const found = provenPlan(wanted);
    expect(found.pieces.map(({ quantity }) => quantity)).toEqual([3]);
    expect(found.groups[0]?.packing.placed).toEqual([{ kind: "1a", count: 5 }]);
    expect(found.use).toEqual([{ design: "night", used: 3, left: 6, offcutsUsed: 0 }]);
    expect(found.folds).toEqual([{ piece: "1a", along: 5, across: 0, unknown: 0, none: 0 }]);
    expect(found.cost).toBe("1.05");
    expect(found.leftovers).toMatchObject([{ design: "night", count: 1, keep: true }]);
    expect(found.groups[0]?.packing.proven).toBe(true);
  });

  test("are shared alike among the cards before one gets more", () => {
    const cards = [base(1, madeWithSpares(2, 4)), base(2, madeWithSpares(2, 4))];
    expect(answer(project(cards, { papers: [night(5)] }))).toEqual([
      "2, and 3 of 4 spares",
      "2, and 3 of 4 spares",
    ]);
    expect(answer(project([...cards, base(3, made(1))], { papers: [night(5)] }))).toEqual([
      "2, and 3 of 4 spares",
      "2, and 2 of 4 spares",
      "1",
    ]);
  });

  test("of one card are made though another can have none", () => {
    const cards = [base(1, madeWithSpares(4, 2), [front]), base(2, madeWithSpares(2, 3))];
    const papers = [night(null), letterPaper("cream", {}, { count: 1 })];
    expect(answer(project(cards, { papers }))).toEqual(["4, and 0 of 2 spares", "2, and 3 of 3 spares"]);
  });

  test("that nobody wishes for change no byte of a plan", () => {
    const cards = [base(1, made(5), [front])];
    const text = JSON.stringify(plan(project(cards, { papers: [night(9), letterPaper("cream")] })));
    expect(text).not.toContain("spare");
  });

  test("take as many searches as their number has binary digits, not as there are", async () => {
    const searches = async (spares: number): Promise<number> => {
      let count = 0;
      let last = "";
      const onProgress = ({
        aim,
        progress,
      }: {
        aim: string;
        progress: { startsDone: number; work: number };
      }) => {
        if (aim === "spares" && (last !== aim || progress.work === 0)) count++;
        last = aim;
      };
      const wanted = project([base(1, madeWithSpares(1, spares))], { papers: [night(20)] });
      const found = await planAsync(wanted, { effort: "quick", onProgress });
      expect(found.complete[0]?.spares?.made).toBe(39);
      return count;
    };
    expect(await searches(100_000 - 1)).toBeLessThan(2 * (await searches(400)));
  });

  test("are left out where the plan is ended early, and the copies stand", async () => {
    const layers = [mat(byBorder(inch / 8), { paper: choice("cream") }), panel(byBorder(inch / 4))];
    const cards = [base(1, madeWithSpares(7, 9), layers), base(2, madeWithSpares(5, 9), layers)];
    const papers = [night(20), letterPaper("cream", {}, { count: 9 })];
    const wanted = project(cards, { papers });
    let reached = 0;
    for (const after of [1, 2, 5]) {
      const signal = { aborted: false };
      let steps = 0;
      const onProgress = ({ aim }: { aim: string }) => {
        if (aim === "spares") steps++;
        if (steps >= after) signal.aborted = true;
      };
      const found = await planAsync(wanted, { effort: "quick", signal, onProgress });
      reached = Math.max(reached, steps);
      expect(verifyPlan(wanted, found)).toEqual([]);
      expect([found.enough, found.search.cancelled]).toEqual(["yes", true]);
      expect(found.complete.map(({ complete, spares }) => [complete, spares?.made])).toEqual([
        [7, 0],
        [5, 0],
      ]);
    }
    expect(reached).toBeGreaterThan(0);
  });
});

function offcut(count: number) {
  return { width: length("4 1/4"), height: length("5 1/2"), count };
}

// A plan of a project made at random takes some 40 ms with quick effort, and spares several searches more: a twentieth of
// the usual runs, and what two properties meet is planned once.
const runs = { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 20) };
const planned = new Map<string, Plan>();

function planOf(wanted: Project): Plan {
  const text = JSON.stringify(wanted);
  const found = planned.get(text) ?? provenPlan(wanted);
  planned.set(text, found);
  return found;
}

const wishing = fc
  .tuple(randomProject({ cards: 2, copies: 3, layers: 2 }).map(projectOf), fc.integer({ min: 1, max: 3 }))
  .map(([drawn, spares]) => ({
    ...drawn,
    cards: drawn.cards.map((card) => ({ ...card, copiesFor: { ...card.copiesFor, spares } })),
  }));

const withoutWish = (drawn: Project): Project => ({
  ...drawn,
  cards: drawn.cards.map((card) => {
    const { spares: _, ...copiesFor } = card.copiesFor;
    return { ...card, copiesFor };
  }),
});

const twiceTheStock = (drawn: Project): Project => ({
  ...drawn,
  papers: drawn.papers.map((paper) => ({
    ...paper,
    designs: paper.designs.map((design) => ({
      ...design,
      count: design.count === null ? null : 2 * design.count,
      offcuts: design.offcuts.map((offcut) => ({ ...offcut, count: 2 * offcut.count })),
    })),
  })),
});

test("a wish for spares takes nothing from the copies", () => {
  let made = 0;
  fc.assert(
    fc.property(wishing, (wanted) => {
      const [found, asked] = [planOf(wanted), provenPlan(withoutWish(wanted))];
      expect(found.enough).toBe(asked.enough);
      expect(found.complete.map(({ complete }) => complete)).toEqual(
        asked.complete.map(({ complete }) => complete),
      );
      const spares = found.complete.reduce((sum, one) => sum + (one.spares?.made ?? 0), 0);
      made += spares;
      if (spares === 0) expect(found.groups).toEqual(asked.groups);
    }),
    runs,
  );
  expect(made).toBeGreaterThan(0);
});

test("twice the stock never gives fewer spares", () => {
  fc.assert(
    fc.property(wishing, (wanted) => {
      const twice = provenPlan(twiceTheStock(wanted));
      for (const [index, { spares }] of planOf(wanted).complete.entries())
        expect(twice.complete[index]?.spares?.made).toBeGreaterThanOrEqual(spares?.made ?? 0);
    }),
    runs,
  );
});

test("where there are as many sheets as needed, all spares are made that any sheet can give", () => {
  const endless = wishing.map((drawn) => ({
    ...drawn,
    papers: drawn.papers.map((paper) => ({
      ...paper,
      designs: paper.designs.map((design) => ({ ...design, count: null })),
    })),
  }));
  fc.assert(
    fc.property(endless, (wanted) => {
      const { enough, complete } = provenPlan(wanted);
      for (const { spares } of complete) expect(spares?.made).toBe(enough === "yes" ? spares?.wished : 0);
    }),
    runs,
  );
});
