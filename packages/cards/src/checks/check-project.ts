import { workOutProject } from "../expand/work-out-project.js";
import type { Expansion } from "../expansion.js";
import type { Project } from "../project.js";
import { applySilences } from "./apply-silences.js";
import { findHiddenLayers } from "./find-hidden-layers.js";
import { findNoPaper } from "./find-no-paper.js";
import { findOddDieCuts } from "./find-odd-die-cuts.js";
import { findOddEnvelopes } from "./find-odd-envelopes.js";
import { findOddFolds } from "./find-odd-folds.js";
import { findOddSeams } from "./find-odd-seams.js";
import { findOddWeights } from "./find-odd-weights.js";
import { findSmallParts } from "./find-small-parts.js";
import { findUnknownWeights } from "./find-unknown-weights.js";
import { findUnsureGrain } from "./find-unsure-grain.js";
import { findUnusedItems } from "./find-unused-items.js";
import { findUnusedPapers } from "./find-unused-papers.js";
import type { Finding, Found } from "./finding.js";
import { placeOrder } from "./place-order.js";
import { checkOf } from "./project-checks.js";

/** What looks a project without faults through. */
const FINDERS: readonly ((project: Project, expansion: Expansion) => readonly Found[])[] = [
  findNoPaper,
  findOddSeams,
  findOddWeights,
  findUnknownWeights,
  findOddEnvelopes,
  findSmallParts,
  findOddDieCuts,
  findHiddenLayers,
  findUnsureGrain,
  findOddFolds,
  findUnusedPapers,
  findUnusedItems,
];

const SEVERITIES = ["error", "warning", "note"] as const;

/**
 * Checks a project by all {@link projectChecks} and lists what they find: errors, then warnings, then notes, each in the order of
 * the project, those that the project silences with the reason. A project with faults has those alone, since nothing else can be told before they are mended. Never throws.
 *
 * @example
 * const { project } = readProject(`
 * sheetwright: 1
 * title: One card
 * copies: 12
 * papers:
 *   night: { cardstock: us-letter, grain: unknown }
 *   stars: { pad: 6 x 6, designs: { dots: 6 } }
 * cards:
 *   - name: Rooftops
 *     format: us-a7
 *     base: night
 *     front:
 *       - { bands: [1, 3], papers: [stars, night], size: 4 x 6 }
 * `);
 * const found = checkProject(project);
 * found.map(({ severity, code }) => [severity, code]) // => [["warning", "grain-unknown"], ["warning", "bare-seam"]]
 * found[1].path // => "cards[0].front[0]"
 */
export function checkProject(project: Project): readonly Finding[] {
  const { expansion, faults } = workOutProject(project);
  const found =
    faults.length > 0
      ? faults.map((one) => ({ ...one, silenced: null }))
      : applySilences(
          FINDERS.flatMap((find) => find(project, expansion)),
          project,
        );
  const order = placeOrder(project);
  return found
    .map(({ code, path, message, silenced }): Finding => {
      const { severity } = checkOf(code);
      return { code, severity, path, message, silenced };
    })
    .sort(
      (a, b) =>
        SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity) || order(a.path) - order(b.path),
    );
}
