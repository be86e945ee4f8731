/** Draws the sheet itself: fills, outlines, cuts, labels and cut numbers, each in a group of its own. */

import { formatSize, type Unit } from "@sheetwright/measure";
import type { Share, Sheet } from "@sheetwright/packing";
import type { SheetMarks } from "@sheetwright/planner";
import type { LaidOut } from "../layout/lay-out.js";
import type { PieceList } from "../layout/list-pieces.js";
import type { PlaceMarks } from "../layout/lying-marks.js";
import { type Attributes, element, type SvgElement } from "../writer/svg-element.js";
import { drawCutNumber, drawLeader } from "./draw-cut-number.js";
import { drawDimension, drawScore, drawSlit } from "./draw-score.js";
import { drawShapeOnPiece } from "./draw-shape-on-piece.js";
import { drawTop } from "./draw-top.js";
import { hatchedBox, plainBox, windowEdge } from "./fills.js";
import { idOf, type LayoutFigure } from "./layout-figure.js";
import { ACCENT, CUT_LINE, EDGE_LINE, INK, OUTLINE, PAPER, PIECE, QUIET, RULE, TRIM, WASTE } from "./look.js";
import { labelElement } from "./text-element.js";
import { toMillimetres } from "./to-millimetres.js";

/** What is drawn, and where the sheet's top left corner lies on the page (millimetres). */
export interface SheetDrawing {
  readonly sheet: Sheet;
  readonly run: number;
  readonly laidOut: LaidOut;
  readonly pieces: PieceList;
  /** What is marked on each piece, and on the sheet as a whole. */
  readonly places: readonly PlaceMarks[];
  readonly sheetMarks: SheetMarks | null;
  readonly figure: LayoutFigure;
  readonly unit: Unit;
  readonly x: number;
  readonly y: number;
}

/** Draws the groups in painting order. */
export function drawSheet(drawing: SheetDrawing): readonly SvgElement[] {
  const { laidOut, figure } = drawing;
  // What lies in a window is painted over the piece it is opened in.
  const deepest = laidOut.pieces.reduce((most, { level }) => Math.max(most, level), 0);
  const levels = Array.from({ length: deepest + 2 }, (_, level) => level);
  return [
    element("g", { id: "sheet" }, sheetFill(drawing)),
    group("trims", trims(drawing)),
    ...levels.flatMap((level) => [
      group(level === 0 ? "leftovers" : `leftovers-in-windows-${level}`, leftovers(drawing, level)),
      group(level === 0 ? "pieces" : `pieces-in-windows-${level}`, pieces(drawing, level)),
      group(level === 0 ? "windows" : `windows-in-windows-${level}`, windows(drawing, level)),
    ]),
    group("window-edges", windowEdges(drawing)),
    group("shapes", shapes(drawing)),
    group("scores", scores(drawing)),
    group("slits", slits(drawing)),
    group("cuts", cuts(drawing)),
    group("sheet-edge", sheetEdge(drawing)),
    group("labels", labels(drawing)),
    group("score-dimensions", dimensions(drawing)),
    group("tops", tops(drawing)),
    group("cut-numbers", figure.numbers.length === 0 ? [] : cutNumbers(drawing)),
  ].filter(({ children }) => children.length > 0);
}

function group(id: string, children: readonly SvgElement[]): SvgElement {
  return element("g", { id }, children);
}

function at({ x, y }: SheetDrawing, box: Parameters<typeof toMillimetres>[0]) {
  const inMillimetres = toMillimetres(box);
  return { ...inMillimetres, x: x + inMillimetres.x, y: y + inMillimetres.y };
}

function sheetFill(drawing: SheetDrawing): readonly SvgElement[] {
  const { sheet, run, laidOut, sheetMarks } = drawing;
  const whole = at(drawing, { x: 0, y: 0, width: laidOut.width, height: laidOut.height });
  const attributes = {
    id: "sheet-1",
    "data-role": "sheet",
    "data-sheet": sheet.id,
    "data-run": String(run),
    "data-grain": sheetMarks?.grain,
    "data-grain-basis": sheetMarks?.grainIsAssumed === true ? "assumed" : undefined,
    "data-pattern": sheetMarks?.pattern,
    "data-colour": sheetMarks?.colour,
  };
  // What no part covers is taken by the kerf.
  return plainBox(whole, PAPER, "none", attributes);
}

function sheetEdge(drawing: SheetDrawing): readonly SvgElement[] {
  const { laidOut } = drawing;
  const whole = at(drawing, { x: 0, y: 0, width: laidOut.width, height: laidOut.height });
  return [element("rect", { ...whole, fill: "none", stroke: INK, "stroke-width": EDGE_LINE })];
}

function trims(drawing: SheetDrawing): readonly SvgElement[] {
  return drawing.laidOut.trims.flatMap((trim, index) =>
    plainBox(at(drawing, trim), TRIM, RULE, {
      id: idOf("trim", index),
      "data-role": "trim",
      "data-side": trim.side,
    }),
  );
}

function leftovers(drawing: SheetDrawing, level: number): readonly SvgElement[] {
  return drawing.laidOut.leftovers.flatMap((leftover, index) => {
    if (leftover.level !== level) return [];
    const attributes = { id: idOf("leftover", index), "data-role": leftover.what };
    const box = at(drawing, leftover);
    return leftover.what === "offcut" ? hatchedBox(box, attributes) : plainBox(box, WASTE, RULE, attributes);
  });
}

