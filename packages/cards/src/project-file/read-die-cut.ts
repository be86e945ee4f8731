import { inches, millimetres, type Ticks, type Unit } from "@sheetwright/measure";
import type { Choice, DieCut, DieMat, DieSize, Shadow, Sides } from "../project.js";
import { type ChoiceReading, readChoice } from "./read-choice.js";
import { readDieName, readDieSize, sizeOfShape, stitchedAs } from "./read-die-size.js";
import type { ReadDie } from "./read-dies.js";
import { CLASSIC_BORDER, readPlace } from "./read-extent.js";
import type { WrittenLayer } from "./read-layers.js";
import { readLength } from "./read-measures.js";
import { readShape } from "./read-shape.js";
import { readStitched } from "./read-stitched.js";
import type { Reading } from "./reading.js";
import { quote } from "./say-value.js";
import { pathTo } from "./value-path.js";

/** Gaps narrower than this are filled in a shadow: the narrowest slot of a steel-rule die (steel-rule die maker guidance). */
const FILL_GAPS: Readonly<Record<Unit, Ticks>> = { in: inches(3 / 32), mm: millimetres(2.5) };

/** Stands in for what could not be read, in a card that is not looked into further. */
const NO_CHOICE: Choice = { faces: [], text: "" };
const NO_SIZE: DieSize = { cut: { width: 1, height: 1 }, blank: { width: 1, height: 1 } };

type OwnKeys = Omit<DieCut, "path" | "name" | "grain" | "foam" | "layers">;

/** Reads a layer that is cut by a die, or to a shape without one. */
export function readDieCut(
  layer: WrittenLayer,
  kind: "die" | "shape",
  path: string,
  reading: ChoiceReading,
): OwnKeys {
  const at = (key: keyof WrittenLayer) => pathTo(path, key);
  const die = kind === "die" ? readDieName(layer.die, at("die"), reading) : null;
  const own = kind === "die" ? sizeOfDie(layer, die, path, reading) : sizeWithoutDie(layer, path, reading);
  const stitched = readStitched(layer.stitched, "hand", at("stitched"), reading);
  const asked = layer.stitched === false ? withoutStitches(own) : stitchedAs(own, stitched);
  const trim = readTrim(layer.trim, own, at("trim"), reading);
  const mats = (layer.mats ?? []).flatMap(
    (mat, index) => readMat(mat, die, kind, pathTo(at("mats"), index), reading) ?? [],
  );
  const shadow = readShadow(layer.shadow, at("shadow"), reading);
  for (const key of ["stitched", "trim", "mats", "shadow"] as const) {
    if (own === NO_SIZE || own.shape !== undefined || layer[key] === undefined) continue;
    const message = `Only the size of this die is known, and ${WHAT[key]} its shape. Give it one under dies, such as shape: circle.`;
    const expected = "a die with a shape";
    reading.faults.report({ code: "contradiction", path: at(key), found: layer[key], expected, message });
  }
  return {
    kind: "die",
    die: kind === "die" ? (die?.name ?? "") : null,
    paper: readChoice(layer.paper, at("paper"), reading) ?? NO_CHOICE,
    ...asked,
    place: readPlace(layer, path, reading),
    ...(trim === null ? {} : { trim }),
    ...(mats.length === 0 ? {} : { mats }),
    ...(shadow === null ? {} : { shadow }),
  };
}

const WHAT = {
  stitched: "stitches follow",
  trim: "what is cut off it depends on",
  mats: "the next die up depends on",
  shadow: "a shadow follows",
} as const;

function sizeOfDie(layer: WrittenLayer, die: ReadDie | null, path: string, reading: Reading): DieSize {
  return (die === null ? null : readDieSize(die, layer.size, pathTo(path, "size"), reading)) ?? NO_SIZE;
}

function sizeWithoutDie(layer: WrittenLayer, path: string, reading: ChoiceReading): DieSize {
  const shape = readShape(layer.shape, pathTo(path, "shape"), reading);
  if (shape === null) return NO_SIZE;
  return sizeOfShape(shape, layer.size, reading.blanks, pathTo(path, "size"), reading) ?? NO_SIZE;
}

function withoutStitches({ stitched: _, ...size }: DieSize): DieSize {
  return size;
}

function readTrim(
  trim: WrittenLayer["trim"],
  { cut }: DieSize,
  path: string,
  reading: Reading,
): Sides | null {
  if (trim === undefined) return null;
  const side = (key: keyof Sides): Ticks => {
    const written = trim[key];
    if (written === "half")
      return Math.floor((key === "left" || key === "right" ? cut.width : cut.height) / 2);
    return readLength(written, pathTo(path, key), reading, { allowZero: true }) ?? 0;
  };
  const sides = { left: side("left"), right: side("right"), top: side("top"), bottom: side("bottom") };
  if (Object.keys(trim).length === 0) {
    const message =
      "Here stands no side to cut straight off. Write one, such as trim: { bottom: half }, or leave trim out.";
    reading.faults.report({ code: "missing", path, found: trim, expected: "at least one side", message });
  }
  return Object.values(sides).some((length) => length > 0) ? sides : null;
}

type WrittenMat = NonNullable<WrittenLayer["mats"]>[number];

/** Reads a mat of the next die up. */
function readMat(
  mat: WrittenMat,
  own: ReadDie | null,
  kind: "die" | "shape",
  path: string,
  reading: ChoiceReading,
): DieMat | null {
  const at = (key: "mat" | "border" | "die") => pathTo(path, key);
  const paper = readChoice(mat?.mat, at("mat"), reading) ?? NO_CHOICE;
  const border =
    readLength(mat?.border, at("border"), reading, { allowZero: true }) ?? CLASSIC_BORDER[reading.unit];
  const die = mat?.die === undefined ? own : readDieName(mat.die, at("die"), reading);
  if (mat !== undefined && !("die" in mat) && kind === "shape") {
    const message =
      "This layer is cut without a die, so there is no next one up. Name a die with several sizes here, such as die: scallops, or give the layer a shadow.";
    reading.faults.report({ code: "missing", path: at("die"), expected: "a die", message });
  }
  if (die === null) return null;
  if (die.sizes.some(({ shape }) => shape === undefined)) {
    // Of the layer's own die that is told with the layer.
    if (die === own) return null;
    const message = `Only sizes of the die ${quote(die.name)} are known, and the border that it gives depends on its shape. Give it one under dies, such as shape: circle.`;
    reading.faults.report({
      code: "contradiction",
      path: mat?.die === undefined ? path : at("die"),
      found: die.name,
      expected: "a die with a shape",
      message,
    });
    return null;
  }
  return { paper, die: die.name, border, sizes: die.sizes };
}

function readShadow(shadow: WrittenLayer["shadow"], path: string, reading: ChoiceReading): Shadow | null {
  if (shadow === undefined) return null;
  const at = (key: keyof typeof shadow) => pathTo(path, key);
  return {
    paper: readChoice(shadow.paper, at("paper"), reading) ?? NO_CHOICE,
    border: readLength(shadow.border, at("border"), reading) ?? CLASSIC_BORDER[reading.unit],
    fillGaps:
      readLength(shadow["fill-gaps"], at("fill-gaps"), reading, { allowZero: true }) ??
      FILL_GAPS[reading.unit],
    margin: reading.blanks.margin,
  };
}
