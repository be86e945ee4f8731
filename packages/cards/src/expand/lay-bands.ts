import { type Division, DivisionError, divideLength, type Ticks } from "@sheetwright/measure";
import type { Bands } from "../project.js";
import { addLayer, type CardBuilder, nextLabel, sayLength } from "./card-builder.js";
import { fault } from "./fault.js";
import { distances, type Rectangle, type Surface } from "./surface.js";

/**
 * Lays bands that fill a rectangle from its top or left, and on them the covers of their seams, each with its middle on
 * the seam. Gives the index of the first band, which stands for all of them; `null`, with a fault, where one vanishes.
 *
 * @internal
 */
export function layBands(
  builder: CardBuilder,
  bands: Bands,
  whole: Rectangle,
  carrier: Surface,
): number | null {
  const extent = bands.runs === "across" ? whole.height : whole.width;
  const division = divide(builder, bands, extent);
  if (division === null) return null;

  const border = distances(whole, carrier);
  const first = builder.layers.length;
  const { parts, boundaries, roundings } = division;
  bands.papers.forEach((choice, index) => {
    addLayer(
      builder,
      { purpose: bands.name ?? "band", path: bands.path, choice },
      {
        surface: carrier.surface,
        rectangle: slice(bands, whole, boundaries[index] ?? 0, parts[index] ?? 0),
        on: carrier.on,
        border,
        grain: bands.grain,
      },
    );
  });
  for (const { boundary, position, by } of roundings) {
    const piece = builder.layers[first + boundary - 1]?.piece;
    if (piece !== undefined) builder.roundings.push({ piece, what: "seam", position, by });
  }

  if (bands.seam === null || bands.seam === "bare") return first;
  const { cover, width } = bands.seam;
  const seams = boundaries.slice(1, -1);
  const path = `${bands.path}.seam`;
  findWideCover(builder, { path: `${path}.width`, width, seams, extent, runs: bands.runs });
  for (const seam of seams) {
    const rectangle = slice(bands, whole, seam - Math.floor(width / 2), width);
    addLayer(
      builder,
      { purpose: "cover", path, choice: cover },
      { surface: carrier.surface, rectangle, on: first, border: distances(rectangle, whole) },
    );
  }
  return first;
}

function findWideCover(
  builder: CardBuilder,
  cover: {
    readonly path: string;
    readonly width: Ticks;
    readonly seams: readonly Ticks[];
    readonly extent: Ticks;
    readonly runs: Bands["runs"];
  },
): void {
  const { path, width, seams, extent, runs } = cover;
  const say = (ticks: Ticks) => sayLength(builder, ticks);
  const room = seams.map((seam) => 2 * Math.min(seam, extent - seam));
  const most = Math.min(...room);
  const start = runs === "across" ? "top" : "left";
  const report = (expected: string, story: string) =>
    builder.faults.push(
      fault({
        code: "too-large",
        path,
        found: say(width),
        expected,
        message: `A cover ${say(width)} wide ${story} Make it ${expected}.`,
      }),
    );
  if (width > most) {
    const seam = seams[room.indexOf(most)] ?? 0;
    report(
      `at most ${say(most)} wide`,
      `sticks out by ${say(Math.ceil((width - most) / 2))} when its middle lies on the seam ${say(seam)} from the ` +
        `${start}: the bands are ${say(extent)} in all.`,
    );
  } else if (width >= extent) {
    report(`less than ${say(extent)} wide`, `hides its bands: they are ${say(extent)} in all.`);
  }
}

function slice({ runs }: Bands, whole: Rectangle, start: Ticks, extent: Ticks): Rectangle {
  return runs === "across"
    ? { ...whole, y: whole.y + start, height: extent }
    : { ...whole, x: whole.x + start, width: extent };
}

function divide(builder: CardBuilder, bands: Bands, extent: Ticks): Division | null {
  try {
    return divideLength(extent, bands.ratios, builder.precision);
  } catch (error) {
    if (!(error instanceof DivisionError)) throw error;
    const { part } = error.details;
    const ratios = bands.ratios.join(" : ");
    const say = (ticks: Ticks) => sayLength(builder, ticks);
    builder.faults.push(
      fault({
        code: "part-vanishes",
        path: `${bands.path}.bands`,
        found: bands.ratios.join(", "),
        expected: `shares of ${say(extent)} of at least ${say(builder.precision)} each`,
        message:
          `Band ${part + 1} of ${bands.ratios.length} vanishes: ${nextLabel(builder, bands.name ?? "bands")} ` +
          `divide ${say(extent)} in ${ratios}, and its share is less than half of ${say(builder.precision)}, ` +
          "what divisions are rounded to. Use fewer bands, a larger share for this one or a finer precision.",
      }),
    );
    return null;
  }
}
