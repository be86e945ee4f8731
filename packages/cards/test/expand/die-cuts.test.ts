import { inches, massOf, TICKS_PER_INCH } from "@sheetwright/measure";
import { areaOf, boxOf, isInside, type Outline } from "@sheetwright/shapes";
import { describe, expect, it } from "vitest";
import {
  type CardLayer,
  type DieCut,
  expandProject,
  findProjectFaults,
  finishedCard,
  type Project,
  readProject,
} from "../../src/index.js";

/** A project of one A7 card with dies in circles and scallops, and these layers on its front. */
function projectOf(front: string, more = ""): Project {
  const { project, faults } = readProject(`sheetwright: 1
title: Moons
papers:
  night: { cardstock: us-letter, grain: long, weight: 216 gsm }
  cream: { cardstock: us-letter, weight: 216 gsm }
dies:
  disc: { shape: circle, sizes: { from: 1, to: 4 } }
  sewn: { shape: circle, size: 3, stitched: true }
  scallops: { shape: { kind: scalloped-circle, scallops: 24 }, sizes: { from: 2, to: 4 } }
  oval: { shape: oval, sizes: [2 x 3, 2 1/2 x 3 1/2] }
${more}cards:
  - { name: Moon, format: us-a7, base: night, front: [${front}] }
`);
  if (project === null) throw new Error(faults.map(({ path, message }) => `${path}: ${message}`).join("\n"));
  return project;
}

function cardOf(front: string, more = "") {
  const { cards, pieces } = expandProject(projectOf(front, more));
  const [card] = cards;
  if (card === undefined) throw new Error("There is no card.");
  return { card, layers: card.layers, pieces: pieces.slice(1) };
}

const inInches = (ticks: number) => ticks / TICKS_PER_INCH;
const size = ({ width, height }: { width: number; height: number }) =>
  `${inInches(width)} x ${inInches(height)}`;
const area = ({ outline = [] }: CardLayer) => outline.reduce((sum, one) => sum + areaOf(one), 0);
const squareInch = TICKS_PER_INCH * TICKS_PER_INCH;

describe("a layer cut by a die with a shape", () => {
  it("is a true outline in the middle of its box, its piece the die blank with the margin of the machine", () => {
    const { layers, pieces } = cardOf("{ die: disc, size: 3, paper: cream }");
    const [disc] = layers;
    expect(disc).toMatchObject({ x: inches(1), y: inches(2), width: inches(3), height: inches(3) });
    // The area of a circle.
    expect(area(disc as CardLayer) / squareInch).toBeCloseTo((Math.PI * 9) / 4, 5);
    expect(pieces.map(({ label, forms }) => `${label} ${size(forms[0] as never)}`)).toEqual([
      "1b die blank 3.5 x 3.5",
    ]);
    expect(pieces[0]?.die).toMatchObject({ name: "disc", shape: "circle", across: inches(3) });
    expect(pieces[0]?.die?.outline).toEqual(disc?.outline);
    const wide = "die-machine: { margin: 1/2 }\n";
    expect(size(cardOf("{ die: disc, size: 3, paper: cream }", wide).pieces[0]?.forms[0] as never)).toBe(
      "4 x 4",
    );
  });

  it("is told by width x height where it is not round", () => {
    const { pieces } = cardOf("{ die: oval, size: 2 x 3, paper: cream }");
    expect(pieces[0]?.die?.across).toBeUndefined();
    expect(size(pieces[0]?.die?.cut as never)).toBe("2 x 3");
  });

  it("weighs what its outline holds", () => {
    const without = finishedCard(projectOf(""), 1).mass.grams;
    const whole = massOf({ width: inches(3), height: inches(3) }, 216);
    const disc = finishedCard(projectOf("{ die: disc, size: 3, paper: cream }"), 1).mass.grams - without;
    expect(disc).toBeCloseTo((whole * Math.PI) / 4, 4);
    const trimmed = "{ die: disc, size: 3, paper: cream, trim: { bottom: half } }";
    const half = finishedCard(projectOf(trimmed), 1).mass.grams - without;
    expect(half).toBeCloseTo((whole * Math.PI) / 8, 4);
  });

  it("of the size only is the rectangle that it was before", () => {
    const { layers, pieces } = cardOf("{ die: plain, paper: cream }", "  plain: 2 x 3\n");
    expect(layers[0]).not.toHaveProperty("outline");
    expect(pieces[0]?.die).toEqual({ name: "plain", cut: { width: inches(2), height: inches(3) } });
  });
});

