import { expandProject, type Project, readProject } from "@sheetwright/cards";
import { describe, expect, it } from "vitest";
import { asManyAsNeeded } from "../../src/need/as-many-as-needed.js";
import { plan } from "../../src/plan.js";
import { findSavings } from "../../src/savings/find-savings.js";
import { letTurn } from "../../src/savings/let-turn.js";
import { otherCutting } from "../../src/savings/other-cutting.js";
import { otherMeasures } from "../../src/savings/other-measures.js";
import { otherPapers } from "../../src/savings/other-papers.js";
import { verifyPlan } from "../../src/verify/verify-plan.js";

function read(text: string): Project {
  const { project, faults } = readProject(text);
  if (project === null) throw new Error(faults.map(({ message }) => message).join("\n"));
  return project;
}

const STRIPS = `
  sheetwright: 1
  title: Strips
  copies: 11
  papers:
    night: { cardstock: us-letter, grain: long, cost: 0.35 }
    stars: { paper: 5 1/4 x 9 1/2, pattern: one-way, cost: 0.40 }
  cards: [{ name: Harbour, format: us-a2, base: night, front: [{ strip: stars, width: 1 }] }]
`;

const ALL = `
  sheetwright: 1
  title: All
  copies: { guests: 4, samples: 1, spares: 2 }
  trimmer: { kerf: 1/16, cuts: strips }
  papers:
    night: { cardstock: us-letter, grain: long, trim: 1/8, weight: 80 lb cover, cost: 0.35 }
    cream: { cardstock: us-letter, weight: 65 lb cover }
    stars: { pad: 6 x 6, designs: { dots: 6, comets: { count: 5, pattern: one-way } } }
  cards:
    - name: Harbour
      format: us-a2
      base: night
      front:
        - { mat: cream, border: 1/8 }
        - { panel: stars.dots, size: 2 x 3, grain: { along: upright, need: prefer } }
        - { strip: stars.comets, width: 1 }
        - { sentiment: cream, size: 2 x 1/2, mats: [{ mat: stars.dots, border: 1/8 }] }
  `;

describe("changes that save most", () => {
  it("let strips turn where that takes a sheet less", async () => {
    // Of strips of 4 1/4 x 1 in a sheet of 5 1/4 x 9 1/2 in gives nine as they stand; turned ten stand side by side in two
    // rows of five, 8 1/2 in high, and one more lies in the inch that is left: eleven.
    const { asItIs, savings } = await findSavings(read(STRIPS));
    expect(asItIs).toEqual({
      cost: "2.90",
      sheets: 8,
      papers: [
        { design: "night", name: "night", sheets: 6 },
        { design: "stars", name: "stars", sheets: 2 },
      ],
    });
    expect(savings[0]).toMatchObject({
      words: "let the strip pieces turn on stars",
      path: "papers.stars",
      write: "pattern: none",
      costSaved: "0.40",
      sheetsSaved: 1,
      takes: { cost: "2.50", sheets: 7 },
    });
  });

  it("leave a step more border where more mats come from a sheet then", async () => {
    const { savings } = await findSavings(
      read(`
        sheetwright: 1
        title: Mats
        copies: 2
        papers: { night: { cardstock: us-letter, grain: long }, cream: { paper: 7 3/4 x 5 1/4 } }
        cards: [{ name: Harbour, format: us-a2, base: night, front: [{ mat: cream, border: 1/8 }] }]
      `),
    );
    // Mats of 4 x 5 1/4 in come one from a sheet of 7 3/4 in, and of 3 7/8 in two.
    expect(savings[0]).toMatchObject({
      words: "leave 1/16 in more border round the mat of Harbour",
      path: "cards[0].front[0]",
      write: "border: 3/16 in",
      costSaved: null,
      sheetsSaved: 1,
      proven: true,
    });
  });

  it("make as many spares less as save anything, and no more", async () => {
    const project = read(`
      sheetwright: 1
      title: Spares
      copies: { guests: 8, spares: 3 }
      papers: { night: { cardstock: us-letter, grain: long, cost: 0.35 } }
      cards: [{ name: Harbour, format: us-a2, base: night }]
    `);
    // Two bases from a sheet: six sheets for eleven, five for ten. Of twelve two less are needed.
    const { savings } = await findSavings(project);
    expect(savings[0]).toMatchObject({
      words: "make 1 spare less of each card",
      costSaved: "0.35",
      sheetsSaved: 1,
    });
    expect(savings.filter(({ words }) => words.includes("spare"))).toHaveLength(1);
    const twelve = {
      ...project,
      cards: project.cards.map((card) => ({ ...card, copiesFor: { guests: 8, samples: 0, spares: 4 } })),
    };
    const [best] = (await findSavings(twelve)).savings;
    expect(best).toMatchObject({ words: "make 2 spares less of each card", sheetsSaved: 1 });
  });

  it("let grain go, or a card be folded the other way", async () => {
    const project = read(`
      sheetwright: 1
      title: Grain
      copies: 4
      papers: { night: { cardstock: 9 x 12, grain: short } }
      cards: [{ name: Harbour, size: 4 x 6, fold: side, base: { paper: night, grain: require } }]
    `);
    // The flat, 8 x 6 in, has its fold along its height. Its grain is along the height only where it lies turned, 6 x 8 in, on
    // the short grain: one from a sheet. As it stands two come from a sheet, and so do two of 4 x 12 in, folded at the top.
    const { asItIs, savings } = await findSavings(project, { most: 9 });
    expect(asItIs?.sheets).toBe(4);
    expect(savings.map(({ words, sheetsSaved }) => [words, sheetsSaved])).toContainEqual([
      "let the grain of Harbour go",
      2,
    ]);
  });

  it("are none where nothing saves, and none are tried where a piece fits no paper", async () => {
    const full = await findSavings(
      read(`
        sheetwright: 1
        title: Full
        copies: 2
        papers: { night: { cardstock: us-letter, grain: long } }
        cards: [{ name: Harbour, format: us-a2, base: night }]
      `),
    );
    expect(full).toMatchObject({ asItIs: { sheets: 1 }, savings: [], saving: 0 });
    expect(full.tried).toBeGreaterThan(2);
    const none = await findSavings(
      read(`
        sheetwright: 1
        title: Too large
        papers: { night: { cardstock: 4 x 4 } }
        cards: [{ name: Harbour, format: us-a2, base: night }]
      `),
    );
    expect(none).toMatchObject({ asItIs: null, savings: [], tried: 0 });
  });

  it("really save what is told: their plans prove right and take what is said", async () => {
    const project = read(ALL);
    const { asItIs, savings } = await findSavings(project, { most: 9 });
    const changes = [letTurn, otherCutting, otherMeasures, otherPapers].flatMap((make) => make(project));
    expect(savings.length).toBeGreaterThan(1);
    for (const { words, takes, sheetsSaved } of savings) {
      const change = changes.find((one) => one.words === words)!;
      const asked = asManyAsNeeded(change.project);
      const found = plan(asked, { effort: "quick" });
      expect(verifyPlan(asked, found)).toEqual([]);
      expect(found.cost).toBe(takes.cost);
      expect(found.use.reduce((sum, { used }) => sum + used, 0)).toBe(takes.sheets);
      expect((asItIs?.sheets ?? 0) - takes.sheets).toBe(sheetsSaved);
    }
  });

  it("are as many as asked for, and the search ends early where it is told to", async () => {
    const project = read(STRIPS);
    const one = await findSavings(project, { most: 1, mostTried: 3 });
    expect([one.savings.length, one.tried, one.search.cancelled]).toEqual([1, 3, false]);
    const signal = { aborted: false };
    const early = await findSavings(project, {
      signal,
      onChange: (done) => {
        signal.aborted = done === 1;
      },
    });
    expect(early.search.cancelled).toBe(true);
  });
});

