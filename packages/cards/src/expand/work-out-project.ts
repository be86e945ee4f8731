import type { Card, Expansion, Piece } from "../expansion.js";
import { grainForFold } from "../fold/fold-verdict.js";
import type { Design, Project } from "../project.js";
import type { ProjectFault } from "../project-fault.js";
import { type CardBuilder, startCard } from "./card-builder.js";
import { checkBundle } from "./check-bundle.js";
import { checkCardNumbers, checkProjectNumbers } from "./check-numbers.js";
import { checkPapers } from "./check-papers.js";
import { fault } from "./fault.js";
import { layLayers } from "./lay-layers.js";
import { visibleAreas } from "./visible-areas.js";

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
  const faults = [...checkProjectNumbers(project), ...checkBundle(project), ...checkPapers(project)];
  const cards: Card[] = [];
  const pieces: Piece[] = [];
  // Without a precision nothing can be measured.
  const measurable = !faults.some(({ path }) => path === "precision");
  for (const design of project.cards) {
    const wrong = checkCardNumbers(design);
    faults.push(...wrong);
    if (wrong.length > 0 || !measurable) continue;
    const builder = workOutCard(project, design);
    faults.push(...builder.faults);
    cards.push(finishCard(builder));
    pieces.push(...builder.pieces);
  }
  const { title, units, papers } = project;
  return { expansion: { title, units, papers, cards, pieces }, faults };
}

function workOutCard(project: Project, design: Design): CardBuilder {
  const forms = design.flats.map(({ width, height, score }) => ({
    width,
    height,
    scores: [score],
    grainAlong: grainForFold(score),
  }));
  const builder = startCard(design, project, forms);
  const front = { x: 0, y: 0, ...design.front, on: null, words: "the front of the card", isMat: false };
  layLayers(builder, design.layers, front);
  // Where something is too large or missing, what it covers says nothing yet.
  if (builder.faults.length === 0) findHiddenMats(builder);
  return builder;
}

function findHiddenMats(builder: CardBuilder): void {
  const { design, layers, pieces, faults } = builder;
  const areas = visibleAreas({ front: design.front, layers });
  const mats = matPaths(design);
  layers.forEach(({ piece: id }, index) => {
    const piece = pieces.find((candidate) => candidate.id === id);
    if (piece === undefined || !mats.has(piece.path) || areas.layers[index] !== 0n) return;
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

/** The paths of all mats of a design, those of its sentiments too. */
function matPaths({ layers }: Pick<Design, "layers">): ReadonlySet<string> {
  return new Set(
    layers.flatMap((layer) => [
      ...(layer.kind === "mat" ? [layer.path] : []),
      ...(layer.kind === "sentiment" ? layer.mats.map((_, index) => `${layer.path}.mats[${index}]`) : []),
      ...matPaths(layer),
    ]),
  );
}

function finishCard({ design, pieces, layers, roundings }: CardBuilder): Card {
  const { number, name, format, front, copies, copiesFor, flats } = design;
  const base = pieces[0]?.id ?? "";
  return { number, name, format, front, copies, copiesFor, flats, base, layers, roundings };
}
