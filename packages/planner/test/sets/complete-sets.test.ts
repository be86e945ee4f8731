import { type Project, readProject } from "@sheetwright/cards";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { completeSets, type SetCount, verifyPlan, withSets } from "../../src/index.js";
import { bundleProject, bundleStock, setBundle } from "./small-bundles.js";

function read(text: string): Project {
  const { project, faults } = readProject(text);
  if (project === null) throw new Error(faults.map(({ message }) => message).join("\n"));
  return project;
}

/** Counts at quick effort, and proves the plans right that the answer rests on. */
async function provenCount(project: Project): Promise<SetCount> {
  const found = await completeSets(project, { effort: "quick" });
  const { most, plan, impossible } = found;
  expect([plan === null, impossible === null]).toEqual([most === null || most === 0, most === null]);
  if (plan !== null) {
    expect(plan.enough).toBe("yes");
    expect(verifyPlan(withSets(project, most ?? 0), plan)).toEqual([]);
  }
  if (impossible !== null) {
    expect(impossible.plan.enough).toBe("no");
    expect(verifyPlan(withSets(project, impossible.sets), impossible.plan)).toEqual([]);
  }
  return found;
}

const papersOf = ({ runsOut }: SetCount) =>
  runsOut.map(({ sets, papers }) => [sets, papers.flatMap(({ designs }) => designs)]);

