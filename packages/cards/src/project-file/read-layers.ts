import type { Ticks } from "@sheetwright/measure";
import type { Choice, Layer, Run, Sentiment, Strip } from "../project.js";
import { checkKind } from "./check-kind.js";
import type { Written } from "./check-structure.js";
import { readBandParts } from "./read-bands.js";
import { type ChoiceReading, readChoice } from "./read-choice.js";
import { readDieCut } from "./read-die-cut.js";
import { CLASSIC_BORDER, readExtent, readPlace, refusePlace } from "./read-extent.js";
import { THICKEST_EXTRA } from "./read-extras.js";
import { readJoin } from "./read-join.js";
import { readLength, readPlainSize } from "./read-measures.js";
import { LONGEST_NAME } from "./read-paper-design.js";
import { readText } from "./reading.js";
import { sayValue } from "./say-value.js";
import { LAYER_KINDS } from "./schema/layer-schema.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";
import { WORDINGS } from "./wording.js";

/** A layer as written, as far as it is right. */
export type WrittenLayer = Written<NonNullable<ProjectFile["cards"][number]["front"]>[number]>;

/** A layer that is no shape, so that its size has two sides. */
export type RectangularLayer = Omit<WrittenLayer, "size"> & { readonly size?: string | undefined };

/** How deep layers may lie on each other in the file. */
const DEEPEST = 12;
/** The longest words of a sentiment. */
const LONGEST_WORDS = 200;

/** Stands in for what could not be read, in a card that is not looked into further. */
const NO_CHOICE: Choice = { faces: [], text: "" };
const NO_LENGTH: Ticks = 1;

/** Reads layers from the bottom to the top, and reports what is wrong with them. */
export function readLayers(
  layers: readonly (WrittenLayer | undefined)[] | undefined,
  path: string,
  reading: ChoiceReading,
  depth = 1,
): readonly Layer[] {
  if (layers === undefined) return [];
  if (depth > DEEPEST) {
    const message = `Layers lie more than ${DEEPEST} deep on each other here. Lay some beside each other.`;
    reading.faults.report({
      code: "too-many",
      path,
      found: layers,
      expected: `at most ${DEEPEST} levels`,
      message,
    });
    return [];
  }
  return layers.flatMap((layer, index) => {
    const read = layer === undefined ? null : readLayer(layer, pathTo(path, index), reading, depth);
    return read ?? [];
  });
}

function readLayer(written: WrittenLayer, path: string, reading: ChoiceReading, depth: number): Layer | null {
  const kind = checkKind(written, LAYER_KINDS, "layer", path, reading.faults);
  const at = (key: keyof WrittenLayer) => pathTo(path, key);
  const common = {
    path,
    name: readText(written.name, at("name"), reading, LONGEST_NAME),
    grain: readGrain(written.grain),
    foam: readLength(written.foam, at("foam"), reading, { longest: THICKEST_EXTRA }),
    layers: readLayers(written.layers, at("layers"), reading, depth + 1),
  };
  if (kind === "die" || kind === "shape") return { ...common, ...readDieCut(written, kind, path, reading) };
  const layer = withSides(written, path, reading);
  switch (kind) {
    case "mat":
    case "panel": {
      const paper = readChoice(layer[kind], at(kind), reading) ?? NO_CHOICE;
      const extent = readExtent(layer, path, reading);
      return { kind, ...common, paper, extent, ...readJoin(layer.join, at("join"), reading) };
    }
    case "bands":
      return {
        kind,
        ...common,
        ...readBandParts(layer, path, reading),
        extent: readExtent(layer, path, reading),
      };
    case "strip":
      return { ...common, ...readStrip(layer, path, reading) };
    case "sentiment":
      return { ...common, ...readSentiment(layer, path, reading) };
    default:
      // What kind it is is not clear; its measures can still be looked into.
      readExtent({ ...layer, ...(layer.size === undefined ? {} : { border: undefined }) }, path, reading);
      return null;
  }
}

