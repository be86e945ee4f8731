import { describe, expect, test } from "vitest";
import {
  areaOf,
  catalogue,
  exactBoxOf,
  middleOf,
  type Outline,
  outlineOf,
  type Point,
  perimeterOf,
  type Shape,
  type ShapeName,
  scallopsOf,
  sizeOf,
  symmetryOf,
} from "../../src/index.js";
import { arcOf, directionAt } from "../../src/outline/arc.js";
import { spansOf } from "../../src/outline/outline.js";
import { distanceTo, samplesOf } from "../dense-samples.js";
import { enclosingCircle } from "./enclosing-circle.js";
import { faultsOf } from "./faults-of.js";
import { idealArea } from "./ideal-shapes.js";
import { named, SIZES, shapesOfSize } from "./sized-shapes.js";

const ALL = SIZES.flatMap((size) => shapesOfSize(size));

const made = new Map<Shape, Outline>();

/** Made once for all that is asked of it. */
function outlineOnce(shape: Shape): Outline {
  const outline = made.get(shape) ?? outlineOf(shape);
  made.set(shape, outline);
  return outline;
}

describe("every shape at twenty sizes", () => {
  test("there are twenty, odd and even, and every shape of the catalogue is among them", () => {
    expect(new Set(SIZES).size).toBe(20);
    expect(SIZES.filter((size) => size % 2 === 1).length).toBeGreaterThan(3);
    const names = new Set<ShapeName>(ALL.map(({ shape }) => shape));
    expect([...names].sort()).toEqual(catalogue.map(({ id }) => id).sort());
  });

  test("lies on whole ticks, the right way round, and never crosses itself", () => {
    const found = ALL.map((shape) => [named(shape), faultsOf(outlineOnce(shape))] as const);
    expect(found.filter(([, faults]) => faults.length > 0)).toEqual([]);
  });

  test("has its nominal size to the tick", () => {
    for (const shape of ALL) {
      const outline = outlineOnce(shape);
      const box = exactBoxOf(outline);
      const size = sizeOf(shape);
      // The box stands at the origin; what is round may reach between whole ticks.
      for (const corner of [box.x, box.y]) {
        expect(corner, named(shape)).toBeGreaterThan(-0.01);
        expect(corner, named(shape)).toBeLessThan(2);
      }
      if ("width" in size) {
        expect(Math.abs(box.width - size.width), named(shape)).toBeLessThan(0.01);
        expect(Math.abs(box.height - size.height), named(shape)).toBeLessThan(0.01);
      } else {
        const found = enclosingCircle(samplesOf(outline, Math.max(20, size.diameter / 600)));
        expect(Math.abs(2 * found.r - size.diameter), named(shape)).toBeLessThan(1);
      }
    }
  });

  test("has the area of the ideal shape within 1e-4", () => {
    for (const shape of ALL) {
      const ideal = idealArea(shape);
      expect(Math.abs(areaOf(outlineOnce(shape)) / ideal - 1), named(shape)).toBeLessThan(1e-4);
    }
  });

  test("is symmetric as the catalogue says", () => {
    for (const shape of ALL) {
      const outline = outlineOnce(shape);
      const middle = middleOf(shape);
      const { upright, level, turns } = symmetryOf(shape);
      const samples = samplesOf(outline, perimeterOf(outline) / 31);
      const farthest = (move: (point: Point) => Point) =>
        Math.max(...samples.map((point) => distanceTo(outline, move(point))));
      if (upright)
        expect(
          farthest(({ x, y }) => ({ x: 2 * middle.x - x, y })),
          named(shape),
        ).toBeLessThan(1.001);
      if (level)
        expect(
          farthest(({ x, y }) => ({ x, y: 2 * middle.y - y })),
          named(shape),
        ).toBeLessThan(1.001);
      const turn = (2 * Math.PI) / (turns === "any" ? 7 : turns);
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      const turned = ({ x, y }: Point) => ({
        x: middle.x + (x - middle.x) * c - (y - middle.y) * s,
        y: middle.y + (x - middle.x) * s + (y - middle.y) * c,
      });
      expect(farthest(turned), named(shape)).toBeLessThan(3);
    }
  });

  test("is not symmetric where the catalogue does not say so", () => {
    for (const shape of shapesOfSize(81280)) {
      const outline = outlineOnce(shape);
      const middle = middleOf(shape);
      const { upright, level } = symmetryOf(shape);
      const samples = samplesOf(outline, 500);
      const farthest = (move: (point: Point) => Point) =>
        Math.max(...samples.map((point) => distanceTo(outline, move(point))));
      if (!upright)
        expect(
          farthest(({ x, y }) => ({ x: 2 * middle.x - x, y })),
          named(shape),
        ).toBeGreaterThan(100);
      if (!level)
        expect(
          farthest(({ x, y }) => ({ x, y: 2 * middle.y - y })),
          named(shape),
        ).toBeGreaterThan(100);
    }
  });

  test("is an exact mirror image at even sizes", () => {
    const key = ({ x, y }: Point) => `${x},${y}`;
    for (const shape of ALL.filter((one) => symmetryOf(one).upright && one.shape !== "frame")) {
      const { outer, windows } = outlineOnce(shape);
      const points = [outer, ...windows].flatMap((ring) => ring.map(({ to }) => to));
      const twice = 2 * middleOf(shape).x;
      if (twice % 2 === 1) continue;
      const keys = new Set(points.map(key));
      const missing = points.filter(({ x, y }) => !keys.has(key({ x: twice - x, y })));
      expect(missing, named(shape)).toEqual([]);
    }
  });
});

