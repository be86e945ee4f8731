import { inches } from "@sheetwright/measure";
import { describe, expect, test } from "vitest";
import { byBorder, card, mat, project } from "../../../cards/test/small-project.js";
import { type Plan, type PlanFindingCode, planFindingCodes, verifyPlan } from "../../src/index.js";
import { findingOf } from "./damage.js";
import { damagesToClaims } from "./damages-to-claims.js";
import { damagesToProblems } from "./damages-to-problems.js";
import { enough, homeless, short } from "./sample-plans.js";

const damages = [...damagesToClaims, ...damagesToProblems];

describe("verifyPlan", () => {
  test.each([
    ["enough", enough],
    ["short", short],
    ["homeless", homeless],
  ])("finds nothing wrong with a right plan (%s), nor after a way through JSON", (_, sample) => {
    expect(verifyPlan(sample.project, sample.plan)).toEqual([]);
    expect(verifyPlan(sample.project, JSON.parse(JSON.stringify(sample.plan)))).toEqual([]);
  });

  test.each(damages.map((damage) => ({ ...damage, damage })))(
    "refuses a plan that $does: $code",
    ({ code, damage }) => {
      expect(findingOf(damage)).toMatchObject({ code, message: expect.stringMatching(/\.$/) });
    },
  );

  test("finds that the project contradicts itself", () => {
    const wrong = project([card(inches(5), inches(5), [mat(byBorder(inches(3)))])]);
    expect(verifyPlan(wrong, enough.plan)).toMatchObject([
      { code: "bad-project", path: "cards[0].front[0].border" },
    ]);
  });

  test("has a damaged plan for every code", () => {
    const tried = new Set<PlanFindingCode>(["bad-project", ...damages.map(({ code }) => code)]);
    expect([...tried].sort()).toEqual(Object.keys(planFindingCodes).sort());
  });

  test.each([[null], [3], ["plan"], [[]], [{}], [{ groups: [{}] }]])(
    "takes any JSON as a plan (%j)",
    (value) => {
      const found = verifyPlan(enough.project, value as unknown as Plan);
      expect(found[0]?.code).toBe("malformed");
    },
  );

  test("never throws, whatever single value is replaced", () => {
    const at = (root: unknown): readonly (readonly (string | number)[])[] => {
      if (typeof root !== "object" || root === null) return [[]];
      return [[], ...Object.entries(root).flatMap(([key, value]) => at(value).map((rest) => [key, ...rest]))];
    };
    const plain = JSON.parse(JSON.stringify(short.plan));
    const { papers: _, cards: __, pieces: ___, ...own } = plain;
    const places = at(own).filter((place) => place.length > 0);
    // Every seventh place: each costs a whole verification.
    for (const place of places.filter((_, i) => i % 7 === 0)) {
      const copy = JSON.parse(JSON.stringify(plain));
      const parent = place.slice(0, -1).reduce((value, key) => value[key], copy);
      const key = place.at(-1) as string;
      for (const value of [null, -1, "x", []]) {
        parent[key] = value;
        expect(() => verifyPlan(short.project, copy)).not.toThrow();
      }
    }
  });
});
