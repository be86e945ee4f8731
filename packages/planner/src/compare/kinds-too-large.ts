import type { Form, Kind, Problem, Sheet, Size, Turns } from "@sheetwright/packing";
import { usablePart } from "../strips/strip-forms.js";

/**
 * The ids of kinds that are wanted and lie on no sheet of a problem inside its trim, in any form and turn allowed: known
 * without a search, since no cut is needed to see it.
 */
export function kindsTooLarge({ kinds, sheets }: Problem): readonly Kind["id"][] {
  const isTooLarge = ({ forms }: Kind): boolean =>
    !forms.some((form) => sheets.some((sheet) => canLie(form, sheet)));
  return kinds.filter((kind) => kind.quantity !== 0 && isTooLarge(kind)).map(({ id }) => id);
}

function canLie(form: Form, sheet: Sheet): boolean {
  const turns = turnsOn(form, sheet);
  if (turns === null) return false;
  const usable = usablePart(sheet);
  const turned = { width: form.height, height: form.width };
  return (turns !== "turned" && isWithin(form, usable)) || (turns !== "upright" && isWithin(turned, usable));
}

/** The turns of a form on a sheet; `null` where it may not be cut from it. */
function turnsOn({ turns = "both", sheets }: Form, { id }: Sheet): Turns | null {
  if (sheets === undefined) return turns;
  const own = sheets.find(({ sheet }) => sheet === id);
  return own === undefined ? null : (own.turns ?? turns);
}

function isWithin(inner: Size, outer: Size): boolean {
  return inner.width <= outer.width && inner.height <= outer.height;
}
