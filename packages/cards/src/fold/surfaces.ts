// The surfaces of a card that layers may lie on, as the reader of the card sees each. Of the panels seen with the outside
// up, the front is the last one; turning the card over mirrors their order, so the inside reads from the last to the first.

import type { Size } from "@sheetwright/measure";
import type { CardSurface } from "../expansion.js";
import type { Flat, SurfaceName } from "../project.js";

/**
 * The surfaces of a card with this front, folded from this flat; the front first. Where the front is more than one panel,
 * as that of a gate, what lies on `front` is glued to one of them alone, and each panel is a surface of its own besides.
 *
 * @example
 * const front = { width: 4, height: 6 };
 * surfacesOf(flatsOf({ front, fold: "side" })[0], front).map(({ name }) => name) // => ["front", "inside", "inside-front", "back"]
 * surfacesOf(flatsOf({ front, fold: "flat" })[0], front).map(({ name }) => name) // => ["front", "back"]
 * surfacesOf(flatsOf({ front, fold: "gate" })[0], front)[3] // => { name: "left-door", width: 2, height: 6 }
 */
export function surfacesOf(flat: Flat, front: Size): readonly CardSurface[] {
  const { fold, panels, along } = flat;
  const panel = (name: SurfaceName, index: number): CardSurface => ({
    name,
    ...front,
    [along]: panels.at(index) ?? front[along],
  });
  const whole = (name: SurfaceName): CardSurface => ({ name, ...front });
  switch (fold) {
    case "flat":
      return [whole("front"), whole("back")];
    case "side":
    case "top":
      return [whole("front"), whole("inside"), whole("inside-front"), whole("back")];
    case "gate": {
      const [first, second] =
        along === "width" ? (["left-door", "right-door"] as const) : (["upper-door", "lower-door"] as const);
      return [whole("front"), panel("inside", 1), panel("back", 1), panel(first, -1), panel(second, 0)];
    }
    case "z":
      return [whole("front"), panel("inside", 0), panel("back", 0), panel("flap", -1)];
    case "easel":
      return [whole("front"), panel("inside", 0), panel("back", 0)];
    case "tri":
      return [
        whole("front"),
        panel("inside", 1),
        panel("inside-front", 2),
        panel("inside-flap", 0),
        panel("flap", 0),
        panel("back", 1),
      ];
    default:
      // All panels that show when the card is opened have numbers, in the order in which its reader sees them.
      return [
        whole("front"),
        whole("back"),
        ...panels.map((_, index) => panel(`page-${index + 1}`, panels.length - 1 - index)),
      ];
  }
}