describe("a mat of the next die up", () => {
  it("is the smallest size that shows the border: of circles on circles half of what they differ by", () => {
    const mats = (border: string) => {
      const { card, layers, pieces } = cardOf(
        `{ die: disc, size: 3, paper: cream, mats: [{ mat: night, border: ${border} }] }`,
      );
      expect(layers.map(({ on }) => on)).toEqual([null, 0]);
      expect(pieces.map(({ label }) => label)).toEqual(["1b mat die blank", "1c die blank"]);
      const [reveal] = card.reveals ?? [];
      expect(reveal).toMatchObject({ path: "cards[0].front[0].mats[0]", mat: "1b", piece: "1c" });
      return [size(layers[0] as CardLayer), inInches(reveal?.least ?? 0), inInches(reveal?.most ?? 0)];
    };
    expect(mats("1/8")).toEqual(["3.25 x 3.25", 0.125, 0.125]);
    expect(mats("3/16")).toEqual(["3.5 x 3.5", 0.25, 0.25]);
    expect(mats("1/2")).toEqual(["4 x 4", 0.5, 0.5]);
  });

  it("of another shape shows its border by the real outlines", () => {
    const { card, layers } = cardOf(
      "{ die: disc, size: 2, paper: cream, mats: [{ mat: night, die: scallops, border: 1/8 }] }",
    );
    const [reveal] = card.reveals ?? [];
    const [scallops, disc] = layers as [CardLayer, CardLayer];
    // Of a lobed circle of 24 in one of the diameter D the valleys lie on the radius D / 2 / (1 + sin) cos of 7.5 degrees, which
    // is 0.43848 D; the tops on D / 2. One 2 1/2 in across would show 0.096 in.
    expect(size(scallops)).toBe("2.75 x 2.75");
    expect(inInches(reveal?.most ?? 0)).toBeCloseTo(0.375, 3);
    expect(inInches(reveal?.least ?? 0)).toBeCloseTo(2.75 * 0.43848 - 1, 2);
    expect(size(disc)).toBe("2 x 2");
  });

  it("may be turned where it is wider than high", () => {
    const lying = "  lying: { shape: oval, sizes: [3 1/4 x 2 1/4] }\n";
    const { layers, pieces } = cardOf(
      "{ die: oval, size: 2 x 3, paper: cream, mats: [{ mat: night, die: lying, border: 1/8 }] }",
      lying,
    );
    expect(size(layers[0] as CardLayer)).toBe("2.25 x 3.25");
    expect(size(pieces[0]?.forms[0] as never)).toBe("2.75 x 3.75");
  });

  it("is told where no size is large enough, with what is missing", () => {
    const project = projectOf("{ die: disc, size: 4, paper: cream }");
    const small = projectOf("{ die: disc, size: 2, paper: cream, mats: [{ mat: night, die: disc }] }");
    const { mats } = dieCutOf(small);
    const faults = findProjectFaults(withLayer(project, { ...dieCutOf(project), mats }));
    expect(faults.map(({ code, path }) => [code, path])).toEqual([
      ["no-die", "cards[0].front[0].mats[0].border"],
    ]);
    expect(faults[0]?.message).toContain("the nearest, 4 in, shows nothing of itself");
    expect(faults[0]?.message).toContain("1/4 in larger across");
  });
});

function dieCutOf({ cards }: Project): DieCut {
  const layer = cards[0]?.surfaces[0]?.layers[0];
  if (layer?.kind !== "die") throw new Error("There is no die cut.");
  return layer;
}

function withLayer(project: Project, layer: DieCut): Project {
  const [design] = project.cards;
  if (design === undefined) throw new Error("There is no card.");
  const surfaces = [{ name: "front" as const, path: "cards[0].front", layers: [layer] }];
  return { ...project, cards: [{ ...design, surfaces }] };
}

