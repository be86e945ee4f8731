import type { Expansion } from "../expansion.js";
import type { Project } from "../project.js";
import { ProjectError, type ProjectFault } from "../project-fault.js";
import { workOutProject } from "./work-out-project.js";

/**
 * Works a project out: where each layer of each card lies, to the tick, and the pieces to cut for all copies, labelled by
 * the number of the design, a letter in the order the card is stacked in, and the purpose (`3b mat`). All plain data, and
 * the same for the same project. Throws a ProjectError with all that {@link findProjectFaults} finds.
 *
 * @example
 * const { project } = readProject(`
 * sheetwright: 1
 * title: One card
 * copies: 12
 * papers:
 *   night: { cardstock: us-letter, grain: long }
 *   stars: { pad: 6 x 6, designs: { dots: 6 } }
 * cards:
 *   - name: Rooftops
 *     format: us-a7
 *     base: night
 *     front:
 *       - { mat: stars, border: 1/8 }
 * `);
 * const { pieces, cards } = expandProject(project);
 * pieces.map(({ label, quantity }) => `${label} x ${quantity}`) // => ["1a base x 12", "1b mat x 12"]
 * const [{ x, width }] = cards[0].layers;
 * [x, width].map((ticks) => ticks / 40640) // => [0.125, 4.75]
 */
export function expandProject(project: Project): Expansion {
  const { expansion, faults } = workOutProject(project);
  if (faults.length > 0) throw new ProjectError(faults);
  return expansion;
}

/**
 * Finds everything in which a project contradicts itself: layers or borders that vanish, layers too large for what
 * carries them, papers that are not there, grain that cannot be had, numbers out of their range. Never throws. Lines and
 * columns are `null`: only whoever read the file knows them.
 *
 * @example
 * const { project } = readProject(`
 * sheetwright: 1
 * title: One card
 * papers:
 *   night: { cardstock: us-letter }
 * cards:
 *   - { name: Rooftops, format: us-a7, base: night }
 * `);
 * findProjectFaults(project) // => []
 * const [card] = project.cards;
 * const broken = { ...project, cards: [{ ...card, copies: 0, copiesFor: { guests: 0, samples: 0 } }] };
 * findProjectFaults(broken).map(({ path, code }) => [path, code]) // => [["cards[0].copies", "not-a-count"]]
 * expandProject(broken) // throws ProjectError: cards[0].copies
 */
export function findProjectFaults(project: Project): readonly ProjectFault[] {
  return workOutProject(project).faults;
}