function pieces(drawing: SheetDrawing, level: number): readonly SvgElement[] {
  return drawing.laidOut.pieces.flatMap((piece, index) => {
    const entry = drawing.pieces.entryOf[index];
    if (piece.level !== level || entry === undefined) return [];
    const size = formatSize(entry.size.width, entry.size.height, { unit: drawing.unit });
    const box = at(drawing, piece);
    return element(
      "rect",
      {
        id: idOf("piece", index),
        "data-role": "piece",
        "data-list": String(entry.number),
        ...sharesAsData(piece.shares, drawing.places[index]?.backUp ?? []),
        ...box,
        fill: PIECE,
        stroke: INK,
        "stroke-width": OUTLINE,
      },
      [element("title", {}, [`${entry.label}, ${size}`])],
    );
  });
}

/**
 * `data-kind`, `data-form`, `data-turned` and `data-count`, numbered from the second share on: `data-kind-2`; and
 * `data-back` where the printed back shows.
 */
function sharesAsData(shares: readonly Share[], backUp: readonly boolean[]): Attributes {
  const data: Record<string, string> = {};
  shares.forEach(({ kind, form, turned, count }, index) => {
    const end = index === 0 ? "" : `-${index + 1}`;
    data[`data-kind${end}`] = kind;
    data[`data-form${end}`] = String(form);
    data[`data-turned${end}`] = turned ? "yes" : "no";
    data[`data-count${end}`] = String(count);
    if (backUp[index] === true) data[`data-back${end}`] = "yes";
  });
  return data;
}

function windows(drawing: SheetDrawing, level: number): readonly SvgElement[] {
  return drawing.laidOut.windows.flatMap((window, index) => {
    if (window.level !== level) return [];
    const attributes = { id: idOf("window", index), "data-role": "window", "data-tool": window.tool };
    return plainBox(at(drawing, window), PAPER, "none", attributes);
  });
}

/** Dashed, since another tool than the trimmer opens a window. */
function windowEdges(drawing: SheetDrawing): readonly SvgElement[] {
  return drawing.laidOut.windows.map((window) => windowEdge(at(drawing, window)));
}

function cuts(drawing: SheetDrawing): readonly SvgElement[] {
  const { x, y, figure } = drawing;
  return figure.cuts.map((cut) =>
    element("line", {
      id: `cut-${cut.number}`,
      "data-role": "cut",
      "data-number": String(cut.number),
      x1: x + cut.x1,
      y1: y + cut.y1,
      x2: x + cut.x2,
      y2: y + cut.y2,
      stroke: ACCENT,
      "stroke-width": CUT_LINE,
    }),
  );
}

function shapes({ laidOut, places, x, y }: SheetDrawing): readonly SvgElement[] {
  return laidOut.pieces.flatMap((piece, index) => {
    const shape = places[index]?.shape ?? null;
    if (shape === null) return [];
    return drawShapeOnPiece(shape, piece, { number: index + 1, of: idOf("piece", index) }, x, y);
  });
}

function scores({ x, y, figure }: SheetDrawing): readonly SvgElement[] {
  return figure.scores.map(({ line, of }, index) => drawScore(line, idOf("score", index), of, x, y));
}

function slits({ x, y, figure }: SheetDrawing): readonly SvgElement[] {
  return figure.slits.map(({ of, ...line }, index) => drawSlit(line, idOf("slit", index), of, x, y));
}

function dimensions({ x, y, figure }: SheetDrawing): readonly SvgElement[] {
  return figure.scores.flatMap(({ dimension, of }, index) =>
    dimension === null
      ? []
      : [element("g", { id: `${idOf("score", index)}-at`, "data-of": of }, drawDimension(dimension, x, y))],
  );
}

function tops({ x, y, figure }: SheetDrawing): readonly SvgElement[] {
  return figure.tops.map(({ of, ...top }, index) => drawTop(top, idOf("top", index), of, x, y));
}

function labels(drawing: SheetDrawing): readonly SvgElement[] {
  const { x, y, figure } = drawing;
  return figure.labels.map(({ of, what, label }) => {
    const text = labelElement(label, x + label.x, y + label.y, ({ role }) =>
      role === "size" || what !== "piece" ? QUIET : INK,
    );
    const back = what === "offcut" ? [backing(label.box, x, y)] : [];
    return element("g", { id: `label-of-${of}`, "data-of": of }, [...back, text]);
  });
}

/** Keeps the hatching off the text. */
function backing(box: LayoutFigure["labels"][number]["label"]["box"], x: number, y: number): SvgElement {
  return element("rect", { ...box, x: x + box.x, y: y + box.y, fill: PAPER });
}

function cutNumbers({ x, y, figure }: SheetDrawing): readonly SvgElement[] {
  return figure.numbers.map((badge) =>
    element("g", { id: `cut-number-${badge.number}` }, [
      ...drawLeader(badge.leader.map(([px, py]) => [x + px, y + py])),
      ...drawCutNumber(badge.number, x + badge.x, y + badge.y),
    ]),
  );
}
