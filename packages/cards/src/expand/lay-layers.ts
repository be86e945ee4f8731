// Lays the layers of a card one on another, from the bottom to the top. In a list each layer lies on the last one before it
// that carries: a mat, or a panel or bands that fill their carrier up to a border, unless it has layers of its own.

import type { Extent, Layer, Sentiment, Sides, Strip } from "../project.js";
import { addLayer, type CardBuilder, nextLabel } from "./card-builder.js";
import { fault } from "./fault.js";
import { findBeyondOutline } from "./find-beyond-outline.js";
import { bandsToLay, layBands } from "./lay-bands.js";
import { layByBorder } from "./lay-by-border.js";
import { type LaidBySize, layBySize } from "./lay-by-size.js";
import { layDieCut } from "./lay-die-cut.js";
import { layJoin } from "./lay-join.js";
import { distances, type Rectangle, type Surface } from "./surface.js";

/**
 * Lays a list of layers on what carries the first of them. Where one that carries others cannot be laid, nothing is known
 * of what would lie on it, so the rest of its list is left out.
 *
 * @internal
 */
export function layLayers(builder: CardBuilder, layers: readonly Layer[], carrier: Surface): void {
  let below = carrier;
  for (const layer of layers) {
    const [laid, faults] = [builder.layers.length, builder.faults.length];
    const surface = layLayer(builder, layer, below);
    // One that does not even lie within the box has been told.
    if (surface !== null && below.outline !== undefined && builder.faults.length === faults) {
      for (const own of builder.layers.slice(laid)) {
        if (own.on === below.on) findBeyondOutline(builder, own, below, `${layer.path}.${extentKey(layer)}`);
      }
    }
    if (surface !== null) {
      findHiddenMat(builder, layer, below, surface);
      layLayers(builder, layer.layers, surface);
    }
    if (!carries(layer)) continue;
    if (surface === null) return;
    below = surface;
  }
}

function carries(layer: Layer): boolean {
  if (layer.layers.length > 0) return false;
  if (layer.kind === "mat") return true;
  return (layer.kind === "panel" || layer.kind === "bands") && layer.extent.by === "border";
}

function layLayer(builder: CardBuilder, layer: Layer, carrier: Surface): Surface | null {
  switch (layer.kind) {
    case "strip":
      return layStrip(builder, layer, carrier);
    case "sentiment":
      return laySentiment(builder, layer, carrier);
    case "die": {
      const cut = layDieCut(builder, layer, carrier);
      if (cut !== null) recordThirds(builder, cut.lowest, cut.laid);
      return cut?.surface ?? null;
    }
    case "bands": {
      const laid = layExtent(builder, layer, layer.extent, carrier, layer.name ?? "bands");
      if (laid === null) return null;
      const { path, grain, foam } = layer;
      const what = nextLabel(builder, layer.name ?? "bands");
      const toLay = bandsToLay(layer, { path, what, grain, foam, purpose: layer.name ?? "band" });
      const on = layBands(builder, toLay, laid.rectangle, carrier);
      if (on === null) return null;
      recordThirds(builder, on, laid);
      const until = builder.layers.length;
      return { ...laid.rectangle, surface: carrier.surface, on, until, words: `the ${what}`, isMat: false };
    }
    default: {
      const purpose = layer.name ?? layer.kind;
      const laid = layExtent(builder, layer, layer.extent, carrier, purpose);
      if (laid === null) return null;
      return addSingle(builder, layer, purpose, laid, carrier);
    }
  }
}

function layExtent(
  builder: CardBuilder,
  { path }: Layer,
  extent: Extent,
  carrier: Surface,
  purpose: string,
): LaidBySize | null {
  const what = `the ${nextLabel(builder, purpose)}`;
  if (extent.by === "border") {
    const rectangle = layByBorder(builder, { border: extent.border, carrier, what, path });
    if (rectangle === null) return null;
    recordBorder(builder, `${path}.border`, carrier, rectangle);
    return { rectangle, roundings: [] };
  }
  const { size, place } = extent;
  return layBySize(builder, { size, place, carrier, what, path, keys: { width: "size", height: "size" } });
}

/** Remembers a border that is to show, until it is known what lies above. */
function recordBorder(builder: CardBuilder, path: string, carrier: Surface, inner: Rectangle): void {
  const { surface, words, until } = carrier;
  builder.borders.push({ path, words, surface, outer: carrier, inner, above: until });
}

function layStrip(builder: CardBuilder, strip: Strip, carrier: Surface): Surface {
  const across = strip.runs === "across";
  const purpose = strip.name ?? "strip";
  const laid = layBySize(builder, {
    size: across
      ? { width: strip.length ?? carrier.width, height: strip.width }
      : { width: strip.width, height: strip.length ?? carrier.height },
    place: strip.place,
    carrier,
    what: `the ${nextLabel(builder, purpose)}`,
    path: strip.path,
    keys: across ? { width: "length", height: "width" } : { width: "width", height: "length" },
  });
  return addSingle(builder, strip, purpose, laid, carrier);
}

