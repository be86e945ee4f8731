import { millimetres, TICKS_PER_INCH, type Ticks, type Unit } from "@sheetwright/measure";
import { catalogue, outlineOf, type Shape, type ShapeName, type Stitches, stitch } from "@sheetwright/shapes";

/** A shape on the page of the catalogue. */
export interface CatalogueSample {
  readonly shape: Shape;
  readonly title: string;
  /** What is special about it; empty where it is as the name alone makes it. */
  readonly note: string;
  readonly stitches: Pick<Stitches, "dashes" | "holes"> | null;
}

type Length = (quarters: number) => Ticks;

/**
 * All shapes of the catalogue in their order, each with the parameters that it has by itself where it needs none, and a few
 * variants: in quarters of an inch, or for millimetres in steps of 6 mm.
 */
export function catalogueSamples(unit: Unit): readonly CatalogueSample[] {
  const quarters: Length = unit === "in" ? (n) => (n * TICKS_PER_INCH) / 4 : (n) => millimetres(6 * n);
  return catalogue.flatMap(({ id, title }) =>
    shapesOf(id, quarters).map(({ shape, note = "", stitched }) => ({
      shape,
      title,
      note,
      stitches: stitched === undefined ? null : stitch(outlineOf(shape), { marks: stitched }),
    })),
  );
}

interface Sample {
  readonly shape: Shape;
  readonly note?: string;
  readonly stitched?: "dashes" | "holes";
}

function shapesOf(id: ShapeName, quarters: Length): readonly Sample[] {
  const diameter = quarters(12);
  const level = { width: quarters(12), height: quarters(9) };
  const upright = { width: quarters(9), height: quarters(12) };
  switch (id) {
    case "circle":
      return [
        { shape: { shape: id, diameter } },
        { shape: { shape: id, diameter }, note: "stitched", stitched: "dashes" },
      ];
    case "rectangle":
      return [
        { shape: { shape: id, ...level, corners: "round" }, note: "round corners" },
        { shape: { shape: id, ...level, corners: "ticket" }, note: "ticket corners", stitched: "holes" },
      ];
    case "square":
    case "scalloped-square":
      return [{ shape: { shape: id, side: quarters(11) } }];
    case "polygon":
      return [{ shape: { shape: id, sides: 6, diameter }, note: "6 sides" }];
    case "scalloped-circle":
    case "star":
    case "half-circle":
      return [{ shape: { shape: id, diameter } }];
    case "oval":
    case "scalloped-oval":
    case "scalloped-rectangle":
      return [{ shape: { shape: id, ...level } }];
    case "leaf":
      return [{ shape: { shape: id, width: quarters(12), height: quarters(6) } }];
    case "banner":
      return [{ shape: { shape: id, width: quarters(13), height: quarters(5) } }];
    case "heart":
      return [{ shape: { shape: id, width: quarters(12), height: quarters(11) } }];
    case "tag":
    case "arch":
    case "drop":
      return [{ shape: { shape: id, ...upright } }];
    case "frame":
      return [
        {
          shape: {
            shape: id,
            outer: { shape: "scalloped-circle", diameter },
            window: { shape: "circle", diameter: quarters(8) },
          },
          note: "a circle in a scalloped circle",
        },
      ];
  }
}
