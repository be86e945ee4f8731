import { inches } from "@sheetwright/measure";
import { pack } from "@sheetwright/packing";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bySize, card, choice, panel, project } from "../../../cards/test/small-project.js";
import { type Plan, plan, planAsync, verifyPlan } from "../../src/index.js";
import { letterPaper, made, provenPlan } from "../bench-project.js";
import { bundleProject, bundleStock, copiesByRule, largerBundle, smallBundle } from "./small-bundles.js";

/** Square ticks in a square inch. */
const SQUARE_INCH = 40_640n * 40_640n;

const completeIn = (found: Plan): readonly number[] => found.complete.map(({ complete }) => complete);
const areaIn = (found: Plan): number =>
  Number(found.groups.reduce((sum, { packing }) => sum + BigInt(packing.value), 0n) / SQUARE_INCH);

/** Complete copies where each group of papers follows the rule by itself. */
function completeApart({ groups, cards, pieces, noPaper }: Plan): readonly number[] {
  const apart = groups.flatMap(({ problem }) => pack(problem, { effort: "quick" }).placed);
  const placed = new Map(apart.map(({ kind, count }) => [kind, count]));
  const unfit = new Set(noPaper.map(({ piece }) => piece));
  return cards.map(({ number, copies }) => {
    const own = pieces.filter((piece) => piece.card === number);
    return Math.min(copies, ...own.map(({ id }) => (unfit.has(id) ? 0 : (placed.get(id) ?? 0))));
  });
}

describe("papers that are short, of several groups", () => {
  // Each letter sheet gives two flats of 8 1/2 x 5 1/2 in, and four panels of 4 x 5 in.
  const layers = (paper: string) => [panel(bySize(inches(4), inches(5)), { paper: choice(paper) })];
  const cardOf = (number: number, base: string, front: string, copies: number) =>
    card(inches(4.25), inches(5.5), layers(front), { number, base: choice(base), ...made(copies) });

  test("do not cut for copies that another one of them cannot complete", () => {
    // Night gives two bases, one to each of its cards. Of the four panels of cream, the second card has use for one only;
    // shared out by cream itself it would have two, and the third card two instead of three.
    const papers = [letterPaper("night", {}, { count: 1 }), letterPaper("cream", {}, { count: 1 })];
    const cards = [
      cardOf(1, "night", "spare", 4),
      cardOf(2, "night", "cream", 4),
      cardOf(3, "spare", "cream", 4),
    ];
    const found = provenPlan(project(cards, { papers: [...papers, letterPaper("spare")] }));
    expect(completeIn(found)).toEqual([1, 1, 3]);
    expect(completeApart(found)).toEqual([1, 1, 2]);
    expect(found.shortages.map(({ pieces }) => pieces)).toEqual([
      [
        { piece: "1a", missing: 3 },
        { piece: "2a", missing: 3 },
      ],
      [
        { piece: "2b", missing: 3 },
        { piece: "3b", missing: 1 },
      ],
    ]);
  });

  test("reckon with what is cut already", () => {
    const papers = [letterPaper("night", {}, { count: 2 }), letterPaper("cream", {}, { count: 1 })];
    const cards = [cardOf(1, "night", "cream", 6), cardOf(2, "night", "cream", 6)];
    const cutAlready = [
      { piece: "1a", count: 5 },
      { piece: "1b", count: 1 },
    ];
    const found = provenPlan(project(cards, { papers, cutAlready }));
    // Five panels of twelve are there, and bases for five copies of the first card; four more come for either.
    expect(completeIn(found)).toEqual([3, 2]);
  });

  test("give what there is of cards that no paper can complete once the others are served", () => {
    const papers = [letterPaper("night", {}, { count: 2 }), letterPaper("cream", {}, { count: 0 })];
    const cards = [cardOf(1, "night", "cream", 4), cardOf(2, "night", "night", 2)];
    const found = provenPlan(project(cards, { papers }));
    expect(completeIn(found)).toEqual([0, 2]);
    expect(found.groups[0]?.packing.placed).toContainEqual({ kind: "2a", count: 2 });
  });
});

describe("200 small bundles", () => {
  const bundles = fc.sample(smallBundle, { seed: 20260101, numRuns: 200 });

  // In four parts, each of which takes some seven seconds; how many bundles of each are short, short of several papers, and
  // better off than with each group of papers by itself.
  test.each([
    [0, 34, 14, 3],
    [50, 40, 15, 1],
    [100, 40, 14, 1],
    [150, 36, 13, 3],
  ])(
    "complete the copies of the rule over all papers together, and of such plans one of the most area: from %i",
    (start, ...expected) => {
      let short = 0;
      let together = 0;
      let better = 0;
      let atQuick = 0;
      for (const bundle of bundles.slice(start, start + 50)) {
        const wanted = bundle.cards.map(({ copies }) => copies);
        const stock = bundleStock(bundle, wanted);
        const copies = stock.byRule();
        const area = stock.mostArea(copies);
        const isBest = (one: Plan): boolean =>
          completeIn(one).join() === copies.join() && areaIn(one) === area;
        const bundled = bundleProject(bundle);
        const quick = plan(bundled, { effort: "quick" });
        const found = isBest(quick) ? quick : plan(bundled, { effort: "standard" });
        expect([completeIn(found), areaIn(found)], JSON.stringify(bundle)).toEqual([copies, area]);
        expect(verifyPlan(bundled, found)).toEqual([]);
        if (found === quick) atQuick++;
        if (found.shortages.length > 0) short++;
        if (found.shortages.length > 1) together++;
        if (completeApart(found).join() !== copies.join()) better++;
      }
      expect([short, together, better]).toEqual(expected);
      expect(atQuick).toBeGreaterThanOrEqual(49);
    },
  );
});

describe("larger bundles", () => {
  // A quarter of a second each.
  const runs = { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 5) };

  test("complete no less by the rule than where each group of papers is planned by itself", () => {
    let better = 0;
    fc.assert(
      fc.property(largerBundle, (bundle) => {
        const found = provenPlan(bundleProject(bundle));
        const wanted = bundle.cards.map(({ copies }) => copies);
        const needed = new Set(
          found.shortages.flatMap(({ group }) => found.groups[group]!.problem.kinds.map(({ id }) => id)),
        );
        const mayGrow = found.cards.map(({ number }) => {
          return found.pieces.some(({ id, card: of }) => of === number && needed.has(id));
        });
        const stepsTo = (copies: readonly number[]): readonly number[] =>
          copiesByRule(wanted, mayGrow, (asked) => {
            return asked.every((count, index) => count <= (mayGrow[index] ? copies[index]! : 0));
          }).steps;
        const together = stepsTo(completeIn(found));
        const apart = stepsTo(completeApart(found));
        const first = together.findIndex((step, index) => step !== apart[index]);
        expect(first === -1 || together[first]! > (apart[first] ?? -1), JSON.stringify(bundle)).toBe(true);
        if (first !== -1) better++;
      }),
      runs,
    );
    expect(better).toBeGreaterThan(0);
  });

  test("prove right where the search is ended early", async () => {
    await fc.assert(
      fc.asyncProperty(largerBundle, fc.integer({ min: 1, max: 400 }), async (bundle, steps) => {
        const signal = { aborted: false };
        let left = steps;
        const onProgress = () => {
          left--;
          signal.aborted = left <= 0;
        };
        const bundled = bundleProject(bundle);
        const found = await planAsync(bundled, { effort: "quick", signal, onProgress });
        expect(verifyPlan(bundled, found)).toEqual([]);
        expect(found.search.cancelled).toBe(signal.aborted);
      }),
      runs,
    );
  });
});
