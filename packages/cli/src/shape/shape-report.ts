import { TICKS_PER_MM, type Ticks } from "@sheetwright/measure";
import {
  areaOf,
  boxOfAll,
  type NominalSize,
  type Outline,
  offset,
  perimeterOf,
  type Scallops,
  type Shape,
  type Stitches,
  scallopsOf,
  sizeOf,
  smallestBridge,
  stitch,
} from "@sheetwright/shapes";
import type { ShapeRequest } from "./shape-request.js";

/** The measures of a shape. Lengths are ticks, 1600 to a millimetre and 40640 to an inch. */
export interface ShapeReport {
  readonly sheetwright: "shape";
  readonly version: 1;
  /** Its parameters; `null` for a file. */
  readonly shape: Shape | null;
  /** The file that it was read from; `null` for a shape of the catalogue. */
  readonly file: string | null;
  /** As it is called by; `null` for a file. */
  readonly size: NominalSize | null;
  /** How far its edge was moved out. */
  readonly grown: Ticks;
  /** Width and height of the box round all of it. */
  readonly box: { readonly width: Ticks; readonly height: Ticks };
  readonly parts: number;
  readonly windows: number;
  /** In square millimetres, to a thousandth. */
  readonly area: number;
  /** Of all edges, windows too, to the tick. */
  readonly cutLength: Ticks;
  /** How wide the paper is where it is narrowest between two of its edges, to the tick; `null` where it is so nowhere. */
  readonly narrowest: Ticks | null;
  /** `null` for shapes without; lengths to the tick. */
  readonly scallops: Scallops | null;
  readonly stitches: StitchReport | null;
  /** The file that was written. */
  readonly written: string | null;
}

/** How a line of stitches came out. */
export interface StitchReport {
  readonly marks: "dashes" | "holes";
  readonly inset: Ticks;
  readonly count: number;
  /** From one to the next, to the tick, least and most; `null` where there are not two in a row. */
  readonly pitch: { readonly least: Ticks; readonly most: Ticks } | null;
  /** `vanished` where the shape is too narrow for any, `split` where it is in between. */
  readonly line: Stitches["line"];
}

/** A shape as it is drawn, with its measures. */
export interface MadeShape {
  readonly outlines: readonly Outline[];
  readonly stitches: Pick<Stitches, "dashes" | "holes">;
  readonly report: ShapeReport;
}

/**
 * Grows an outline, stitches it and measures what has become of it; `null` where nothing is left once its edge is moved in.
 */
export function makeShape(
  given: readonly Outline[],
  { what, grow, stitched, out }: ShapeRequest,
): MadeShape | null {
  const outlines = grow === 0 ? given : offset(given, grow).outlines;
  if (outlines.length === 0) return null;
  const lines = stitched === null ? [] : outlines.map((outline) => stitch(outline, stitched));
  const stitches = {
    dashes: lines.flatMap(({ dashes }) => dashes),
    holes: lines.flatMap(({ holes }) => holes),
  };
  const shape = what.kind === "shape" ? what.shape : null;
  // Scallops of an edge that was moved are others than those of the shape.
  const scallops = shape === null || grow !== 0 ? null : scallopsOf(shape);
  const { width, height } = boxOfAll(outlines);
  const area = outlines.reduce((sum, outline) => sum + areaOf(outline), 0) / TICKS_PER_MM ** 2;
  return {
    outlines,
    stitches,
    report: {
      sheetwright: "shape",
      version: 1,
      shape,
      file: what.kind === "file" ? what.file : null,
      size: shape === null ? null : sizeOf(shape),
      grown: grow,
      box: { width, height },
      parts: outlines.length,
      windows: outlines.reduce((sum, { windows }) => sum + windows.length, 0),
      area: Math.round(area * 1000) / 1000,
      cutLength: Math.round(outlines.reduce((sum, outline) => sum + perimeterOf(outline), 0)),
      narrowest: narrowestOf(outlines),
      scallops: scallops === null ? null : toTheTick(scallops),
      stitches: stitched === null ? null : { ...stitched, ...stitchesOf(lines, stitches) },
      written: out,
    },
  };
}

function narrowestOf(outlines: readonly Outline[]): Ticks | null {
  const widths = outlines.flatMap((outline) => smallestBridge(outline)?.width ?? []);
  return widths.length === 0 ? null : Math.round(Math.min(...widths));
}

function toTheTick({ count, depth, rows }: Scallops): Scallops {
  return {
    count,
    depth: Math.round(depth),
    rows: rows.map((row) => ({ ...row, pitch: Math.round(row.pitch) })),
  };
}

function stitchesOf(
  lines: readonly Stitches[],
  { dashes, holes }: MadeShape["stitches"],
): Pick<StitchReport, "count" | "pitch" | "line"> {
  const pitches = lines.flatMap(({ pitch }) => (pitch === null ? [] : [pitch]));
  const isAny = dashes.length + holes.length > 0;
  return {
    count: dashes.length + holes.length,
    pitch:
      pitches.length === 0
        ? null
        : {
            least: Math.round(Math.min(...pitches.map(({ least }) => least))),
            most: Math.round(Math.max(...pitches.map(({ most }) => most))),
          },
    line: !isAny ? "vanished" : lines.every(({ line }) => line === "whole") ? "whole" : "split",
  };
}
