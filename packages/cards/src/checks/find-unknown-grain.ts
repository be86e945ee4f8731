import type { Paper, Project } from "../project.js";
import type { Found } from "./finding.js";

/**
 * Finds papers that are folded and of which the grain is not known.
 *
 * @internal
 */
export function findUnknownGrain({ papers, cards }: Project): readonly Found[] {
  const folded = new Set(
    cards
      .filter(
        ({ foldGrain, flats }) => foldGrain !== "ignore" && flats.some(({ scores }) => scores.length > 0),
      )
      .flatMap(({ base }) => base.faces),
  );
  const isFolded = ({ designs }: Paper) =>
    designs.some(({ front, back }) => folded.has(front.id) || (back !== null && folded.has(back.id)));
  return papers
    .filter((paper) => paper.grain === "unknown" && isFolded(paper))
    .map(({ id, name, sheet }) => {
      // A square sheet has no longer side.
      const words = sheet.width === sheet.height ? ["width", "height"] : ["long", "short"];
      const message =
        `The grain of ${name} is not known, so folds may come out across it and crack. Bend a sheet one way and the ` +
        "other without creasing it: it gives more easily where the bend runs along the grain. " +
        `Then write grain: ${words.join(" or grain: ")}.`;
      return { code: "grain-unknown", path: `papers.${id}`, message };
    });
}
