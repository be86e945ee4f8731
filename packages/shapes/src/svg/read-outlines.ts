import { LONGEST_LENGTH, TICKS_PER_INCH } from "@sheetwright/measure";
import { type Box, boxOfAll } from "../measure/box.js";
import type { Outline } from "../outline/outline.js";
import { inherited, PLAIN } from "./appearance.js";
import { joinShapes } from "./join-shapes.js";
import { after, type Matrix, scaling } from "./matrix.js";
import { Notes, type OutlineNote } from "./outline-note.js";
import { Faults, fatal, type OutlinePlace, saidPlace, WHOLE_FILE } from "./outline-read-error.js";
import { parseDocument } from "./parse-document.js";
import { quoted } from "./quoted.js";
import { ReadBudget } from "./read-budget.js";
import { type OutlineReadOptions, settingsOf } from "./read-options.js";
import { type ReadState, ringsOfPath } from "./rings-of-path.js";
import { badSize, faultOfLength, malformed, readPathData } from "./shape-commands.js";
import { StyleRules } from "./style-rules.js";
import { placeOf, type SvgElement } from "./svg-element.js";
import { isPaperLength, parseSvgLength } from "./svg-length.js";
import { fitViewBox, parseViewBox, type ViewBox } from "./viewport.js";
import { Walk } from "./walk-drawing.js";

/** Outlines that were read. */
export interface ReadOutlines {
  /** One for each part, in ticks from the top left corner of the page. At least one. */
  readonly outlines: readonly Outline[];
  /** The box round all of them, in ticks. */
  readonly box: Box;
  /** What was left out and what was taken to be so, one note a kind. */
  readonly notes: readonly OutlineNote[];
}

/**
 * Reads the outlines of an SVG file: what its fills cover, by its fill rules, units and transforms, with parts and windows.
 * Where nothing is filled, its lines are read as cut lines, and one inside another is a window. Curves become arcs within the
 * tolerance; shapes that overlap are joined. Nothing in the file is run and nothing is fetched.
 *
 * Throws an OutlineReadError with all mistakes found, and a RangeError for options that make no sense.
 *
 * Source: Scalable Vector Graphics (SVG) 2, W3C Candidate Recommendation 2018; lengths by CSS Values 3.
 *
 * @example
 * const file = `<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="30mm" viewBox="0 0 50 30">
 *   <path d="M10 5h30v20H10z" fill-rule="evenodd"/></svg>`;
 * const { outlines, box } = readOutlines(file);
 * outlines.length // => 1
 * box // => { x: 16000, y: 8000, width: 48000, height: 32000 }
 * readOutlines("<p>Not a drawing</p>") // throws OutlineReadError: The file is XML, but no SVG
 */
export function readOutlines(svgText: string, options: OutlineReadOptions = {}): ReadOutlines {
  requireText(svgText);
  const state = stateOf(options);
  const { faults, notes, settings } = state;
  const document = parseDocument(svgText, settings.limits, notes);
  const { root } = document;
  const rules = new StyleRules(document.style, notes);
  const page = pageOf(root, state, options.unitsPerInch === undefined);
  faults.throwAny();
  if (page === null) throw new Error("A page without a size has a fault.");
  const style = rules.styleOf(root);
  if (root.attributes.has("transform") || style.has("transform")) {
    faults.add("unsupported", placeOf(root), {
      wrong: "A transform of the whole file is not read.",
      found: "transform",
      expected: "a transform of groups and shapes",
      help: "Move it to a group round the drawing.",
    });
  }
  const walk = new Walk(document, rules, state);
  if (style.get("display") !== "none") {
    walk.drawChildren(root, {
      matrix: page.matrix,
      width: page.width,
      height: page.height,
      appearance: inherited(PLAIN, style),
      depth: 1,
      using: [],
    });
  }
  const outlines = walk.shapes.length === 0 ? [] : joinShapes(walk.shapes, state);
  faults.throwAny();
  if (outlines.length === 0) throw nothingFound(walk.images > 0, notes);
  const box = boxOfAll(outlines);
  const isBeyond =
    Math.min(box.x, box.y) < -settings.tolerance ||
    box.x + box.width > page.paper.width + settings.tolerance ||
    box.y + box.height > page.paper.height + settings.tolerance;
  if (isBeyond) {
    notes.add(
      "beyond-page",
      WHOLE_FILE,
      "Part of the drawing lies beyond its page, where a viewer does not show it.",
    );
  }
  return { outlines, box, notes: notes.list() };
}

/** How path data are read. */
export interface OutlinesOfPathOptions extends OutlineReadOptions {
  /** Which points count as material where lines lie in each other. Default: `nonzero`, as for SVG. */
  readonly fillRule?: "nonzero" | "evenodd" | undefined;
}

/**
 * Reads the outlines of path data, such as the `d` of a path: by default 96 units make an inch; give 25.4 as `unitsPerInch` for
 * millimetres.
 *
 * Throws an OutlineReadError, and a RangeError for options that make no sense.
 *
 * @example
 * const { outlines, box } = outlinesOfPath("M0 20A20 20 0 1 1 40 20A20 20 0 1 1 0 20Z", { unitsPerInch: 25.4 });
 * box // => { x: 0, y: 0, width: 64000, height: 64000 }
 * outlines[0].outer.length // => 2
 * outlinesOfPath("M0 0H30V20") // throws OutlineReadError: The line is not closed
 */
