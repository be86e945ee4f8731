/** Times each operation by each package in turns, so that a busy moment falls on all alike. */
import { type MeasuredOutlines, measuredOutlines } from "./measured-outlines.js";
import { type ShapeOperation, type ShapeWay, shapeOperations } from "./shape-ways.js";

/** One package's figures of one operation. */
export interface WayMeasure {
  /** Milliseconds of the quickest and the middle round. */
  readonly least: number;
  readonly middle: number;
  readonly edges: number;
  /** By how many millionths of the area its result differs from ours. */
  readonly areaOff: number;
}

/** What one operation on some outlines took. */
export interface ShapeMeasure {
  readonly operation: string;
  readonly outlines: string;
  /** Edges of the outlines that go in. */
  readonly edges: number;
  readonly ours: WayMeasure;
  /** `null` where the package cannot do it; `failed` where it threw. */
  readonly clipper: WayMeasure | "failed" | null;
  readonly polygonClipping: WayMeasure | "failed" | null;
}

/** Runs all operations on all outlines so many times. */
export function measureShapes(
  rounds: number,
  now: () => number,
  onProgress?: (what: string) => void,
): readonly ShapeMeasure[] {
  return measuredOutlines().flatMap((measured) =>
    shapeOperations(measured).map((operation) => {
      onProgress?.(`${measured.name}: ${operation.name}`);
      return measureOperation(operation, measured, rounds, now);
    }),
  );
}

function measureOperation(
  { name, ours, clipper, polygonClipping }: ShapeOperation,
  { name: outlines, outlines: given }: MeasuredOutlines,
  rounds: number,
  now: () => number,
): ShapeMeasure {
  const ways = [ours, clipper, polygonClipping];
  const times = ways.map((): number[] => []);
  const last: (unknown | undefined)[] = ways.map(() => undefined);
  const failed = ways.map(() => false);
  for (let round = 0; round < rounds; round += 1) {
    for (const [index, way] of ways.entries()) {
      if (way === null || failed[index]) continue;
      const began = now();
      try {
        last[index] = way.run();
      } catch (error) {
        // Ours must not fail; that another package does is a figure.
        if (index === 0) throw error;
        failed[index] = true;
      }
      times[index]?.push((now() - began) * 1000);
    }
  }
  const area = ours.area(last[0] as never);
  const figures = (index: number): WayMeasure | "failed" | null => {
    const way = ways[index] as ShapeWay | null;
    if (way === null) return null;
    if (failed[index]) return "failed";
    const sorted = [...(times[index] ?? [])].sort((a, b) => a - b);
    return {
      least: sorted[0] ?? 0,
      middle: sorted[Math.floor(sorted.length / 2)] ?? 0,
      edges: way.edges(last[index] as never),
      areaOff: (1e6 * (way.area(last[index] as never) - area)) / area,
    };
  };
  return {
    operation: name,
    outlines,
    edges: given.reduce((sum, { outer, windows }) => sum + [outer, ...windows].flat().length, 0),
    ours: figures(0) as WayMeasure,
    clipper: figures(1),
    polygonClipping: figures(2),
  };
}
