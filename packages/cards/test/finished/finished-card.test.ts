import { GRAMS_PER_OUNCE, grammageOf, inches, massOf, millimetres } from "@sheetwright/measure";
import { describe, expect, it, test } from "vitest";
import { expandProject, finishedCard, finishedCards, type Project, readProject } from "../../src/index.js";
import { checkProjects } from "../random-expansion.js";

const PAPERS = `papers:
  base: { cardstock: us-letter, weight: 80 lb cover, thickness: 0.010 in }
  mat: { cardstock: us-letter, weight: 65 lb cover, thickness: 0.008 in }
`;

/** A folded base, and a mat or a panel. */
const BASE = 2 * inches(0.01);
const MAT = inches(0.008);

/** A project of one card with these keys. */
function projectOf(keys: string, papers = PAPERS, units = "in"): Project {
  const text = `sheetwright: 1\ntitle: One card\nunits: ${units}\n${papers}cards:\n  - { name: Moth, base: base, ${keys} }\n`;
  const { project, faults } = readProject(text);
  if (project === null) throw new Error(faults.map(({ path, message }) => `${path}: ${message}`).join("\n"));
  return project;
}

const finish = (keys: string, papers?: string, units?: string) =>
  finishedCard(projectOf(keys, papers, units), 1);
const thousandths = (keys: string) => Math.round((1000 * finish(keys).thickness.value) / inches(1));

describe("the weight of a finished card", () => {
  // Computed: area by g/m2; to a milligram and a ten-thousandth of an ounce.
  it.each([
    ["a 5 1/2 x 8 1/2 in base", "80 lb cover", "size: 5 1/2 x 8 1/2, fold: flat", 6.525, 0.2302],
    ["a 5 1/2 x 8 1/2 in base", "110 lb cover", "size: 5 1/2 x 8 1/2, fold: flat", 8.972, 0.3165],
    ["a 4 x 5 1/4 in mat", "65 lb cover", "size: 4 x 5 1/4, fold: flat", 2.381, 0.084],
    ["a 3 3/4 x 5 in front", "180 gsm", "size: 3 3/4 x 5, fold: flat", 2.177, 0.0768],
    ["a 3 3/4 x 5 in front", "65 lb cover", "size: 3 3/4 x 5, fold: flat", 2.126, 0.075],
    ["a letter sheet", "20 lb bond", "size: 8 1/2 x 11, fold: flat", 4.536, 0.16],
    ["a letter sheet", "80 lb cover", "size: 8 1/2 x 11, fold: flat", 13.05, 0.4603],
    ["a 12 x 12 in sheet", "65 lb cover", "size: 12 x 12, fold: flat", 16.329, 0.576],
  ])("of %s of %s is what follows", (_, weight, keys, grams, ounces) => {
    const { mass } = finish(keys, `papers: { base: { cardstock: 12 x 12, weight: ${weight} } }\n`);
    expect(Math.abs(mass.grams - grams)).toBeLessThanOrEqual(0.0011);
    expect(Math.abs(mass.grams / GRAMS_PER_OUNCE - ounces)).toBeLessThanOrEqual(0.0001);
  });

  // Computed: 6.525 + 2.381 + 2.126 g.
  it("of an A2 card with a base of 80 lb, a mat and a front of 65 lb is 11.032 g", () => {
    const layers = "front: [{ mat: mat, size: 4 x 5 1/4 }, { panel: mat, size: 3 3/4 x 5 }]";
    const { mass } = finish(`format: us-a2, ${layers}`);
    expect(Math.abs(mass.grams - 11.032)).toBeLessThanOrEqual(0.0011);
    expect(Math.abs(mass.grams / GRAMS_PER_OUNCE - 0.3891)).toBeLessThanOrEqual(0.0001);
    expect(mass.basis).toBe("estimated");
  });

  it("counts extras by their number, in grams or ounces, and names those that nobody weighed", () => {
    const bare = finish("format: us-a2").mass.grams;
    const { mass } = finish(
      "format: us-a2, extras: [{ name: button, count: 3, thickness: 1/8, mass: 0.5 g }, " +
        "{ name: bell, thickness: 1/4, mass: 0.1 oz }, { name: knot, thickness: 1/8 }]",
    );
    expect(mass.grams).toBeCloseTo(bare + 1.5 + 0.1 * GRAMS_PER_OUNCE, 9);
    expect(mass.without).toEqual(["knot"]);
  });

  it("counts an insert once as it is cut, and of what a die cuts its shape alone", () => {
    const bare = finish("format: us-a2").mass.grams;
    const sheet = (width: number, height: number) =>
      massOf({ width: inches(width), height: inches(height) }, grammageOf(65, "cover"));
    const insert = finish("format: us-a2, insert: { paper: mat, border: 1/4 }").mass.grams;
    expect(insert).toBeCloseTo(bare + sheet(8, 5), 9);
    const dies = `dies: { tag: { size: 2 x 1, blank: 2 1/2 x 1 1/2 } }\n${PAPERS}`;
    const cut = finish("format: us-a2, front: [{ die: tag, paper: mat }]", dies).mass.grams;
    expect(cut).toBeCloseTo(bare + sheet(2, 1), 9);
  });

  it("takes the heaviest where several papers will do, and is no better founded than the weakest of all", () => {
    const papers = `papers:
  base: { cardstock: us-letter, weight: 80 lb cover }
  light: { paper: us-letter, weight: 60 gsm }
  heavy: { paper: us-letter, weight: 120 lb }
`;
    const front = (paper: string) => finish(`format: us-a2, front: [{ panel: ${paper} }]`, papers).mass;
    expect(front("[light, heavy]").grams).toBe(front("heavy").grams);
    expect(front("light").basis).toBe("estimated");
    expect(front("[light, heavy]").basis).toBe("assumed");
  });

  it("with its envelope has that of the envelope's paper", () => {
    const { mass, envelope } = finish("format: us-a2, envelope: { weight: 80 gsm }");
    const a2 = { width: inches(4.375), height: inches(5.75) };
    expect(mass.withEnvelope.grams - mass.grams).toBeCloseTo(2.5 * massOf(a2, 80), 9);
    expect(envelope).toMatchObject({ id: "env-us-a2", chosenBy: "trade", isUsual: true });
    const assumed = finish("format: us-a2").mass.withEnvelope;
    expect(assumed.basis).toBe("assumed");
    expect(assumed.grams - mass.grams).toBeCloseTo(2.5 * massOf(a2, grammageOf(24, "bond")), 9);
  });
});

