import { inches, parseLength } from "@sheetwright/measure";
import { packAsync, packSpread, startSteps } from "@sheetwright/packing";
import { describe, expect, test } from "vitest";
import {
  bands,
  byBorder,
  bySize,
  card,
  choice,
  face,
  mat,
  panel,
  paper,
  paperDesign,
  project,
} from "../../cards/test/small-project.js";
import { type Packer, type Plan, plan, planAsync, planSteps, verifyPlan } from "../src/index.js";
import { letterPaper, made, pad, provenPlan } from "./bench-project.js";

const inch = inches(1);
const length = (text: string): number => parseLength(text, { unit: "in" });
const sizes = (found: Plan): string[] =>
  found.leftovers.map(
    ({ design, width, height, count, keep }) =>
      `${design} ${width / inch} x ${height / inch}: ${count}${keep ? "" : " waste"}`,
  );

describe("a plan of one paper", () => {
  // US A2 base from 5 1/2 x 8 1/2: two from a letter sheet (computed yields).
  const cards = [card(length("4 1/4"), length("5 1/2"), [], { base: choice("night"), ...made(5) })];

  test("tells sheets used and left, leftovers and cost, and that there is enough", () => {
    const papers = [letterPaper("night", {}, { count: 5, cost: "0.35" })];
    const found = provenPlan(project(cards, { papers }));
    expect(found.enough).toBe("yes");
    expect(found.complete).toEqual([{ card: 1, wanted: 5, complete: 5 }]);
    expect(found.use).toEqual([{ design: "night", used: 3, left: 2, offcutsUsed: 0 }]);
    expect(sizes(found)).toEqual(["night 8.5 x 5.5: 1"]);
    expect(found.cost).toBe("1.05");
    expect(found.groups[0]?.packing).toMatchObject({ outcome: "complete", proven: true });
    expect(found.groups[0]?.problem.sheets[0]).toMatchObject({ id: "night", cost: 3500, stock: 5 });
  });

  test("says that three are not enough for seven, proven, what is missing and what would help", () => {
    const papers = [letterPaper("night", {}, { count: 3 })];
    const wanted = project([{ ...cards[0]!, ...made(7) }], { papers });
    const found = provenPlan(wanted);
    expect(found.enough).toBe("no");
    expect(found.complete).toEqual([{ card: 1, wanted: 7, complete: 6 }]);
    expect(found.shortages).toMatchObject([
      {
        group: 0,
        outcome: "short",
        pieces: [{ piece: "1a", missing: 1 }],
        wouldHelp: [{ design: "night", more: 1 }],
        atLeast: 4,
      },
    ]);
    expect(found.cost).toBeNull();
  });

  test("uses offcuts before it cuts into a sheet, and leaves their grain as it was", () => {
    const offcuts = [{ width: length("8 1/2"), height: length("5 1/2"), count: 2 }];
    const papers = [letterPaper("night", {}, { count: 5, cost: "0.35", offcuts })];
    const found = provenPlan(project([{ ...cards[0]!, ...made(6) }], { papers }));
    expect(found.use).toEqual([{ design: "night", used: 2, left: 3, offcutsUsed: 2 }]);
    expect(found.cost).toBe("0.70");
    expect(found.folds).toEqual([{ piece: "1a", along: 6, across: 0, unknown: 0, none: 0 }]);
    expect(found.groups[0]?.sheets.map(({ sheet }) => sheet)).toEqual(["night", "night/1"]);
    expect(found.groups[0]?.problem.sheets[1]?.name).toBe("night, offcut 8 1/2 x 5 1/2 in");
  });

  test("takes no trim off an offcut, and what the trimmer does from the project", () => {
    const trim = { left: inch / 8, right: 0, top: inch / 8, bottom: 0 };
    const offcuts = [{ width: length("8 1/2"), height: length("5 1/2"), count: 1 }];
    const papers = [letterPaper("night", { trim }, { offcuts })];
    const trimmer = {
      cuts: "strips" as const,
      kerf: 160,
      longestCut: 12 * inch,
      narrowestHold: inch,
      smallestOffcut: { width: inch, height: 3 * inch },
    };
    const found = provenPlan(project([{ ...cards[0]!, ...made(1) }], { papers, trimmer }));
    const problem = found.groups[0]!.problem;
    expect(problem).toMatchObject({ mode: "shelf", kerf: 160, smallestOffcut: trimmer.smallestOffcut });
    expect(problem.sheets.map(({ trim: own, longestCut }) => [own, longestCut])).toEqual([
      [trim, 12 * inch],
      [undefined, 12 * inch],
    ]);
    expect(found.use).toEqual([{ design: "night", used: 0, left: null, offcutsUsed: 1 }]);
  });

  test("gives three 5 x 7 from 12 x 12; of four it is not known, since other cuts than edge-to-edge give four", () => {
    // Common practice, and computed: the area bound is four, edge-to-edge cuts give three.
    const papers = [
      paper("craft", 12 * inch, 12 * inch, { designs: [paperDesign("craft", { count: 1 })] }),
      paper("night", 12 * inch, 12 * inch),
    ];
    const layers = [panel(bySize(5 * inch, 7 * inch), { paper: choice("craft") })];
    const wanted = (copies: number) =>
      project([card(6 * inch, 8 * inch, layers, { base: choice("night"), ...made(copies) })], { papers });
    expect(provenPlan(wanted(3)).enough).toBe("yes");
    const four = provenPlan(wanted(4));
    expect(four.enough).toBe("not-found");
    expect(four.shortages).toMatchObject([
      {
        outcome: "not-found",
        pieces: [{ piece: "1b", missing: 1 }],
        wouldHelp: [{ design: "craft", more: 1 }],
      },
    ]);
    expect(provenPlan(wanted(5)).enough).toBe("no");
  });
});