describe("the changes that are tried", () => {
  const project = read(ALL);
  const changes = [letTurn, otherCutting, otherMeasures, otherPapers].flatMap((make) => make(project));

  it("are told in words, with the place and what to write there", () => {
    expect(changes.map(({ words, path, write }) => `${words} | ${path} | ${write}`)).toEqual([
      "let the strip pieces turn on comets | papers.stars.designs.comets | pattern: none",
      "let Harbour be folded at its side or at its top | cards[0] | fold: either",
      "make 1 spare less of each card | copies | spares: 1 less",
      "make no spares | copies | spares: 2 less",
      "make no samples | copies | samples: 1 less",
      "cut with a blade, which loses nothing at a cut | trimmer | kerf: 0",
      "cut edge to edge in any order, not only in strips | trimmer | cuts: edge-to-edge",
      "leave the sides of night as they are | papers.night | trim: 0",
      "leave 1/16 in more border round the mat of Harbour | cards[0].front[0] | border: 3/16 in",
      "cut the panel of Harbour 1/16 in smaller | cards[0].front[1] | size: 1 15/16 in x 2 15/16 in",
      "cut the strip of Harbour 1/16 in narrower | cards[0].front[2] | width: 15/16 in",
      "leave 1/16 in less border on the mats of the sentiment of Harbour | cards[0].front[3] | border: 1/16 in",
      "let any design of stars be taken | cards | stars wherever one of its designs is named",
      "let what is cut from cream be cut from night too | cards | [cream, night] instead of cream",
      "take night as sheets of us-legal, at the same cost for the area | papers.night | cardstock: us-legal",
      "take night as sheets of us-tabloid, at the same cost for the area | papers.night | cardstock: us-tabloid",
      "take night as sheets of craft-12x12, at the same cost for the area | papers.night | cardstock: craft-12x12",
      "take cream as sheets of us-legal | papers.cream | cardstock: us-legal",
      "take cream as sheets of us-tabloid | papers.cream | cardstock: us-tabloid",
      "take cream as sheets of craft-12x12 | papers.cream | cardstock: craft-12x12",
    ]);
  });

  it("leave the project's own pieces at least as they were but for what they say", () => {
    const before = expandProject(project);
    for (const change of changes) {
      const after = expandProject(change.project);
      expect(
        after.pieces.map(({ id }) => id),
        change.words,
      ).toEqual(before.pieces.map(({ id }) => id));
      expect(change.project).not.toEqual(project);
    }
  });
});
