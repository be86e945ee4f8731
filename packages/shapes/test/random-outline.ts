// Outlines for properties, valid by construction or by the combinations of the package: whole ticks, simple, material on
// the same side everywhere. From 1/4 in to about 8 in across, some on a grid of 1/8 in so that edges and corners meet
// exactly, and most with arcs.

import fc from "fast-check";
import { difference, union } from "../src/clip/combine.js";
import { mirrored, moved, quarterTurned } from "../src/outline/move.js";
import type { Edge, Outline, Ring } from "../src/outline/outline.js";
import type { Point } from "../src/outline/point.js";

/** 1/8 in. */
const GRID = 5080;

/** A length of so much at the least and at the most, every other one whole eighths of an inch. */
function anyLength(min: number, max: number): fc.Arbitrary<number> {
  return fc.oneof(
    fc.integer({ min, max }),
    fc.integer({ min: Math.ceil(min / GRID), max: Math.floor(max / GRID) }).map((steps) => steps * GRID),
  );
}

/** On a circle about a point, `part` of a full turn on from the right, towards below. */
function onCircle({ x, y }: Point, radius: number, part: number): Point {
  const angle = 2 * Math.PI * part;
  return { x: Math.round(x + radius * Math.cos(angle)) + 0, y: Math.round(y + radius * Math.sin(angle)) + 0 };
}

function straight(corners: readonly Point[]): Outline {
  return { outer: corners.map((to) => ({ to })), windows: [] };
}

/** A disc, its centre at the given place. */
export function discAt(centre: Point, radius: number): Outline {
  const at = (part: number) => onCircle(centre, radius, part);
  return {
    outer: [
      { to: at(0.5), through: at(0.25) },
      { to: at(0), through: at(0.75) },
    ],
    windows: [],
  };
}

/** A rectangle with its top left corner at the origin. */
export function rectangleOf(width: number, height: number): Outline {
  return straight([
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ]);
}

/** A rectangle whose corners are quarter circles, bulging (round) or hollow (ticket). */
export function roundedRectangle(width: number, height: number, radius: number, hollow = false): Outline {
  const sides: Edge[] = [];
  const corners = [
    { x: width, y: 0, start: -0.25 },
    { x: width, y: height, start: 0 },
    { x: 0, y: height, start: 0.25 },
    { x: 0, y: 0, start: 0.5 },
  ];
  for (const { x, y, start } of corners) {
    // The circle's centre: the corner itself of a hollow one, else a radius inside both sides.
    const inside = {
      x: x === 0 ? radius : width - radius,
      y: y === 0 ? radius : height - radius,
    };
    const from = onCircle(inside, radius, start);
    const to = onCircle(inside, radius, start + 0.25);
    const through = hollow
      ? onCircle({ x, y }, radius, start + 0.625)
      : onCircle(inside, radius, start + 0.125);
    sides.push({ to: from }, { to, through });
  }
  return { outer: sides.filter(({ to }, index) => !isSame(to, sides.at(index - 1)?.to)), windows: [] };
}

function isSame(a: Point, b: Point | undefined): boolean {
  return a.x === b?.x && a.y === b.y;
}

/** Lobes on the sides of a regular polygon, half circles or shallower; a first corner at the top. */
export function lobedDisc(count: number, radius: number, depth: number): Outline {
  const centre = { x: 0, y: 0 };
  const outer = Array.from({ length: count }, (_, index): Edge => {
    const middle = (index + 0.5) / count - 0.25;
    const side = radius * Math.cos(Math.PI / count);
    return {
      to: onCircle(centre, radius, (index + 1) / count - 0.25),
      through: onCircle(centre, side + depth, middle),
    };
  });
  return { outer, windows: [] };
}

/** Sharp, round or ticket corners. */
const anyRectangle: fc.Arbitrary<Outline> = fc
  .record({
    width: anyLength(10_160, 240_000),
    height: anyLength(10_160, 240_000),
    corner: fc.constantFrom("sharp", "round", "ticket"),
    share: fc.integer({ min: 5, max: 45 }),
  })
  .map(({ width, height, corner, share }) => {
    if (corner === "sharp") return rectangleOf(width, height);
    const radius = Math.floor((Math.min(width, height) * share) / 100);
    return roundedRectangle(width, height, radius, corner === "ticket");
  });