describe("papers planned together", () => {
  const papers = [
    letterPaper("night"),
    letterPaper("cream"),
    pad("stars", { dots: { count: 1 }, comets: { count: 1 }, rays: { count: 9 } }),
    letterPaper("spare"),
  ];
  const cardOf = (number: number, faces: readonly string[], copies: number) =>
    card(length("4 1/4"), length("5 1/2"), [panel(byBorder(inch / 8), { paper: choice(...faces) })], {
      number,
      base: choice("night"),
      ...made(copies),
    });

  test("are those that share a piece; a paper without pieces is in no group", () => {
    const found = provenPlan(
      project([cardOf(1, ["stars.dots", "stars.comets"], 2), cardOf(2, ["cream"], 3)], { papers }),
    );
    expect(found.groups.map(({ designs }) => designs)).toEqual([
      ["night"],
      ["cream"],
      ["stars.dots", "stars.comets"],
    ]);
    expect(found.groups[2]?.problem.sheets.map(({ name }) => name)).toEqual(["Stars: dots", "Stars: comets"]);
    expect(found.use.map(({ design, used }) => `${design} ${used}`)).toEqual([
      "night 3",
      "cream 1",
      "stars.dots 1",
      "stars.comets 1",
      "stars.rays 0",
      "spare 0",
    ]);
  });

  test("are all of a chain of choices, whatever the order of the cards", () => {
    const chain = [cardOf(1, ["stars.rays", "cream"], 1), cardOf(2, ["stars.dots", "stars.rays"], 1)];
    expect(provenPlan(project(chain, { papers })).groups.map(({ designs }) => designs)).toEqual([
      ["night"],
      ["cream", "stars.dots", "stars.rays"],
    ]);
  });

  test("are both faces of a sheet: the back is no other paper", () => {
    const back = face("night.back", { pattern: "two-way", colour: "#123456" });
    const printed = [letterPaper("night", {}, { back }), letterPaper("cream")];
    const found = provenPlan(project([cardOf(1, ["night.back"], 2)], { papers: printed }));
    expect(found.groups.map(({ designs }) => designs)).toEqual([["night"]]);
    expect(found.groups[0]?.problem.kinds.map(({ forms }) => forms[0]?.sheets)).toEqual([
      [{ sheet: "night", turns: "both" }],
      [{ sheet: "night", turns: "upright" }],
    ]);
  });

  test("ask for the fewest sheets more where any of several designs will do", () => {
    // Each 6 x 6 sheet gives one panel of 4 x 5 1/4.
    const found = provenPlan(project([cardOf(1, ["stars.dots", "stars.comets"], 5)], { papers }));
    expect(found.enough).toBe("no");
    const [shortage] = found.shortages;
    expect(shortage?.pieces).toEqual([{ piece: "1b", missing: 3 }]);
    expect(shortage?.atLeast).toBe(5);
    expect(shortage?.wouldHelp.reduce((sum, { more }) => sum + more, 0)).toBe(3);
    expect(found.complete).toEqual([{ card: 1, wanted: 5, complete: 2 }]);
  });

  test("weigh costs where all are known, and areas where one is not", () => {
    const priced = (dots: string | null) => [
      letterPaper("night"),
      pad("stars", { dots: { cost: dots }, comets: { cost: "0.2" } }),
    ];
    const wanted = [cardOf(1, ["stars.dots", "stars.comets"], 2)];
    const found = provenPlan(project(wanted, { papers: priced("0.25") }));
    expect(found.use.slice(1)).toMatchObject([{ used: 0 }, { used: 2 }]);
    expect(found.groups[1]?.problem.sheets.map(({ cost }) => cost)).toEqual([2500, 2000]);
    const unknown = provenPlan(project(wanted, { papers: priced(null) }));
    expect(unknown.groups[1]?.problem.sheets.map(({ cost }) => cost)).toEqual([undefined, undefined]);
  });
});