describe("the oval", () => {
  /** Distance from the ellipse by the first-order formula |F| / |grad F|. */
  const off = (a: number, b: number, { x, y }: Point) => {
    const value = ((x - a) / a) ** 2 + ((y - b) / b) ** 2 - 1;
    return Math.abs(value) / (2 * Math.hypot((x - a) / a ** 2, (y - b) / b ** 2));
  };

  test.each([
    [60960, 81280],
    [81281, 24001],
    [447040, 330200],
    [20321, 5001],
    [447040, 50000],
    [16000, 15999],
  ])("%i x %i keeps within two ticks of the ellipse", (width, height) => {
    const samples = samplesOf(outlineOf({ shape: "oval", width, height }), 50);
    expect(Math.max(...samples.map((point) => off(width / 2, height / 2, point)))).toBeLessThan(2);
  });

  test("goes on smoothly from arc to arc", () => {
    for (const size of SIZES) {
      const spans = spansOf(outlineOf({ shape: "oval", width: size, height: Math.round(size * 0.7) }).outer);
      for (const [index, span] of spans.entries()) {
        const next = spans[(index + 1) % spans.length] as typeof span;
        const end = directionAt(span, arcOf(span), "end");
        const start = directionAt(next, arcOf(next), "start");
        expect(Math.abs(end.x * start.y - end.y * start.x)).toBeLessThan(0.005);
      }
    }
  });

  test("is as long round as Ramanujan says", () => {
    // S. Ramanujan, Modular equations and approximations to pi, 1914: his second formula.
    for (const size of SIZES) {
      for (const share of [0.9, 0.6, 0.35]) {
        const [width, height] = [size, Math.round(size * share)];
        const [a, b] = [width / 2, height / 2];
        const h = ((a - b) / (a + b)) ** 2;
        const ideal = Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
        expect(perimeterOf(outlineOf({ shape: "oval", width, height })) / ideal).toBeCloseTo(1, 4);
      }
    }
  });
});

describe("arcs and lines", () => {
  /** Where an outline turns by more than a hundredth, the angle at which an offset sees a corner. */
  const cornersOf = (shape: Shape) => {
    const { outer } = outlineOf(shape);
    const spans = spansOf(outer);
    return spans.filter((span, index) => {
      const next = spans[(index + 1) % spans.length] as typeof span;
      const end = directionAt(span, arcOf(span), "end");
      const start = directionAt(next, arcOf(next), "start");
      return Math.abs(end.x * start.y - end.y * start.x) > 0.01 || end.x * start.x + end.y * start.y < 0;
    }).length;
  };

  test("join smoothly but where a shape has a corner", () => {
    for (const shape of ALL) {
      const corners: Partial<Record<ShapeName, number>> = {
        circle: 0,
        oval: 0,
        heart: 2,
        drop: 1,
        leaf: 2,
        "half-circle": 2,
        "scalloped-circle": scallopsOf(shape)?.count ?? 0,
        "scalloped-oval": scallopsOf(shape)?.count ?? 0,
        "scalloped-square": scallopsOf(shape)?.count ?? 0,
        "scalloped-rectangle": scallopsOf(shape)?.count ?? 0,
      };
      const expected = corners[shape.shape];
      if (expected !== undefined) expect(cornersOf(shape), named(shape)).toBe(expected);
    }
    for (const size of SIZES) {
      expect(cornersOf({ shape: "square", side: size, corners: "round" })).toBe(0);
      expect(cornersOf({ shape: "square", side: size, corners: "ticket" })).toBe(8);
      expect(cornersOf({ shape: "arch", width: size, height: size })).toBe(2);
      expect(cornersOf({ shape: "arch", width: size, height: size, rise: Math.round(size / 4) })).toBe(4);
    }
  });
});

describe("cut lengths", () => {
  test.each([
    ["a disc is pi d round", { shape: "circle", diameter: 100_003 }, Math.PI * 100_003],
    [
      "a pill: two half circles and two sides",
      { shape: "rectangle", width: 90_000, height: 40_000, radius: 20_000 },
      Math.PI * 40_000 + 100_000,
    ],
    [
      "ticket corners turn as far as round ones",
      { shape: "square", side: 50_000, corners: "ticket", radius: 9_000 },
      4 * 32_000 + Math.PI * 18_000,
    ],
    ["a hexagon is three diameters round", { shape: "polygon", sides: 6, diameter: 81_280 }, 3 * 81_280],
  ] as const)("%s", (_, shape: Shape, ideal) => {
    expect(perimeterOf(outlineOf(shape)) / ideal).toBeCloseTo(1, 4);
  });

  test("a lobed circle's are n lobes of pi + 2 pi / n each", () => {
    for (const count of [3, 5, 9, 15, 21]) {
      const outline = outlineOf({ shape: "scalloped-circle", diameter: 160_000, count });
      const sine = Math.sin(Math.PI / count);
      const lobe = (80_000 * sine) / (1 + sine);
      const ideal = count * lobe * (Math.PI + (2 * Math.PI) / count);
      // Its valleys are needles; the hair of room there shortens them.
      expect(perimeterOf(outline) / ideal).toBeGreaterThan(0.99);
      expect(perimeterOf(outline) / ideal).toBeLessThan(1.0001);
    }
  });
});