describe("the thickness of a finished card", () => {
  it.each([
    ["flat", 10],
    ["side", 20],
    ["top", 20],
    ["gate", 20],
    ["z", 30],
    ["tri", 30],
    ["{ kind: accordion, panels: 5 }", 50],
    // Three panels, and the one that is glued on as the front.
    ["easel", 40],
  ])("of the fold %s is that of the panels on each other", (fold, expected) => {
    expect(thousandths(`size: 4 x 5, fold: ${fold}`)).toBe(expected);
  });

  it("is greatest where layers lie on each other, and those side by side do not add up", () => {
    const two = (left: string, right: string) =>
      `size: 4 x 5, front: [{ panel: mat, size: 2 x 2, ${left} }, { panel: mat, size: 2 x 2, ${right} }]`;
    expect(thousandths(two("left: 0", "right: 0"))).toBe(28);
    expect(thousandths(two("left: 0", "left: 1"))).toBe(36);
  });

  it("counts foam under a layer once, and all that lies on it on top", () => {
    const front = "format: us-a2, front: [{ mat: mat, foam: 1/16 }, { panel: mat, border: 1/4 }]";
    expect(finish(front).thickness.value).toBe(BASE + 2 * MAT + inches(1 / 16));
    const metric = "format: us-a2, front: [{ panel: mat, foam: 2 mm }]";
    expect(finish(metric).thickness.value).toBe(BASE + MAT + millimetres(2));
  });

  it("counts an insert as two leaves, and what lies on it on top", () => {
    const insert = "insert: { paper: mat, border: 1/4 }";
    expect(finish(`format: us-a2, ${insert}`).thickness.value).toBe(BASE + 2 * MAT);
    const inside = "inside: [{ panel: mat, border: 1/2 }]";
    expect(finish(`format: us-a2, ${insert}, ${inside}`).thickness.value).toBe(BASE + 3 * MAT);
  });

  it("counts a ribbon, which is assumed, and foam under what a die cuts", () => {
    const ribbon = finish(
      "format: us-a2, front: [{ bands: [1, 1], papers: [mat, mat], seam: { ribbon: copper, width: 1/2 } }]",
    );
    expect(ribbon.thickness).toMatchObject({ value: BASE + MAT + millimetres(0.3), basis: "assumed" });
    const dies = `dies: { tag: { size: 2 x 1, blank: 2 1/2 x 1 1/2 } }\n${PAPERS}`;
    const tag = finish("format: us-a2, front: [{ die: tag, paper: mat, foam: 1/16 }]", dies);
    expect(tag.thickness.value).toBe(BASE + MAT + inches(1 / 16));
  });

  it("counts foam under bands, and under a sentiment with mats once", () => {
    const bands =
      "front: [{ bands: [1, 1], papers: [mat, mat], seam: { cover: mat, width: 1/2 }, foam: 1/32 }]";
    expect(finish(`format: us-a2, ${bands}`).thickness.value).toBe(BASE + 2 * MAT + inches(1 / 32));
    const sentiment =
      "front: [{ sentiment: mat, size: 2 x 1/2, mats: [{ mat: mat }, { mat: mat }], foam: 1/8 }]";
    expect(finish(`format: us-a2, ${sentiment}`).thickness.value).toBe(BASE + 3 * MAT + inches(1 / 8));
  });

  it("counts what lies on both sides of a fold, but only where it meets", () => {
    const inside = (place: string) =>
      "size: 4 x 5, front: [{ panel: mat, size: 1 x 1, left: 0, top: 0 }], " +
      `inside: [{ panel: mat, size: 1 x 1, ${place} }]`;
    expect(thousandths(inside("left: 0, top: 0"))).toBe(36);
    expect(thousandths(inside("right: 0, top: 0"))).toBe(28);
    // Turned over, what lies at the right of the back lies behind the left of the front.
    const back = (place: string) =>
      "size: 4 x 5, front: [{ panel: mat, size: 1 x 1, left: 0, top: 0 }], " +
      `back: [{ panel: mat, size: 1 x 1, ${place}, top: 0 }]`;
    expect(thousandths(back("right: 0"))).toBe(36);
    expect(thousandths(back("left: 0"))).toBe(28);
  });

  it("counts a layer on one door of a gate where that door is", () => {
    const gate = (inside: string) =>
      "size: 4 x 5, fold: gate, elsewhere: { left-door: [{ panel: mat, border: 1/4 }] }, " +
      `inside: [{ panel: mat, size: 1 x 1, ${inside} }]`;
    expect(thousandths(gate("left: 1/2"))).toBe(36);
    expect(thousandths(gate("right: 0"))).toBe(28);
  });

  it("counts the thickest extra of a surface, and those of several surfaces together", () => {
    const extras = (list: string) => finish(`format: us-a2, extras: [${list}]`).thickness.value - BASE;
    const button = "{ name: button, count: 4, thickness: 1/8 }";
    const knot = "{ name: knot, thickness: 1/4 }";
    expect(extras(button)).toBe(inches(1 / 8));
    expect(extras(`${button}, ${knot}`)).toBe(inches(1 / 4));
    expect(extras(`${button}, { name: knot, thickness: 1/4, surface: inside }`)).toBe(inches(3 / 8));
  });

  it("is given, estimated or assumed as its weakest part is", () => {
    expect(finish("format: us-a2").thickness.basis).toBe("given");
    const papers =
      "papers:\n  base: { cardstock: us-letter, weight: 80 lb cover }\n  mat: { paper: us-letter }\n";
    expect(finish("format: us-a2", papers).thickness.basis).toBe("estimated");
    expect(finish("format: us-a2, front: [{ panel: mat }]", papers).thickness.basis).toBe("assumed");
  });
});