export const anyDisc: fc.Arbitrary<Outline> = anyLength(5_080, 120_000).map((radius) =>
  discAt({ x: radius, y: radius }, radius),
);

/** A polygon whose corners are all seen from its middle: convex ones, stars and odd shards. */
export const anyPolygon: fc.Arbitrary<Outline> = fc
  .record({
    radius: anyLength(10_160, 120_000),
    corners: fc.array(
      fc.record({ step: fc.integer({ min: 4, max: 10 }), reach: fc.integer({ min: 25, max: 100 }) }),
      {
        minLength: 3,
        maxLength: 12,
      },
    ),
  })
  .map(({ radius, corners }) => {
    // No step is as wide as half a turn, so that the middle stays inside.
    const whole = corners.reduce((sum, { step }) => sum + step, 0);
    let part = 0;
    return straight(
      corners.map(({ step, reach }) => {
        part += step / whole;
        return onCircle({ x: 0, y: 0 }, (radius * reach) / 100, part);
      }),
    );
  });

/** A convex polygon: corners on an oval. */
export const anyConvexPolygon: fc.Arbitrary<Outline> = fc
  .record({
    radius: anyLength(10_160, 120_000),
    squeeze: fc.integer({ min: 30, max: 100 }),
    steps: fc.array(fc.integer({ min: 4, max: 10 }), { minLength: 3, maxLength: 12 }),
  })
  .map(({ radius, squeeze, steps }) => {
    const whole = steps.reduce((sum, step) => sum + step, 0);
    let part = 0;
    return straight(
      steps.map((step) => {
        part += step / whole;
        const { x, y } = onCircle({ x: 0, y: 0 }, radius, part);
        return { x, y: Math.round((y * squeeze) / 100) + 0 };
      }),
    );
  });

/** Six to twenty-four lobes, from shallow arcs to half circles. */
const anyLobed: fc.Arbitrary<Outline> = fc
  .record({
    count: fc.integer({ min: 6, max: 24 }),
    radius: anyLength(15_240, 120_000),
    share: fc.integer({ min: 20, max: 100 }),
  })
  .map(({ count, radius, share }) =>
    lobedDisc(count, radius, (radius * Math.sin(Math.PI / count) * share) / 100),
  );

const anyPart: fc.Arbitrary<Outline> = fc.oneof(anyRectangle, anyDisc, anyPolygon, anyLobed);

/** How far and how often turned a part is put on others. */
const anyPlace = fc.record({
  x: fc.integer({ min: -20, max: 20 }).map((steps) => steps * GRID),
  y: fc.integer({ min: -20, max: 20 }).map((steps) => steps * GRID),
  off: fc.constantFrom(0, 0, 0, 1, -1, 777),
  turns: fc.constantFrom(0 as const, 1 as const, 2 as const, 3 as const),
  isMirrored: fc.boolean(),
});

const anyPlacedPart: fc.Arbitrary<Outline> = fc
  .tuple(anyPart, anyPlace)
  .map(([part, { x, y, off, turns, isMirrored }]) => {
    const turned = quarterTurned(isMirrored ? mirrored(part) : part, turns);
    return moved(turned, { x: x + off, y: y - off });
  });

/** Several parts that may lie apart, none overlapping another; they may touch. */
export const anyOutlines: fc.Arbitrary<readonly Outline[]> = fc
  .record({
    parts: fc.array(anyPlacedPart, { minLength: 1, maxLength: 4 }),
    holes: fc.array(anyPlacedPart, { maxLength: 2 }),
  })
  .map(({ parts, holes }) => {
    const whole = union(parts);
    const pierced = holes.length === 0 ? whole : difference(whole, holes);
    return pierced.length === 0 ? whole : pierced;
  });

