import { type Project, readProject } from "@sheetwright/cards";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bonusOf, compareCase, type Plan, plan, projectCases, verifyPlan } from "../../src/index.js";

/** A lantern with a ribbon of 5 in and three pearls, and a moth with a ribbon of 7 in; paper as needed unless said. */
function projectOf(items: string, more = "copies: 10", paper = ""): Project {
  const { project, faults } = readProject(`{ sheetwright: 1, title: Ribbons, ${more},
papers: { night: { cardstock: us-letter, grain: long${paper} } },
items: ${items},
cards: [
  { name: Lantern, format: us-a2, base: night,
    front: [{ bands: [1, 1], papers: [night, night], seam: { ribbon: copper ribbon, width: 1/4 } }],
    extras: [{ name: pearl, count: 3, thickness: 1/16 }] },
  { name: Moth, size: 6 1/4 x 4, base: night,
    front: [{ bands: [1, 1], papers: [night, night], seam: { ribbon: copper ribbon, width: 1/4 } }] }] }`);
  if (project === null) throw new Error(JSON.stringify(faults));
  return project;
}

/** The plan, proven right. */
function planned(project: Project): Plan {
  const found = plan(project, { effort: "quick" });
  expect(verifyPlan(project, found)).toEqual([]);
  return found;
}

const inches = (plan: Plan) =>
  plan.itemUse?.map(({ cuts = [], withMore, ...use }) => ({
    ...use,
    cuts: [...cuts, ...(withMore ?? [])].map(({ rolls, lengths }) => [
      rolls,
      ...lengths.map(({ length, count }) => `${count} of ${length / 40640}`),
    ]),
  }));

