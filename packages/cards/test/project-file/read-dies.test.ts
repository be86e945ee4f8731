import { inches, millimetres } from "@sheetwright/measure";
import { catalogue, outlineOf, type Shape } from "@sheetwright/shapes";
import { describe, expect, it } from "vitest";
import { type DieCut, projectSchema, readProject } from "../../src/index.js";

/** The first layer of a project with these dies and this layer. */
function layerOf(layer: string, dies = "", more = ""): DieCut {
  const { project, faults } = readProject(`sheetwright: 1
title: Dies
papers: { night: { cardstock: us-letter } }
${more}${dies === "" ? "" : `dies: ${dies}\n`}cards: [{ name: A, size: 8 x 10, base: night, front: [{ ${layer}, paper: night }] }]
`);
  const found = project?.cards[0]?.surfaces[0]?.layers[0];
  if (found?.kind !== "die") throw new Error(faults.map(({ path, message }) => `${path}: ${message}`).join());
  return found;
}

interface Keys {
  readonly properties?: Readonly<Record<string, unknown>>;
}

/** The keys of the group in the schema that has a key. */
function keysWith(key: string, schema: unknown = projectSchema()): readonly string[] {
  if (typeof schema !== "object" || schema === null) return [];
  const { properties = {} } = schema as Keys;
  if (key in properties && "kind" in properties) return Object.keys(properties);
  return Object.values(schema)
    .map((inner) => keysWith(key, inner))
    .reduce((found, keys) => (found.length > 0 ? found : keys), [] as readonly string[]);
}

describe("shapes in a project file", () => {
  it("are all those of the catalogue, with all their parameters", () => {
    const keys = keysWith("scallops");
    const called = (key: string) =>
      key === "count" ? "scallops" : key === "holeFromTop" ? "hole-from-top" : key;
    const sizes = ["diameter", "side", "width", "height"];
    for (const { id, parameters } of catalogue.filter(({ id }) => id !== "frame")) {
      const own = parameters.map(({ key }) => key).filter((key) => !sizes.includes(key));
      expect(keys).toEqual(expect.arrayContaining(own.map(called)));
      const size = parameters.some(({ key }) => key === "width") ? "3 x 4" : "3";
      const needed = id === "polygon" ? "{ kind: polygon, sides: 7 }" : id;
      expect(layerOf(`shape: ${needed}, size: ${size}`).shape?.shape).toBe(id);
    }
  });

  it.each<[string, string, Shape]>([
    ["circle", "3", { shape: "circle", diameter: inches(3) }],
    ["square", "3 x 3", { shape: "square", side: inches(3) }],
    ["oval", "2 x 3", { shape: "oval", width: inches(2), height: inches(3) }],
    [
      "{ kind: scalloped-circle, scallops: 24 }",
      "3",
      { shape: "scalloped-circle", diameter: inches(3), count: 24 },
    ],
    [
      "{ kind: star, points: 6, depth: 1/2 }",
      "76 mm",
      { shape: "star", diameter: millimetres(76), points: 6, depth: inches(1 / 2) },
    ],
    ["{ kind: tag, hole: 0 }", "2 x 3", { shape: "tag", width: inches(2), height: inches(3), hole: 0 }],
  ])("are read as the catalogue has them: %s of %s", (shape, size, expected) => {
    const layer = layerOf(`shape: ${shape}, size: ${size}`);
    expect(layer).toMatchObject({ die: null, shape: expected });
    expect(layer.blank.width).toBeGreaterThanOrEqual(layer.cut.width + 2 * inches(1 / 4));
  });

  it("with a window are frames, of which larger sizes of a set keep the width", () => {
    const dies = "{ ring: { shape: { kind: circle, window: { shape: circle, size: 1 } }, sizes: [2, 3] } }";
    const windowOf = (size: string) => {
      const { shape } = layerOf(`die: ring, size: ${size}`, dies);
      return shape?.shape === "frame" && shape.window.shape === "circle" ? shape.window.diameter : null;
    };
    expect([windowOf("2"), windowOf("3")]).toEqual([inches(1), inches(2)]);
    const { shape } = layerOf("die: ring, size: 2", dies);
    expect(outlineOf(shape as Shape).windows).toHaveLength(1);
  });
});