function laySentiment(builder: CardBuilder, sentiment: Sentiment, carrier: Surface): Surface {
  const { path, size, place, mats } = sentiment;
  const purpose = sentiment.name ?? "sentiment";
  const matPurpose = `${purpose} mat`;
  const around = 2 * mats.reduce((sum, { border }) => sum + border, 0);
  const fits = size.width <= carrier.width && size.height <= carrier.height;
  const key = fits && mats.length > 0 ? "mats" : "size";
  const laid = layBySize(builder, {
    size: { width: size.width + around, height: size.height + around },
    place,
    carrier,
    what: `the ${nextLabel(builder, purpose)}${mats.length > 0 ? " with its mats" : ""}`,
    path,
    keys: { width: key, height: key },
  });

  const outermost = builder.layers.length;
  let { rectangle } = laid;
  let border = distances(rectangle, carrier);
  let { on } = carrier;
  // The file lists the mats from the inside out; the outermost lies at the bottom.
  for (let index = mats.length - 1; index >= 0; index -= 1) {
    const mat = mats[index];
    if (mat === undefined) break;
    const matPath = `${path}.mats[${index}]`;
    if (mat.border === 0) hiddenMat(builder, `${matPath}.border`, `the ${nextLabel(builder, matPurpose)}`);
    on = addLayer(
      builder,
      { purpose: matPurpose, path: matPath, choice: mat.paper },
      // The foam lies under the outermost mat.
      {
        surface: carrier.surface,
        rectangle,
        on,
        border,
        foam: index === mats.length - 1 ? sentiment.foam : null,
      },
    );
    border = evenly(mat.border);
    const outer = rectangle;
    rectangle = {
      x: rectangle.x + mat.border,
      y: rectangle.y + mat.border,
      width: rectangle.width - 2 * mat.border,
      height: rectangle.height - 2 * mat.border,
    };
    const matWords = `the ${builder.pieces.at(-1)?.label ?? matPurpose}`;
    const matSurface = {
      ...outer,
      surface: carrier.surface,
      on,
      until: on + 1,
      words: matWords,
      isMat: true,
    };
    recordBorder(builder, `${matPath}.border`, matSurface, rectangle);
  }
  const { grain, text, paper } = sentiment;
  const words = `the ${nextLabel(builder, purpose)}`;
  const index = addLayer(
    builder,
    { purpose, path, choice: paper },
    {
      surface: carrier.surface,
      rectangle,
      on,
      border,
      grain,
      text,
      foam: mats.length === 0 ? sentiment.foam : null,
    },
  );
  recordThirds(builder, outermost, laid);
  return { ...rectangle, surface: carrier.surface, on: index, until: index + 1, words, isMat: false };
}

function addSingle(
  builder: CardBuilder,
  layer: Exclude<Layer, { kind: "bands" | "die" }>,
  purpose: string,
  laid: LaidBySize,
  carrier: Surface,
): Surface {
  const { rectangle } = laid;
  const { path, paper, grain, foam } = layer;
  const words = `the ${nextLabel(builder, purpose)}`;
  const on =
    "join" in layer && layer.join !== undefined
      ? layJoin(builder, { layer, join: layer.join, purpose, rectangle, carrier })
      : addLayer(
          builder,
          { purpose, path, choice: paper },
          {
            surface: carrier.surface,
            rectangle,
            on: carrier.on,
            border: distances(rectangle, carrier),
            grain,
            foam,
          },
        );
  recordThirds(builder, on, laid);
  return {
    ...rectangle,
    surface: carrier.surface,
    on,
    until: builder.layers.length,
    words,
    isMat: layer.kind === "mat",
  };
}

function recordThirds(builder: CardBuilder, layer: number, { roundings }: LaidBySize): void {
  for (const { position, by } of roundings) {
    const piece = builder.layers[layer]?.piece;
    if (piece !== undefined) builder.roundings.push({ piece, what: "third", position, by });
  }
}

function findHiddenMat(builder: CardBuilder, layer: Layer, carrier: Surface, rectangle: Rectangle): void {
  if (!carrier.isMat) return;
  const { left, right, top, bottom } = distances(rectangle, carrier);
  // One that sticks out is too large, which has been told.
  if (left !== 0 || right !== 0 || top !== 0 || bottom !== 0) return;
  hiddenMat(builder, `${layer.path}.${extentKey(layer)}`, carrier.words);
}

function extentKey(layer: Layer): string {
  if (layer.kind === "strip") return "width";
  if (layer.kind === "sentiment") return "size";
  if (layer.kind === "die") return layer.die === null ? "size" : "die";
  return layer.extent.by;
}

function hiddenMat(builder: CardBuilder, path: string, words: string): void {
  builder.faults.push(
    fault({
      code: "border-vanishes",
      path,
      found: "no border",
      expected: "a border on at least one side",
      message:
        `The border of ${words} would vanish: what lies on it covers it whole. Give what lies on it a border on at ` +
        "least one side, or leave the mat out.",
    }),
  );
}

function evenly(border: number): Sides {
  return { left: border, right: border, top: border, bottom: border };
}
