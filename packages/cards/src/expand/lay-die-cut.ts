import { formatLength, formatSize, inches } from "@sheetwright/measure";
import { boxOfAll, sizeOf } from "@sheetwright/shapes";
import type { DieCut, DieSize } from "../project.js";
import { addLayer, type CardBuilder, nextLabel, sayLength } from "./card-builder.js";
import { dieStack, type StackFault, type StackPart } from "./die-stack.js";
import { fault } from "./fault.js";
import { type LaidBySize, layBySize } from "./lay-by-size.js";
import { shapeOfPiece } from "./shape-of-piece.js";
import { allMoved } from "./stitch-marks.js";
import { distances, type Rectangle, type Surface } from "./surface.js";

/** What is laid: the surface of the uppermost, and what its place was rounded by. */
export interface LaidDieCut {
  readonly surface: Surface;
  /** Index of the lowest. */
  readonly lowest: number;
  readonly laid: LaidBySize;
}

/**
 * Lays what is cut to a shape with what lies beneath it, from the bottom to the top: each layer is as large as its shape, and
 * its piece as the die blank. `null`, with a fault, where it cannot be made.
 *
 * @internal
 */
export function layDieCut(builder: CardBuilder, layer: DieCut, carrier: Surface): LaidDieCut | null {
  const purpose = purposeOf(layer, "top");
  const words = shapeOfPiece(`the ${nextLabel(builder, purpose)}`);
  if (layer.shape === undefined) return layRectangle(builder, layer, carrier, purpose, words);
  const stack = dieStack(layer, builder.precision);
  if ("what" in stack) {
    reportStack(builder, layer, stack);
    return null;
  }
  const all = hull(stack);
  const laid = layBySize(builder, {
    size: all,
    place: layer.place,
    carrier,
    what: stack.length > 1 ? `${words} with what lies beneath it` : words,
    path: layer.path,
    keys: keysOf(layer),
  });
  const { rectangle } = laid;
  const lowest = builder.layers.length;
  let below: Surface = carrier;
  let mat: { readonly part: StackPart; readonly piece: string } | null = null;
  for (const part of [...stack].reverse()) {
    const own: Rectangle = {
      x: rectangle.x + part.x - all.x,
      y: rectangle.y + part.y - all.y,
      width: part.width,
      height: part.height,
    };
    const label = `the ${nextLabel(builder, purposeOf(layer, part.role))}`;
    const grain = part.role === "top" ? layer.grain : null;
    const on = addLayer(
      builder,
      { purpose: purposeOf(layer, part.role), path: part.path, choice: part.paper },
      {
        surface: carrier.surface,
        rectangle: own,
        on: below.on,
        border: distances(own, below),
        grain,
        // The foam lies under the lowest.
        foam: below === carrier ? layer.foam : null,
        blank: { form: { ...part.blank, scores: [], grainAlong: grain?.along ?? null }, die: part.die },
        outline: part.outline,
        stitches: part.stitches,
      },
    );
    const piece = builder.layers[on]?.piece ?? "";
    if (mat?.part.reveal != null)
      builder.reveals.push({ path: mat.part.path, mat: mat.piece, piece, ...mat.part.reveal });
    mat = { part, piece };
    const outline = allMoved(part.outline, { x: own.x, y: own.y });
    below = { ...own, surface: carrier.surface, on, until: on + 1, words: label, isMat: false, outline };
  }
  return { surface: { ...below, until: builder.layers.length }, lowest, laid };
}

/** A die of which only the size is known. */
function layRectangle(
  builder: CardBuilder,
  layer: DieCut,
  carrier: Surface,
  purpose: string,
  what: string,
): LaidDieCut {
  const { path, cut, blank, die, place, paper, grain, foam } = layer;
  const laid = layBySize(builder, { size: cut, place, carrier, what, path, keys: keysOf(layer) });
  const { rectangle } = laid;
  const words = `the ${nextLabel(builder, purpose)}`;
  const on = addLayer(
    builder,
    { purpose, path, choice: paper },
    {
      surface: carrier.surface,
      rectangle,
      on: carrier.on,
      border: distances(rectangle, carrier),
      grain,
      foam,
      blank: {
        form: { width: blank.width, height: blank.height, scores: [], grainAlong: grain?.along ?? null },
        die: { name: die, cut: { width: cut.width, height: cut.height } },
      },
    },
  );
  const surface = { ...rectangle, surface: carrier.surface, on, until: on + 1, words, isMat: false };
  return { surface, lowest: on, laid };
}