/** A part with up to two smaller ones of any kind cut out of it, near its middle or over its edge. */
const anyFrame: fc.Arbitrary<Outline> = fc
  .record({
    part: anyPart,
    holes: fc.array(
      fc.record({
        hole: anyPart,
        share: fc.integer({ min: 10, max: 60 }),
        x: fc.integer({ min: -30, max: 30 }),
        y: fc.integer({ min: -30, max: 30 }),
      }),
      { minLength: 1, maxLength: 2 },
    ),
  })
  .map(({ part, holes }) => {
    const whole = roughBox(part);
    const cut = holes.map(({ hole, share, x, y }) => {
      const box = roughBox(hole);
      const scale = (Math.min(whole.width, whole.height) * share) / 100 / Math.max(box.width, box.height);
      const place = (at: number, middle: number, wanted: number) =>
        Math.round((at - middle) * scale + wanted) + 0;
      return mapped(hole, (point) => ({
        x: place(point.x, box.x + box.width / 2, whole.x + (whole.width * (50 + x)) / 100),
        y: place(point.y, box.y + box.height / 2, whole.y + (whole.height * (50 + y)) / 100),
      }));
    });
    return difference([part], cut)[0] ?? part;
  });

/** Of the points that tell the outline. */
function roughBox({ outer }: Outline) {
  const points = outer.flatMap((edge) => ("through" in edge ? [edge.to, edge.through] : [edge.to]));
  const x = Math.min(...points.map((point) => point.x));
  const y = Math.min(...points.map((point) => point.y));
  const right = Math.max(...points.map((point) => point.x));
  return { x, y, width: right - x, height: Math.max(...points.map((point) => point.y)) - y };
}

function mapped({ outer }: Outline, move: (point: Point) => Point): Outline {
  return {
    outer: outer.map((edge) =>
      "through" in edge ? { to: move(edge.to), through: move(edge.through) } : { to: move(edge.to) },
    ),
    windows: [],
  };
}

/** One outline of any sort: single shapes, several grown together, with bays and windows. */
export const anyOutline: fc.Arbitrary<Outline> = fc.oneof(
  anyPart,
  anyFrame,
  anyOutlines.map((outlines) => outlines[0] as Outline),
);

/** An outline that an upright mirror on x = 0 maps onto itself, to the tick. */
export const anySymmetricOutline: fc.Arbitrary<Outline> = fc.oneof(
  anyRectangle.map((rectangle) => middled(rectangle)),
  anyDisc.map((disc) => middled(disc)),
  anyLobed.map(({ outer }) => symmetric(outer)),
  anyPolygon.map(({ outer }) => symmetric(outer)),
);

/** Moved so that its middle lies on x = 0, and twice as large where that would be half a tick. */
function middled(outline: Outline): Outline {
  const { x, width } = roughBox(outline);
  const sum = 2 * x + width;
  if (sum % 2 === 0) return moved(outline, { x: 0 - sum / 2, y: 0 });
  return moved(
    mapped(outline, (point) => ({ x: 2 * point.x, y: 2 * point.y })),
    { x: 0 - sum, y: 0 },
  );
}

/** The right half of a shape seen from the origin, joined to its mirror image. */
function symmetric(ring: Ring): Outline {
  const [half] = difference(
    [{ outer: ring, windows: [] }],
    [moved(rectangleOf(1_000_000, 2_000_000), { x: -1_000_000, y: -1_000_000 })],
  );
  const right = (half as Outline).outer;
  // The half's straight edge on the axis, where it has one, is left out, and the two halves are joined end to end.
  const cut = right.findIndex(
    (edge, index) => edge.to.x === 0 && right.at(index - 1)?.to.x === 0 && !("through" in edge),
  );
  if (cut < 0) return middled({ outer: discAt({ x: 0, y: 0 }, 40_000).outer, windows: [] });
  const open = [...right.slice(cut + 1), ...right.slice(0, cut)];
  const start = right[cut]?.to as Point;
  const back = open
    .map((edge, index) => ({ edge, from: index === 0 ? start : (open[index - 1] as Edge).to }))
    .reverse()
    .map(({ edge, from }): Edge => {
      const to = { x: 0 - from.x, y: from.y };
      return "through" in edge ? { to, through: { x: 0 - edge.through.x, y: edge.through.y } } : { to };
    });
  return { outer: [...open, ...back], windows: [] };
}
