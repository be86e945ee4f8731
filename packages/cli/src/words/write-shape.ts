import {
  formatLength,
  formatSize,
  millimetres,
  TICKS_PER_INCH,
  type Ticks,
  type Unit,
} from "@sheetwright/measure";
import { catalogue, type Scallops, type Shape } from "@sheetwright/shapes";
import { shapeSizeInWords } from "@sheetwright/svg";
import { kebab } from "../shape/read-parameters.js";
import type { ShapeReport, StitchReport } from "../shape/shape-report.js";
import { counted } from "./counted.js";
import { block, row } from "./summary-rows.js";
import { table } from "./table.js";
import { wrapped } from "./wrapped.js";

/** The measures of a shape for a person, without a break at the end of lines. */
export function writeShape(report: ShapeReport, unit: Unit): readonly string[] {
  const { shape, file, grown, box, area, cutLength, parts, windows, scallops, stitches, narrowest, written } =
    report;
  const say = (length: Ticks) => formatLength(length, { unit });
  const what = shape === null ? `read from ${file ?? ""}` : shapeInWords(shape, unit);
  const moved = `${grown > 0 ? "grown" : "shrunk"} by ${say(Math.abs(grown))}`;
  const lines = [
    row("Shape", grown === 0 ? what : `${what}, ${moved}`),
    row("Box", formatSize(box.width, box.height, { unit })),
    row("Area", areaInWords(area, unit)),
    row("Cut", `${say(cutLength)} long${windows > 0 ? ", with the windows" : ""}`),
    ...(parts > 1 ? [row("Parts", String(parts))] : []),
    ...(windows > 0 ? [row("Windows", String(windows))] : []),
    ...(narrowest === null ? [] : [row("Narrowest", `${say(narrowest)} of paper between two edges`)]),
    ...(scallops === null ? [] : block("Scallops", scallopsInWords(scallops, unit))),
    ...(stitches === null ? [] : [row("Stitches", stitchesInWords(stitches, unit))]),
    ...(written === null ? [] : [row("File", written)]),
  ];
  return unit === "in" && lines.some((line) => line.includes("~"))
    ? [...lines, "", "~ marks a length rounded to 1/64 in; --unit mm shows millimetres."]
    : lines;
}

/** Common practice, no source: narrower bridges tear and curl. */
const NARROW: Readonly<Record<Unit, Ticks>> = { in: TICKS_PER_INCH / 16, mm: millimetres(1.5) };

/** A warning where paper is narrower than it should be. */
export function warnOfShape({ narrowest }: ShapeReport, unit: Unit): readonly string[] {
  if (narrowest === null || narrowest >= NARROW[unit]) return [];
  const say = (length: Ticks) => formatLength(length, { unit });
  return [
    ...wrapped(
      `Warning: The paper between two edges is ${say(narrowest)} wide at the narrowest, and narrower than ` +
        `${say(NARROW[unit])} tears and curls. Make the window smaller or the shape larger. (thin-bridge)`,
    ),
  ];
}

/** `Scalloped circle, 3 in across, with a window: heart, 1 x 1 in`. */
function shapeInWords(shape: Shape, unit: Unit): string {
  if (shape.shape === "frame") {
    const window = shapeInWords(shape.window, unit);
    return `${shapeInWords(shape.outer, unit)}, with a window: ${window.charAt(0).toLowerCase()}${window.slice(1)}`;
  }
  const title = catalogue.find(({ id }) => id === shape.shape)?.title ?? shape.shape;
  return `${title}, ${shapeSizeInWords(shape, unit)}`;
}

/** `20, each 3/8 in wide and 3/16 in deep`; of a rectangle the rows of its sides below. */
function scallopsInWords({ count, depth, rows }: Scallops, unit: Unit): readonly string[] {
  const say = (length: number) => formatLength(Math.round(length), { unit });
  const [first] = rows;
  if (first !== undefined && first.along === "round")
    return [`${count}, each ${say(first.pitch)} wide and ${say(depth)} deep`];
  return [
    `${count} in all, ${say(depth)} deep`,
    ...rows.map((each) => `${each.count} along its ${each.along}, each ${say(each.pitch)} wide`),
  ];
}

const SQUARE_INCH = 25.4 * 25.4;

function areaInWords(squareMillimetres: number, unit: Unit): string {
  const hundredths = (value: number) => String(Math.round(value * 100) / 100);
  return unit === "in"
    ? `${hundredths(squareMillimetres / SQUARE_INCH)} sq in`
    : `${hundredths(squareMillimetres / 100)} sq cm`;
}

function stitchesInWords({ marks, inset, count, pitch, line }: StitchReport, unit: Unit): string {
  const say = (length: Ticks) => formatLength(length, { unit });
  if (line === "vanished") return `none: it is too narrow for a line ${say(inset)} from its edge`;
  const what = counted(
    count,
    marks === "dashes" ? "stitch" : "hole",
    marks === "dashes" ? "stitches" : "holes",
  );
  // Lengths that are said alike need not be said twice.
  const [least, most] = pitch === null ? ["", ""] : [say(pitch.least), say(pitch.most)];
  const every = pitch === null ? "" : `, one every ${least === most ? least : `${least} to ${most}`}`;
  const split = line === "split" ? "; not all round, since it is too narrow in places" : "";
  return `${what}${every}, ${say(inset)} from the edge${split}`;
}

/** All shapes of the catalogue as text: what each is and what can be set. */
export function writeCatalogue(): readonly string[] {
  const lines = catalogue.flatMap(({ id, about, parameters }) => {
    const free = parameters.filter(({ key }) => !["diameter", "side", "width", "height"].includes(key));
    if (id === "frame") {
      const help = "Made of two shapes: --window NAME --window-size SIZE with any shape above.";
      return ["", ...wrapped(`${id}: ${about}`, "  "), `  ${help}`];
    }
    const size = parameters.some(({ key }) => key === "diameter")
      ? "--size is across the circle round it."
      : parameters.some(({ key }) => key === "side")
        ? "--size is one side."
        : "--size is width x height.";
    const rows = table(free.map(({ key, meaning }) => [`  ${kebab(key)}`, meaning]));
    const details = free.flatMap(({ default: usual, range }, index) => [
      ...wrapped(rows[index] ?? "", "    "),
      ...wrapped(`    ${rangeInWords(range, usual)}`, "    "),
    ]);
    return ["", ...wrapped(`${id}: ${about} ${size}`, "  "), ...details];
  });
  return [
    "Shapes for --size, and what --set takes of each:",
    ...lines,
    "",
    "Any shape can have a window, be grown or shrunk, and be stitched: sheetwright shape --help.",
  ];
}

/** What a parameter may be and what it is by itself, as sentences. */
function rangeInWords(range: string, usual: string): string {
  const says = `${range.charAt(0).toUpperCase()}${range.slice(1)}.`;
  return usual === "required" ? `${says} Must be given.` : `${says} Default: ${usual}.`;
}
