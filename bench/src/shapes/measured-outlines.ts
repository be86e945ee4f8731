/** The outlines that the suite `shapes` measures: of the catalogue, and a row of many. Sizes are invented. */
import { inches } from "@sheetwright/measure";
import { moved, type Outline, outlineOf } from "@sheetwright/shapes";

/** Outlines that are measured together, under a name for the tables. */
export interface MeasuredOutlines {
  readonly name: string;
  readonly outlines: readonly Outline[];
  /** The same ones set off to the right and down, which the union is made with. */
  readonly others: readonly Outline[];
}

/** All of them, in the order of the tables. */
export function measuredOutlines(): readonly MeasuredOutlines[] {
  const disc = outlineOf({ shape: "circle", diameter: inches(3) });
  const row = Array.from({ length: 40 }, (_, index) =>
    moved(outlineOf({ shape: "scalloped-circle", diameter: inches(2), count: 16 }), {
      x: inches(1.9) * (index % 8),
      y: inches(1.9) * Math.floor(index / 8),
    }),
  );
  return [
    one("circle 3 in", disc),
    one("oval 3 x 4 in", outlineOf({ shape: "oval", width: inches(3), height: inches(4) })),
    one("heart 3 x 3 in", outlineOf({ shape: "heart", width: inches(3), height: inches(3) })),
    one("star 3 in", outlineOf({ shape: "star", diameter: inches(3) })),
    one("tag 2 x 4 in", outlineOf({ shape: "tag", width: inches(2), height: inches(4) })),
    one("scalloped circle 3 in", outlineOf({ shape: "scalloped-circle", diameter: inches(3), count: 16 })),
    one(
      "scalloped rectangle 4 x 5 1/4 in",
      outlineOf({ shape: "scalloped-rectangle", width: inches(4), height: inches(5.25) }),
    ),
    several("40 scalloped circles that overlap", row),
  ];
}

function one(name: string, outline: Outline): MeasuredOutlines {
  return several(name, [outline]);
}

function several(name: string, outlines: readonly Outline[]): MeasuredOutlines {
  const by = { x: inches(0.8), y: inches(0.3) };
  return { name, outlines, others: outlines.map((outline) => moved(outline, by)) };
}
