import type { Expansion } from "../expansion.js";
import { explainNoPaper } from "../fit/explain-no-paper.js";
import type { Project } from "../project.js";
import type { Found } from "./finding.js";

/**
 * Finds pieces that no paper can give.
 *
 * @internal
 */
export function findNoPaper(project: Project, { pieces }: Expansion): readonly Found[] {
  return pieces.flatMap((piece): readonly Found[] => {
    const found = explainNoPaper(project, piece);
    return found === null ? [] : [{ code: "no-paper", path: found.path, message: found.message }];
  });
}
