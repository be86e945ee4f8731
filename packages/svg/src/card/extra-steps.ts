import type { Card } from "@sheetwright/planner";
import { unbroken } from "../text/break-lines.js";
import { displayName } from "../wording/display-name.js";
import { surfaceInWords } from "./surface-in-words.js";

/** What is fastened on a card last of all, a step a surface: `Fasten 2 x button and 1 x knot to the front.` */
export function extraSteps({ card }: { readonly card: Pick<Card, "flats" | "extras"> }): readonly string[] {
  const extras = card.extras ?? [];
  const surfaces = [...new Set(extras.map(({ surface }) => surface))];
  return surfaces.map((surface) => {
    const things = extras
      .filter((extra) => extra.surface === surface)
      .map(({ name, count }) => unbroken(`${count} x ${displayName({ id: "", name })}`));
    const last = things.at(-1) ?? "";
    const listed = things.length < 2 ? last : `${things.slice(0, -1).join(", ")} and ${last}`;
    return `Fasten ${listed} to the ${surfaceInWords(card, surface)}.`;
  });
}
