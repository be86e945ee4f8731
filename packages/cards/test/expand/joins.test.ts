import { inches, millimetres } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { indexFaces } from "../../src/expand/face-index.js";
import { workOutProject } from "../../src/expand/work-out-project.js";
import { withJoin } from "../../src/fit/help-by-join.js";
import { fits, waysToCut } from "../../src/fit/ways-to-cut.js";
import {
  type Card,
  checkProject,
  expandProject,
  findProjectFaults,
  type Layer,
  type LayerJoin,
  type Project,
} from "../../src/index.js";
import { checkProjects } from "../random-expansion.js";
import {
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

const stars = paper("stars", inches(6), inches(6));
const papers = [paper("night", inches(8.5), inches(11)), paper("cream", inches(8.5), inches(11)), stars];
const bare = { cover: "bare", width: 0 } as const;
const cream = { cover: choice("cream"), width: inches(1 / 2) };

/** A US A7 card with these layers, the first of them of star paper. */
const a7 = (layers: readonly Layer[]) => project([card(inches(5), inches(7), layers)], { papers });

function oneMat(join: LayerJoin): Project {
  return a7([mat(byBorder(inches(1 / 8)), { paper: choice("stars"), join })]);
}

function inInches({ layers }: Card, expansion: ReturnType<typeof expandProject>) {
  return layers.map(({ piece, x, y, width, height }) => {
    const label = [...expansion.pieces, ...expansion.items].find(({ id }) => id === piece)?.label;
    return [label, ...[x, y, width, height].map((ticks) => ticks / inches(1))];
  });
}

function laid(whole: Project) {
  const expansion = expandProject(whole);
  const [first] = expansion.cards;
  if (first === undefined) throw new Error("No card.");
  return { card: first, layers: inInches(first, expansion), expansion };
}

describe("a mat of 4 3/4 x 6 3/4 in from a pad of 6 x 6 in", () => {
  test("with ends of another paper keeps its own in the middle, as large as it comes", () => {
    const { card: made, layers } = laid(
      oneMat({ by: "ends", paper: choice("night"), at: "both", seam: bare }),
    );
    expect(layers).toEqual([
      ["1b mat end", 0.125, 0.125, 4.75, 0.375],
      ["1c mat", 0.125, 0.5, 4.75, 6],
      ["1d mat end", 0.125, 6.5, 4.75, 0.375],
    ]);
    expect(made.joins).toEqual([
      {
        path: "cards[0].front[0]",
        purpose: "mat",
        by: "ends",
        along: "height",
        extent: inches(6.75),
        gives: inches(6),
        pieces: ["1b", "1c", "1d"],
      },
    ]);
  });

  test("with one end has it at the bottom", () => {
    const { layers } = laid(oneMat({ by: "ends", paper: choice("night"), at: "one", seam: bare }));
    expect(layers).toEqual([
      ["1b mat", 0.125, 0.125, 4.75, 6],
      ["1c mat end", 0.125, 6.125, 4.75, 0.75],
    ]);
  });

  test("in two parts has its seam on the lower line of thirds, covered", () => {
    const { card: made, layers } = laid(oneMat({ by: "parts", parts: 2, seam: cream }));
    expect(layers).toEqual([
      ["1b mat part", 0.125, 0.125, 4.75, 4.5],
      ["1c mat part", 0.125, 4.625, 4.75, 2.25],
      ["1d cover", 0.125, 4.375, 4.75, 0.5],
    ]);
    expect(made.seams).toMatchObject([
      { path: "cards[0].front[0].join", cover: "1d", position: inches(4.5) },
    ]);
  });

  test("in three parts has them on both", () => {
    const { layers } = laid(oneMat({ by: "parts", parts: 3, seam: bare }));
    expect(layers.map(([label, , y, , height]) => [label, y, height])).toEqual([
      ["1b mat part", 0.125, 2.25],
      ["1c mat part", 2.375, 2.25],
      ["1d mat part", 4.625, 2.25],
    ]);
  });

  test("is warned of where its seam is left bare without a word", () => {
    const findings = checkProject(oneMat({ by: "parts", parts: 2, seam: null }));
    expect(findings).toContainEqual({
      code: "bare-seam",
      severity: "warning",
      path: "cards[0].front[0].join",
      silenced: null,
      message:
        "The seam 4 1/2 in from the top of this layer will show. Cover it with a strip, or write `bare: true` if it is to be seen.",
    });
    const told = checkProject(oneMat({ by: "parts", parts: 2, seam: bare })).map(({ code }) => code);
    expect(told).not.toContain("bare-seam");
  });

  test("is cut whole where its paper is large enough, and that is noted", () => {
    const whole = a7([
      mat(byBorder(inches(1 / 8)), { paper: choice("night"), join: { by: "parts", parts: 2, seam: cream } }),
    ]);
    const { card: made, layers } = laid(whole);
    expect(layers).toEqual([["1b mat", 0.125, 0.125, 4.75, 6.75]]);
    expect(made.joins).toMatchObject([{ by: "whole", pieces: ["1b"] }]);
  });
});

describe("two parts", () => {
  const long = (extent: number, pad: number) =>
    project(
      [
        card(inches(4), inches(9), [
          panel(bySize(inches(3), inches(extent)), {
            paper: choice("pad"),
            join: { by: "parts", parts: 2, seam: bare },
          }),
        ]),
      ],
      { papers: [...papers, paper("pad", inches(pad), inches(pad))] },
    );

  test("are halves where the paper does not give two thirds", () => {
    expect(laid(long(6, 4)).layers.map((layer) => layer.at(-1))).toEqual([4, 2]);
    expect(laid(long(6, 3.5)).layers.map((layer) => layer.at(-1))).toEqual([3, 3]);
  });

  test("that are still too long are told by how much", () => {
    expect(findProjectFaults(long(8, 3.5))).toMatchObject([
      {
        code: "too-large",
        path: "cards[0].front[0].join.parts",
        message:
          "The 1b panel is 3 x 8 in. In 2 parts the longest is still 4 in high, and its paper gives 3 1/2 in: 1/2 in too much. " +
          "Write parts: 3, or take a larger paper.",
      },
    ]);
  });

  test("do not help where both sides are too long", () => {
    expect(findProjectFaults(long(6, 2))).toMatchObject([
      {
        code: "too-large",
        path: "cards[0].front[0].join",
        message: expect.stringContaining("both of its sides"),
      },
    ]);
  });

  test("of a pattern are cut upright, as the whole would be", () => {
    const design = paperDesign("pad", { front: face("pad", { pattern: "one-way" }) });
    const pad = paper("pad", inches(6), inches(3), { designs: [design] });
    const layers = [
      panel(bySize(inches(4), inches(6)), {
        paper: choice("pad"),
        join: { by: "parts", parts: 2, seam: bare },
      }),
    ];
    // Turned, it would be whole; its pattern keeps it from that, and two thirds of 6 in are more than 3 in.
    const { expansion } = laid(project([card(inches(5), inches(7), layers)], { papers: [...papers, pad] }));
    expect(expansion.pieces.slice(1).map(({ forms }) => forms[0])).toMatchObject([
      { width: inches(4), height: inches(3) },
      { width: inches(4), height: inches(3) },
    ]);
  });
});

describe("a panel cut short below another layer", () => {
  const short = (cover: Layer) =>
    a7([
      panel(bySize(inches(4.5), inches(6.5)), {
        paper: choice("stars"),
        join: { by: "hide" },
        layers: [cover],
      }),
    ]);
  const atBottom = (width: number) =>
    strip(inches(width), { place: { x: { from: "middle" }, y: { from: "end", distance: 0 } } });

  test("loses the end that a strip lies on", () => {
    const { layers, expansion, card: made } = laid(short(atBottom(0.75)));
    expect(layers[0]).toEqual(["1b panel", 0.25, 0.25, 4.5, 6]);
    expect(expansion.pieces[1]?.forms).toMatchObject([{ width: inches(4.5), height: inches(6) }]);
    expect(made.layers[0]?.border.bottom).toBe(inches(0.75));
    expect(made.joins).toMatchObject([{ by: "hide", gives: inches(6), extent: inches(6.5), pieces: ["1b"] }]);
  });

  test("loses the upper end where only that is covered", () => {
    const atTop = strip(inches(1), { place: { x: { from: "middle" }, y: { from: "start", distance: 0 } } });
    expect(laid(short(atTop)).layers[0]).toEqual(["1b panel", 0.25, 0.75, 4.5, 6]);
  });

  test("may not show, and must be overlapped by 1/8 in", () => {
    expect(laid(short(atBottom(5 / 8))).layers).toHaveLength(2);
    expect(findProjectFaults(short(atBottom(9 / 16)))).toMatchObject([
      {
        code: "contradiction",
        path: "cards[0].front[0].join",
        found: "1/16 in that no layer lies on",
        message:
          "The paper of the 1b panel gives 6 in of its 6 1/2 in, and what is missing, 1/2 in, is to lie below another layer, " +
          "which reaches 1/8 in further. At the bottom, where most of it does, 1/16 in of these 5/8 in lie below none that goes over its " +
          "whole breadth of 4 1/2 in. Lay a strip or a panel there, or make the one that is there larger.",
      },
    ]);
    // A panel that leaves part of the breadth free hides nothing.
    const narrow = panel(bySize(inches(3), inches(2), { y: { from: "end", distance: 0 } }));
    const [fault] = findProjectFaults(short(narrow));
    expect(fault?.path).toBe("cards[0].front[0].join");
    expect(fault?.message).toContain(
      "Neither at the bottom nor at the top does one lie over its whole breadth of 4 1/2 in. Lay a strip or a panel of that",
    );
  });
});

test("a strip longer than its paper is joined along its length, in millimetres too", () => {
  const pad = paper("pad", millimetres(152), millimetres(152));
  const layers = [
    strip(millimetres(20), { paper: choice("pad"), join: { by: "parts", parts: 2, seam: bare } }),
  ];
  const { layers: found } = laid(
    project([card(millimetres(200), millimetres(100), layers)], { papers: [...papers, pad], units: "mm" }),
  );
  expect(found.map(([label]) => label)).toEqual(["1b strip part", "1c strip part"]);
});

describe("layers of projects made at random, each to be made up in some way,", () => {
  const seam = fc.constantFrom(null, "bare" as const, {
    cover: "bare" as const,
    width: 0,
    gap: inches(1 / 16),
  });
  const join: fc.Arbitrary<LayerJoin> = fc.oneof(
    fc.record({ by: fc.constant("parts" as const), parts: fc.constantFrom(2 as const, 3 as const), seam }),
    fc.record({
      by: fc.constant("ends" as const),
      paper: fc.constant(choice("night")),
      at: fc.constantFrom("both" as const, "one" as const),
      seam,
    }),
    fc.constant({ by: "hide" as const }),
  );
  const joins = fc.sample(join, { numRuns: 40, seed: 5 });

  test("are made up of pieces that their paper gives and that lose nothing, or are told of", () => {
    let turn = 0;
    let made = 0;
    checkProjects(({ project: whole, expansion: plain }) => {
      const index = indexFaces(whole);
      const [path] = plain.pieces
        .filter(
          ({ purpose, path: at }) => ["mat", "panel", "strip"].includes(purpose) && !at.includes(".mats["),
        )
        .filter(
          (piece) =>
            !waysToCut(
              piece,
              piece.faces.flatMap((id) => index.get(id) ?? []),
              whole.trimmer.longestCut,
            ).some(fits),
        )
        .map((piece) => piece.path);
      const own = joins[turn % joins.length];
      turn += 1;
      if (path === undefined || own === undefined) return;
      const cards = whole.cards.map((design) => ({
        ...design,
        surfaces: design.surfaces.map((one) => ({ ...one, layers: withJoin(one.layers, path, own) })),
      }));
      const { expansion, faults } = workOutProject({ ...whole, cards });
      expect(faults.every((fault) => fault.path.startsWith(`${path}.join`))).toBe(true);
      if (faults.length > 0) return;
      const found = expansion.cards.flatMap((each) => each.joins).find((each) => each.path === path);
      if (found === undefined) throw new Error(`Nothing tells of ${path}.`);
      made += 1;
      expect(found.by).toBe(own.by);
      const before = plain.cards
        .flatMap(({ layers }) => layers)
        .find(({ piece }) => plain.pieces.some(({ id, path: at }) => id === piece && at === path));
      const parts = expansion.cards
        .flatMap(({ layers }) => layers)
        .filter(({ piece }) => found.pieces.includes(piece));
      const gap = own.by !== "hide" && typeof own.seam === "object" ? (own.seam?.gap ?? 0) : 0;
      const sum = parts.reduce((all, part) => all + part[found.along], 0) + gap * (parts.length - 1);
      expect(before?.[found.along]).toBe(found.extent);
      expect(sum).toBe(own.by === "hide" ? found.gives : found.extent);
      for (const piece of expansion.pieces.filter(({ path: at }) => at === path)) {
        const faces = piece.faces.flatMap((id) => index.get(id) ?? []);
        expect(waysToCut(piece, faces, whole.trimmer.longestCut).some(fits)).toBe(true);
        expect(piece.forms.every((form) => form[found.along] <= found.gives + whole.precision)).toBe(true);
      }
      // In few projects a layer is larger than its paper.
    }, 4);
    expect(made).toBeGreaterThan(0);
  });
});
