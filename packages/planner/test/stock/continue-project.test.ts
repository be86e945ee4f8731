import { type Project, readProject } from "@sheetwright/cards";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { projectOf, randomProject } from "../../../cards/test/random-project.js";
import {
  applyStockChange,
  continueProject,
  type LayoutProgress,
  piecesCut,
  plan,
  stockChange,
  stockOfProject,
  verifyPlan,
  wholePlan,
  withStock,
} from "../../src/index.js";

const TEXT = `sheetwright: 1
title: Evening workshop
copies: 6
papers:
  night: { cardstock: us-letter, count: 4, grain: long }
  cream: { cardstock: us-letter, count: 4 }
cards:
  - name: Lantern
    format: us-a2
    base: night
    front: [{ panel: cream, border: 1/8 }]
`;

function read(text: string): Project {
  const { project, faults } = readProject(text);
  if (project === null) throw new Error(JSON.stringify(faults));
  return project;
}

const project = read(TEXT);
const found = plan(project, { effort: "quick" });
const [night] = found.groups;
/** Of the run of night so many sheets cut, and so many spoiled. */
const cut = (to: number, spoiled = 0): LayoutProgress[] => [{ group: 0, layout: 0, from: 0, to, spoiled }];

describe("a plan that is half carried out", () => {
  it("is continued with what is missing: pieces that are cut count as there", () => {
    expect(night?.packing.layouts.map(({ run }) => run)).toEqual([3]);
    const { project: rest, changed } = continueProject(project, { plan: found, project }, cut(2));
    expect(changed).toEqual([]);
    const next = plan(rest, { effort: "quick" });
    expect(verifyPlan(rest, next)).toEqual([]);
    expect(next.pieces.map(({ id, quantity, cutAlready }) => [id, quantity, cutAlready])).toEqual([
      ["1a", 2, 4],
      ["1b", 6, undefined],
    ]);
    expect(next.use.map(({ used }) => used)).toEqual([1, 2]);
    expect(next.complete).toEqual([{ card: 1, wanted: 6, complete: 6 }]);
    expect(next.enough).toBe("yes");
  });

  it("is continued from the stock after a spoiled sheet", () => {
    const { stock } = applyStockChange(
      { papers: stockOfProject(project) },
      stockChange(found, cut(2, 2)),
      "in",
    );
    expect(stock.papers[0]?.sheets).toBe(0);
    const rest = withStock(
      continueProject(project, { plan: found, project }, cut(2, 2)).project,
      stock,
    ).project;
    const next = plan(rest, { effort: "quick" });
    expect(verifyPlan(rest, next)).toEqual([]);
    expect(next).toMatchObject({ enough: "no", complete: [{ wanted: 6, complete: 4 }] });
    expect(next.shortages.map(({ pieces }) => pieces)).toEqual([[{ piece: "1a", missing: 2 }]]);
  });

  it("needs no paper for what is all cut, even where none is left of it", () => {
    const rest = continueProject(project, { plan: found, project }, cut(3)).project;
    const [paper, other] = rest.papers;
    const none = { ...paper!, designs: paper!.designs.map((design) => ({ ...design, count: 0 })) };
    const empty = { ...rest, papers: [none, other!] };
    const next = plan(empty, { effort: "quick" });
    expect(verifyPlan(empty, next)).toEqual([]);
    expect(next).toMatchObject({ enough: "yes", complete: [{ wanted: 6, complete: 6 }] });
    expect(next.use.map(({ used }) => used)).toEqual([0, 2]);
  });

  it("needs no sheet large enough for what is all cut", () => {
    const rest = continueProject(project, { plan: found, project }, cut(3)).project;
    const [paper, other] = rest.papers;
    const small = { ...rest, papers: [{ ...paper!, sheet: { width: 40640, height: 40640 } }, other!] };
    const next = plan(small, { effort: "quick" });
    expect(verifyPlan(small, next)).toEqual([]);
    expect(next).toMatchObject({ enough: "yes", noPaper: [], complete: [{ wanted: 6, complete: 6 }] });
  });

  it("can be continued again", () => {
    const first = continueProject(project, { plan: found, project }, cut(1)).project;
    const second = plan(first, { effort: "quick" });
    const { project: rest } = continueProject(first, { plan: second, project: first }, cut(1));
    expect(rest.cutAlready).toEqual([{ piece: "1a", count: 4 }]);
    expect(continueProject(rest, { plan: second, project: first }, []).project.cutAlready).toEqual(
      first.cutAlready,
    );
  });

  it("tells pieces that are not as they were; these do not count as cut", () => {
    const other = read(TEXT.replace("us-a2", "us-a6"));
    const { project: rest, changed } = continueProject(other, { plan: found, project }, cut(2));
    expect(changed).toEqual(["1a base"]);
    expect(rest.cutAlready).toBeUndefined();
    const fewer = continueProject(
      read(TEXT.replace("copies: 6", "copies: 1")),
      { plan: found, project },
      cut(2),
    );
    expect(plan(fewer.project, { effort: "quick" }).pieces[0]).toMatchObject({ quantity: 0, cutAlready: 1 });
  });

  it("may have been read from a file that orders its data otherwise", () => {
    const turned = found.pieces.map((piece) => Object.fromEntries(Object.entries(piece).reverse()));
    const earlier = { plan: { ...found, pieces: turned as unknown as typeof found.pieces }, project };
    expect(continueProject(project, earlier, cut(2)).changed).toEqual([]);
  });
});

const runs = { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 10) };
const projects = randomProject({ cards: 2, copies: 4, layers: 3 }).map(projectOf);

// Each case is two plans, which takes some tenths of a second.
describe("any plan that is half carried out", { timeout: 400_000 }, () => {
  it("is continued by a plan that proves right, and that no spoiled sheet makes impossible", () => {
    fc.assert(
      fc.property(projects, fc.nat(), (drawn, at) => {
        const first = plan(drawn, { effort: "quick" });
        const done = wholePlan(first).map((one, i) => ({ ...one, to: (at + i) % (one.to + 1) }));
        const { stock, faults } = applyStockChange(
          { papers: stockOfProject(drawn) },
          stockChange(first, done),
          "in",
        );
        expect(faults).toEqual([]);
        const continued = continueProject(drawn, { plan: first, project: drawn }, done);
        expect(continued.changed).toEqual([]);
        const rest = withStock(continued.project, stock).project;
        const next = plan(rest, { effort: "quick" });
        expect(verifyPlan(rest, next)).toEqual([]);
        const counts = piecesCut(first, done);
        const before = new Map(first.pieces.map(({ id, quantity }) => [id, quantity]));
        for (const { id, quantity, cutAlready = 0 } of next.pieces) {
          expect(quantity + cutAlready).toBe(before.get(id));
          expect(cutAlready).toBe(Math.min(counts.get(id) ?? 0, before.get(id)!));
        }
        // What is left of the first plan is a plan for the rest, though the search may miss it.
        if (first.enough === "yes") expect(next.enough).not.toBe("no");
        if (next.enough === "yes")
          for (const { wanted, complete } of next.complete) expect(complete).toBe(wanted);
      }),
      runs,
    );
  });
});