function keysOf({ die }: DieCut) {
  const key = die === null ? "size" : "die";
  return { width: key, height: key };
}

/** What is cut from a sheet: a blank for a die, or the shape itself where a machine or scissors cut it. */
function purposeOf({ name, die }: DieCut, role: StackPart["role"]): string {
  const isByDie = role === "mat" || (role === "top" && die !== null);
  const words = [...(name === null ? [] : [name]), ...(role === "top" ? [] : [role])];
  return [...words, isByDie ? "die blank" : "shape"].join(" ");
}

function hull(parts: readonly Rectangle[]): Rectangle {
  const frames = parts.map(({ x, y, width, height }) => ({
    outer: [
      { to: { x: x + width, y } },
      { to: { x: x + width, y: y + height } },
      { to: { x, y: y + height } },
      { to: { x, y } },
    ],
    windows: [],
  }));
  return boxOfAll(frames);
}

function reportStack(builder: CardBuilder, layer: DieCut, found: StackFault): void {
  const what = `the ${nextLabel(builder, purposeOf(layer, "top"))}`;
  const { path } = found;
  if (found.what === "nothing-left") {
    const { width, height } = layer.cut;
    const size = formatSize(width, height, { unit: builder.units });
    const message = `Nothing is left of ${shapeOfPiece(what)}, ${size}, when so much is cut straight off it. Cut off less.`;
    const expected = "less than the shape is wide and high";
    builder.faults.push(
      fault({ code: "layer-vanishes", path: `${layer.path}.trim`, found: "all of it", expected, message }),
    );
    return;
  }
  if (found.what === "no-stitches") {
    const whose = found.part === "top" ? shapeOfPiece(what) : `the shape of its ${found.part}`;
    const isOwn = found.part === "top" && layer.stitched?.by === "hand";
    const message = `There is no room for a line of stitches in ${whose}. Bring the line nearer to the edge, take shorter stitches or a larger shape, or leave the stitches out.`;
    const expected = "a shape with room for stitches";
    builder.faults.push(
      fault({
        code: "no-stitches",
        path: isOwn ? `${path}.stitched` : found.part === "top" ? `${path}.die` : path,
        found: "no room",
        expected,
        message,
      }),
    );
    return;
  }
  reportNoDie(builder, what, found);
}

/** A border that no eye sees. */
const NOTHING = inches(1 / 64);

function reportNoDie(
  builder: CardBuilder,
  what: string,
  { path, mat, found: { nearest } }: Extract<StackFault, { what: "no-die" }>,
): void {
  const missing = mat.border - (nearest?.border.least ?? 0);
  const larger = Math.ceil((2 * missing) / builder.precision) * builder.precision;
  const say = (ticks: number) => sayLength(builder, ticks);
  const size = mat.sizes[Number(nearest?.die.name)];
  const said = size === undefined ? "" : ` ${saySizeOf(size, builder)}`;
  const least = nearest?.border.least ?? 0;
  const shows =
    least > NOTHING
      ? `shows ${say(least)} where it shows least, ${say(missing)} too little`
      : least >= -NOTHING
        ? `shows nothing of itself where it shows least, ${say(missing)} too little`
        : `is itself too small by ${say(-least)}`;
  const help =
    least > NOTHING
      ? `Take a die that is ${say(larger)} larger across, ask for a border of at most ${say(least)}, or give the layer a shadow instead.`
      : `Take a die that is ${say(larger)} larger across, a smaller one for what lies on it, or give the layer a shadow instead.`;
  builder.faults.push(
    fault({
      code: "no-die",
      path: `${path}.border`,
      found: say(mat.border),
      expected: `a die ${mat.die} that shows ${say(mat.border)} all round`,
      message: `No size of the die ${mat.die} shows ${say(mat.border)} all round ${path.endsWith("[0]") ? `the shape of ${what}` : "what lies on it"}: the nearest,${said}, ${shows}. ${help}`,
    }),
  );
}

/** Says the size of a die: `3 in`, `2 x 3 in`. */
function saySizeOf({ shape, cut }: DieSize, { units: unit }: CardBuilder): string {
  const size = shape === undefined ? cut : sizeOf(shape);
  return "diameter" in size
    ? formatLength(size.diameter, { unit })
    : formatSize(size.width, size.height, { unit });
}
