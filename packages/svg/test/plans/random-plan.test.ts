import fc from "fast-check";
import { expect, test } from "vitest";
import { layOut } from "../../src/layout/lay-out.js";
import { type MarkedPlan, randomMarkedPlan } from "./random-marks.js";
import { randomPlan } from "./random-plan.js";

test("random plans vary: narrow and wide pieces, kerf, trims, shared places, windows", () => {
  const plans = fc.sample(randomPlan({ windows: true }), { numRuns: 200, seed: 7 });
  const laid = plans.map(({ problem, packing }) => {
    const [sheet] = problem.sheets;
    const [layout] = packing.layouts;
    if (sheet === undefined || layout === undefined) throw new Error("A plan has a sheet and a layout.");
    return layOut(sheet, layout, problem.kerf ?? 0);
  });
  const share = (holds: (laidOut: (typeof laid)[number], i: number) => boolean) =>
    laid.filter(holds).length / laid.length;
  expect(share(({ pieces }) => pieces.length > 8)).toBeGreaterThan(0.2);
  expect(share(({ pieces }) => pieces.length > 25)).toBeGreaterThan(0.02);
  expect(share(({ pieces }) => pieces.some(({ width }) => width < 10_000))).toBeGreaterThan(0.05);
  expect(share(({ pieces }) => pieces.some(({ shares }) => shares.length > 1))).toBeGreaterThan(0.05);
  expect(share(({ windows }) => windows.length > 0)).toBeGreaterThan(0.05);
  expect(share(({ trims }) => trims.length > 0)).toBeGreaterThan(0.2);
  expect(share((_, i) => (plans[i]?.problem.kerf ?? 0) > 0)).toBeGreaterThan(0.2);
});

test("random marks vary: scores upright and level, in pieces upright and turned, tops, backs, and none at all", () => {
  const plans = fc.sample(randomMarkedPlan({ windows: true }), { numRuns: 200, seed: 7 });
  const share = (holds: (plan: MarkedPlan) => boolean) => plans.filter(holds).length / plans.length;
  const forms = ({ marks }: MarkedPlan) => Object.values(marks.forms).flat();
  expect(share((plan) => forms(plan).some(({ scores }) => scores.length > 1))).toBeGreaterThan(0.2);
  for (const along of ["width", "height"]) {
    const scored = (plan: MarkedPlan) =>
      forms(plan).some(({ scores }) => scores.some((score) => score.along === along));
    expect(share(scored)).toBeGreaterThan(0.3);
  }
  expect(share((plan) => forms(plan).some(({ topOn }) => topOn.length > 0))).toBeGreaterThan(0.3);
  expect(share((plan) => forms(plan).some(({ backOn }) => backOn.length > 0))).toBeGreaterThan(0.2);
  expect(share((plan) => forms(plan).some(({ turned }) => turned !== undefined))).toBeGreaterThan(0.1);
  expect(share(({ marks }) => Object.keys(marks.sheets).length === 0)).toBeGreaterThan(0.05);
});
