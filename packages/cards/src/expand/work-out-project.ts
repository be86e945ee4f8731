import type { Card, CardSurface, Expansion, Item, Piece } from "../expansion.js";
import { grainForFold } from "../fold/fold-verdict.js";
import { surfacesOf } from "../fold/surfaces.js";
import type { Design, Layer, Project, SurfaceName } from "../project.js";
import type { ProjectFault } from "../project-fault.js";
import { type CardBuilder, startCard } from "./card-builder.js";
import { checkBundle } from "./check-bundle.js";
import { checkItems } from "./check-items.js";
import { checkCutInBags, checkKits } from "./check-kits.js";
import { checkCardNumbers, checkProjectNumbers } from "./check-numbers.js";
import { checkPapers } from "./check-papers.js";
import { checkSilences } from "./check-silences.js";
import { fault } from "./fault.js";
import { findCoveredBorders } from "./find-covered-borders.js";
import { hiddenLayers } from "./hidden-layers.js";
import { hideJoins } from "./hide-joins.js";
import { layEaselFront } from "./lay-easel-front.js";
import { layInsert } from "./lay-insert.js";
import { layLayers } from "./lay-layers.js";
import type { Surface } from "./surface.js";

/** A project worked out, and all that is wrong with it. The expansion is whole only where there are no faults. */
export interface WorkedOut {
  readonly expansion: Expansion;
  readonly faults: readonly ProjectFault[];
}

/**
 * Works a project out as far as its faults allow, and never throws. A card whose numbers make no sense is left out.
 *
 * @internal
 */
export function workOutProject(project: Project): WorkedOut {
  const faults = [
    ...checkProjectNumbers(project),
    ...checkBundle(project),
    ...checkPapers(project),
    ...checkKits(project),
    ...checkSilences(project),
  ];
  const cards: Card[] = [];
  const pieces: Piece[] = [];
  const items: Item[] = [];
  // Without a precision nothing can be measured.
  const measurable = !faults.some(({ path }) => path === "precision");
  for (const design of project.cards) {
    const wrong = checkCardNumbers(design);
    faults.push(...wrong);
    if (wrong.length > 0 || !measurable) continue;
    const builder = workOutCard(project, design);
    faults.push(...builder.faults);
    cards.push(finishCard(builder));
    pieces.push(...builder.pieces.map((piece) => withoutCut(piece, project)));
    items.push(...builder.items);
  }
  faults.push(...checkCutInBags(project, pieces), ...checkItems(project, items));
  const { title, units, papers } = project;
  return { expansion: { title, units, papers, cards, pieces, items }, faults };
}

/** Of what an earlier plan cut, no more counts than is asked for. */
function withoutCut(piece: Piece, { cutAlready = [] }: Project): Piece {
  const before = cutAlready.find((one) => one.piece === piece.id)?.count ?? 0;
  const count = Math.min(before, piece.quantity);
  return count === 0 ? piece : { ...piece, quantity: piece.quantity - count, cutAlready: count };
}

function workOutCard(project: Project, design: Design): CardBuilder {
  const forms = design.flats.map(({ width, height, scores, slits }) => ({
    width,
    height,
    scores: [...scores],
    ...(slits.length === 0 ? {} : { slits: [...slits] }),
    grainAlong: scores[0] === undefined ? null : grainForFold(scores[0]),
  }));
  const builder = startCard(design, project, forms);
  const surfaces = new Map<SurfaceName, Surface>(
    surfacesOfDesign(design).map(({ name, width, height }) => {
      const words = `the ${SURFACE_WORDS[name] ?? `${name.replace("-", " ")} of the card`}`;
      return [name, { surface: name, x: 0, y: 0, width, height, on: null, until: 0, words, isMat: false }];
    }),
  );
  // What lies there lies on these.
  for (const surface of [...layEaselFront(builder, surfaces), ...layInsert(builder, surfaces)]) {
    surfaces.set(surface.surface, surface);
  }
  for (const { name, layers } of design.surfaces) {
    const surface = surfaces.get(name);
    if (surface !== undefined) layLayers(builder, layers, surface);
  }
  hideJoins(builder);
  // Where something is too large or missing, what it covers says nothing yet.
  if (builder.faults.length === 0) findHiddenMats(builder);
  if (builder.faults.length === 0) builder.faults.push(...findCoveredBorders(builder));
  return builder;
}

const SURFACE_WORDS: Readonly<Partial<Record<SurfaceName, string>>> = {
  front: "front of the card",
  inside: "inside of the card",
  "inside-front": "inside of the front",
  "inside-flap": "inside of the flap",
  back: "back of the card",
};

/** Where there are two flats, as for a side or a top fold, their surfaces are the same. */
function surfacesOfDesign({ flats, front }: Pick<Design, "flats" | "front">): readonly CardSurface[] {
  const [flat] = flats;
  return flat === undefined ? [] : surfacesOf(flat, front);
}

function findHiddenMats(builder: CardBuilder): void {
  const { design, layers, pieces, joins, faults } = builder;
  const surfaces = surfacesOfDesign(design);
  const hidden = hiddenLayers({ surfaces, layers });
  const mats = new Set(design.surfaces.flatMap((one) => matPaths(one.layers)));
  const isHidden = (index: number) => hidden.has(index);
  layers.forEach(({ piece: id }, index) => {
    const piece = pieces.find((candidate) => candidate.id === id);
    if (piece === undefined || !mats.has(piece.path) || !isHidden(index)) return;
    // Of a mat in several parts one may be hidden.
    const parts = joins.find((join) => join.pieces.includes(id))?.pieces ?? [id];
    const all = layers.flatMap((layer, at) => (parts.includes(layer.piece) ? [at] : []));
    if (!all.every(isHidden)) return;
    faults.push(
      fault({
        code: "border-vanishes",
        path: piece.path,
        found: "nothing that shows",
        expected: "a mat of which a border shows",
        message:
          `Nothing of the ${piece.label} shows in the end: what lies above covers it whole. ` +
          "Make that smaller, move it, or leave the mat out.",
      }),
    );
  });
}

/** The paths of all mats among layers, those of sentiments too. */
function matPaths(layers: readonly Layer[]): readonly string[] {
  return layers.flatMap((layer) => [
    ...(layer.kind === "mat" ? [layer.path] : []),
    ...(layer.kind === "sentiment" ? layer.mats.map((_, index) => `${layer.path}.mats[${index}]`) : []),
    ...matPaths(layer.layers),
  ]);
}

function finishCard({ design, pieces, layers, seams, joins, reveals, roundings }: CardBuilder): Card {
  const { number, name, format, front, copies, copiesFor, flats, extras } = design;
  const base = pieces[0]?.id ?? "";
  const surfaces = surfacesOfDesign(design);
  return {
    number,
    name,
    format,
    front,
    copies,
    copiesFor,
    flats,
    base,
    surfaces,
    layers,
    seams,
    joins,
    ...(reveals.length === 0 ? {} : { reveals }),
    roundings,
    ...(extras.length === 0
      ? {}
      : { extras: extras.map(({ name, count, surface }) => ({ name, count, surface })) }),
  };
}
