import fc from "fast-check";
import type { Shape } from "../../src/index.js";

/*
 * Shapes of all kinds with numbers from the ranges that the catalogue states; many odd, many at the ends of their ranges.
 */

/** 3 mm to 300 mm, or another least. */
function side(least = 4_800): fc.Arbitrary<number> {
  return fc.integer({ min: least, max: 480_000 });
}

/** A whole number from a part of a length to another part of it. */
function within(length: number, least: number, most: number): fc.Arbitrary<number> {
  const max = Math.floor(length * most);
  return fc.integer({ min: Math.min(max, Math.ceil(length * least)), max });
}

function maybe<Value>(arbitrary: fc.Arbitrary<Value>): fc.Arbitrary<Value | undefined> {
  return fc.option(arbitrary, { nil: undefined });
}

const sides = (least?: number) => fc.record({ width: side(least), height: side(least) });

const corners = (shorter: number) =>
  fc.constantFrom("sharp", "round", "ticket" as const).chain((cut) =>
    fc.record({
      corners: fc.constant(cut as "sharp" | "round" | "ticket"),
      radius: maybe(within(shorter, 0, cut === "ticket" ? 0.4 : 0.5)),
    }),
  );

const plain: readonly fc.Arbitrary<Shape>[] = [
  side(16).map((diameter) => ({ shape: "circle", diameter })),
  fc
    .tuple(side(1_600), fc.integer({ min: 10, max: 99 }), fc.boolean())
    .map(([length, percent, lies]): Shape => {
      const breadth = Math.max(1_600, Math.ceil((length * percent) / 100));
      return { shape: "oval", width: lies ? length : breadth, height: lies ? breadth : length };
    }),
  side(16).chain((length) => corners(length).map((cut) => ({ shape: "square", side: length, ...cut }))),
  sides(16).chain((size) =>
    corners(Math.min(size.width, size.height)).map((cut) => ({ shape: "rectangle", ...size, ...cut })),
  ),
  fc
    .record({
      diameter: side(),
      sides: fc.integer({ min: 3, max: 100 }),
      up: maybe(fc.constantFrom("point", "flat" as const)),
    })
    .map((polygon) => ({ shape: "polygon", ...polygon }) as Shape),
  fc.record({ diameter: side(), points: fc.integer({ min: 3, max: 100 }) }).chain(({ diameter, points }) => {
    const line = (1 - Math.cos(Math.PI / points)) / 2;
    return maybe(within(diameter, line + 20 / diameter, 0.4499)).map(
      (depth): Shape => ({ shape: "star", diameter, points, depth }),
    );
  }),
  side().chain((width) =>
    within(width, 0.667, 2).map((height): Shape => ({ shape: "heart", width, height })),
  ),
  // An arch flatter than a twentieth of its width is refused, also where the height leaves no other.
  sides()
    .filter(({ width, height }) => height > width / 10)
    .chain(({ width, height }) =>
      maybe(within(width, 0.05, Math.min(0.5, height / width))).map(
        (rise): Shape => ({ shape: "arch", width, height, rise }),
      ),
    ),
  side().map((diameter) => ({ shape: "half-circle", diameter })),
  sides().map((size) => ({ shape: "leaf", ...size })),
  side().chain((width) => within(width, 1.11, 4).map((height): Shape => ({ shape: "drop", width, height }))),
  sides().chain((size) =>
    fc
      .record({
        cut: maybe(within(Math.min(size.width, size.height), 0, 0.4)),
        hole: maybe(fc.oneof(fc.constant(0), within(Math.min(size.width, size.height), 0.01, 0.2))),
      })
      .map((rest): Shape => ({ shape: "tag", ...size, ...rest })),
  ),
  sides().chain((size) =>
    fc
      .constantFrom("right", "left", "both", "down" as const)
      .chain((tail) =>
        maybe(within(tail === "down" ? size.height : size.width, 0.01, tail === "both" ? 0.4 : 0.9)).map(
          (notch) => ({ shape: "banner", ...size, tail, notch }) as Shape,
        ),
      ),
  ),
];

/** A pitch from 1 mm up, as a part of the shorter side, and not so many scallops that a test takes long. */
const pitch = (shorter: number, most: number) => within(shorter, Math.max(0.03, 1_610 / shorter), most);

const scalloped: readonly fc.Arbitrary<Shape>[] = [
  side(7_000).chain((diameter) =>
    maybe(pitch(diameter, 0.333)).map(
      (wish): Shape => ({ shape: "scalloped-circle", diameter, pitch: wish }),
    ),
  ),
  side(7_000).chain((diameter) =>
    fc.integer({ min: 3, max: Math.min(90, Math.floor(diameter / 800)) }).chain((count) => {
      // From just over the bulge of the circle to touching.
      const bulge = (1 - Math.cos(Math.PI / count)) / 2 + 165 / diameter;
      const touching = Math.sin(Math.PI / count) / 2;
      return maybe(within(diameter, bulge, touching)).map(
        (depth): Shape => ({ shape: "scalloped-circle", diameter, count, depth }),
      );
    }),
  ),
  fc
    .tuple(side(8_000), fc.integer({ min: 35, max: 290 }))
    .map(([width, percent]) => ({ width, height: Math.round((width * percent) / 100) }))
    .filter(({ height }) => height > 8_000)
    .chain((size) =>
      maybe(pitch(Math.min(size.width, size.height), 0.25)).map(
        (wish): Shape => ({ shape: "scalloped-oval", ...size, pitch: wish }),
      ),
    ),
  side(8_200).chain((length) =>
    maybe(pitch(length, 0.25)).map(
      (wish): Shape => ({ shape: "scalloped-square", side: length, pitch: wish }),
    ),
  ),
  sides(8_200)
    .filter(({ width, height }) => Math.max(width, height) < 8 * Math.min(width, height))
    .chain((size) =>
      pitch(Math.min(size.width, size.height), 0.25).chain((wish) =>
        maybe(within(wish, Math.min(0.37, 160 / wish), 0.375)).map(
          (depth): Shape => ({
            shape: "scalloped-rectangle",
            ...size,
            pitch: wish,
            depth: depth !== undefined && depth < 160 ? undefined : depth,
          }),
        ),
      ),
    ),
];

/** Any shape of the catalogue but frames. */
export const randomShape: fc.Arbitrary<Shape> = fc.oneof(...plain, ...scalloped);

/** A frame of a convex shape and a window a good deal smaller. */
export const randomFrame: fc.Arbitrary<Shape> = fc
  .tuple(side(20_000), fc.integer({ min: 3, max: 40 }), fc.constantFrom(0.2, 0.3, 0.4), fc.nat(3))
  .map(([size, parts, share, kind]): Shape => {
    const inner = Math.round(size * share);
    const windows: readonly Shape[] = [
      { shape: "circle", diameter: inner },
      { shape: "heart", width: inner, height: inner },
      { shape: "star", diameter: inner, points: parts },
      { shape: "oval", width: inner, height: Math.round(inner * 0.6) },
    ];
    const outer: Shape =
      size % 2 === 0
        ? { shape: "scalloped-circle", diameter: size, count: Math.max(8, Math.min(parts, 24)) }
        : { shape: "polygon", diameter: size, sides: Math.max(4, parts) };
    return { shape: "frame", outer, window: windows[kind] as Shape, leastBridge: Math.round(size / 50) };
  });
