// Makes a layer up that is larger than the sheets of its paper, along the side that is too long.
//
//     ends   +---------+   parts  +---------+   hide   +---------+
//            |  other  |          |         |          |         |
//            +---------+          |   2/3   |          |  short  |
//            |   own   |          |         |          |.........|  here another
//            +---------+          +---------+          +---------+  layer lies on
//            |  other  |          |   1/3   |          :.........:  what is missing
//            +---------+          +---------+
//
// Makers put a seam on a line of thirds where they can (common practice, no source).

import { DivisionError, divideLength, type Ticks } from "@sheetwright/measure";
import { type Given, longestGiven } from "../fit/longest-given.js";
import type { LayerJoin, Mat, Panel, Strip } from "../project.js";
import { addLayer, type CardBuilder, nextLabel, sayLength, saySize } from "./card-builder.js";
import { fault } from "./fault.js";
import { type BandsToLay, layBands } from "./lay-bands.js";
import { seamOf } from "./seam-of.js";
import { distances, type Rectangle, type Surface } from "./surface.js";

/** A layer that may be made up of several pieces. */
type Joinable = Mat | Panel | Strip;

/** A layer and where it lies as a whole. */
export interface JoinToLay {
  readonly layer: Joinable;
  readonly join: LayerJoin;
  readonly purpose: string;
  readonly rectangle: Rectangle;
  readonly carrier: Surface;
}

/**
 * Lays a layer that says how it is made up where its paper is smaller; gives the index of its first piece. One that its
 * paper gives whole is cut whole. Where it cannot be made up as asked there is a fault, and it is laid whole.
 *
 * @internal
 */
export function layJoin(builder: CardBuilder, toLay: JoinToLay): number {
  const { layer, join, purpose, rectangle, carrier } = toLay;
  const { path, paper, grain } = layer;
  const faces = paper.faces.flatMap((id) => builder.faces.get(id) ?? []);
  const given = longestGiven(rectangle, grain, faces, builder.longestCut);
  const along = sideToJoin(rectangle, given);
  const layWhole = () => {
    const piece = { purpose, path, choice: paper };
    const border = distances(rectangle, carrier);
    const { foam } = layer;
    return addLayer(builder, piece, {
      surface: carrier.surface,
      rectangle,
      on: carrier.on,
      border,
      grain,
      foam,
    });
  };
  // Of papers that are not there nothing is known.
  if (faces.length === 0) return layWhole();
  if (along === null && !given.whole) reportBothSides(builder, toLay, given);
  if (given.whole || along === null) {
    const on = layWhole();
    const side = rectangle.width > rectangle.height ? "width" : "height";
    const [extent, gives] = [rectangle[side], rectangle[side]];
    if (given.whole) record(builder, toLay, "whole", { along: side, extent, gives, first: on, count: 1 });
    return on;
  }
  const gives = floorTo(given[along], builder.precision);
  const extent = rectangle[along];
  if (join.by === "hide") {
    const on = layWhole();
    builder.hides.push({
      layer: on,
      along,
      gives,
      path,
      words: `the ${builder.pieces.at(-1)?.label ?? purpose}`,
    });
    record(builder, toLay, "hide", { along, extent, gives, first: on, count: 1 });
    return on;
  }
  const parts = join.by === "ends" ? endsOf(toLay, join, along) : partsOf(toLay, join, along);
  const boundaries =
    join.by === "ends"
      ? boundariesOfEnds(builder, join, { extent, gives: given[along] })
      : boundariesOfParts(builder, toLay, join, { extent, gives: given[along], along });
  if (boundaries === null) return layWhole();
  const what = nextLabel(builder, purpose);
  const first = layBands(builder, { ...parts, what, divide: () => boundaries }, rectangle, carrier);
  if (first === null) return layWhole();
  record(builder, toLay, join.by, { along, extent, gives, first, count: parts.papers.length });
  return first;
}

/** The side along which a layer is made up: that of which less is missing, the longer one of equals. */
function sideToJoin({ width, height }: Rectangle, given: Given): "width" | "height" | null {
  const missing = { width: width - given.width, height: height - given.height };
  const sides = (["height", "width"] as const).filter((side) => given[side] > 0 && missing[side] > 0);
  const [first, second] = sides;
  if (first === undefined || second === undefined) return first ?? null;
  if (missing.width !== missing.height) return missing.width < missing.height ? "width" : "height";
  return width > height ? "width" : "height";
}

function reportBothSides(builder: CardBuilder, { layer, purpose, rectangle }: JoinToLay, given: Given): void {
  const what = `the ${nextLabel(builder, purpose)}`;
  const size = saySize(builder, rectangle);
  // Where one side fits, the tool or nothing but the other one is in the way.
  const why =
    given.width === 0 && given.height === 0
      ? "both of its sides are too long for its paper"
      : "its paper gives none of it";
  builder.faults.push(
    fault({
      code: "too-large",
      path: `${layer.path}.join`,
      found: size,
      expected: "a layer of which one side fits its paper",
      message:
        `${what.charAt(0).toUpperCase()}${what.slice(1)} is ${size}, and ${why}. A join helps along one side only: make the layer ` +
        "smaller, or take a paper that is large enough along one side.",
    }),
  );
}