describe("a piece that no paper can give", () => {
  test("is told with what would help, is in no group, and makes the answer no", () => {
    const layers = [mat(byBorder(inch / 8), { paper: choice("stars.dots") })];
    const wanted = card(5 * inch, 7 * inch, layers, { base: choice("night"), ...made(2) });
    const papers = [letterPaper("night"), pad("stars", { dots: {} })];
    const found = provenPlan(project([wanted], { papers }));
    expect(found.enough).toBe("no");
    expect(found.noPaper.map(({ piece }) => piece)).toEqual(["1b"]);
    expect(found.groups.map(({ designs }) => designs)).toEqual([["night"]]);
    expect(found.complete).toEqual([{ card: 1, wanted: 2, complete: 0 }]);
    expect(found.shortages).toEqual([]);
  });
});

describe("a short plan", () => {
  test("completes whole cards first, the same share of each kind", () => {
    const papers = [letterPaper("night", {}, { count: 4 })];
    const both = [1, 2].map((number) =>
      card(length("4 1/4"), length("5 1/2"), [panel(byBorder(inch / 8), { paper: choice("night") })], {
        number,
        base: choice("night"),
        ...made(4),
      }),
    );
    const found = provenPlan(project(both, { papers }));
    expect(found.enough).toBe("no");
    // A sheet gives two bases or four panels: five cards take two and a half and one and a quarter, six would take four and a half.
    expect(found.complete.map(({ complete }) => complete)).toEqual([3, 2]);
  });
});

test("a short plan completes cards before one that needs paper of which there is none", () => {
  const a2 = [length("4 1/4"), length("5 1/2")] as const;
  const glitter = mat(byBorder(inch / 8), { paper: choice("copper") });
  const papers = [letterPaper("night", {}, { count: 2 }), letterPaper("copper", {}, { count: 0 })];
  const cards = [
    card(...a2, [glitter], { base: choice("night"), ...made(4) }),
    card(...a2, [], { base: choice("night"), number: 2, path: "cards[1]", ...made(4) }),
  ];
  const found = provenPlan(project(cards, { papers }));
  expect(found.complete.map(({ complete }) => complete)).toEqual([0, 4]);
});

test("a short plan completes cards that can be completed before one that cannot", () => {
  // The first card's mat is larger than the pad; four letter sheets give eight bases of the ten.
  const bad = card(
    length("4 1/4"),
    length("5 1/2"),
    [mat(bySize(4 * inch, 5 * inch), { paper: choice("tiny.dots") })],
    made(5),
  );
  const good = card(length("4 1/4"), length("5 1/2"), [], { number: 2, ...made(5) });
  const tiny = paper("tiny", 2 * inch, 2 * inch, { material: "pad", designs: [paperDesign("tiny.dots")] });
  const found = provenPlan(project([bad, good], { papers: [letterPaper("night", {}, { count: 4 }), tiny] }));
  expect(found.noPaper.map(({ piece }) => piece)).toEqual(["1b"]);
  expect(found.complete.map(({ complete }) => complete)).toEqual([0, 5]);
});

