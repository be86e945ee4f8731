import fc from "fast-check";
import { expect, test } from "vitest";
import { projectOf, randomProject } from "../../../cards/test/random-project.js";
import { asManyAsNeeded, bonusOf, findSavings, plan, priceOf } from "../../src/index.js";

// Each case plans once, or some ten times, with quick effort: a small part of the usual runs.
const usual = fc.readConfigureGlobal().numRuns ?? 100;
const runs = { numRuns: Math.ceil(usual / 20) };
const fewRuns = { numRuns: Math.ceil(usual / 50) };
const projects = randomProject({ cards: 2, copies: 4, layers: 3 }).map(projectOf);

/** Whole hundredths, read apart from the code that writes them. */
const hundredths = (text: string): number => {
  expect(text).toMatch(/^\d+\.\d\d$/);
  return Number(text.replace(".", ""));
};
const sum = (texts: readonly string[]): number =>
  texts.map(hundredths).reduce((total, one) => total + one, 0);

test("the shares of each part of a cost, those of the cards and the parts add up to the hundredth", () => {
  fc.assert(
    fc.property(projects, (project) => {
      const asked = asManyAsNeeded(project);
      const planned = plan(asked, { effort: "quick" });
      if (planned.enough !== "yes") return;
      const price = priceOf(project, planned);
      for (const { cost, shares } of price.parts)
        expect(sum(shares.map((one) => one.cost))).toBe(hundredths(cost));
      for (const { costs, total } of price.cards) expect(sum(Object.values(costs))).toBe(hundredths(total));
      expect(sum(price.cards.map(({ total }) => total))).toBe(hundredths(price.total));
      expect(sum(price.parts.map(({ cost }) => cost))).toBe(hundredths(price.total));
      for (const { copies, copy, total } of price.cards) {
        expect(hundredths(copy) * copies).toBeGreaterThanOrEqual(hundredths(total));
        expect((hundredths(copy) - 1) * copies).toBeLessThan(Math.max(1, hundredths(total)));
      }
    }),
    runs,
  );
});

test("what can be made besides can be planned from what is left", async () => {
  await fc.assert(
    fc.asyncProperty(projects, async (project) => {
      const planned = plan(project, { effort: "quick" });
      const bonus = await bonusOf(project, planned);
      const copies = bonus.cards.map((one) => one.copies);
      expect(copies).toEqual([...copies].sort((a, b) => b - a));
      expect(bonus.cards.every(({ percent }) => percent <= 100)).toBe(true);
      if (bonus.left.length === 0) expect(Math.max(...copies)).toBe(0);
    }),
    fewRuns,
  );
});

test("no change that is told takes as much as the project does as it is", async () => {
  await fc.assert(
    fc.asyncProperty(projects, async (project) => {
      const found = await findSavings(project, { most: 9, mostTried: 4 });
      if (found.asItIs === null) return;
      const planned = plan(asManyAsNeeded(project), { effort: "quick" });
      expect(planned.cost).toBe(found.asItIs.cost);
      for (const { costSaved, areaPercent } of found.savings)
        expect(areaPercent > 0 || Number(costSaved ?? 0) > 0).toBe(true);
    }),
    fewRuns,
  );
});
