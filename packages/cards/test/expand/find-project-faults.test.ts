import { inches, millimetres } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  checkProject,
  type Design,
  expandProject,
  findProjectFaults,
  type Layer,
  type Project,
  ProjectError,
} from "../../src/index.js";
import { projectOf, randomProject } from "../random-project.js";
import {
  bands,
  byBorder,
  bySize,
  card,
  choice,
  evenly,
  face,
  mat,
  panel,
  paper,
  paperDesign,
  project,
  sentiment,
  strip,
} from "../small-project.js";

const EIGHTH = inches(1 / 8);

/** The faults of a 5 x 7 in card with these layers. */
const front = (layers: readonly Layer[]) => [{ name: "front" as const, path: "cards[0].front", layers }];

function faultsOf(layers: readonly Layer[], more: Partial<Design> = {}) {
  return findProjectFaults(project([card(inches(5), inches(7), layers, more)]));
}

function told(layers: readonly Layer[], more: Partial<Design> = {}) {
  return faultsOf(layers, more).map(({ code, path, found, expected, message }) => ({
    code,
    path,
    found,
    expected,
    message,
  }));
}

describe("a layer that vanishes", () => {
  test("says what the borders take and what there is", () => {
    expect(told([mat(byBorder(inches(3)))])).toEqual([
      {
        code: "layer-vanishes",
        path: "cards[0].front[0].border",
        found: "3 in",
        expected: "left and right together less than 5 in",
        message:
          "Nothing is left of the 1b mat. The borders of 3 in on the left and 3 in on the right take 6 in, and the " +
          "front of the card is 5 in wide, 1 in less. Give left and right together less than 5 in.",
      },
    ]);
  });

  test("on both sides, in the unit of the project", () => {
    const border = { ...evenly(millimetres(60)), bottom: millimetres(90) };
    const design = card(millimetres(120), millimetres(148), [panel(byBorder(border))]);
    expect(findProjectFaults(project([design], { units: "mm" }))).toMatchObject([
      {
        code: "layer-vanishes",
        found: "left 60 mm, right 60 mm, top 60 mm, bottom 90 mm",
        expected: "left and right together less than 120 mm, top and bottom together less than 148 mm",
        message:
          "Nothing is left of the 1b panel. The borders of 60 mm on the left and 60 mm on the right take 120 mm, and the " +
          "front of the card is 120 mm wide, just as much. The borders of 60 mm on the top and 90 mm on the bottom take " +
          "150 mm, and the front of the card is 148 mm high, 2 mm less. Give left and right together less than 120 mm, " +
          "top and bottom together less than 148 mm.",
      },
    ]);
  });

  test("what would lie on it is not judged", () => {
    const lost = mat(byBorder(inches(3)), { layers: [panel(bySize(inches(9), inches(9)))] });
    expect(faultsOf([lost])).toHaveLength(1);
    expect(faultsOf([mat(byBorder(inches(3))), panel(bySize(inches(9), inches(9)))])).toHaveLength(1);
  });
});

describe("a border that vanishes", () => {
  test("since what lies on a mat has none", () => {
    expect(told([mat(byBorder(EIGHTH)), panel(byBorder(0))])).toEqual([
      {
        code: "border-vanishes",
        path: "cards[0].front[1].border",
        found: "no border",
        expected: "a border on at least one side",
        message:
          "The border of the 1b mat would vanish: what lies on it covers it whole. Give what lies on it a border on at " +
          "least one side, or leave the mat out.",
      },
    ]);
  });

  test("since what lies on a mat has its size", () => {
    expect(faultsOf([mat(byBorder(EIGHTH)), panel(bySize(inches(4.75), inches(6.75)))])).toMatchObject([
      { code: "border-vanishes", path: "cards[0].front[1].size" },
    ]);
    expect(faultsOf([mat(byBorder(EIGHTH)), strip(inches(6.75))])).toMatchObject([
      { code: "border-vanishes", path: "cards[0].front[1].width" },
    ]);
  });

  test("of the mat of a sentiment", () => {
    const mats = [
      { paper: choice("night"), border: 0 },
      { paper: choice("cream"), border: EIGHTH },
    ];
    expect(faultsOf([sentiment(inches(2), inches(0.5), { mats })])).toMatchObject([
      { code: "border-vanishes", path: "cards[0].front[0].mats[0].border" },
    ]);
  });

  test("under several layers that cover it together", () => {
    const half = (end: "start" | "end") =>
      panel(bySize(inches(4), inches(3), { y: { from: end, distance: 0 } }));
    expect(told([mat(bySize(inches(4), inches(6))), half("start"), half("end")])).toEqual([
      {
        code: "border-vanishes",
        path: "cards[0].front[0]",
        found: "nothing that shows",
        expected: "a mat of which a border shows",
        message:
          "Nothing of the 1b mat shows in the end: what lies above covers it whole. Make that smaller, move it, or leave " +
          "the mat out.",
      },
    ]);
  });

  test("a layer may cover the front of the card whole, and a panel what it lies on", () => {
    expect(faultsOf([panel(byBorder(0)), panel(byBorder(0))])).toEqual([]);
  });

  test("a mat with nothing on it is no fault", () => {
    expect(faultsOf([mat(byBorder(EIGHTH))])).toEqual([]);
  });
});

