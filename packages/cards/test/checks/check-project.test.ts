import { inches, millimetres } from "@sheetwright/measure";
import { describe, expect, test } from "vitest";
import { checkProject, type Finding, findProjectFaults, type Layer, readProject } from "../../src/index.js";
import { checkProjects } from "../random-expansion.js";
import {
  bands,
  byBorder,
  bySize,
  card,
  choice,
  face,
  mat,
  panel,
  paper,
  paperDesign,
  project,
  strip,
} from "../small-project.js";

const night = paper("night", inches(8.5), inches(11), { grain: "height" });
const cream = paper("cream", inches(8.5), inches(11));

/** What is found in a 5 x 7 in card with these layers. */
function found(layers: readonly Layer[]): readonly Finding[] {
  return checkProject(project([card(inches(5), inches(7), layers)], { papers: [night, cream] }));
}

test("a card without anything to say about has no finding", () => {
  const seam = { cover: choice("cream"), width: inches(0.5) };
  expect(found([bands([1, 3], byBorder(inches(0.125)), { seam })])).toEqual([]);
});

describe("papers", () => {
  test("that no card uses", () => {
    expect(found([])).toEqual([
      {
        code: "unused-paper",
        severity: "note",
        path: "papers.cream",
        message: "No card uses cream. Leave it out, or name it in a card.",
        silenced: null,
      },
    ]);
  });

  test("of a pad of which only some designs are used, on either face", () => {
    const design = (id: string) => paperDesign(id, { back: face(`${id}.back`) });
    const stars = paper("stars", inches(6), inches(6), {
      material: "pad",
      designs: [design("stars.dots"), design("stars.comets"), design("stars.moons")],
    });
    const layers = [
      panel(bySize(inches(2), inches(2)), { paper: choice("stars.dots") }),
      panel(bySize(inches(1), inches(1)), { paper: choice("stars.moons.back") }),
    ];
    expect(checkProject(project([card(inches(5), inches(7), layers)], { papers: [night, stars] }))).toEqual([
      {
        code: "unused-paper",
        severity: "note",
        path: "papers.stars.designs.comets",
        message:
          "No card uses the design stars.comets of stars. Name it in a card, or keep it for another time.",
        silenced: null,
      },
    ]);
  });

  // The bend test: paper-merchant pages and bookbinding handbooks.
  test("that are folded and of which the grain is not known", () => {
    const unknown = paper("night", inches(8.5), inches(11));
    const layers = [panel(byBorder(inches(1)))];
    const folded = (foldGrain: "prefer" | "ignore") =>
      checkProject(
        project([card(inches(5), inches(7), layers, { foldGrain })], { papers: [unknown, cream] }),
      );
    expect(folded("prefer")).toMatchObject([{ code: "grain-unknown", path: "papers.night" }]);
    expect(folded("prefer")[0]?.message).toBe(
      "The grain of night is not known, so folds may come out across it and crack. Bend a sheet one way and the other " +
        "without creasing it: it gives more easily where the bend runs along the grain. Then write grain: long or grain: short.",
    );
    expect(folded("ignore")).toEqual([]);
    const square = paper("night", inches(12), inches(12));
    const [finding] = checkProject(
      project([card(inches(5), inches(7), layers)], { papers: [square, cream] }),
    );
    expect(finding?.message).toMatch(/Then write grain: width or grain: height\.$/);
  });
});

