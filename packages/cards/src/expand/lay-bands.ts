// Lays bands that fill a rectangle, and bands that divide one of them in their turn. All bands lie below all covers; the
// covers of inner seams lie below those of outer ones, which hide their ends.
//
//     +-----------+    across: the upper third, and below it
//     |     a     |    upright bands b and c; the cover of
//     +===========+    the seam between a and them (===)
//     |  b  |  c  |    lies over that between b and c (|)
//     +-----------+

import type { Ticks } from "@sheetwright/measure";
import type { BandParts, Choice, Layer, Ribbon, Run } from "../project.js";
import { addItemLayer, addLayer, type CardBuilder, type NewPiece, sayLength } from "./card-builder.js";
import { type BandsToDivide, type DividedBands, divideBands } from "./divide-bands.js";
import { fault } from "./fault.js";
import { isCovering, isOfPaper, RIBBON_ENDS, seamOf } from "./seam-of.js";
import { distances, type Rectangle, type Surface } from "./surface.js";

/** Bands that are to be laid. */
export interface BandsToLay extends Pick<BandParts, "runs" | "papers" | "seam"> {
  readonly path: string;
  /** Of the value under the path that tells of the seams: `seam`. */
  readonly seamKey: string;
  /** Their name for a message: `1b bands`. */
  readonly what: string;
  /** Whether those that meet edge to edge are told of by what they are together. */
  readonly isOne: boolean;
  readonly grain: Layer["grain"];
  /** Under each of them. */
  readonly foam: Layer["foam"];
  /** Divides their extent; `null`, with a fault, where that cannot be done. */
  readonly divide: (builder: CardBuilder, bands: Omit<BandsToDivide, "shares">) => DividedBands | null;
  /** What the band at an index is; its path is that of the bands unless one of them is divided again. */
  readonly pieceOf: (index: number, path: string) => Omit<NewPiece, "choice">;
}

/**
 * How bands of a project are laid.
 *
 * @internal
 */
export function bandsToLay(
  { runs, shares, papers, seam }: BandParts,
  more: Pick<BandsToLay, "path" | "what" | "grain" | "foam"> & { readonly purpose: string },
): BandsToLay {
  const { purpose, ...rest } = more;
  return {
    ...rest,
    runs,
    papers,
    seam,
    seamKey: "seam",
    isOne: true,
    divide: (builder, bands) => divideBands(builder, { ...bands, shares }),
    pieceOf: (_, path) => ({ purpose, path }),
  };
}

/** A band of one paper. */
interface Leaf {
  readonly rectangle: Rectangle;
  /** What its border is measured from. */
  readonly own: Rectangle;
  readonly choice: Choice;
  readonly piece: Omit<NewPiece, "choice">;
}

/** A seam, with what lies centred on it. */
interface Line {
  /** What is left free between the parts. */
  readonly free: Rectangle;
  readonly runs: Run;
  readonly position: Ticks;
  readonly path: string;
  readonly bare: boolean;
  readonly cover: {
    readonly rectangle: Rectangle;
    readonly of: Choice | Ribbon;
    readonly width: Ticks;
    readonly path: string;
  } | null;
}

interface Gathered {
  readonly leaves: Leaf[];
  readonly seams: Line[];
  /** Rounded lines with the index of the leaf before each. */
  readonly lines: { readonly leaf: number; readonly position: Ticks; readonly by: number }[];
}

/**
 * Lays bands that fill a rectangle from its top or left, and on them the covers of their seams, each with its middle on
 * the seam. Gives the index of the first band, which stands for all of them; `null`, with a fault, where one vanishes.
 *
 * @internal
 */
export function layBands(
  builder: CardBuilder,
  bands: BandsToLay,
  whole: Rectangle,
  carrier: Surface,
): number | null {
  const gathered: Gathered = { leaves: [], seams: [], lines: [] };
  if (!gather(builder, bands, whole, gathered)) return null;
  const { surface } = carrier;
  const first = builder.layers.length;
  for (const { rectangle, own, choice, piece } of gathered.leaves) {
    const border = distances(own, carrier);
    addLayer(
      builder,
      { ...piece, choice },
      { surface, rectangle, on: carrier.on, border, grain: bands.grain, foam: bands.foam },
    );
  }
  for (const { leaf, position, by } of gathered.lines) {
    const piece = builder.layers[first + leaf]?.piece;
    if (piece !== undefined) builder.roundings.push({ piece, what: "seam", position, by });
  }
  const above = builder.layers.length;
  for (const { free, cover, ...seam } of gathered.seams) {
    const id = cover === null ? null : layCover(builder, cover, seam.runs, whole, { surface, on: first });
    builder.seams.push({ surface, ...free, ...seam, cover: id, above });
  }
  return first;
}

