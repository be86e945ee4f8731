import type { Project } from "@sheetwright/cards";
import fc from "fast-check";
import { expect, test } from "vitest";
import { projectOf, randomProject } from "../../../cards/test/random-project.js";
import { completeSets, plan, verifyPlan, withSets } from "../../src/index.js";
import { type Bundle, bundleProject, bundleStock, setBundle, smallBundle } from "../sets/small-bundles.js";

const runs = { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 20) };

/** A project of which every bag is the whole of another one; of the papers planned together some go out whole. */
function inBags(project: Project, bags: number, isWhole: (name: string) => boolean): Project {
  const papers = project.papers.map((paper) => {
    const times = (count: number | null) => (count === null ? null : count * bags);
    const designs = paper.designs.map((one) => ({
      ...one,
      count: times(one.count),
      offcuts: one.offcuts.map((offcut) => ({ ...offcut, count: offcut.count * bags })),
    }));
    return paper.designs.some(({ id }) => isWhole(id)) ? { ...paper, bags, designs } : { ...paper, designs };
  });
  const cards = project.cards.map((card) => ({
    ...card,
    copies: card.copies * bags,
    copiesFor: { guests: card.copiesFor.guests * bags, samples: card.copiesFor.samples * bags },
  }));
  const items = project.items?.map((item) => {
    const count = item.count === null ? null : item.count * bags;
    return item.length !== undefined && isWhole(item.name) ? { ...item, count, bags } : { ...item, count };
  });
  return { ...project, kits: { bags }, papers, cards, ...(items === undefined ? {} : { items }) };
}

test("every plan of kits proves right, and takes of what goes out whole as many times what one bag takes", () => {
  const projects = randomProject({ cards: 2, copies: 2, layers: 3 }).map(projectOf);
  fc.assert(
    fc.property(projects, fc.integer({ min: 2, max: 4 }), (drawn, bags) => {
      const one = inBags(drawn, 1, () => false);
      const { kits: _, ...bundle } = one;
      const single = plan(bundle, { effort: "quick" });
      const kits = inBags(drawn, bags, () => true);
      const found = plan(kits, { effort: "quick" });
      expect(verifyPlan(kits, found)).toEqual([]);
      expect(found.use.every(({ used, offcutsUsed }) => used % bags === 0 && offcutsUsed % bags === 0)).toBe(
        true,
      );
      expect(found.use).toEqual(
        single.use.map(({ design, used, left, offcutsUsed }) => ({
          design,
          used: used * bags,
          left: left === null ? null : left * bags,
          offcutsUsed: offcutsUsed * bags,
        })),
      );
      expect(found.enough).toBe(single.enough);
    }),
    runs,
  );
});

const counts = fc.integer({ min: 2, max: 4 });

test("one bag makes every card just where looking at everything says so, on 200 small kits", () => {
  fc.assert(
    fc.property(smallBundle, counts, (bundle, bags) => {
      const kits = inBags(bundleProject(bundle), bags, () => true);
      const copies = bundle.cards.map((one) => one.copies);
      const found = plan(kits, { effort: "quick" });
      // What cannot be done need not be proven; nothing that can be is missed or called impossible.
      expect(found.enough === "yes").toBe(bundleStock(bundle, copies).gives(copies));
      expect(found.complete.every(({ complete }) => complete % bags === 0)).toBe(true);
    }),
    { numRuns: 200 },
  );
});

/** Whether so many bags can be filled: whole papers give each bag the same sheets, one pile gives the pieces of all others. */
function canFill({ papers, cards }: Bundle, bags: number, whole: ReadonlySet<string>): boolean {
  const part = (isWhole: boolean): Bundle => ({
    papers: papers.map((one) => ({ ...one, count: isWhole ? Math.floor(one.count / bags) : one.count })),
    cards: cards.map(({ pieces }) => ({
      copies: isWhole ? 1 : bags,
      pieces: pieces.filter(({ papers: [first] }) => whole.has(first!) === isWhole),
    })),
  });
  return [part(true), part(false)].every((one) => {
    const copies = one.cards.map((card) => card.copies);
    return bundleStock(one, copies).gives(copies);
  });
}

test("complete sets are as many bags as looking at everything finds, on 200 small kits", async () => {
  const wholes = fc.constantFrom(
    ["night"],
    ["night", "cream"],
    ["cream", "stars"],
    ["night", "cream", "stars"],
  );
  const small = setBundle.map((bundle) => ({
    ...bundle,
    cards: bundle.cards.map((one) => ({ ...one, copies: 1 })),
  }));
  await fc.assert(
    fc.asyncProperty(small, wholes, async (bundle, whole) => {
      const set = new Set<string>(whole);
      const pieces = bundle.cards.flatMap((one) => one.pieces);
      fc.pre(pieces.every(({ papers }) => papers.every((id) => set.has(id) === set.has(papers[0]!))));
      const project = bundleProject(bundle);
      const papers = project.papers.map((one) => (set.has(one.id) ? { ...one, bags: 1 } : one));
      const inAll: Project = { ...project, papers, kits: { bags: 1 } };
      const found = await completeSets(inAll, { effort: "quick" });
      const bags = found.most ?? Number.NaN;
      expect([bags, bags + 1].map((many) => many === 0 || canFill(bundle, many, set))).toEqual([true, false]);
      expect(found.impossible?.sets).toBeGreaterThan(bags);
      if (found.plan !== null) {
        expect(found.plan.enough).toBe("yes");
        expect(verifyPlan(withSets(inAll, bags), found.plan)).toEqual([]);
      }
    }),
    { numRuns: 200 },
  );
});