describe("the envelope of a finished card", () => {
  const chosen = (keys: string) => {
    const { id, chosenBy, verdict } = finish(keys).envelope;
    return [id, chosenBy, verdict];
  };

  it("is the maker's, else the usual one, else the one that fits best", () => {
    expect(chosen("format: us-a7, envelope: us-a8")).toEqual(["env-us-a8", "maker", "easy"]);
    expect(chosen("format: us-a7, envelope: 6 x 8")).toEqual([null, "maker", "easy"]);
    expect(chosen("format: us-a7")).toEqual(["env-us-a7", "trade", "easy"]);
    expect(chosen("size: 7 x 5")).toEqual(["env-us-a7", "trade", "easy"]);
    expect(chosen("size: 5 x 6 1/2")).toEqual(["env-us-a7", "best", "easy"]);
  });

  it("is another usual one where the card has become too thick for the first", () => {
    const thick = (thickness: string) => `format: us-4x6, extras: [{ name: bell, thickness: ${thickness} }]`;
    expect(chosen(thick("1/8"))).toEqual(["env-us-4.25x6.25", "trade", "snug"]);
    expect(chosen(thick("3/8"))).toEqual(["env-us-a6", "trade", "snug"]);
    // None of the usual ones takes it, so the first is told to be too small.
    expect(chosen(thick("3/4"))).toEqual(["env-us-4.25x6.25", "trade", "too-small"]);
  });

  it("lists all others, best first", () => {
    const { envelopes } = finish("format: us-a7, extras: [{ name: bell, thickness: 1/4 }]");
    expect(envelopes.slice(0, 2).map(({ id, verdict }) => [id, verdict])).toEqual([
      ["env-us-a8", "easy"],
      ["env-us-a9", "easy"],
    ]);
  });
});

