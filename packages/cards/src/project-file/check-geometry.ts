import { choicesOf } from "../expand/card-choices.js";
import { findProjectFaults } from "../expand/expand-project.js";
import type { Design, Layer, Project } from "../project.js";
import type { FaultList } from "./fault-list.js";
import { pathTo } from "./value-path.js";

/** Finds what does not fit on the cards that are right so far, so that it is told with what is wrong on the others. */
export function checkGeometry(project: Project, faults: FaultList): void {
  const papers = project.papers.filter(({ id }) => faults.isSound(pathTo("papers", id)));
  const sound = new Set(papers.map(({ id }) => id));
  const isSound = (face: string) => sound.has(face.split(".", 1)[0] ?? "");
  const cards = project.cards
    .filter(({ path }) => faults.isSound(path))
    .map((card) =>
      choicesOf(card).every(({ choice }) => choice.faces.every(isSound)) ? card : withoutGrain(card),
    );
  if (cards.length === 0) return;
  for (const fault of findProjectFaults({ ...project, cards })) {
    // Which papers there are was told before; the choice of one that could not be read is empty.
    if (fault.code !== "missing" && fault.code !== "unknown-paper") faults.add(fault);
  }
}

/**
 * A paper that could not be read says nothing of its grain, so none is asked for, nor of how large it is, so nothing is made
 * up of smaller pieces.
 */
function withoutGrain(card: Design): Design {
  const surfaces = card.surfaces.map((one) => ({ ...one, layers: one.layers.map(layerWithoutGrain) }));
  const insert = card.insert === undefined ? {} : { insert: { ...card.insert, grain: "ignore" as const } };
  return { ...card, ...insert, foldGrain: "ignore", surfaces };
}

function layerWithoutGrain(layer: Layer): Layer {
  const plain = { ...layer, grain: null, layers: layer.layers.map(layerWithoutGrain) };
  return "join" in plain ? { ...plain, join: undefined } : plain;
}