describe("a layer that is too large", () => {
  test("says by how much, and that it fits when turned", () => {
    expect(told([mat(byBorder(EIGHTH)), panel(bySize(inches(6), inches(3)))])).toEqual([
      {
        code: "too-large",
        path: "cards[0].front[1].size",
        found: "6 x 3 in",
        expected: "at most 4 3/4 x 6 3/4 in",
        message:
          "The 1c panel is 6 x 3 in, and the 1b mat is 4 3/4 x 6 3/4 in: it is 1 1/4 in too wide. Turned a quarter, as " +
          "3 x 6 in, it would fit.",
      },
    ]);
  });

  test("on both sides", () => {
    expect(told([panel(bySize(inches(8), inches(7.5)))])).toMatchObject([
      {
        message:
          "The 1b panel is 8 x 7 1/2 in, and the front of the card is 5 x 7 in: it is 3 in too wide and 1/2 in too high. " +
          "Make it at most 5 x 7 in.",
      },
    ]);
  });

  test("in inches what was meant in millimetres", () => {
    expect(told([panel(bySize(inches(121), inches(170)))])).toMatchObject([
      { message: expect.stringContaining("If those are millimetres, write 121 x 170 mm.") },
    ]);
    // Nobody means a panel of 8 x 9 mm on a card of 5 x 7 in, nor one that is too large in millimetres too.
    for (const [width, height] of [
      [8, 9],
      [130, 170],
    ] as const) {
      const [fault] = told([panel(bySize(inches(width), inches(height)))]);
      expect(fault?.message).toContain("Make it at most 5 x 7 in.");
    }
  });

  test("is told so once, wherever it lies", () => {
    const place = { x: { from: "start", distance: inches(1) } } as const;
    expect(faultsOf([panel(bySize(inches(6), inches(8), place))])).toMatchObject([
      { path: "cards[0].front[0].size" },
    ]);
  });

  test("for a strip, at the value that says so", () => {
    expect(told([strip(inches(8))])).toMatchObject([
      {
        path: "cards[0].front[0].width",
        found: "8 in",
        expected: "at most 7 in",
        message:
          "The 1b strip is 5 x 8 in, and the front of the card is 5 x 7 in: it is 1 in too high. Make it at most 7 in high.",
      },
    ]);
    expect(faultsOf([strip(inches(0.5), { length: inches(6) })])).toMatchObject([
      { path: "cards[0].front[0].length", found: "6 in", expected: "at most 5 in" },
    ]);
    expect(faultsOf([strip(inches(6), { runs: "upright", length: inches(8) })])).toMatchObject([
      { path: "cards[0].front[0].width", found: "6 in" },
      { path: "cards[0].front[0].length", found: "8 in" },
    ]);
  });

  test("a sentiment with its mats", () => {
    const mats = [{ paper: choice("night"), border: inches(0.5) }];
    expect(told([sentiment(inches(4.5), inches(1), { mats })])).toMatchObject([
      {
        path: "cards[0].front[0].mats",
        message:
          "The 1b sentiment with its mats is 5 1/2 x 2 in, and the front of the card is 5 x 7 in: it is 1/2 in too wide. " +
          "Turned a quarter, as 2 x 5 1/2 in, it would fit.",
      },
    ]);
    expect(faultsOf([sentiment(inches(6), inches(1), { mats })])).toMatchObject([
      { path: "cards[0].front[0].size" },
    ]);
  });
});

