import { inches, millimetres, type Ticks } from "@sheetwright/measure";
import type { Shape } from "../../src/index.js";

/** Twenty sizes from 1/2 to 11 in, in inches and mm, of even and odd numbers of ticks. */
export const SIZES: readonly Ticks[] = [
  ...[0.5, 0.75, 1, 1.25, 1 + 1 / 64, 1 + 3 / 64, 1.5, 2, 2.5, 3, 4, 5.5, 8.5, 11].map(inches),
  ...[15, 25, 50.01, 210].map(millimetres),
  // Off every grid that a rule has.
  20_321,
  100_003,
];

/** The shapes of the catalogue at a nominal size, most with one side as long as that and the other in a usual proportion. */
export function shapesOfSize(size: Ticks): readonly Shape[] {
  const part = (share: number) => Math.round(size * share);
  return [
    { shape: "circle", diameter: size },
    { shape: "oval", width: part(0.75), height: size },
    { shape: "oval", width: size, height: part(0.4) },
    { shape: "oval", width: size, height: size },
    { shape: "square", side: size },
    { shape: "square", side: size, corners: "round" },
    { shape: "rectangle", width: part(0.7), height: size },
    { shape: "rectangle", width: size, height: part(0.7), radius: Math.floor(part(0.7) / 2) },
    { shape: "rectangle", width: size, height: part(0.6), corners: "ticket" },
    { shape: "polygon", diameter: size, sides: 3 },
    { shape: "polygon", diameter: size, sides: 5, up: "flat" },
    { shape: "polygon", diameter: size, sides: 6 },
    { shape: "polygon", diameter: size, sides: 6, up: "flat" },
    { shape: "polygon", diameter: size, sides: 8 },
    { shape: "polygon", diameter: size, sides: 8, up: "point" },
    { shape: "star", diameter: size },
    { shape: "star", diameter: size, points: 8 },
    { shape: "star", diameter: size, points: 6, depth: part(0.2) },
    { shape: "heart", width: size, height: part(0.92) },
    { shape: "heart", width: part(0.75), height: size },
    { shape: "arch", width: part(0.6), height: size },
    { shape: "arch", width: size, height: size, rise: part(0.25) },
    { shape: "half-circle", diameter: size },
    { shape: "leaf", width: part(0.5), height: size },
    { shape: "leaf", width: size, height: part(0.45) },
    { shape: "drop", width: part(0.6), height: size },
    { shape: "tag", width: part(0.5), height: size },
    { shape: "banner", width: size, height: part(0.25) },
    { shape: "banner", width: size, height: part(0.25), tail: "both" },
    { shape: "banner", width: part(0.6), height: size, tail: "down" },
    { shape: "scalloped-circle", diameter: size },
    { shape: "scalloped-circle", diameter: size, count: 5 },
    { shape: "scalloped-circle", diameter: size, count: 18, depth: part(0.03) },
    { shape: "scalloped-oval", width: part(0.75), height: size },
    { shape: "scalloped-oval", width: size, height: part(0.6), count: 24, depth: part(0.02) },
    { shape: "scalloped-square", side: size },
    { shape: "scalloped-rectangle", width: part(0.75), height: size },
    { shape: "scalloped-rectangle", width: size, height: part(0.8), pitch: part(0.1), depth: part(0.02) },
    {
      shape: "frame",
      outer: { shape: "scalloped-circle", diameter: size },
      window: { shape: "heart", width: part(0.5), height: part(0.45) },
      leastBridge: part(0.02),
    },
    {
      shape: "frame",
      outer: { shape: "polygon", diameter: size, sides: 3 },
      window: { shape: "polygon", diameter: part(0.6), sides: 3 },
      leastBridge: part(0.02),
    },
  ];
}

/** What a test's title calls a shape. */
export function named(shape: Shape): string {
  return JSON.stringify(shape).replace(/"/g, "");
}
