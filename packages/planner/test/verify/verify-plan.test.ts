import { inches } from "@sheetwright/measure";
import { describe, expect, test } from "vitest";
import { byBorder, card, choice, mat, project } from "../../../cards/test/small-project.js";
import { type Plan, type PlanFindingCode, plan, planFindingCodes, verifyPlan } from "../../src/index.js";
import { letterPaper, made } from "../bench-project.js";
import { findingOf } from "./damage.js";
import { damagesToClaims } from "./damages-to-claims.js";
import { damagesToItems } from "./damages-to-items.js";
import { damagesToProblems } from "./damages-to-problems.js";
import { damagesToStrips } from "./damages-to-strips.js";
import {
  cutToShapes,
  enough,
  farTooFew,
  homeless,
  inStrips,
  itemsInBags,
  type Sample,
  short,
  shortOfItems,
  shortOfSpares,
  shortOfStrips,
  spared,
  sparesInStrips,
} from "./sample-plans.js";

const damages = [...damagesToClaims, ...damagesToProblems, ...damagesToStrips, ...damagesToItems];

describe("verifyPlan", () => {
  test.each([
    ["enough", enough],
    ["short", short],
    ["homeless", homeless],
    ["with spares", spared],
    ["short of spares", shortOfSpares],
    ["with die blanks", cutToShapes],
    ["with strips", inStrips],
    ["with strips for spares", sparesInStrips],
    ["short of strips", shortOfStrips],
    ["far short of strips", farTooFew],
    ["short of items", shortOfItems],
    ["with items in bags", itemsInBags],
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

  // Zeros at the end go, but for two decimals: two sheets of 0.0875 are 0.175, not 0.1750.
  test.each([
    ["0.0875", "2.025"],
    ["0.0877", "2.0254"],
    ["0.085", "2.02"],
  ])("takes costs of sheets of %s with their work (%s)", (cost, total) => {
    const wanted = project([card(inches(5), inches(7), [], { base: choice("night"), ...made(2) })], {
      papers: [letterPaper("night", {}, { count: 5, cost })],
      rates: { currency: "$", hour: "18.5", minutesPerCard: "3" },
    });
    const found = plan(wanted, { effort: "quick" });
    // Two sheets, and six minutes of 18.50 an hour: 1.85, in hundredths.
    expect(found.costs?.total).toBe(total);
    expect(verifyPlan(wanted, found)).toEqual([]);
  });

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

  test.each([
    ["short", short],
    ["with strips", inStrips],
    ["short of items", shortOfItems],
  ])("never throws, whatever single value is replaced (%s)", (_, sample) => {
    const root = plainCopy(sample);
    // Every eighth place: each costs four verifications of the whole.
    for (const { parent, key } of places(root).filter((_, i) => i % 8 === 0)) {
      const value = parent[key];
      for (const other of [null, -1, "x", []]) {
        parent[key] = other;
        expect(() => verifyPlan(sample.project, root as unknown as Plan)).not.toThrow();
      }
      parent[key] = value;
    }
  });

  test.each([
    ["short", short],
    ["with strips", inStrips],
    ["short of items", shortOfItems],
    ["with items in bags", itemsInBags],
  ])("finds every number that is one off, every text and every truth that is another (%s)", (_, sample) => {
    const root = plainCopy(sample);
    const missed = places(root).filter(({ parent, key }) => {
      const value = parent[key];
      if (typeof value === "object") return false;
      parent[key] = typeof value === "number" ? value + 1 : typeof value === "boolean" ? !value : `${value}x`;
      const found = verifyPlan(sample.project, root as unknown as Plan);
      parent[key] = value;
      return found.length === 0;
    });
    // Other functions and capacities may prove the same bound; how much work was done proves nothing; and a plan may say
    // that it was ended early though no packing was.
    const harmless = /\.certificate\.|\.packing\.search\.|^search\.cancelled$/;
    expect(missed.map(({ path }) => path).filter((path) => !harmless.test(path))).toEqual([]);
  });
});

type Fields = Record<string, unknown>;

/** A plan, the short one unless said otherwise, to be changed place by place. */
const plainCopy = ({ plan }: Sample = short): Fields => JSON.parse(JSON.stringify(plan));

/** Every place of plain data, with what holds it. */
function places(holder: Fields, path = ""): readonly { parent: Fields; key: string; path: string }[] {
  return Object.entries(holder).flatMap(([key, value]) => {
    const here = path === "" ? key : `${path}.${key}`;
    const own = { parent: holder, key, path: here };
    return typeof value === "object" && value !== null ? [own, ...places(value as Fields, here)] : [own];
  });
}
