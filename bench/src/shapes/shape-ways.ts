/** The ways in which the suite `shapes` does the same: ours on arcs, and two other packages on the chords. */
import { inches } from "@sheetwright/measure";
import { areaOf, type FlatOutline, flatten, type Outline, offset, union } from "@sheetwright/shapes";
import { Clipper, EndType, FillRule, JoinType, type Paths64 } from "clipper2-ts";
import polygonClipping, { type MultiPolygon } from "polygon-clipping";
import type { MeasuredOutlines } from "./measured-outlines.js";

/** Chords that the others are given lie so near their arcs as those that ours works with, in ticks. */
export const CHORD_TOLERANCE = 2;

/** How far outlines are set off. */
const OFFSET = inches(1 / 8);

/** One way of doing an operation: what is timed, and the area of its result in square ticks. */
export interface ShapeWay {
  readonly run: () => unknown;
  readonly area: (result: never) => number;
  /** How many edges or corners the result has. */
  readonly edges: (result: never) => number;
}

/** An operation, by each package that can do it. */
export interface ShapeOperation {
  readonly name: string;
  readonly ours: ShapeWay;
  readonly clipper: ShapeWay | null;
  readonly polygonClipping: ShapeWay | null;
}

/** The operations on some outlines. What the others are given is made beforehand and not timed. */
export function shapeOperations({ outlines, others }: MeasuredOutlines): readonly ShapeOperation[] {
  const chords = flats(outlines);
  const otherChords = flats(others);
  const paths: Paths64 = [...chords, ...otherChords].flatMap(({ outer, windows }) =>
    [outer, ...windows].map((ring) => ring.map(({ x, y }) => ({ x, y }))),
  );
  const ownPaths = paths.slice(0, chords.flatMap(({ windows }) => [0, ...windows]).length);
  const [first, second] = [polygons(chords), polygons(otherChords)];
  return [
    {
      name: "flatten to 0.02 mm",
      ours: way(
        () => flats(outlines, 32),
        (result) => areaOfFlats(result),
        (result) => result.reduce((sum, { outer, windows }) => sum + [outer, ...windows].flat().length, 0),
      ),
      clipper: null,
      polygonClipping: null,
    },
    {
      name: "offset by 1/8 in",
      ours: way(() => offset(outlines, OFFSET).outlines, areaOfOutlines, edgesOf),
      clipper: way(
        () => Clipper.inflatePaths(ownPaths, OFFSET, JoinType.Round, EndType.Polygon, 2, CHORD_TOLERANCE),
        areaOfPaths,
        cornersOf,
      ),
      polygonClipping: null,
    },
    {
      name: "union with itself set off",
      ours: way(() => union([...outlines, ...others]), areaOfOutlines, edgesOf),
      clipper: way(() => Clipper.union(paths, FillRule.Positive), areaOfPaths, cornersOf),
      polygonClipping: way(
        () => polygonClipping.union(first, second),
        (result) =>
          result.reduce(
            (sum, rings) =>
              sum + rings.reduce((area, ring, i) => area + (i === 0 ? 1 : -1) * areaOfRing(ring), 0),
            0,
          ),
        (result) => result.flat(2).length,
      ),
    },
  ];
}

function way<Result>(
  run: () => Result,
  area: (result: Result) => number,
  edges: (result: Result) => number,
): ShapeWay {
  return { run, area: area as (result: never) => number, edges: edges as (result: never) => number };
}

function flats(outlines: readonly Outline[], tolerance = CHORD_TOLERANCE): readonly FlatOutline[] {
  return outlines.map((outline) => flatten(outline, { tolerance }));
}

function polygons(outlines: readonly FlatOutline[]): MultiPolygon {
  return outlines.map(({ outer, windows }) =>
    [outer, ...windows].map((ring) => ring.map(({ x, y }): [number, number] => [x, y])),
  );
}

function areaOfOutlines(outlines: readonly Outline[]): number {
  return outlines.reduce((sum, outline) => sum + areaOf(outline), 0);
}

function areaOfFlats(outlines: readonly FlatOutline[]): number {
  return areaOfPaths(outlines.flatMap(({ outer, windows }) => [outer, ...windows].map((ring) => [...ring])));
}

function areaOfPaths(paths: Paths64): number {
  return paths.reduce((sum, path) => sum + Clipper.area(path), 0);
}

function areaOfRing(ring: readonly (readonly [number, number])[]): number {
  return Math.abs(Clipper.area(ring.map(([x, y]) => ({ x, y }))));
}

function edgesOf(outlines: readonly Outline[]): number {
  return outlines.reduce((sum, { outer, windows }) => sum + [outer, ...windows].flat().length, 0);
}

function cornersOf(paths: Paths64): number {
  return paths.flat().length;
}
