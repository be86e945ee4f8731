import type { Project } from "@sheetwright/cards";
import fc from "fast-check";
import { expect, test } from "vitest";
import { projectOf, randomProject } from "../../cards/test/random-project.js";
import { type Plan, plan, planAsync, verifyPlan } from "../src/index.js";

// A plan of a project made at random takes some 40 ms with quick effort, and half of the properties plan twice: a twentieth
// of the usual runs, and small projects, keep the tests short.
const runs = { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 20) };
const projects = randomProject({ cards: 2, copies: 4, layers: 3 }).map(projectOf);

// Every property meets the same projects, so each is planned only once for all of them.
const planned = new WeakMap<Project, Plan>();
const known = new Map<string, Project>();

/** The same project for the same data. */
function sameProject(project: Project): Project {
  const text = JSON.stringify(project);
  const before = known.get(text) ?? project;
  known.set(text, before);
  return before;
}

function planOf(project: Project): Plan {
  const found = planned.get(project) ?? plan(project, { effort: "quick" });
  planned.set(project, found);
  return found;
}

const check = (holds: (project: Project) => void): void => {
  fc.assert(
    fc.property(projects, (drawn) => holds(sameProject(drawn))),
    runs,
  );
};

test("every plan proves right", () => {
  check((project) => {
    expect(verifyPlan(project, planOf(project))).toEqual([]);
  });
});

test("the same project gives the same bytes", () => {
  check((project) => {
    const again = plan(JSON.parse(JSON.stringify(project)), { effort: "quick" });
    expect(JSON.stringify(again)).toBe(JSON.stringify(planOf(project)));
  });
});

test("twice the copies are twice the pieces, from the same papers together", () => {
  check((project) => {
    const twice = {
      ...project,
      cards: project.cards.map((card) => ({
        ...card,
        copies: 2 * card.copies,
        copiesFor: { guests: 2 * card.copiesFor.guests, samples: 2 * card.copiesFor.samples },
      })),
    };
    const [one, two] = [planOf(project), plan(twice, { effort: "quick" })];
    expect(verifyPlan(twice, two)).toEqual([]);
    expect(two.pieces).toEqual(one.pieces.map((piece) => ({ ...piece, quantity: 2 * piece.quantity })));
    expect(two.groups.map(({ designs }) => designs)).toEqual(one.groups.map(({ designs }) => designs));
    expect(two.noPaper).toEqual(one.noPaper);
    if (one.enough === "no") expect(two.enough).toBe("no");
  });
});

test("the order of the papers changes no proven cost", () => {
  check((project) => {
    const reversed = {
      ...project,
      papers: project.papers.map((paper) => ({ ...paper, designs: [...paper.designs].reverse() })).reverse(),
    };
    const found = plan(reversed, { effort: "quick" });
    expect(verifyPlan(reversed, found)).toEqual([]);
    for (const { designs, packing } of planOf(project).groups) {
      const other = found.groups.find((group) => group.designs.includes(designs[0] ?? ""));
      expect([...(other?.designs ?? [])].sort()).toEqual([...designs].sort());
      // Where it is not proven best, another order may lead the search to another plan.
      if (packing.proven) expect(other?.packing).toMatchObject({ outcome: packing.outcome });
      if (packing.proven && packing.outcome === "complete") expect(other?.packing.cost).toBe(packing.cost);
    }
  });
});

test("sheets more never turn yes into no", () => {
  check((project) => {
    const more = {
      ...project,
      papers: project.papers.map((paper) => ({
        ...paper,
        designs: paper.designs.map((design) => ({
          ...design,
          count: design.count === null ? null : design.count + 1,
        })),
      })),
    };
    const found = plan(more, { effort: "quick" });
    expect(verifyPlan(more, found)).toEqual([]);
    // The search may still find less than before; but what was found once is never proven impossible.
    if (planOf(project).enough === "yes") expect(found.enough).not.toBe("no");
  });
});

test("a plan that is ended early proves right", async () => {
  await fc.assert(
    fc.asyncProperty(projects, fc.integer({ min: 0, max: 60 }), async (project, steps) => {
      const signal = { aborted: steps === 0 };
      let seen = 0;
      const onProgress = () => {
        seen++;
        if (seen >= steps) signal.aborted = true;
      };
      const found = await planAsync(project, { effort: "quick", signal, onProgress });
      expect(verifyPlan(project, found)).toEqual([]);
    }),
    runs,
  );
});
