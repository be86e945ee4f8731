import type { Ticks } from "@sheetwright/measure";
import { discOf, type Point } from "@sheetwright/shapes";
import { HAIRLINE, PAPER, QUIET } from "../drawing/look.js";
import { outlinesData, type PlaceOf, stepsData } from "../writer/path-data.js";
import { type Attributes, element, type SvgElement } from "../writer/svg-element.js";

/** A line of stitches, as stitching makes it and plans carry it. */
export interface StitchMarks {
  readonly dashes: readonly (readonly Point[])[];
  readonly holes: readonly { readonly centre: Point; readonly diameter: Ticks }[];
}

/** Narrower dashes would not be seen, wider ones look like cuts. */
export const STITCH_LINE = 0.2;

/**
 * Draws stitches: dashes as one path of real segments, pricked holes as small circles.
 *
 * @param perTick millimetres of the page.
 */
export function drawStitches(
  { dashes, holes }: StitchMarks,
  placeOf: PlaceOf,
  perTick: number,
  attributes: Attributes = {},
  colour: string = QUIET,
): readonly SvgElement[] {
  const sewn = dashes.map((dash) => stepsData(dash, placeOf)).join("");
  // A hole that is drawn smaller than a line is wide shows as a dot of that size.
  const least = STITCH_LINE / perTick;
  const pricked = outlinesData(
    holes.map(({ centre, diameter }) =>
      discOf({ centre, diameter: Math.max(diameter, 2 * Math.ceil(least / 2)) }),
    ),
    placeOf,
  );
  return [
    ...(sewn === ""
      ? []
      : [
          element("path", {
            "data-role": "stitches",
            ...attributes,
            d: sewn,
            fill: "none",
            stroke: colour,
            "stroke-width": STITCH_LINE,
          }),
        ]),
    ...(pricked === ""
      ? []
      : [
          element("path", {
            "data-role": "holes",
            ...attributes,
            d: pricked,
            fill: PAPER,
            stroke: colour,
            "stroke-width": HAIRLINE,
          }),
        ]),
  ];
}
