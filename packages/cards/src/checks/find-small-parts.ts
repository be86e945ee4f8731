import type { Project } from "../project.js";
import type { Found } from "./finding.js";

/**
 * Finds extras that a small child could swallow.
 *
 * @internal
 */
export function findSmallParts({ cards }: Project): readonly Found[] {
  return cards.flatMap(({ name, extras }) =>
    extras
      .filter(({ isSmallPart }) => isSmallPart)
      .map((extra) => {
        const message =
          `${name} carries a small part: ${extra.count > 1 ? `${extra.count} x ` : ""}${extra.name}. What goes whole into a ` +
          "tube 1 1/4 in (31.7 mm) across can choke a small child, and so can what comes off a card. Keep this card from " +
          "children under three; a warning printed on it does not make it fit for them.";
        return { code: "small-parts", path: extra.path, message };
      }),
  );
}