describe("projects made at random", () => {
  test("a layer less never makes a card thicker or heavier", () => {
    checkProjects(({ project, expansion }) => {
      const whole = finishedCards(project);
      const less = finishedCards({
        ...project,
        cards: project.cards.map((card) => ({
          ...card,
          surfaces: card.surfaces.map((one) => ({ ...one, layers: one.layers.slice(0, -1) })),
        })),
      });
      expect(whole.map(({ number }) => number)).toEqual(expansion.cards.map(({ number }) => number));
      whole.forEach((card, index) => {
        const other = less[index];
        expect(other?.thickness.value).toBeLessThanOrEqual(card.thickness.value);
        expect(other?.mass.grams).toBeLessThanOrEqual(card.mass.grams + 1e-9);
        expect(card.thickness.value).toBeGreaterThanOrEqual(card.thickness.base);
        expect(card.thickness.base).toBeGreaterThan(0);
        expect(card.mass.withEnvelope.grams).toBeGreaterThan(card.mass.grams);
      });
    });
  });

  test("a card is at most as thick as all of it on one pile, and as heavy as its pieces", () => {
    checkProjects(({ project, expansion }) => {
      const thickest = Math.max(...project.papers.map(({ thickness }) => thickness ?? 0), millimetres(2));
      for (const card of finishedCards(project)) {
        const worked = expansion.cards.find(({ number }) => number === card.number);
        const design = project.cards.find(({ number }) => number === card.number);
        if (worked === undefined || design === undefined) throw new Error("A card is lost.");
        const panels = Math.max(...worked.flats.map((flat) => flat.panels.length));
        const foam = worked.layers.reduce((sum, layer) => sum + (layer.foam ?? 0), 0);
        const extras = design.extras.reduce((sum, { thickness }) => sum + thickness, 0);
        const pile = (panels + worked.layers.length) * thickest + foam + extras;
        expect(card.thickness.value).toBeLessThanOrEqual(pile);
      }
    });
  });

  test("the same project gives the same bytes, also after it was written as JSON", () => {
    checkProjects(({ project }) => {
      const bytes = JSON.stringify(finishedCards(project));
      expect(JSON.stringify(finishedCards(JSON.parse(JSON.stringify(project)) as Project))).toBe(bytes);
      expect(JSON.parse(bytes)).toEqual(finishedCards(project));
    });
  });

  test("copies change nothing", () => {
    checkProjects(({ project }) => {
      const cards = project.cards.map((card) => ({
        ...card,
        copies: card.copies + 5,
        copiesFor: { ...card.copiesFor, guests: card.copiesFor.guests + 5 },
      }));
      expect(finishedCards({ ...project, cards })).toEqual(finishedCards(project));
    });
  });
});

it("leaves what is fastened on in the card worked out, for its steps", () => {
  const extras = "extras: [{ name: button, count: 2, thickness: 1/8, surface: inside }]";
  const [card] = expandProject(projectOf(`format: us-a2, ${extras}`)).cards;
  expect(card?.extras).toEqual([{ name: "button", count: 2, surface: "inside" }]);
  expect(expandProject(projectOf("format: us-a2")).cards[0]).not.toHaveProperty("extras");
});

it("is worked out for every card in order", () => {
  const project = projectOf("format: us-a2");
  expect(finishedCards(project).map(({ name }) => name)).toEqual(
    expandProject(project).cards.map(({ name }) => name),
  );
});
