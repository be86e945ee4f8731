import { inches, millimetres, type Ticks, type Unit } from "@sheetwright/measure";
import { type FaceOfPaper, indexFaces } from "../expand/face-index.js";
import { workOutProject } from "../expand/work-out-project.js";
import type { Piece } from "../expansion.js";
import type { Choice, Design, Layer, LayerJoin, Project, Seam } from "../project.js";
import { fits, waysToCut } from "./ways-to-cut.js";

/** A way to make a layer up from smaller pieces, tried out. */
export interface HelpByJoin {
  readonly kind: "join";
  readonly join: LayerJoin;
  /** Where it is to be written. */
  readonly path: string;
  /** What to write: `join: { parts: 2, cover: cream, width: 1/2 }`. */
  readonly line: string;
}

/** Covers that are proposed: wide enough for any gap and cut, and still a strip (own choice). */
const WIDTH: Readonly<Record<Unit, { readonly ticks: Ticks; readonly text: string }>> = {
  in: { ticks: inches(1 / 2), text: "1/2" },
  mm: { ticks: millimetres(12), text: "12" },
};

/** Most papers that are tried for a cover or for ends. */
const MOST_TRIED = 4;

/**
 * The ways to make a layer up that its paper is too small for: in two parts or else three, with ends of another paper, and
 * cut short below another layer; each where it works, with the first paper of the project that it works with.
 *
 * @internal
 */
export function helpByJoin(project: Project, piece: Piece, design: Design): readonly HelpByJoin[] {
  const layer = design.surfaces
    .map(({ layers }) => findLayer(layers, piece.path))
    .find((found) => found !== undefined);
  if (layer === undefined || (layer.kind !== "mat" && layer.kind !== "panel" && layer.kind !== "strip"))
    return [];
  if (layer.join !== undefined) return [];
  const index = indexFaces(project);
  const others = [...index.values()].filter(
    ({ face, design: of }) => !piece.faces.includes(face.id) && of.front === face && of.count !== 0,
  );
  const own = index.get(piece.faces[0] ?? "");
  const ends = others.slice(0, MOST_TRIED).map(choiceOf);
  const covers = [...ends, ...(own === undefined ? [] : [choiceOf(own)])];
  const width = WIDTH[project.units];
  const seamOf = (cover: Choice): Seam => ({ cover, width: width.ticks });
  const works = (join: LayerJoin) => tryOut(project, design, layer.path, join, index);
  const first = (
    papers: readonly Choice[],
    makers: readonly ((paper: Choice) => HelpByJoin)[],
  ): readonly HelpByJoin[] => {
    for (const make of makers) {
      for (const paper of papers) {
        const help = make(paper);
        if (works(help.join)) return [help];
      }
    }
    return [];
  };
  const at = { kind: "join", path: layer.path } as const;
  const parts = (count: 2 | 3) => (cover: Choice) => ({
    ...at,
    join: { by: "parts", parts: count, seam: seamOf(cover) } as const,
    line: `join: { parts: ${count}, cover: ${cover.text}, width: ${width.text} }`,
  });
  const hide = { ...at, join: { by: "hide" } as const, line: "join: { hide: below the layer }" };
  return [
    ...(works(hide.join) ? [hide] : []),
    ...first(covers, [parts(2), parts(3)]),
    ...first(ends, [
      (paper) => ({
        ...at,
        join: { by: "ends", paper, at: "both", seam: seamOf(paper) } as const,
        line: `join: { ends: ${paper.text}, cover: ${paper.text}, width: ${width.text} }`,
      }),
      (paper) => ({
        ...at,
        join: { by: "ends", paper, at: "both", seam: { cover: "bare", width: 0 } } as const,
        line: `join: { ends: ${paper.text}, bare: true }`,
      }),
    ]),
  ];
}

function choiceOf({ face }: FaceOfPaper): Choice {
  return { faces: [face.id], text: face.id };
}

/** Whether with this join the card has no faults, and every piece that it gives can be cut. */
function tryOut(
  project: Project,
  design: Design,
  path: string,
  join: LayerJoin,
  index: ReadonlyMap<string, FaceOfPaper>,
): boolean {
  const surfaces = design.surfaces.map((one) => ({ ...one, layers: withJoin(one.layers, path, join) }));
  const { expansion, faults } = workOutProject({ ...project, cards: [{ ...design, surfaces }] });
  if (faults.length > 0) return false;
  const pieces = expansion.pieces.filter(
    (piece) => piece.path === path || piece.path.startsWith(`${path}.join`),
  );
  return pieces.every((piece) => {
    const faces = piece.faces.flatMap((id) => index.get(id) ?? []);
    return waysToCut(piece, faces, project.trimmer.longestCut).some(fits);
  });
}

/**
 * Layers with a join at one of them.
 *
 * @internal
 */
export function withJoin(layers: readonly Layer[], path: string, join: LayerJoin): readonly Layer[] {
  return layers.map((layer) => {
    const inner = { ...layer, layers: withJoin(layer.layers, path, join) };
    const joins = inner.kind === "mat" || inner.kind === "panel" || inner.kind === "strip";
    return joins && inner.path === path ? { ...inner, join } : inner;
  });
}

function findLayer(layers: readonly Layer[], path: string): Layer | undefined {
  for (const layer of layers) {
    const found = layer.path === path ? layer : findLayer(layer.layers, path);
    if (found !== undefined) return found;
  }
  return undefined;
}
