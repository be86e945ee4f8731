import { type Piece, type Project, usualDieMachine } from "@sheetwright/cards";
import type { Size } from "@sheetwright/measure";
import type { Form, Sheet } from "@sheetwright/packing";
import type { GroupTask } from "../group/group-problem.js";
import { type StripSize, stripShare, stripSize } from "./strip-size.js";

/** What of the project strips hang on. */
export type StripWorkshop = Pick<Project, "units" | "precision" | "dieMachine" | "trimmer">;

/** So many shapes at most lie in one strip: common practice, no source; a longer one is hard to feed straight. */
const MOST_SHAPES = 12;

/**
 * The strips that hold so many shapes of a piece, one for each side that they may lie along; none where the piece cannot be
 * cut in strips at all. Only what a die cuts can: its blank must go between the plates, and the narrow side of the strip
 * must be no wider than the narrow side of the platform, since the strip is moved on along its long side between two passes
 * (common practice, no source). A strip must fit some sheet that the piece may be cut from.
 */
export function stripForms(
  piece: Piece,
  holds: number,
  task: Pick<GroupTask, "problem">,
  workshop: StripWorkshop,
): readonly StripSize[] {
  const { platform, strips = true } = workshop.dieMachine ?? usualDieMachine(workshop.units);
  const [blank] = piece.forms;
  const form = task.problem.kinds.find(({ id }) => id === piece.id)?.forms[0];
  if (!strips || piece.die?.name == null || blank === undefined || form === undefined) return [];
  if (!goesBetween(blank, platform)) return [];
  const found = (["width", "height"] as const).flatMap((along) => {
    // What a cut takes must be less than a shape with a margin: a saw wider than a shape saves nothing by strips.
    if ((stripShare(piece, along) ?? 0) <= workshop.trimmer.kerf) return [];
    const strip = stripSize(piece, holds, along, workshop.precision);
    const passes = strip !== null && shortSide(strip) <= shortSide(platform);
    return passes && fitsSomewhere(strip, form, task.problem.sheets) ? [strip] : [];
  });
  return isRound(piece, form) ? found.slice(0, 1) : found;
}

/** How many shapes a strip can hold, of the pieces of a group that may be cut in strips. */
export function mostInStrips(
  task: Pick<GroupTask, "problem">,
  pieces: readonly Piece[],
  workshop: StripWorkshop,
): ReadonlyMap<Piece["id"], number> {
  const quantities = new Map(task.problem.kinds.map(({ id, quantity }) => [id, quantity ?? 0]));
  const mostOf = (piece: Piece): number => {
    const limit = Math.min(quantities.get(piece.id) ?? 0, MOST_SHAPES);
    let most = 1;
    while (most < limit && stripForms(piece, most + 1, task, workshop).length > 0) most++;
    return most;
  };
  return new Map(pieces.map((piece) => [piece.id, mostOf(piece)] as const).filter(([, most]) => most > 1));
}

function goesBetween({ width, height }: Size, platform: Size): boolean {
  return (
    Math.min(width, height) <= shortSide(platform) &&
    Math.max(width, height) <= Math.max(platform.width, platform.height)
  );
}

function shortSide({ width, height }: Size): number {
  return Math.min(width, height);
}

/** Whether a strip along one side, turned by a quarter, is the strip along the other. */
function isRound({ die, forms: [blank] }: Piece, form: Form): boolean {
  return (
    die?.cut.width === die?.cut.height &&
    blank?.width === blank?.height &&
    (form.sheets ?? []).every(({ turns }) => turns === "both")
  );
}

function fitsSomewhere({ width, height }: Size, form: Form, sheets: readonly Sheet[]): boolean {
  return (form.sheets ?? []).some(({ sheet: id, turns }) => {
    const sheet = sheets.find((one) => one.id === id);
    if (sheet === undefined || sheet.stock === 0) return false;
    const usable = usablePart(sheet);
    return (
      (turns !== "turned" && width <= usable.width && height <= usable.height) ||
      (turns !== "upright" && height <= usable.width && width <= usable.height)
    );
  });
}

/** What of a sheet lies inside its trim. */
export function usablePart({ width, height, trim = {} }: Sheet): Size {
  const { left = 0, right = 0, top = 0, bottom = 0 } = trim;
  return { width: width - left - right, height: height - top - bottom };
}