// Boxed 8.5 x 11 and 11 x 17 is mostly grain long (paper-merchant pages and bookbinding handbooks).
describe("grain that is not given", () => {
  const grainOf = (material: string, more = "", base = "night") => {
    const { project: read } = readProject(
      `sheetwright: 1\ntitle: x\npapers: { night: { ${material}${more} } }\n` +
        `cards: [{ name: A, size: 4 x 5, base: ${base} }]\n`,
    );
    const [{ grain, grainBasis } = night] = read?.papers ?? [];
    return read === null ? null : [grain, grainBasis, ...checkProject(read).map(({ code }) => code)];
  };

  test.each([
    ["cardstock: us-letter", "height", "assumed", ["grain-assumed"]],
    ["cardstock: 11 x 8 1/2", "width", "assumed", ["grain-assumed"]],
    ["cardstock: us-tabloid", "height", "assumed", ["grain-assumed"]],
    ["cardstock: 11 x 17", "height", "assumed", ["grain-assumed"]],
    ["cardstock: 12 x 12", "unknown", null, ["grain-unknown"]],
    ["cardstock: iso-a4", "unknown", null, ["grain-unknown"]],
    ["paper: us-letter", "unknown", null, ["grain-unknown"]],
    ["glitter: us-letter", "unknown", null, ["grain-unknown"]],
  ])("is assumed long for boxed cardstock alone: %s", (material, grain, basis, codes) => {
    expect(grainOf(material)).toEqual([grain, basis, ...codes]);
  });

  test("is not assumed where the maker says that she does not know it, or knows it", () => {
    expect(grainOf("cardstock: us-letter", ", grain: unknown")).toEqual(["unknown", null, "grain-unknown"]);
    expect(grainOf("cardstock: us-letter", ", grain: short")).toEqual(["width", "given"]);
    expect(grainOf("cardstock: us-letter", ", grain: none")).toEqual(["none", "given"]);
  });

  test("is not told of where no fold asks for it, and is not enough where it is required", () => {
    expect(grainOf("cardstock: us-letter", "", "{ paper: night, grain: ignore }")).toEqual([
      "height",
      "assumed",
    ]);
    expect(grainOf("cardstock: us-letter", "", "{ paper: night, grain: require }")).toBeNull();
    expect(
      grainOf("cardstock: us-letter", ", grain: long", "{ paper: night, grain: require }"),
    ).not.toBeNull();
  });

  test("is told with the way to find it", () => {
    const letter = { ...night, grainBasis: "assumed" } as const;
    const [finding] = checkProject(project([card(inches(5), inches(7), [])], { papers: [letter] }));
    expect(finding).toEqual({
      code: "grain-assumed",
      severity: "note",
      path: "papers.night",
      message:
        "The grain of night is not given. Boxed cardstock of 8 1/2 x 11 in mostly has it along the 11 in side, so that is " +
        "assumed. Bend a sheet one way and the other without creasing it: it gives more easily where the bend runs along the " +
        "grain. Then write grain: long, or grain: short if it is the other way.",
      silenced: null,
    });
  });
});

describe("seams", () => {
  const thirds = bands([1, 1, 1], byBorder(0));

  test("that show", () => {
    expect(found([thirds])).toMatchObject([
      {
        code: "bare-seam",
        path: "cards[0].front[0]",
        message:
          "The seams 2 5/16 in and 4 11/16 in from the top of these bands will show. Cover them with a strip, or write " +
          "`seam: bare` if they are to be seen.",
      },
    ]);
  });

  test("that the maker wants to see", () => {
    expect(found([{ ...thirds, seam: "bare" }])).toEqual([]);
  });

  test("that something else covers from end to end", () => {
    const over = (top: number, more = {}) =>
      strip(inches(0.5), {
        place: { x: { from: "middle" }, y: { from: "start", distance: inches(top) } },
        ...more,
      });
    expect(found([thirds, over(2.125), over(4.5)])).toEqual([]);
    // An edge on the seam does not hide it, and half a strip hides half of it.
    expect(found([thirds, over(2 + 5 / 16), over(4.5)])).toMatchObject([
      {
        message: expect.stringContaining(
          "The seam 2 5/16 in from the top of these bands will show. Cover it",
        ),
      },
    ]);
    expect(found([thirds, over(2.125), over(4.5, { length: inches(4) })])).toMatchObject([
      { message: expect.stringContaining("The seam 4 11/16 in from the top") },
    ]);
  });

  test("that stand, on bands side by side", () => {
    const upright = bands([1, 1], byBorder(inches(0.5)), { runs: "upright" });
    expect(found([upright])).toMatchObject([
      { message: expect.stringContaining("The seam 2 in from the left of these bands") },
    ]);
    expect(found([upright, strip(inches(0.5), { runs: "upright" })])).toEqual([]);
  });

  // Common practice: the cover is wider than the cutting error on both sides; hobby accuracy is up to 1/16 in a cut.
  test("with a cover narrower than the error of two cuts", () => {
    const seam = (width: number) => ({ cover: choice("cream"), width });
    expect(found([bands([1, 1], byBorder(0), { seam: seam(inches(1 / 16)) })])).toEqual([
      {
        code: "narrow-cover",
        severity: "warning",
        path: "cards[0].front[0].seam.width",
        silenced: null,
        message:
          "A cover of 1/16 in may not hide its seam: cuts are up to 1/16 in off on each side. Make it wider than 1/8 in.",
      },
    ]);
    // Wider than the gap of the seam and the cutting error on both sides (common practice, no source).
    expect(found([bands([1, 1], byBorder(0), { seam: seam(inches(1 / 8)) })])).toHaveLength(1);
    expect(found([bands([1, 1], byBorder(0), { seam: seam(inches(3 / 16)) })])).toEqual([]);
    const apart = { ...seam(inches(3 / 16)), gap: inches(1 / 16) };
    expect(found([bands([1, 1], byBorder(0), { seam: apart })])).toMatchObject([
      {
        code: "narrow-cover",
        message:
          "A cover of 3/16 in may not hide its seam: cuts are up to 1/16 in off on each side, and the parts stand 1/16 in " +
          "apart. Make it wider than 3/16 in.",
      },
    ]);
    const metric = card(millimetres(105), millimetres(148), [
      bands([1, 1], byBorder(0), { seam: seam(millimetres(2)) }),
    ]);
    expect(checkProject(project([metric], { papers: [night, cream], units: "mm" }))).toMatchObject([
      { code: "narrow-cover", message: expect.stringContaining("wider than 3 mm") },
    ]);
  });
});

