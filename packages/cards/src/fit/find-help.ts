// What would help where no paper can give a piece. Every proposal is tried out before it is made.

import type { Size, Ticks } from "@sheetwright/measure";
import { type FaceOfPaper, indexFaces } from "../expand/face-index.js";
import { workOutProject } from "../expand/work-out-project.js";
import type { Piece } from "../expansion.js";
import { flatsOf } from "../fold/flats.js";
import { grainForFold } from "../fold/fold-verdict.js";
import { surfacesOf } from "../fold/surfaces.js";
import type { Design, Flat, Layer, Project, SurfaceLayers } from "../project.js";
import { type HelpByJoin, helpByJoin } from "./help-by-join.js";
import { longestCutFor } from "./longest-cut-for.js";
import { fits, type Relaxation, type Way, waysToCut } from "./ways-to-cut.js";

/** A change after which the piece could be cut. */
export type Help =
  | { readonly kind: "turn"; readonly face: FaceOfPaper; readonly against: "pattern" | "grain" | "both" }
  | { readonly kind: "fold"; readonly flat: Flat; readonly face: FaceOfPaper }
  | { readonly kind: "panels"; readonly flat: Flat; readonly face: FaceOfPaper }
  | { readonly kind: "papers"; readonly names: readonly string[]; readonly faces: readonly string[] }
  | { readonly kind: "border"; readonly from: Ticks | null; readonly by: Ticks; readonly path: string }
  | { readonly kind: "untrimmed"; readonly face: FaceOfPaper }
  | HelpByJoin
  | { readonly kind: "tool"; readonly longestCut: Ticks }
  | {
      readonly kind: "sheet";
      readonly size: Size;
      /** Where the grain has to run along a side: that side's length. */
      readonly grainAlong: Ticks | null;
      /** True where a larger sheet would do as well, whatever its size. */
      readonly orLarger: boolean;
    };

/**
 * All that would help, the least change first; `nearest` is the way that comes nearest to fitting.
 *
 * @internal
 */
export function findHelp(project: Project, piece: Piece, nearest: Way): readonly Help[] {
  const index = indexFaces(project);
  const own = piece.faces.flatMap((id) => index.get(id) ?? []);
  const design = project.cards.find(({ number }) => number === piece.card);
  const { longestCut } = project.trimmer;
  return [
    ...helpByTool(piece, own, longestCut),
    ...helpByTurn(piece, own, longestCut),
    ...(design === undefined ? [] : helpByFold(piece, design, own, longestCut)),
    ...(design === undefined ? [] : helpByPanels(project, piece, design, own)),
    ...(design === undefined ? [] : helpByBorder(project, piece, design, own)),
    ...helpByTrim(piece, own, longestCut),
    ...helpByPaper(piece, own, [...index.values()], longestCut),
    ...(design === undefined ? [] : helpByJoin(project, piece, design)),
    ...helpBySheet(piece, nearest, longestCut),
  ];
}

function helpByTool(piece: Piece, own: readonly FaceOfPaper[], longestCut: Ticks | null): readonly Help[] {
  const ways = waysToCut(piece, own, longestCut, { longestCut: true }).filter(fits);
  if (ways.length === 0) return [];
  const least = ways.reduce((least, { cut }) => Math.min(least, cut ?? least), Number.MAX_SAFE_INTEGER);
  return [{ kind: "tool", longestCut: least }];
}

function helpByTurn(piece: Piece, own: readonly FaceOfPaper[], longestCut: Ticks | null): readonly Help[] {
  const found = (without: Relaxation) => waysToCut(piece, own, longestCut, without).find(fits)?.from;
  const byPattern = found({ pattern: true });
  const byGrain = found({ grain: true });
  const helps: Help[] = [];
  if (byPattern !== undefined) helps.push({ kind: "turn", face: byPattern, against: "pattern" });
  if (byGrain !== undefined) helps.push({ kind: "turn", face: byGrain, against: "grain" });
  if (helps.length > 0) return helps;
  const byBoth = found({ pattern: true, grain: true });
  return byBoth === undefined ? [] : [{ kind: "turn", face: byBoth, against: "both" }];
}

