import { formatLength, formatSize, type Size, type Ticks } from "@sheetwright/measure";
import type { Sides } from "../project.js";
import type { Written } from "./check-structure.js";
import { readLength } from "./read-measures.js";
import type { Reading } from "./reading.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";

/** Reads what is squared off each side of a sheet, and reports what leaves nothing of it or takes too long a cut. */
export function readTrim(
  trim: Written<ProjectFile["papers"][string]["trim"]>,
  path: string,
  sheet: Size | null,
  longestCut: Ticks | null,
  reading: Reading,
): Sides {
  const read = (value: string | number | undefined, at: string) =>
    readLength(value, at, reading, { allowZero: true }) ?? 0;
  if (typeof trim !== "object") {
    const all = read(trim, path);
    const sides = { left: all, right: all, top: all, bottom: all };
    checkTrim(sides, path, sheet, longestCut, reading);
    return sides;
  }
  const side = (key: keyof Sides) => read(trim[key], pathTo(path, key));
  const sides = { left: side("left"), right: side("right"), top: side("top"), bottom: side("bottom") };
  checkTrim(sides, path, sheet, longestCut, reading);
  return sides;
}

function checkTrim(
  { left, right, top, bottom }: Sides,
  path: string,
  sheet: Size | null,
  longestCut: Ticks | null,
  { faults, unit }: Reading,
): void {
  if (sheet === null || !faults.isSound(path)) return;
  const size = formatSize(sheet.width, sheet.height, { unit });
  const width = sheet.width - left - right;
  if (width < 1 || sheet.height - top - bottom < 1) {
    const message = `Trimming takes the whole sheet of ${size}. Give a smaller trim.`;
    faults.report({ code: "layer-vanishes", path, expected: `a trim that leaves some of ${size}`, message });
    return;
  }
  const longest = Math.max(left + right > 0 ? sheet.height : 0, top + bottom > 0 ? width : 0);
  if (longestCut === null || longest <= longestCut) return;
  const needed = formatLength(longest, { unit });
  const limit = formatLength(longestCut, { unit });
  faults.report({
    code: "contradiction",
    path,
    expected: `cuts of at most ${limit}`,
    message: `Squaring off the sheet of ${size} takes a cut of ${needed}, and the trimmer's longest cut is ${limit}. Leave the trim out, take it from other sides, or use a smaller sheet.`,
  });
}