test("layers of which nothing shows", () => {
  const layers = [panel(bySize(inches(2), inches(2))), panel(bySize(inches(3), inches(3)))];
  expect(found(layers)).toEqual([
    {
      code: "hidden-layer",
      severity: "warning",
      path: "cards[0].front[0]",
      message: "Nothing of the 1b panel shows: what lies above covers it whole. Move it, or leave it out.",
      silenced: null,
    },
  ]);
});

test("bands of which nothing shows are told of together", () => {
  const layers = [
    bands([1, 1, 1], bySize(inches(2), inches(2)), { seam: "bare" }),
    panel(byBorder(inches(1))),
  ];
  expect(found(layers)).toMatchObject([
    {
      code: "hidden-layer",
      path: "cards[0].front[0]",
      message:
        "Nothing of the 1b band, 1c band and 1d band shows: what lies above covers them whole. Move them, or leave them out.",
    },
  ]);
});

test("ends of a join that their covers hide, with what would show them", () => {
  const { project } = readProject(`
sheetwright: 1
title: Ends
papers: { night: { cardstock: us-letter, grain: long }, stars: { paper: 6 x 6 } }
cards:
  - name: A
    format: us-a7
    base: night
    front: [{ panel: stars, border: 1/4, join: { ends: night, cover: night, width: 1/2 } }]
`);
  if (project === null) throw new Error("Expected a project.");
  expect(checkProject(project).filter(({ code }) => code === "hidden-layer")).toMatchObject([
    {
      path: "cards[0].front[0].join.ends",
      message:
        "Nothing of the 1b panel end and 1d panel end shows: what lies above covers them whole. Make what covers the seams " +
        "narrower, or write at: one end, which makes one larger end of them.",
    },
  ]);
});

test("pieces that no paper can give, in the words of the finding", () => {
  const stars = paper("stars", inches(6), inches(6));
  const layers = [mat(byBorder(inches(0.125)), { paper: choice("stars") })];
  const [finding] = checkProject(project([card(inches(5), inches(7), layers)], { papers: [night, stars] }));
  expect(finding).toMatchObject({ code: "no-paper", path: "cards[0].front[0]" });
  expect(finding?.message).toContain("The 1b mat is 4 3/4 x 6 3/4 in");
});

test("a project with faults has those, and nothing else is told", () => {
  const broken = project([card(inches(5), inches(7), [mat(byBorder(inches(3)))])], {
    papers: [night, cream],
  });
  const faults = findProjectFaults(broken);
  expect(faults.map(({ code }) => code)).toEqual(["layer-vanishes"]);
  expect(checkProject(broken)).toEqual(
    faults.map(({ code, path, message }) => ({ code, severity: "error", path, message, silenced: null })),
  );
});

test("errors come first, then warnings, then notes, each in the order of the project", () => {
  const papers = ["night", "cream", "ember", "amber"].map((id) => paper(id, inches(8.5), inches(11)));
  const tiny = paper("tiny", inches(2), inches(2), { grain: "height" });
  const thirds = bands([1, 1, 1], byBorder(0));
  const cards = [
    card(inches(5), inches(7), [thirds]),
    card(inches(5), inches(7), [panel(byBorder(0), { paper: choice("tiny"), layers: [thirds] })], {
      number: 2,
    }),
    card(inches(5), inches(7), [thirds], { number: 11 }),
  ];
  const order = checkProject(project(cards, { papers: [...papers, tiny] })).map(({ code, path }) => [
    code,
    path,
  ]);
  expect(order).toEqual([
    ["no-paper", "cards[1].front[0]"],
    ["grain-unknown", "papers.night"],
    ["bare-seam", "cards[0].front[0]"],
    ["hidden-layer", "cards[1].front[0]"],
    ["bare-seam", "cards[1].front[0].layers[0]"],
    ["bare-seam", "cards[10].front[0]"],
    ["unused-paper", "papers.ember"],
    ["unused-paper", "papers.amber"],
  ]);
});

test("findings in projects made at random are whole sentences on values of the file, and always the same", () => {
  checkProjects(({ file, project: whole }) => {
    const findings = checkProject(whole);
    expect(checkProject(whole)).toEqual(findings);
    for (const { path, message } of findings) {
      expect(message).toMatch(/^[A-Z].*\.$/);
      expect(valueAt(file, path)).toBeDefined();
    }
  });
});

function valueAt(file: unknown, path: string): unknown {
  // A key that is no plain word stands in quotes.
  const keys = [...path.matchAll(/\["(.+?)"\]|([^.[\]"]+)/g)].map(
    ([, quoted, plain]) => quoted ?? plain ?? "",
  );
  return keys.reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], file);
}