describe("a straight cut", () => {
  it("leaves half a disc, and as much of its mat along the same line", () => {
    const { layers, pieces } = cardOf(
      "{ die: disc, size: 2, paper: cream, trim: { bottom: half }, mats: [{ mat: night }], bottom: 1 }",
    );
    const [mat, disc] = layers as [CardLayer, CardLayer];
    expect([size(mat), size(disc)]).toEqual(["2.25 x 1.125", "2 x 1"]);
    expect(disc.y + disc.height).toBe(mat.y + mat.height);
    expect(inches(7) - mat.y - mat.height).toBe(inches(1));
    expect(disc.border).toEqual({ left: inches(1 / 8), right: inches(1 / 8), top: inches(1 / 8), bottom: 0 });
    // Half of a circle's area.
    expect(area(disc) / squareInch).toBeCloseTo(Math.PI / 2, 4);
    // The dies cut whole shapes, which are cut straight afterwards.
    expect(pieces.map(({ die }) => [size(die?.cut as never), inInches(die?.trim?.bottom ?? 0)])).toEqual([
      ["2.25 x 2.25", 1.125],
      ["2 x 2", 1],
    ]);
  });

  it("of a layer cut without a die needs no more paper than what is left", () => {
    const { pieces } = cardOf("{ shape: circle, size: 2, paper: cream, trim: { bottom: half, left: half } }");
    expect(size(pieces[0]?.forms[0] as never)).toBe("1.5 x 1.5");
    expect(pieces[0]?.die).toMatchObject({ name: null, cut: { width: inches(1), height: inches(1) } });
    expect(pieces[0]?.die).not.toHaveProperty("trim");
  });

  it("cuts the stitches that a die has pressed, and is followed by those made afterwards", () => {
    const [whole, pressed] = [
      "{ die: sewn, paper: cream }",
      "{ die: sewn, paper: cream, trim: { top: 1 } }",
    ].map((front) => cardOf(front).layers[0] as CardLayer) as [CardLayer, CardLayer];
    const sewn = cardOf("{ die: disc, size: 3, paper: cream, trim: { top: 1 }, stitched: true }")
      .layers[0] as CardLayer;
    const dashes = (layer: CardLayer) => layer.stitches?.dashes ?? [];
    expect(dashes(whole).length).toBeGreaterThan(50);
    expect(dashes(pressed).length).toBeGreaterThan(25);
    expect(dashes(pressed).length).toBeLessThan(dashes(whole).length);
    const top = (layer: CardLayer) =>
      Math.min(
        ...dashes(layer)
          .flat()
          .map(({ y }) => y),
      );
    // Pressed ones run to the cut; those made afterwards keep off it.
    expect(top(pressed)).toBeLessThan(inches(1 / 16));
    expect(Math.abs(top(sewn) - inches(1 / 8))).toBeLessThan(8);
    for (const layer of [whole, pressed, sewn]) {
      const [outline] = layer.outline as readonly [Outline];
      const box = boxOf(outline);
      for (const { x, y } of dashes(layer).flat()) {
        const onCut = y === 0 && box.y === 0;
        expect(onCut || isInside(outline, { x, y })).toBe(true);
      }
    }
  });
});

describe("a shadow", () => {
  it("is the outline grown all round: of a disc a larger disc, without a die", () => {
    const { layers, pieces } = cardOf(
      "{ die: disc, size: 2, paper: cream, shadow: { paper: night, border: 1/4 } }",
    );
    const [shadow] = layers as [CardLayer];
    expect(size(shadow)).toBe("2.5 x 2.5");
    expect(area(shadow) / squareInch).toBeCloseTo((Math.PI * 6.25) / 4, 3);
    expect(pieces[0]).toMatchObject({ label: "1b shadow shape", die: { name: null } });
    expect(size(pieces[0]?.forms[0] as never)).toBe("3 x 3");
  });

  it("is called a shape, as all that no die cuts is, and not a die blank", () => {
    const { pieces } = cardOf(
      "{ shape: star, size: 2, name: star, paper: cream, shadow: { paper: night, border: 1/4 } }",
    );
    expect(pieces.map(({ label }) => label)).toEqual(["1b star shadow shape", "1c star shape"]);
    const { faults } = readProject(`sheetwright: 1
title: One
papers: { cream: { cardstock: us-letter } }
cards: [{ name: A, format: us-a2, base: cream, front: [{ shape: circle, size: 5, paper: cream }] }]
`);
    expect(faults[0]?.message).toMatch(/^The 1b shape is 5 x 5 in, and the front/);
  });

  it("fills windows that are narrower than its gaps, and leaves wider ones open", () => {
    const windows = (fill: string) => {
      const star = "{ kind: circle, window: { shape: circle, size: 1 } }";
      const shadow = `{ paper: night, border: 1/8, fill-gaps: ${fill} }`;
      const { layers } = cardOf(`{ shape: ${star}, size: 2, paper: cream, shadow: ${shadow} }`);
      return layers[0]?.outline?.[0]?.windows.length;
    };
    expect(windows("1/2")).toBe(1);
    expect(windows("7/8")).toBe(0);
  });
});