describe("a layer that sticks out", () => {
  test("over the edge opposite to the one it is measured from", () => {
    const place = {
      x: { from: "start", distance: inches(2) },
      y: { from: "end", distance: inches(6) },
    } as const;
    expect(told([panel(bySize(inches(4), inches(2), place))])).toEqual([
      {
        code: "too-large",
        path: "cards[0].front[0].left",
        found: "2 in",
        expected: "at most 1 in",
        message:
          "The 1b panel sticks out over the right edge of the front of the card by 1 in: it is 4 in wide, lies 2 in from " +
          "the left, and there are 5 in in all. Give at most 1 in.",
      },
      {
        code: "too-large",
        path: "cards[0].front[0].bottom",
        found: "6 in",
        expected: "at most 5 in",
        message:
          "The 1b panel sticks out over the top edge of the front of the card by 1 in: it is 2 in high, lies 6 in from " +
          "the bottom, and there are 7 in in all. Give at most 5 in.",
      },
    ]);
  });

  test("when it is centred on a third", () => {
    const place = { y: { from: "third", third: 2 } } as const;
    expect(told([panel(bySize(inches(2), inches(5), place))])).toEqual([
      {
        code: "too-large",
        path: "cards[0].front[0].line",
        found: "lower third",
        expected: "a line that it can be centred on",
        message:
          "The 1b panel sticks out over the bottom edge of the front of the card by 3/16 in when it is centred on the " +
          "lower third, 4 11/16 in from the top. Make it at most 4 5/8 in high, or give its distance from the bottom instead.",
      },
    ]);
  });
});

describe("bands", () => {
  test("one that is too narrow vanishes", () => {
    expect(told([bands([1, 300], byBorder(0))])).toEqual([
      {
        code: "part-vanishes",
        path: "cards[0].front[0].bands",
        found: "1, 300",
        expected: "shares of 7 in of at least 1/16 in each",
        message:
          "Band 1 of 2 vanishes: 1b bands divide 7 in in 1 : 300, and its share is less than half of 1/16 in, what " +
          "divisions are rounded to. Use fewer bands, a larger share for this one or a finer precision.",
      },
    ]);
  });

  test("a cover that is too wide", () => {
    const seam = { cover: choice("cream"), width: inches(4) };
    expect(told([bands([1, 3], byBorder(0), { seam })])).toEqual([
      {
        code: "too-large",
        path: "cards[0].front[0].seam.width",
        found: "4 in",
        expected: "at most 3 1/2 in wide",
        message:
          "A cover 4 in wide sticks out by 1/4 in when its middle lies on the seam 1 3/4 in from the top: the bands are " +
          "7 in in all. Make it at most 3 1/2 in wide.",
      },
    ]);
    const whole = { cover: choice("cream"), width: inches(7) };
    expect(told([bands([1, 1], byBorder(0), { seam: whole })])).toMatchObject([
      {
        expected: "less than 7 in wide",
        message: "A cover 7 in wide hides its bands: they are 7 in in all. Make it less than 7 in wide.",
      },
    ]);
  });
});