describe("the search", () => {
  const layers = [
    mat(byBorder(inch / 8), { paper: choice("cream") }),
    bands([1, 2], byBorder(inch / 8), { papers: [choice("night"), choice("cream")], seam: "bare" }),
  ];
  const wanted = project([card(5 * inch, 5 * inch, layers, made(12))], {
    papers: [letterPaper("night", {}, { count: 30 }), letterPaper("cream", {}, { count: 4 })],
  });

  test("gives the same bytes again, at once, in steps and with pauses", async () => {
    const bytes = JSON.stringify(plan(wanted, { effort: "quick" }));
    expect(JSON.stringify(plan(wanted, { effort: "quick", seed: 1 }))).toBe(bytes);
    let pauses = 0;
    const pause = () => {
      pauses++;
      return Promise.resolve();
    };
    expect(JSON.stringify(await planAsync(wanted, { effort: "quick", pause }))).toBe(bytes);
    expect(pauses).toBeGreaterThan(0);
    const steps = planSteps(wanted, { effort: "quick" });
    let step = steps.next();
    while (!step.done) step = steps.next();
    expect(JSON.stringify(step.value)).toBe(bytes);
  });

  test("gives the same bytes whoever packs, wherever the starts are made", async () => {
    // Nothing of it is proven by the first plans.
    const uneven = Array.from({ length: 7 }, (_, i) =>
      card((2 + i * 0.375) * inch, (5.5 - i * 0.4375) * inch, [], {
        number: i + 1,
        base: choice("night"),
        ...made(2 + (i % 2)),
      }),
    );
    const odd = project(uneven, { papers: [letterPaper("night", {}, { count: null })] });
    const bytes = JSON.stringify(plan(odd, { effort: "standard" }));
    let begun = 0;
    const packer: Packer = (problem, options) =>
      packSpread(problem, {
        ...options,
        lanes: 2,
        leastWork: 0,
        runStart: (task) => {
          begun++;
          const steps = startSteps(task);
          for (;;) {
            const step = steps.next();
            if (step.done) return Promise.resolve(step.value);
          }
        },
      });
    expect(JSON.stringify(await planAsync(odd, { effort: "standard", packer }))).toBe(bytes);
    expect(begun).toBeGreaterThan(0);
  });

  test("never gives out a packing that is not right, whoever packed it", async () => {
    const packer: Packer = async (problem, options) => {
      const packing = await packAsync(problem, options);
      return { ...packing, sheets: packing.sheets + 1 };
    };
    await expect(planAsync(wanted, { effort: "quick", packer })).rejects.toThrow("A packing is not right");
  });

  test("tells how far it is, group by group", async () => {
    const groups = new Set<string>();
    await planAsync(wanted, {
      effort: "quick",
      onProgress: ({ group, groups: all, aim }) => groups.add(`${group} of ${all}: ${aim}`),
    });
    expect([...groups].slice(0, 1)).toEqual(["0 of 2: layouts"]);
    expect([...groups]).toContain("1 of 2: layouts");
    expect([...groups]).toContain("1 of 2: shortage");
  });

  test.each([0, 1, 5, 40])("gives a right plan when it is cancelled after %i steps", async (after) => {
    let steps = 0;
    const signal = { aborted: after === 0 };
    const onProgress = () => {
      steps++;
      if (steps >= after) signal.aborted = true;
    };
    const found = await planAsync(wanted, { effort: "standard", signal, onProgress });
    expect(found.search.cancelled).toBe(true);
    expect(verifyPlan(wanted, found)).toEqual([]);
    expect(found.groups.map(({ packing }) => packing.placed.length)).toEqual([2, 2]);
  });

  test("refuses a bad seed and a bad effort", () => {
    expect(() => plan(wanted, { seed: -1 })).toThrow(RangeError);
    expect(() => plan(wanted, { effort: "most" as "quick" })).toThrow("one of quick, standard, thorough");
  });

  test("refuses a project that contradicts itself", () => {
    const wrong = project([card(5 * inch, 5 * inch, [mat(byBorder(3 * inch))])]);
    expect(() => plan(wrong)).toThrow(expect.objectContaining({ name: "ProjectError" }));
  });
});