/** A layer of which the size is width x height: one length says it only of what is cut to a shape. */
function withSides(layer: WrittenLayer, path: string, reading: ChoiceReading): RectangularLayer {
  const { size, ...rest } = layer;
  if (typeof size === "string") return { ...rest, size };
  if (size === undefined) return "size" in layer ? { ...rest, size } : rest;
  const { expected } = WORDINGS.size;
  const message = `Found ${sayValue(size)}, expected ${expected}.`;
  reading.faults.report({
    code: "not-a-size",
    path: pathTo(path, "size"),
    found: size,
    expected,
    message,
  });
  return { ...rest, size: undefined };
}

type Own<Kind extends Layer> = Omit<Kind, "path" | "name" | "grain" | "foam" | "layers">;

function readGrain(grain: WrittenLayer["grain"]): Layer["grain"] {
  const along = typeof grain === "object" ? grain.along : grain;
  if (along === undefined) return null;
  const need = typeof grain === "object" ? (grain.need ?? "prefer") : "prefer";
  return { along: along === "upright" ? "height" : "width", need };
}

function readStrip(layer: WrittenLayer, path: string, reading: ChoiceReading): Own<Strip> {
  const at = (key: keyof WrittenLayer) => pathTo(path, key);
  const runs = layer.runs ?? "across";
  if (!("length" in layer)) refuseAlong(layer, runs, path, reading);
  return {
    kind: "strip",
    runs,
    paper: readChoice(layer.strip, at("strip"), reading) ?? NO_CHOICE,
    width: readLength(layer.width, at("width"), reading) ?? NO_LENGTH,
    length: readLength(layer.length, at("length"), reading),
    place: readPlace(layer, path, reading),
    ...readJoin(layer.join, at("join"), reading),
  };
}

/** A strip from edge to edge has no place in the direction that it runs. */
function refuseAlong(layer: WrittenLayer, runs: Run, path: string, reading: ChoiceReading): void {
  const [keys, thirds, other] =
    runs === "across"
      ? ([["left", "right"], /^(?:left|right)/, "top, bottom"] as const)
      : ([["top", "bottom"], /^(?:upper|lower)/, "left, right"] as const);
  const why = `has no meaning for a strip that runs ${runs} from edge to edge. Give it a length, or place it by ${other} or a line.`;
  refusePlace(layer, keys, path, reading, why);
  const words = typeof layer.line === "string" ? [layer.line] : (layer.line ?? []);
  if (words.some((word) => word !== undefined && thirds.test(word)))
    refusePlace(layer, ["line"], path, reading, why);
}

function readSentiment(layer: RectangularLayer, path: string, reading: ChoiceReading): Own<Sentiment> {
  const at = (key: keyof WrittenLayer) => pathTo(path, key);
  return {
    kind: "sentiment",
    paper: readChoice(layer.sentiment, at("sentiment"), reading) ?? NO_CHOICE,
    size: readPlainSize(layer.size, at("size"), reading) ?? { width: NO_LENGTH, height: NO_LENGTH },
    place: readPlace(layer, path, reading),
    text: readText(layer.text, at("text"), reading, LONGEST_WORDS),
    mats: (layer.mats ?? []).map((mat, index) => {
      const matPath = pathTo(at("mats"), index);
      const border = readLength(mat?.border, pathTo(matPath, "border"), reading, { allowZero: true });
      if (mat?.die !== undefined) {
        const message =
          "A mat of a sentiment is cut by the trimmer: die belongs to the mats of a layer that is cut by a die. Leave it out.";
        const at = pathTo(matPath, "die");
        reading.faults.report({
          code: "contradiction",
          path: at,
          found: mat.die,
          expected: "no die",
          message,
        });
      }
      return {
        paper: readChoice(mat?.mat, pathTo(matPath, "mat"), reading) ?? NO_CHOICE,
        border: border ?? CLASSIC_BORDER[reading.unit],
      };
    }),
  };
}