/** Lays what covers a seam; gives the id of its piece or item. */
function layCover(
  builder: CardBuilder,
  { rectangle, of, width, path }: NonNullable<Line["cover"]>,
  runs: Run,
  whole: Rectangle,
  on: { readonly surface: Surface["surface"]; readonly on: number },
): string {
  const at = { ...on, border: distances(rectangle, whole) };
  if (isOfPaper(of)) {
    const index = addLayer(builder, { purpose: "cover", path, choice: of }, { ...at, rectangle });
    return builder.layers[index]?.piece ?? "";
  }
  const shown = runs === "across" ? rectangle.width : rectangle.height;
  const length = shown + (of.kind === "ribbon" ? RIBBON_ENDS[builder.units] : 0);
  return addItemLayer(builder, { ribbon: of, path, width, length }, { ...at, ...rectangle });
}

/** Divides, and gathers what is to be laid; false, with a fault, where that cannot be done. */
function gather(builder: CardBuilder, bands: BandsToLay, whole: Rectangle, gathered: Gathered): boolean {
  const { runs, papers, path, what } = bands;
  const extent = runs === "across" ? whole.height : whole.width;
  const division = bands.divide(builder, { extent, path, what });
  if (division === null) return false;
  const { boundaries, roundings } = division;
  const { cover, width, gap } = seamOf(bands);
  if (!keepsAll(builder, bands, boundaries, gap)) return false;

  const isMixed = papers.some((paper) => !("faces" in paper));
  const ends: number[] = [];
  for (const [index, paper] of papers.entries()) {
    const start = (boundaries[index] ?? 0) + (index === 0 ? 0 : gap - Math.floor(gap / 2));
    const end = (boundaries[index + 1] ?? extent) - (index === papers.length - 1 ? 0 : Math.floor(gap / 2));
    const rectangle = slice(runs, whole, start, end - start);
    const own = `${path}.papers[${index}]`;
    if ("faces" in paper) {
      const meets = bands.isOne && !isMixed && gap === 0;
      const piece = bands.pieceOf(index, isMixed ? own : path);
      gathered.leaves.push({ rectangle, own: meets ? whole : rectangle, choice: paper, piece });
    } else {
      const { purpose } = bands.pieceOf(index, own);
      const { grain, foam } = bands;
      const inner = bandsToLay(paper, { path: own, what, grain, foam, purpose });
      if (!gather(builder, inner, rectangle, gathered)) return false;
    }
    ends.push(gathered.leaves.length - 1);
  }
  for (const { boundary, position, by } of roundings) {
    gathered.lines.push({ leaf: ends[boundary - 1] ?? 0, position, by });
  }
  const seams = boundaries.slice(1, -1);
  const seamPath = `${path}.${bands.seamKey}`;
  if (isCovering(cover)) findWideCover(builder, { path: `${seamPath}.width`, width, seams, extent, runs });
  for (const position of seams) {
    gathered.seams.push({
      free: slice(runs, whole, position - Math.floor(gap / 2), gap),
      runs,
      position,
      path: bands.seamKey === "seam" ? path : seamPath,
      bare: cover === "bare",
      cover: isCovering(cover)
        ? {
            rectangle: slice(runs, whole, position - Math.floor(width / 2), width),
            of: cover,
            width,
            path: seamPath,
          }
        : null,
    });
  }
  return true;
}

/** Whether the gap leaves something of every band; a fault where it does not. */
function keepsAll(
  builder: CardBuilder,
  { path, seamKey, what, papers }: BandsToLay,
  boundaries: readonly Ticks[],
  gap: Ticks,
): boolean {
  if (gap === 0) return true;
  const say = (ticks: Ticks) => sayLength(builder, ticks);
  const last = papers.length - 1;
  for (let index = 0; index <= last; index += 1) {
    const share = (boundaries[index + 1] ?? 0) - (boundaries[index] ?? 0);
    const before = index === 0 ? 0 : gap - Math.floor(gap / 2);
    const after = index === last ? 0 : Math.floor(gap / 2);
    if (share > before + after) continue;
    builder.faults.push(
      fault({
        code: "part-vanishes",
        path: `${path}.${seamKey}.gap`,
        found: say(gap),
        expected: "a gap that leaves something of every band",
        message:
          `Band ${index + 1} of ${what} vanishes: its share is ${say(share)}, and the gaps of ${say(gap)} beside it ` +
          `take ${say(before + after)}. Make the gap narrower, or the share of this band larger.`,
      }),
    );
    return false;
  }
  return true;
}

function findWideCover(
  builder: CardBuilder,
  cover: {
    readonly path: string;
    readonly width: Ticks;
    readonly seams: readonly Ticks[];
    readonly extent: Ticks;
    readonly runs: Run;
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

function slice(runs: Run, whole: Rectangle, start: Ticks, extent: Ticks): Rectangle {
  const { x, y, width, height } = whole;
  return runs === "across"
    ? { x, y: y + start, width, height: extent }
    : { x: x + start, y, width: extent, height };
}