describe("items on hand", () => {
  it("are absent from a plan where the project says nothing of them", () => {
    const { items: _, ...project } = projectOf("{}");
    expect(planned(project)).not.toHaveProperty("itemUse");
    expect(planned(projectOf("{}")).itemUse).toEqual([]);
  });

  it("are used for all copies where there is enough", () => {
    // The Moth's ribbon shows on 6 in, and 1 in is taped behind: 7 in. Five of 5 in and five of 7 are 60 in, a whole roll.
    // Ten Lanterns have thirty pearls.
    const found = planned(projectOf("{ copper ribbon: { length: 60, count: 2 }, pearl: 40 }"));
    expect(found.enough).toBe("yes");
    expect(inches(found)).toEqual([
      { item: "copper ribbon", onHand: 2, needed: 2, atLeast: 2, used: 2, cuts: [[2, "5 of 7", "5 of 5"]] },
      { item: "pearl", onHand: 40, needed: 30, atLeast: 30, used: 30, cuts: [] },
    ]);
    expect(found.complete.map(({ complete }) => complete)).toEqual([10, 10]);
  });

  it("that are too few leave copies incomplete, and there is not enough, proven", () => {
    // Pearls for six Lanterns and one over; the Moth takes none.
    const found = planned(projectOf("{ pearl: 19 }"));
    expect(found.enough).toBe("no");
    expect(inches(found)).toEqual([
      { item: "pearl", onHand: 19, needed: 30, atLeast: 30, used: 18, cuts: [] },
    ]);
    expect(found.complete.map(({ complete }) => complete)).toEqual([6, 10]);
    expect(found.shortages).toEqual([]);
  });

  it("are shared alike by the cards that need them", () => {
    // One roll of 60 in: five of each take it whole.
    const found = planned(projectOf("{ copper ribbon: { length: 60, count: 1 } }"));
    expect(found.enough).toBe("no");
    expect(inches(found)).toEqual([
      {
        item: "copper ribbon",
        onHand: 1,
        needed: 2,
        atLeast: 2,
        used: 1,
        cuts: [
          [1, "5 of 7", "5 of 5"],
          [2, "5 of 7", "5 of 5"],
        ],
      },
    ]);
    expect(found.complete.map(({ complete }) => complete)).toEqual([5, 5]);
    // Of 70 in, 10 are left behind those: two Lanterns more, since a Moth behind the first would take 72.
    expect(planned(projectOf("{ copper ribbon: { length: 70, count: 1 } }")).complete).toMatchObject([
      { complete: 7 },
      { complete: 5 },
    ]);
  });

  it("limit copies together with papers", () => {
    // Three rolls of 7 in are three ribbons, whichever card has them, and three sheets are too few for three of each as well.
    const ofPaper = planned(projectOf("{}", "copies: 3", ", count: 3"));
    const both = planned(projectOf("{ copper ribbon: { length: 7, count: 3 } }", "copies: 3", ", count: 3"));
    expect([ofPaper.enough, both.enough]).toEqual(["no", "no"]);
    const copies = both.complete.map(({ complete }) => complete);
    expect(copies.reduce((sum, count) => sum + count, 0)).toBeLessThanOrEqual(3);
    for (const [i, { complete }] of both.complete.entries())
      expect(complete).toBeLessThanOrEqual(ofPaper.complete[i]?.complete ?? 0);
  });

  it("allow no more spares than they are enough for", () => {
    // Ten Lanterns and two spares take 36 pearls; 37 are there. The Moth has all of its four spares.
    const found = planned(projectOf("{ pearl: 37 }", "copies: { guests: 10, spares: 4 }"));
    expect(found.enough).toBe("yes");
    expect(found.complete).toEqual([
      { card: 1, wanted: 10, complete: 10, spares: { wished: 4, made: 2 } },
      { card: 2, wanted: 10, complete: 10, spares: { wished: 4, made: 4 } },
    ]);
    expect(inches(found)).toMatchObject([{ needed: 36, used: 36 }]);
    const none = planned(projectOf("{ pearl: 29 }", "copies: { guests: 10, spares: 4 }"));
    expect(none.complete.map(({ spares }) => spares?.made)).toEqual([0, 0]);
  });

  it("go into bags by whole rolls, or are cut for all of them from one pile", () => {
    // A bag takes 5 and 7 in: a roll of 12 in each. Of 24 in from one pile, five rolls do for ten bags.
    const kits = "share: kits, copies: 10";
    const whole = planned(projectOf("{ copper ribbon: { length: 24, count: 1 } }", kits));
    expect(whole.enough).toBe("yes");
    expect(inches(whole)).toEqual([
      {
        item: "copper ribbon",
        onHand: 10,
        needed: 10,
        atLeast: 10,
        used: 10,
        bags: 10,
        cuts: [[1, "1 of 7", "1 of 5"]],
      },
    ]);
    const cut = planned(projectOf("{ copper ribbon: { length: 24, count: 5, hand-out: cut } }", kits));
    expect(cut.enough).toBe("yes");
    expect(inches(cut)).toEqual([
      { item: "copper ribbon", onHand: 5, needed: 5, atLeast: 5, used: 5, cuts: [[5, "2 of 7", "2 of 5"]] },
    ]);
    // Nine rolls for ten bags: no bag gets one.
    const short = planned(projectOf("{ copper ribbon: { length: 24, count: 9, count-for: all } }", kits));
    expect(short.enough).toBe("no");
    expect(short.complete.map(({ complete }) => complete)).toEqual([0, 0]);
    expect(inches(short)).toMatchObject([{ needed: 10, atLeast: 10, used: 0 }]);
    // Pearls for nine bags of three each: the tenth lacks them, and nothing else does.
    const pearls = planned(projectOf("{ pearl: { count: 27, count-for: all } }", kits));
    expect(pearls.complete.map(({ complete }) => complete)).toEqual([9, 10]);
  });

  it("are told rightly whatever there is of them, in a class with spares and in bags", () => {
    const count = fc.option(fc.integer({ min: 0, max: 30 }), { nil: "as needed" as const });
    const runs = Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 4);
    fc.assert(
      fc.property(
        fc.integer({ min: 7, max: 40 }),
        count,
        count,
        fc.constantFrom("class", "whole", "cut"),
        (length, rolls, pearls, share) => {
          const handOut = share === "cut" ? ", hand-out: cut" : "";
          const items = `{ copper ribbon: { length: ${length}, count: ${rolls}${handOut} }, pearl: ${pearls} }`;
          const copies =
            share === "class"
              ? "copies: { guests: 5, spares: 2 }"
              : "share: kits, copies: { guests: 3, samples: 1 }";
          const found = planned(projectOf(items, copies));
          const isShort = found.itemUse?.some(({ onHand, needed }) => onHand !== null && needed > onHand);
          // Small cases are proven: nothing is left open.
          expect(found.enough).toBe(isShort ? "no" : "yes");
          expect(found.complete.every(({ complete, wanted }) => complete === wanted)).toBe(!isShort);
        },
      ),
      { numRuns: runs },
    );
  });

  it("that are left say how often a card can be made besides, and limit no comparison of papers", async () => {
    // Forty pearls less thirty are three Lanterns; the ribbon is as needed, and so would be the Moth.
    const project = projectOf("{ pearl: 40 }", "copies: 10", ", count: 60");
    const bonus = await bonusOf(project, planned(project));
    expect(bonus.cards.find(({ card }) => card === 1)?.copies).toBe(3);
    expect(bonus.itemsLeft).toEqual([{ item: "pearl", length: null, count: 10 }]);
    expect(bonus.cards.find(({ card }) => card === 2)?.copies).toBeGreaterThan(3);
    const none = projectOf("{ pearl: 0 }", "copies: 1");
    const letter = { id: "us-letter", name: "letter", width: 345_440, height: 447_040, cost: null };
    const [row] = projectCases(none, [letter], [2]).map((one) => compareCase(one));
    expect(row?.sheets).toBeGreaterThan(0);
  });
});