function helpByFold(
  piece: Piece,
  design: Design,
  own: readonly FaceOfPaper[],
  longestCut: Ticks | null,
): readonly Help[] {
  if (piece.path !== `${design.path}.base`) return [];
  const { front, flats } = design;
  // Any other fold makes another card of it.
  if (flats.some(({ fold }) => fold !== "side" && fold !== "top")) return [];
  return flatsOf({ front, fold: "either" })
    .filter(({ fold }) => !flats.some((flat) => flat.fold === fold))
    .flatMap((flat) => {
      const { width, height, scores } = flat;
      const grainAlong = scores[0] === undefined ? null : grainForFold(scores[0]);
      const form = { width, height, scores, grainAlong };
      const way = waysToCut({ forms: [form], grainNeed: piece.grainNeed }, own, longestCut).find(fits);
      return way === undefined ? [] : [{ kind: "fold", flat, face: way.from } as const];
    });
}

/** As many panels of an accordion as its papers give, of those that nothing lies on beyond. */
function helpByPanels(
  project: Project,
  piece: Piece,
  design: Design,
  own: readonly FaceOfPaper[],
): readonly Help[] {
  const [whole] = design.flats;
  if (whole?.fold !== "accordion" || piece.path !== `${design.path}.base`) return [];
  const { along } = whole;
  const { front, surfaces, extras } = design;
  const used = [
    ...surfaces.filter(({ layers }) => layers.length > 0).map(({ name }) => name),
    ...extras.map(({ surface }) => surface),
  ];
  for (let panels = whole.panels.length - 1; panels >= 2; panels--) {
    const [flat] = flatsOf({ front, fold: { kind: "accordion", panels, along } });
    if (flat === undefined) continue;
    const left = new Set(surfacesOf(flat, front).map(({ name }) => name));
    if (!used.every((name) => left.has(name))) return [];
    const { expansion, faults } = workOutProject({ ...project, cards: [{ ...design, flats: [flat] }] });
    if (faults.length > 0) return [];
    const base = expansion.pieces.find(({ path }) => path === piece.path);
    const way = base && waysToCut(base, own, project.trimmer.longestCut).find(fits);
    if (way !== undefined) return [{ kind: "panels", flat, face: way.from }];
  }
  return [];
}

function helpByTrim(piece: Piece, own: readonly FaceOfPaper[], longestCut: Ticks | null): readonly Help[] {
  const way = waysToCut(piece, own, longestCut, { trim: true }).find(fits);
  return way === undefined ? [] : [{ kind: "untrimmed", face: way.from }];
}

/** Other papers on hand, and other faces of its own papers. */
function helpByPaper(
  piece: Piece,
  own: readonly FaceOfPaper[],
  all: readonly FaceOfPaper[],
  longestCut: Ticks | null,
): readonly Help[] {
  const tried = new Set(own.map(({ face }) => face.id));
  const ownPapers = new Set(own.map(({ paper }) => paper));
  const others = all.filter(({ face }) => !tried.has(face.id));
  const fitting = new Set(
    waysToCut(piece, others, longestCut)
      .filter((way) => fits(way) && way.onHand)
      .map(({ from }) => from),
  );
  if (fitting.size === 0) return [];
  // Of a paper of its own, and of one that fits with its back up only, the face has to be told.
  const fronts = new Set(
    [...fitting].filter(({ design, face }) => design.front === face).map(({ paper }) => paper),
  );
  const names = [...fitting].map(({ paper, face }) =>
    ownPapers.has(paper) || !fronts.has(paper) ? face.name : paper.name,
  );
  return [{ kind: "papers", names: [...new Set(names)], faces: [...fitting].map(({ face }) => face.id) }];
}