describe("what lies on a shape", () => {
  // The largest square in a disc of 3 in has sides of 3 / sqrt 2 = 2.1213 in.
  it("lies within its outline, to the tick that a square in a circle has", () => {
    const faults = (side: number) => {
      const project = projectOf(
        "{ die: disc, size: 3, paper: cream, layers: [{ panel: night, size: 1 x 1 }] }",
      );
      const layer = dieCutOf(project);
      const [inner] = layer.layers;
      if (inner?.kind !== "panel" || inner.extent.by !== "size") throw new Error("There is no panel.");
      const square = { ...inner, extent: { ...inner.extent, size: { width: side, height: side } } };
      return findProjectFaults(withLayer(project, { ...layer, layers: [square] }));
    };
    expect(faults(inches(2.12))).toEqual([]);
    const [fault, ...others] = faults(inches(2.25));
    expect(others).toEqual([]);
    expect(fault).toMatchObject({ code: "too-large", path: "cards[0].front[0].layers[0].size" });
    // In marks of 1/16 in on both sides.
    expect(fault?.message).toContain("About the same middle 2 x 2 in would fit.");
  });

  it("is told how long a strip may be that would lie from edge to edge of the box", () => {
    const project = projectOf(
      "{ die: disc, size: 3, paper: cream, layers: [{ strip: night, width: 1/4, length: 1 }] }",
    );
    const layer = dieCutOf(project);
    const [inner] = layer.layers;
    if (inner?.kind !== "strip") throw new Error("There is no strip.");
    const faults = findProjectFaults(withLayer(project, { ...layer, layers: [{ ...inner, length: null }] }));
    // Half of the strip's width off the middle the disc is 2 sqrt(1.5^2 - 0.125^2) = 2.9896 in wide.
    expect(faults.map(({ message }) => message)).toEqual([
      expect.stringContaining("About the same middle 2 7/8 x 1/4 in would fit."),
    ]);
  });

  it("may lie across a window", () => {
    const ring = "{ kind: circle, window: { shape: circle, size: 1 } }";
    const front = `{ shape: ${ring}, size: 3, paper: cream, layers: [{ strip: night, width: 1/4, length: 2 1/2 }] }`;
    expect(cardOf(front).layers).toHaveLength(2);
  });
});

describe("a project made by another tool", () => {
  const project = projectOf("{ die: sewn, paper: cream }");
  const layer = dieCutOf(project);
  const found = (changed: Partial<DieCut>) =>
    findProjectFaults(withLayer(project, { ...layer, ...changed })).map(({ code, path }) => [code, path]);

  it.each<[string, Partial<DieCut>, string, string]>([
    [
      "a size that is not that of its shape",
      { cut: { width: inches(2), height: inches(3) } },
      "contradiction",
      "die",
    ],
    [
      "a shape that there is not",
      { shape: { shape: "star", diameter: inches(3), points: 2 } },
      "contradiction",
      "die",
    ],
    ["a frame without its shapes", { shape: { shape: "frame" } as never }, "contradiction", "die"],
    [
      "stitches at half a tick",
      { stitched: { by: "hand", inset: 2000.5, marks: "dashes" } },
      "not-a-length",
      "stitched.inset",
    ],
    [
      "stitches by three numbers",
      { stitched: { by: "hand", inset: 2000, marks: "dashes", dash: 2000, gap: 2000, perInch: 8 } },
      "contradiction",
      "stitched.per-inch",
    ],
    [
      "holes through the edge",
      { stitched: { by: "hand", inset: 300, marks: "holes" } },
      "contradiction",
      "stitched.inset",
    ],
    [
      "a straight cut of less than nothing",
      { trim: { left: -1, right: 0, top: 0, bottom: 0 } },
      "not-a-length",
      "trim",
    ],
    [
      "a mat of no size",
      { mats: [{ paper: layer.paper, die: "disc", border: 10, sizes: [] }] },
      "not-a-count",
      "mats[0].die",
    ],
    [
      "a mat without a border",
      { mats: [{ paper: layer.paper, die: "disc", border: 0, sizes: [layer] }] },
      "not-a-length",
      "mats[0].border",
    ],
    [
      "a shadow without a border",
      { shadow: { paper: layer.paper, border: 0, fillGaps: 0, margin: 0 } },
      "not-a-length",
      "shadow.border",
    ],
  ])("is told of %s", (_, changed, code, key) => {
    expect(found(changed)).toEqual([[code, `cards[0].front[0].${key}`]]);
  });

  it("is told of stitches in what has no shape, and of a die machine without plates", () => {
    const { shape: _, ...plain } = layer;
    const faults = findProjectFaults(withLayer(project, plain));
    expect(faults.map(({ path }) => path)).toEqual(["cards[0].front[0].stitched"]);
    const dieMachine = { platform: { width: 0, height: 1 }, margin: 1, narrowestBridge: 0 };
    expect(findProjectFaults({ ...project, dieMachine }).map(({ path }) => path)).toEqual([
      "die-machine.platform",
    ]);
  });
});