type Parts = Omit<BandsToLay, "what" | "divide">;

function common({ layer, join }: JoinToLay, along: "width" | "height") {
  const { path, grain, foam } = layer;
  const runs = along === "height" ? "across" : "upright";
  return { path, grain, foam, runs, seamKey: "join", seam: join.by === "hide" ? null : join.seam } as const;
}

function endsOf(
  toLay: JoinToLay,
  { paper, at }: Extract<LayerJoin, { by: "ends" }>,
  along: "width" | "height",
): Parts {
  const { layer, purpose } = toLay;
  const own = { purpose, path: layer.path };
  const end = { purpose: `${purpose} end`, path: `${layer.path}.join.ends` };
  const middle = at === "both" ? 1 : 0;
  return {
    ...common(toLay, along),
    isOne: false,
    papers: at === "both" ? [paper, layer.paper, paper] : [layer.paper, paper],
    pieceOf: (index) => (index === middle ? own : end),
  };
}

function partsOf(
  toLay: JoinToLay,
  { parts }: Extract<LayerJoin, { by: "parts" }>,
  along: "width" | "height",
): Parts {
  const { layer, purpose } = toLay;
  return {
    ...common(toLay, along),
    isOne: true,
    papers: Array.from({ length: parts }, () => layer.paper),
    pieceOf: () => ({ purpose: `${purpose} part`, path: layer.path }),
  };
}

interface Stretch {
  readonly extent: Ticks;
  /** What the paper gives of it, to the tick. */
  readonly gives: Ticks;
}

/** The own paper as large as it comes, rounded down to the precision, with ends as wide as each other. */
function boundariesOfEnds(
  { precision }: CardBuilder,
  { at, seam }: Extract<LayerJoin, { by: "ends" }>,
  { extent, gives }: Stretch,
) {
  const { gap } = seamOf({ seam });
  const ends = at === "both" ? 2 : 1;
  // At each seam the own paper loses half of the gap, so that it may reach further.
  const lost = at === "both" ? gap : Math.floor(gap / 2);
  let span = Math.min(floorTo(gives + lost, precision), floorTo(extent - ends * precision, precision));
  const rest = extent - span;
  // Ends of the same width fall on marks where the whole does.
  if (at === "both" && extent % precision === 0 && (rest / precision) % 2 === 1) span -= precision;
  const start = at === "both" ? Math.max(precision, floorTo((extent - span) / 2, precision)) : 0;
  const boundaries = at === "both" ? [0, start, start + span, extent] : [0, span, extent];
  return { boundaries, roundings: [] };
}

/** Two thirds and one third where the paper gives two thirds, else halves; or thirds. */
function boundariesOfParts(
  builder: CardBuilder,
  { layer, purpose, rectangle }: JoinToLay,
  { parts, seam }: Extract<LayerJoin, { by: "parts" }>,
  { extent, gives, along }: Stretch & { readonly along: "width" | "height" },
) {
  const { gap } = seamOf({ seam });
  const ways =
    parts === 2
      ? [
          [2, 1],
          [1, 1],
        ]
      : [[1, 1, 1]];
  let least = extent;
  for (const ratios of ways) {
    try {
      const division = divideLength(extent, ratios, builder.precision);
      const last = division.parts.length - 1;
      const longest = Math.max(
        ...division.parts.map(
          (part, index) =>
            part - (index === 0 ? 0 : gap - Math.floor(gap / 2)) - (index === last ? 0 : Math.floor(gap / 2)),
        ),
      );
      if (longest <= gives) return division;
      least = longest;
    } catch (error) {
      if (!(error instanceof DivisionError)) throw error;
    }
  }
  const say = (ticks: Ticks) => sayLength(builder, ticks);
  const what = `the ${nextLabel(builder, purpose)}`;
  builder.faults.push(
    fault({
      code: "too-large",
      path: `${layer.path}.join.parts`,
      found: String(parts),
      expected: parts === 2 ? "3 parts, or a larger paper" : "a larger paper",
      message:
        `${what.charAt(0).toUpperCase()}${what.slice(1)} is ${saySize(builder, rectangle)}. In ${parts} parts the longest is still ` +
        `${say(least)} ${along === "height" ? "high" : "wide"}, and its paper gives ${say(gives)}: ${say(least - gives)} too much. ` +
        (parts === 2
          ? "Write parts: 3, or take a larger paper."
          : "Take a larger paper, or lay bands of several papers instead."),
    }),
  );
  return null;
}

function record(
  builder: CardBuilder,
  { layer, purpose }: JoinToLay,
  by: "whole" | LayerJoin["by"],
  laid: Stretch & { readonly along: "width" | "height"; readonly first: number; readonly count: number },
): void {
  const { along, extent, gives, first, count } = laid;
  const pieces = builder.layers.slice(first, first + count).map(({ piece }) => piece);
  builder.joins.push({ path: layer.path, purpose, by, along, extent, gives, pieces });
}

function floorTo(ticks: Ticks, step: Ticks): Ticks {
  return Math.floor(ticks / step) * step;
}