/** The narrowest wider border, the same step on all sides, that brings the piece down to what its papers give. */
function helpByBorder(
  project: Project,
  piece: Piece,
  design: Design,
  own: readonly FaceOfPaper[],
): readonly Help[] {
  const path = piece.path.replace(/(?:\.papers\[\d+\])*(?:\.seam|\.join(?:\.ends)?)?$/, "");
  const layer = design.surfaces
    .map(({ layers }) => findLayer(layers, path))
    .find((found) => found !== undefined);
  if (layer === undefined || !("extent" in layer)) return [];
  if (layer.extent.by !== "border") return [];
  const { border } = layer.extent;

  const { precision } = project;
  const tryOut = (steps: number) => {
    const surfaces = widenOnSurfaces(design.surfaces, path, steps * precision);
    const { expansion, faults } = workOutProject({ ...project, cards: [{ ...design, surfaces }] });
    // Letters may change, where a layer with a join comes to be cut whole.
    const narrower = expansion.pieces.filter((one) => one.path === piece.path && sameFaces(one, piece));
    const { longestCut } = project.trimmer;
    const possible =
      narrower.length > 0 && narrower.every((one) => waysToCut(one, own, longestCut).some(fits));
    return { possible, sound: faults.length === 0 };
  };
  // What fits with some border fits with any wider one, so the search halves; the answer is checked as a whole.
  let under = 0;
  let enough = Math.ceil(Math.min(design.front.width, design.front.height) / (2 * precision));
  while (enough - under > 1) {
    const steps = under + Math.floor((enough - under) / 2);
    const { possible, sound } = tryOut(steps);
    // A border so wide that something vanishes is as good as enough: the search goes on below it.
    if (possible || !sound) enough = steps;
    else under = steps;
  }
  const { possible, sound } = tryOut(enough);
  if (!possible || !sound) return [];
  const { left, right, top, bottom } = border;
  const even = left === right && left === top && left === bottom;
  return [{ kind: "border", from: even ? left : null, by: enough * precision, path }];
}

function sameFaces(one: Piece, other: Piece): boolean {
  return one.faces.length === other.faces.length && one.faces.every((id, at) => id === other.faces[at]);
}

/**
 * The surfaces with wider borders round one of their layers.
 *
 * @internal
 */
export function widenOnSurfaces(
  surfaces: readonly SurfaceLayers[],
  path: string,
  by: Ticks,
): readonly SurfaceLayers[] {
  return surfaces.map((surface) => ({ ...surface, layers: widenBorder(surface.layers, path, by) }));
}

function widenBorder(layers: readonly Layer[], path: string, by: Ticks): readonly Layer[] {
  return layers.map((layer) => {
    const inner = { ...layer, layers: widenBorder(layer.layers, path, by) };
    if (inner.path !== path || !("extent" in inner)) return inner;
    if (inner.extent.by !== "border") return inner;
    const { left, right, top, bottom } = inner.extent.border;
    const border = { left: left + by, right: right + by, top: top + by, bottom: bottom + by };
    return { ...inner, extent: { by: "border", border } };
  });
}

function findLayer(layers: readonly Layer[], path: string): Layer | undefined {
  for (const layer of layers) {
    const found = layer.path === path ? layer : findLayer(layer.layers, path);
    if (found !== undefined) return found;
  }
  return undefined;
}

function helpBySheet(
  { grainNeed }: Piece,
  { form, lying, from }: Way,
  longestCut: Ticks | null,
): readonly Help[] {
  const { trim } = from.paper;
  const size = {
    width: lying.width + trim.left + trim.right,
    height: lying.height + trim.top + trim.bottom,
  };
  const cut = longestCutFor(lying, { sheet: size, trim, usable: lying });
  if (longestCut !== null && cut > longestCut) return [];
  const { grain } = from.paper;
  const required = grainNeed === "require" && form.grainAlong !== null;
  const grainAlong = required && (grain === "width" || grain === "height") ? lying[grain] : null;
  return [{ kind: "sheet", size, grainAlong, orLarger: longestCut === null }];
}
