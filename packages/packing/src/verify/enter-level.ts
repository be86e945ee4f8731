/** Levels of parallel cuts: a split under a split of the same axis stays in its level. */

import type { LastTrim, Part, Walk } from "./walk.js";

/** In shelf mode: strips, pieces from the strips, one last trim a piece. */
const shelfLevels = 3;

/**
 * Gives the level that the cuts of a part stand on, and reports the first level beyond the limit. Four stopped cuts
 * (`axis` null) are one level, whatever is above them.
 */
export function enterLevel(
  walk: Walk,
  part: Part,
  axis: "x" | "y" | null,
): { readonly level: number; readonly lastTrim: LastTrim | null } {
  if (axis !== null && axis === part.axis) return { level: part.level, lastTrim: part.lastTrim };
  const level = part.level + 1;
  const { stages, mode } = walk.facts;
  if (stages !== null && level === stages + 1) {
    const message =
      `${part.path} starts level ${level} of parallel cuts, but the problem allows ${stages}. ` +
      "Cut its pieces from a level above, or allow more stages.";
    walk.report("too-many-stages", part.path, message, level, stages);
  }
  if (mode !== "shelf") return { level, lastTrim: null };
  if (level === shelfLevels + 1) {
    const message =
      `${part.path} starts a fourth level of cuts, but shelf mode has three: strips, pieces, one last trim. ` +
      "Use guillotine mode for it.";
    walk.report("not-shelf", part.path, message, level, shelfLevels);
  }
  if (level !== shelfLevels) return { level, lastTrim: part.lastTrim };
  const lastTrim = { path: part.path, pieces: 0 };
  walk.lastTrims.push(lastTrim);
  return { level, lastTrim };
}