describe("sizes of dies", () => {
  it("are a list, or run by a step from the smallest to the largest, both ways", () => {
    const dies =
      "{ a: { shape: oval, sizes: { from: 1 x 2, to: 2 x 3 } }, b: { shape: circle, sizes: [3, 2] } }";
    for (const size of ["1 x 2", "1 1/4 x 2 1/4", "1 3/4 x 2 3/4", "2 x 3"])
      expect(layerOf(`die: a, size: ${size}`, dies).cut.height).toBeGreaterThan(inches(1));
    expect(layerOf("die: b, size: 2", dies).cut).toEqual({ width: inches(2), height: inches(2) });
    const mats = "mats: [{ mat: night, die: b, border: 1/2 }]";
    expect(layerOf(`die: b, size: 2, ${mats}`, dies).mats?.[0]?.sizes.map(({ cut }) => cut.width)).toEqual([
      inches(2),
      inches(3),
    ]);
  });

  it("make blanks with the margin of the die, else of the machine, rounded up to the precision", () => {
    const blank = (die: string, more = "") => layerOf("die: a", `{ a: ${die} }`, more).blank.width;
    expect(blank("{ shape: circle, size: 2 }")).toBe(inches(2.5));
    expect(blank("{ shape: circle, size: 2 }", "die-machine: { margin: 1/8 }\n")).toBe(inches(2.25));
    expect(blank("{ shape: circle, size: 2, margin: 1 }", "die-machine: { margin: 1/8 }\n")).toBe(inches(4));
    // A hexagon of 2 in is sqrt 3 in wide: 2.232 in with its margin.
    expect(blank("{ shape: { kind: polygon, sides: 6 }, size: 2 }")).toBe(inches(2.25));
  });

  it("may lie on the shelf in another unit, with counts that are none", () => {
    const shelf = `sheetwright-shelf: 1
units: mm
die-machine: { platform: 150 x 230, margin: 5 }
dies:
  flower: { shape: { kind: scalloped-circle, scallops: 8, depth: 5 }, sizes: { from: 40, to: 60, step: 10 }, stitched: 4 }
  sewn: { shape: circle, size: 50, stitched: { inset: 4, per-inch: 8 } }
`;
    const project = (die: string) => `sheetwright: 1
title: Dies
shelf: s.yaml
papers: { night: { cardstock: us-letter } }
cards: [{ name: A, size: 5 x 7, base: night, front: [{ ${die}, paper: night }] }]
`;
    const read = (die: string) => readProject(project(die), { shelf: { file: "s.yaml", text: shelf } });
    const flower = read("die: flower, size: 50 mm");
    expect(flower.faults).toEqual([]);
    expect(flower.project?.dieMachine).toMatchObject({ margin: millimetres(5) });
    expect(flower.project?.dieMachine).not.toHaveProperty("strips");
    expect(flower.project?.cards[0]?.surfaces[0]?.layers[0]).toMatchObject({
      shape: { shape: "scalloped-circle", diameter: millimetres(50), count: 8, depth: millimetres(5) },
      stitched: { by: "die", inset: millimetres(4), marks: "dashes" },
    });
    const without = shelf.replace("margin: 5 }", "margin: 5, strips: false }");
    const own = { shelf: { file: "s.yaml", text: without } };
    expect(readProject(project("die: flower, size: 50 mm"), own).project?.dieMachine?.strips).toBe(false);
    expect(read("die: sewn").project?.cards[0]?.surfaces[0]?.layers[0]).toMatchObject({
      stitched: { inset: millimetres(4), perInch: 8 },
    });
  });

  it("leave stitches out where a layer says so, and take those of the layer before those of the die", () => {
    const dies = "{ a: { shape: circle, size: 2, stitched: true } }";
    expect(layerOf("die: a", dies).stitched).toMatchObject({ by: "die", inset: inches(1 / 8) });
    expect(layerOf("die: a, stitched: false", dies)).not.toHaveProperty("stitched");
    expect(layerOf("die: a, stitched: 1/4", dies).stitched).toMatchObject({
      by: "hand",
      inset: inches(1 / 4),
    });
  });
});