describe("papers and grain", () => {
  const cards = (base: string, foldGrain: "prefer" | "require" = "prefer") => [
    card(inches(5), inches(7), [], { base: choice(base), foldGrain }),
  ];

  test("a paper that is not there", () => {
    expect(findProjectFaults(project(cards("nihgt")))).toMatchObject([
      {
        code: "unknown-paper",
        path: "cards[0].base",
        found: "nihgt",
        message: 'There is no paper "nihgt" in the project. It has night, cream.',
      },
    ]);
  });

  // The bend test: less resistance when the bend is parallel to the grain (paper-merchant pages and bookbinding handbooks).
  test("grain that is required of a paper whose grain is not known", () => {
    expect(findProjectFaults(project(cards("night", "require")))).toMatchObject([
      {
        code: "grain-required",
        path: "cards[0].base.grain",
        message:
          "The grain is required to run one way, and which way it runs on night is not known. To find it, bend the sheet " +
          "one way and the other without creasing it: it gives more easily when the bend runs along the grain. Then write " +
          "it at papers.night.grain, or prefer the grain instead of requiring it.",
      },
    ]);
  });

  test("grain that is required and only assumed", () => {
    const papers = [paper("night", inches(8.5), inches(11), { grain: "height", grainBasis: "assumed" })];
    const [fault, ...others] = findProjectFaults(project(cards("night", "require"), { papers }));
    expect(others).toEqual([]);
    expect(fault).toMatchObject({ code: "grain-required", path: "cards[0].base.grain" });
    expect(fault?.message).toContain(
      "which way it runs on night is only assumed (along the longer side, as of most such paper).",
    );
  });

  test("grain that is required against a pattern", () => {
    const patterned = paper("night", inches(8.5), inches(11), {
      grain: "width",
      designs: [paperDesign("night", { front: face("night", { pattern: "one-way" }) })],
    });
    const one = (grain: "width" | "height") =>
      project(cards("night", "require"), { papers: [{ ...patterned, grain }] });
    expect(findProjectFaults(one("height"))).toEqual([]);
    expect(findProjectFaults(one("width"))).toMatchObject([
      {
        code: "contradiction",
        path: "cards[0].base.grain",
        message:
          "The grain is required to run along the height of this piece, and on night it runs along the width of the " +
          "sheet. Only a quarter turn would bring it there, and the pattern (one-way) forbids that. Prefer the grain " +
          "instead of requiring it, or choose a paper without a pattern.",
      },
    ]);
  });

  test("grain that is required of a paper without any is no fault", () => {
    const handmade = paper("night", inches(8.5), inches(11), { grain: "none" });
    expect(findProjectFaults(project(cards("night", "require"), { papers: [handmade] }))).toEqual([]);
  });
});

describe("projects that other tools made", () => {
  const good = card(inches(5), inches(7), [mat(byBorder(EIGHTH)), strip(inches(0.5))]);

  test.each([
    [
      "no whole number of copies",
      { ...good, copies: 1.5, copiesFor: { guests: 1.5, samples: 0 } },
      "cards[0].copies",
    ],
    [
      "half a spare copy",
      { ...good, copiesFor: { guests: 1, samples: 0, spares: 0.5 } },
      "cards[0].copies.spares",
    ],
    ["copies that do not add up", { ...good, copiesFor: { guests: 2, samples: 2 } }, "cards[0].copies"],
    ["a front without an extent", { ...good, front: { width: 0, height: 10 }, flats: [] }, "cards[0].size"],
    ["no flat", { ...good, flats: [] }, "cards[0].fold"],
    [
      "a surface that the fold does not give",
      { ...good, surfaces: [{ ...front([])[0], name: "flap" }] },
      "cards[0].front",
    ],
    ["a surface twice", { ...good, surfaces: [...front([]), ...front([])] }, "cards[0].front"],
    [
      "a panel of nothing",
      { ...good, flats: good.flats.map((flat) => ({ ...flat, panels: [0, 2] })) },
      "cards[0].fold",
    ],
    [
      "a score beside its fold",
      { ...good, flats: good.flats.map((flat) => ({ ...flat, scores: [] })) },
      "cards[0].fold",
    ],
    ["a flat of another front", { ...good, front: { width: inches(4), height: inches(7) } }, "cards[0].fold"],
    ["no number", { ...good, number: 0 }, "cards[0].number"],
    ["a negative border", { ...good, surfaces: front([{ ...mat(byBorder(-1)), path: "x" }]) }, "x.border"],
    ["half a tick", { ...good, surfaces: front([{ ...strip(0.5), path: "x" }]) }, "x.width"],
    [
      "a third that is none",
      {
        ...good,
        surfaces: front([{ ...panel(bySize(9, 9, { x: { from: "third", third: 3 } as never })), path: "x" }]),
      },
      "x.line",
    ],
    [
      "bands without ratios",
      { ...good, surfaces: front([{ ...bands([], byBorder(0)), path: "x" }]) },
      "x.papers",
    ],
    [
      "ratios of nothing",
      { ...good, surfaces: front([{ ...bands([0, 1], byBorder(0)), path: "x" }]) },
      "x.bands[0]",
    ],
    ["an empty name", { ...good, surfaces: front([{ ...strip(10), path: "x", name: " " }]) }, "x.name"],
    ["a base of no paper", { ...good, base: choice() }, "cards[0].base"],
  ] as const)("with %s", (_, design, path) => {
    const faults = findProjectFaults(project([design as Design]));
    expect(faults.map((fault) => fault.path)).toContain(path);
    expect(() => expandProject(project([design as Design]))).toThrow(ProjectError);
  });

  test("with a precision of nothing, no card or two cards of one number", () => {
    expect(findProjectFaults(project([good], { precision: 0 }))).toMatchObject([{ path: "precision" }]);
    expect(findProjectFaults(project([]))).toMatchObject([{ path: "cards", code: "too-many" }]);
    expect(findProjectFaults(project([good, { ...good, path: "cards[1]" }]))).toMatchObject([
      { path: "cards[1]", code: "twice" },
    ]);
  });

  test("with layers too deep inside each other", () => {
    const deep = (depth: number): Layer =>
      panel(byBorder(EIGHTH), { layers: depth === 0 ? [] : [deep(depth - 1)] });
    expect(faultsOf([deep(11)])).toEqual([]);
    expect(faultsOf([deep(12)])).toMatchObject([{ code: "too-many" }]);
  });
});

