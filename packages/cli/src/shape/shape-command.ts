import { catalogue, type Outline, outlineOf } from "@sheetwright/shapes";
import { OutlineReadError, readOutlines } from "@sheetwright/shapes/svg";
import { drawCatalogue, drawShape, shapeSizeInWords } from "@sheetwright/svg";
import { type Fault, FaultsFound, type Place, writePlace } from "../fault.js";
import { writeOneFile } from "../folder/write-one-file.js";
import type { Io } from "../io.js";
import type { WrittenOptions } from "../request/plan-options.js";
import { readText } from "../text/read-text.js";
import { warnOfShape, writeCatalogue, writeShape } from "../words/write-shape.js";
import { type MadeShape, makeShape } from "./shape-report.js";
import { readShapeRequest, type ShapeRequest } from "./shape-request.js";

/**
 * Runs `sheetwright shape`: measures a shape of the catalogue or of a file and writes it at true size, or tells of all
 * shapes. Rejects with {@link FaultsFound} for every mistake; then nothing is written.
 *
 * @param rest what stands on the command line beside known options: the name of the shape, and faults.
 */
export async function shapeCommand(written: WrittenOptions, rest: readonly string[], io: Io): Promise<0> {
  const { request, faults } = readShapeRequest(written, rest);
  if (request === null) throw new FaultsFound(faults);
  const { what } = request;
  if (what.kind === "list") return listShapes(request, io);
  const { outlines, notes } =
    what.kind === "shape" ? { outlines: [outlineOf(what.shape)], notes: [] } : await readFile(what.file, io);
  const made = make(outlines, request);
  if (made === null) {
    const message = "nothing is left of the shape once its edge is moved in so far. Move it in by less.";
    throw new FaultsFound([{ code: "nothing-left", place: { option: "--grow" }, message }]);
  }
  const { report, stitches } = made;
  if (request.out !== null) {
    const svg = drawShape(made.outlines, {
      title: titleOf(request),
      stitches,
      arcs: request.lines ? "lines" : "curves",
      check: request.rulers,
    });
    await writeOneFile(request.out, svg, { ...io, mayReplace: request.force });
  }
  if (request.json) io.stdout.write(`${JSON.stringify(report, null, 2)}\n`);
  (request.json ? io.stderr : io.stdout).write(lines(writeShape(report, request.unit)));
  const heard = [...warnOfShape(report, request.unit), ...notes];
  if (heard.length > 0) io.stderr.write(lines(["", ...heard]));
  return 0;
}

async function listShapes({ out, unit, json, force }: ShapeRequest, io: Io): Promise<0> {
  if (out !== null) await writeOneFile(out, drawCatalogue({ unit }), { ...io, mayReplace: force });
  if (json) {
    const list = { sheetwright: "shapes", version: 1, shapes: catalogue, written: out };
    io.stdout.write(`${JSON.stringify(list, null, 2)}\n`);
  }
  const text = [...writeCatalogue(), ...(out === null ? [] : ["", `Written: ${out}, all of them drawn.`])];
  (json ? io.stderr : io.stdout).write(lines(text));
  return 0;
}

/** The shape that is asked for; holes that cannot be so near the edge are a fault of what was asked. */
function make(outlines: readonly Outline[], request: ShapeRequest): MadeShape | null {
  try {
    return makeShape(outlines, request);
  } catch (error) {
    if (!(error instanceof RangeError) || request.stitched === null) throw error;
    const message = `${request.stitched.marks} cannot be made so near the edge. Move them further in, such as --stitched 1/8.`;
    throw new FaultsFound([{ code: "no-such-stitches", place: { option: "--stitched" }, message }], {
      cause: error,
    });
  }
}

function titleOf({ what, unit }: ShapeRequest): string {
  if (what.kind !== "shape") return what.kind === "file" ? what.file : "";
  const { shape } = what;
  const title = catalogue.find(({ id }) => id === shape.shape)?.title ?? shape.shape;
  return `${title}, ${shapeSizeInWords(shape, unit)}`;
}

async function readFile(
  file: string,
  io: Io,
): Promise<{ readonly outlines: readonly Outline[]; readonly notes: readonly string[] }> {
  const help = "Save it as SVG.";
  const text = await readText(file, { place: { option: "sheetwright shape" }, help }, io);
  if (typeof text !== "string") throw new FaultsFound([text]);
  try {
    const { outlines, notes } = readOutlines(text);
    return {
      outlines,
      notes: notes.map((note) => `${writePlace(placeIn(file, note))}: Note: ${note.message} (${note.code})`),
    };
  } catch (error) {
    if (!(error instanceof OutlineReadError)) throw error;
    throw new FaultsFound(
      error.details.map(
        (detail): Fault => ({
          code: detail.code,
          place: placeIn(file, detail),
          message: detail.message,
          found: detail.found,
          expected: detail.expected,
        }),
      ),
      { cause: error },
    );
  }
}

interface Told {
  readonly line: number | null;
  readonly element: string;
}

function placeIn(file: string, { line, element }: Told): Place {
  return line === null ? { file, path: element } : { file, line, path: element };
}

function lines(texts: readonly string[]): string {
  return `${texts.join("\n")}\n`;
}
