import { formatLength, formatSize } from "@sheetwright/measure";
import type { Project } from "../project.js";
import type { Found } from "./finding.js";
import { foldedPapers } from "./folded-papers.js";

const BEND_TEST =
  "Bend a sheet one way and the other without creasing it: it gives more easily where the bend runs along the grain.";

/**
 * Finds papers that are folded and of which the grain is not known, or only assumed.
 *
 * @internal
 */
export function findUnsureGrain({ papers, cards, units }: Project): readonly Found[] {
  const folded = foldedPapers({ papers, cards }, ({ foldGrain }) => foldGrain !== "ignore");
  return folded.flatMap(({ id, name, sheet, grain, grainBasis }): readonly Found[] => {
    const path = `papers.${id}`;
    if (grainBasis === "assumed" && (grain === "width" || grain === "height")) {
      const side = formatLength(sheet[grain], { unit: units });
      const message =
        `The grain of ${name} is not given. Boxed cardstock of ${formatSize(sheet.width, sheet.height, { unit: units })} ` +
        `mostly has it along the ${side} side, so that is assumed. ${BEND_TEST} ` +
        "Then write grain: long, or grain: short if it is the other way.";
      return [{ code: "grain-assumed", path, message }];
    }
    if (grain !== "unknown") return [];
    // A square sheet has no longer side.
    const words = sheet.width === sheet.height ? ["width", "height"] : ["long", "short"];
    const message =
      `The grain of ${name} is not known, so folds may come out across it and crack. ${BEND_TEST} ` +
      `Then write grain: ${words.join(" or grain: ")}.`;
    return [{ code: "grain-unknown", path, message }];
  });
}