test("all faults come at once, and the error holds them", () => {
  const design = card(
    inches(5),
    inches(7),
    [mat(byBorder(EIGHTH)), panel(bySize(inches(6), inches(3))), strip(inches(9)), mat(byBorder(inches(4)))],
    { base: choice("ember") },
  );
  const faults = findProjectFaults(project([design]));
  expect(faults.map(({ path }) => path)).toEqual([
    "cards[0].base",
    "cards[0].front[1].size",
    "cards[0].front[2].width",
    "cards[0].front[3].border",
  ]);
  expect(faults.every(({ line, column }) => line === null && column === null)).toBe(true);
  let error: unknown;
  try {
    expandProject(project([design]));
  } catch (reason) {
    error = reason;
  }
  expect(error).toBeInstanceOf(ProjectError);
  expect((error as ProjectError).details).toEqual(faults);
  expect((error as ProjectError).path).toBe("cards[0].base");
});

test("a project spoilt at random has faults, or can be worked out; nothing else is thrown", () => {
  // Any number of the project becomes another one, or any text another text that some value of it could have.
  const spoilt = fc.tuple(
    randomProject(),
    fc.array(
      fc.record({
        at: fc.nat(),
        number: fc.oneof(
          fc.constantFrom(0, -1, 0.5, 1e9, Number.NaN, Number.POSITIVE_INFINITY),
          fc.integer({ min: -1_000, max: 600_000 }),
        ),
        word: fc.constantFrom("require", "one-way", "unknown", "night", "nothing", "third", "size", ""),
      }),
      { minLength: 1, maxLength: 4 },
    ),
  );
  let faulty = 0;
  let all = 0;
  fc.assert(
    fc.property(spoilt, ([file, changes]) => {
      all += 1;
      const whole = structuredClone(projectOf(file)) as Project;
      const numbers = leaves({ cards: whole.cards, precision: whole.precision }, "number");
      const grains = leaves(whole, "string").filter(
        ({ key }) => key === "grain" || key === "need" || key === "foldGrain",
      );
      for (const { at, number, word } of changes) {
        const leaf = numbers[at % numbers.length];
        if (leaf !== undefined) leaf.owner[leaf.key] = number;
        const grain = grains[at % Math.max(1, grains.length)];
        if (grain !== undefined && ["require", "unknown"].includes(word)) {
          grain.owner[grain.key] = grain.key === "grain" ? "unknown" : "require";
        }
      }
      const faults = findProjectFaults(whole);
      for (const { path, message, expected } of faults) {
        expect(message).toMatch(/^\S.*[.?]$/);
        expect(path).not.toBe("");
        expect(expected).not.toBe("");
      }
      if (faults.length > 0) {
        faulty += 1;
        expect(() => expandProject(whole)).toThrow(ProjectError);
        expect(
          checkProject(whole)
            .map(({ path, message }) => path + message)
            .sort(),
        ).toEqual(faults.map(({ path, message }) => path + message).sort());
      } else {
        expect(expandProject(whole).pieces.length).toBeGreaterThan(0);
        checkProject(whole);
      }
    }),
  );
  // Most changes make a contradiction.
  expect(faulty).toBeGreaterThan(all / 4);
});

interface Leaf {
  readonly owner: Record<string, unknown>;
  readonly key: string;
}

function leaves(value: unknown, type: "number" | "string"): readonly Leaf[] {
  if (typeof value !== "object" || value === null) return [];
  const owner = value as Record<string, unknown>;
  return Object.keys(owner).flatMap((key) =>
    typeof owner[key] === type ? [{ owner, key }] : leaves(owner[key], type),
  );
}