describe("the number of complete sets", () => {
  // A letter sheet gives two flats of 8 1/2 x 5 1/2 in, and four mats of 3 3/4 x 5 in.
  const cards = `
    cards:
      - { name: Plain, format: us-a2, base: night }
      - { name: Matted, format: us-a2, base: night, front: [{ mat: cream, border: 1/4 }] }`;
  const bundle = (night: string, cream: string, copies = "4") => `
    sheetwright: 1
    title: Two cards
    copies: ${copies}
    papers: { night: { cardstock: us-letter${night} }, cream: { cardstock: us-letter${cream} } }
    ${cards}`;

  test("is the least that the papers give, with what runs out first and next, and what more of it would give", async () => {
    const found = await provenCount(read(bundle(", count: 5", ", count: 2", "3")));
    // Five sheets are ten bases, two for a set; two sheets are eight mats.
    expect(found).toMatchObject({ most: 5, wanted: 3, impossible: { sets: 6, papers: [["night"]] } });
    expect(found.set).toEqual([
      { card: 1, name: "Plain", copies: 1 },
      { card: 2, name: "Matted", copies: 1 },
    ]);
    expect(papersOf(found)).toEqual([
      [5, ["night"]],
      [8, ["cream"]],
    ]);
    expect(found.withMore).toEqual([
      { sets: 6, sheets: [{ design: "night", more: 1 }] },
      { sets: 8, sheets: [{ design: "night", more: 3 }] },
    ]);
  });

  test("names papers that run out together, and no next one that is not there", async () => {
    const found = await provenCount(read(bundle(", count: 4", ", count: 1")));
    expect(found.most).toBe(4);
    expect(papersOf(found)).toEqual([[4, ["night", "cream"]]]);
    expect(found.runsOut[0]?.papers.map(({ proven }) => proven)).toEqual([true, true]);
    expect(found.withMore).toEqual([
      {
        sets: 5,
        sheets: [
          { design: "night", more: 1 },
          { design: "cream", more: 1 },
        ],
      },
    ]);
  });

  test("is any number from papers that come as needed, and limited by one that does not", async () => {
    const any = await provenCount(read(bundle("", "")));
    expect(any).toMatchObject({ most: null, runsOut: [], asNeeded: ["night", "cream"] });
    const limited = await provenCount(read(bundle("", ", count: 3")));
    expect(limited).toMatchObject({ most: 12, asNeeded: ["night"], impossible: { papers: [["cream"]] } });
    expect(papersOf(limited)).toEqual([[12, ["cream"]]]);
    // Nothing runs out next; the four that are asked for are there already.
    expect(limited.withMore).toEqual([{ sets: 13, sheets: [{ design: "cream", more: 1 }] }]);
  });

  test("is none where a paper has not one sheet, or a piece fits none", async () => {
    const none = await provenCount(read(bundle(", count: 5", ", count: 0")));
    expect(none).toMatchObject({ most: 0, plan: null, impossible: { sets: 1, papers: [["cream"]] } });
    expect(papersOf(none)[0]).toEqual([0, ["cream"]]);
    const unfit = await provenCount(
      read(`
        sheetwright: 1
        title: Too large
        papers: { night: { cardstock: us-letter, count: 5 }, stars: { pad: 4 x 4, designs: { dots: 6 } } }
        cards: [{ name: Harbour, format: us-a2, base: night, front: [{ mat: stars.dots, border: 1/8 }] }]
      `),
    );
    expect(unfit).toMatchObject({ most: 0, runsOut: [], withMore: [], noPaper: ["1b mat"] });
    expect(unfit.impossible).toMatchObject({ sets: 1, papers: [] });
  });

  test("counts copies for guests only, in the proportion that they are asked for", async () => {
    const text = `
      sheetwright: 1
      title: Two cards
      copies: { guests: 2, samples: 1, spares: 3 }
      papers: { night: { cardstock: us-letter, count: 5 }, cream: { cardstock: us-letter } }
      cards:
        - { name: One, format: us-a2, base: night }
        - { name: Two, format: us-a2, base: night, copies: { guests: 4 } }
        - { name: Sample, format: us-a2, base: night, copies: { samples: 2 } }`;
    const found = await provenCount(read(text));
    expect(found.set.map(({ name, copies }) => [name, copies])).toEqual([
      ["One", 1],
      ["Two", 2],
    ]);
    // Ten bases, three for a set.
    expect(found).toMatchObject({ wanted: 2, most: 3, impossible: { sets: 4 } });
  });

  test("is limited by items as by papers, that run out first or next", async () => {
    const items = (own: string, sheets = "count: 5") => `
      sheetwright: 1
      title: Two cards
      copies: 3
      papers: { night: { cardstock: us-letter, ${sheets} } }
      items: ${own}
      cards:
        - { name: Plain, format: us-a2, base: night, extras: [{ name: pearl, count: 2, thickness: 1/16 }] }
        - name: Tied
          format: us-a2
          base: night
          front: [{ bands: [1, 1], papers: [night, night], seam: { ribbon: plum, width: 1/4 } }]`;
    // Bands of 2 3/4 in less a border of 1/8 in: a sheet gives a base and more than two. The ribbon is 5 in: two from a roll of
    // 12 in, so that three rolls make six sets and 7 pearls three.
    const found = await provenCount(
      read(items("{ pearl: 7, plum: { length: 12, count: 3 }, gem: 0 }", "count: 50")),
    );
    expect(found).toMatchObject({ most: 3, impossible: { sets: 4, papers: [], items: ["pearl"] } });
    expect(found.runsOut).toEqual([
      { sets: 3, papers: [], items: [{ item: "pearl", proven: true }] },
      { sets: 6, papers: [], items: [{ item: "plum", proven: true }] },
    ]);
    expect(found.withMore).toEqual([
      { sets: 4, sheets: [], items: [{ item: "pearl", more: 1 }] },
      { sets: 6, sheets: [], items: [{ item: "pearl", more: 5 }] },
    ]);
    // With paper as needed it is the item that says how many; with items as needed too there is no limit.
    const limited = await provenCount(read(items("{ plum: { length: 12, count: 1 } }", "cost: 0.35")));
    expect(limited).toMatchObject({ most: 2, impossible: { sets: 3, items: ["plum"] } });
    const endless = await provenCount(read(items("{ plum: { length: 12 }, gem: 0 }", "cost: 0.35")));
    expect(endless.most).toBe(null);
    const none = await provenCount(read(items("{ pearl: 1 }")));
    expect(none).toMatchObject({ most: 0, impossible: { sets: 1, items: ["pearl"] } });
  });

  test("grows with what is cut already", async () => {
    const project = read(bundle(", count: 5", ", count: 1"));
    const cutAlready = [{ piece: "2b", count: 1 }];
    const found = await provenCount({ ...project, cutAlready });
    expect(found).toMatchObject({ most: 5, impossible: { sets: 6 } });
  });

  test("is the best so far where the search is ended early", async () => {
    const project = read(bundle(", count: 50", ", count: 20"));
    const signal = { aborted: false };
    let calls = 0;
    const onProgress = () => {
      calls++;
      signal.aborted = calls > 30;
    };
    const found = await completeSets(project, { effort: "quick", signal, onProgress });
    expect(found.cancelled).toBe(true);
    expect(found.most).toBeLessThanOrEqual(50);
    if (found.plan !== null) expect(verifyPlan(withSets(project, found.most ?? 0), found.plan)).toEqual([]);
  });
});

describe("200 small bundles", () => {
  const bundles = fc.sample(setBundle, { seed: 20260101, numRuns: 200 });

  // In four parts, each of which takes some fifteen seconds.
  test.each([0, 50, 100, 150])(
    "give the sets that looking at everything finds, and no number that can be had is called impossible: from %i",
    async (start) => {
      const met = new Set<number>();
      let tight = 0;
      for (const bundle of bundles.slice(start, start + 50)) {
        const { most, set, impossible } = await provenCount(bundleProject(bundle));
        const sets = most ?? 0;
        const copies = (count: number): readonly number[] => set.map((card) => card.copies * count);
        const stock = bundleStock(bundle, copies(sets + 1));
        const isGiven = [stock.gives(copies(sets)), stock.gives(copies(sets + 1))];
        expect(isGiven, JSON.stringify(bundle)).toEqual([true, false]);
        // What gives so many sets gives fewer: just the numbers up to the most can be had.
        expect(impossible?.sets).toBeGreaterThan(sets);
        if (impossible?.sets === sets + 1) tight++;
        met.add(sets);
      }
      expect(met.size).toBeGreaterThanOrEqual(5);
      expect(tight).toBeGreaterThanOrEqual(46);
    },
  );
});