export function outlinesOfPath(pathData: string, options: OutlinesOfPathOptions = {}): ReadOutlines {
  requireText(pathData);
  const state = stateOf(options);
  const { faults, notes, settings } = state;
  const place: OutlinePlace = { line: null, element: "path data" };
  if (pathData.length > settings.limits.characters) {
    throw fatal("over-limit", place, {
      wrong: `There are ${pathData.length} characters; at most ${settings.limits.characters} are read.`,
      found: `${pathData.length} characters`,
      expected: `at most ${settings.limits.characters}`,
      help: "Simplify the path.",
    });
  }
  const unit = TICKS_PER_INCH / settings.unitsPerInch;
  const commands = readPathData(pathData, place, state) ?? [];
  const rings = ringsOfPath(commands, scaling(unit, unit), place, state);
  const shape = { rings, fillRule: options.fillRule ?? "nonzero", isFilled: true, place };
  const outlines = rings.length === 0 ? [] : joinShapes([shape], state);
  faults.throwAny();
  if (outlines.length === 0) throw nothingFound(false, notes);
  return { outlines, box: boxOfAll(outlines), notes: notes.list() };
}

function requireText(text: string): void {
  if (typeof text !== "string") throw new TypeError(`Expected text, found ${typeof text}.`);
}

function stateOf(options: OutlineReadOptions): ReadState {
  const settings = settingsOf(options);
  return { settings, budget: new ReadBudget(settings.limits), faults: new Faults(), notes: new Notes() };
}

interface Page {
  /** From user units to ticks. */
  readonly matrix: Matrix;
  /** In user units: what percentages are of. */
  readonly width: number;
  readonly height: number;
  /** In ticks. */
  readonly paper: { readonly width: number; readonly height: number };
}

/** `null` after a fault. */
function pageOf(root: SvgElement, state: ReadState, maySayUnit: boolean): Page | null {
  const { settings, notes } = state;
  const { attributes } = root;
  const place = placeOf(root);
  const unit = TICKS_PER_INCH / settings.unitsPerInch;
  const sizes = { width: statedSize(root, "width", state), height: statedSize(root, "height", state) };
  const text = attributes.get("viewBox");
  let box: ViewBox | null = null;
  if (text !== undefined) {
    box = parseViewBox(text);
    if (box === null) malformed(place, "viewBox", text, "four finite numbers", state);
    else if (!(box.width > 0 && box.height > 0)) {
      badSize(place, "viewBox", quoted(text), state);
    }
  }
  state.faults.throwAny();
  const isPaper = (["width", "height"] as const).some(
    (side) => sizes[side] !== null && isPaperLength(attributes.get(side) ?? ""),
  );
  if (maySayUnit && !(isPaper && box !== null)) {
    notes.add(
      "size-taken",
      WHOLE_FILE,
      "The file does not say how large its units are on paper: 96 were taken for an inch. Other programs mean 72 or 90; check one length.",
    );
  }
  // A side that is not stated follows from the other one by the shape of the viewBox; without one it has no end.
  const aspect = box === null ? null : box.height / box.width;
  const width =
    sizes.width ?? (sizes.height !== null && aspect !== null ? sizes.height / aspect : (box?.width ?? null));
  const height =
    sizes.height ?? (sizes.width !== null && aspect !== null ? sizes.width * aspect : (box?.height ?? null));
  const paper = {
    width: width === null ? Number.POSITIVE_INFINITY : width * unit,
    height: height === null ? Number.POSITIVE_INFINITY : height * unit,
  };
  if ((width ?? 0) * unit > LONGEST_LENGTH || (height ?? 0) * unit > LONGEST_LENGTH) {
    state.faults.add("too-far", place, {
      wrong: "The page is longer than 10 m.",
      found: `${attributes.get("width") ?? "?"} x ${attributes.get("height") ?? "?"}`.slice(0, 80),
      expected: "at most 10 m",
      help: "Check its width, its height and their units.",
    });
    return null;
  }
  if (box === null) {
    return { matrix: scaling(unit, unit), width: width ?? 0, height: height ?? 0, paper };
  }
  const size = { width: width ?? box.width, height: height ?? box.height };
  const fit = fitViewBox(box, size, attributes.get("preserveAspectRatio"));
  if (fit === null) {
    const found = attributes.get("preserveAspectRatio") ?? "";
    malformed(place, "preserveAspectRatio", found, "a word such as xMidYMid, and meet or slice", state);
    return null;
  }
  return { matrix: after(scaling(unit, unit), fit), width: box.width, height: box.height, paper };
}

/** In user units; `null` where it is not stated, or as a part of the window that shows the file. */
function statedSize(root: SvgElement, side: "width" | "height", state: ReadState): number | null {
  const text = root.attributes.get(side);
  if (text === undefined || text.trim() === "auto") return null;
  const place = placeOf(root);
  const length = parseSvgLength(text, state.settings.unitsPerInch);
  if (typeof length === "string") {
    faultOfLength(place, side, text, length, state);
    return null;
  }
  const size = "units" in length ? length.units : length.part;
  if (!(size > 0)) badSize(place, side, quoted(text), state);
  return "units" in length ? length.units : null;
}

function nothingFound(hasImages: boolean, notes: Notes) {
  if (hasImages) {
    return fatal("bitmap-only", WHOLE_FILE, {
      wrong: "The file holds a picture made of pixels, but no lines.",
      found: "pictures",
      expected: "closed paths or shapes",
      help: "Trace the picture in a drawing program and save the lines.",
    });
  }
  const left = notes.list().filter(({ code }) => code.endsWith("left-out") || code === "specks-dropped");
  return fatal("no-outline", WHOLE_FILE, {
    wrong:
      left.length === 0
        ? "There is no closed line in it."
        : `There is no closed line in it but what was left out: ${left.map((note) => `${saidPlace(note)}${note.message}`).join(" ")}`,
    found: left.length === 0 ? "nothing" : left.map(({ code }) => code).join(", "),
    expected: "at least one closed path or shape",
    help: "Draw a closed line, and give it a fill or a stroke.",
  });
}
