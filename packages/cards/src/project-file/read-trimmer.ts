import { inches, millimetres, type Size, type Ticks, type Unit } from "@sheetwright/measure";
import type { Trimmer } from "../project.js";
import type { Written } from "./check-structure.js";
import { readLength, readPlainSize } from "./read-measures.js";
import type { Reading } from "./reading.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";

/** What the tool holds and what is kept where the file says nothing: common practice, no source. */
const DEFAULTS: Readonly<Record<Unit, { readonly hold: Ticks; readonly offcut: Size }>> = {
  in: { hold: inches(1), offcut: { width: inches(2), height: inches(2) } },
  mm: { hold: millimetres(25), offcut: { width: millimetres(50), height: millimetres(50) } },
};

/** No blade or saw takes more. */
const WIDEST_KERF = inches(1);

/** Reads what the cutting tool can do. */
export function readTrimmer(
  trimmer: Written<ProjectFile["trimmer"]>,
  reading: Reading,
  path = "trimmer",
): Trimmer {
  const at = (key: string) => pathTo(path, key);
  const { hold, offcut } = DEFAULTS[reading.unit];
  const given = trimmer ?? {};
  return {
    cuts: given.cuts ?? "edge-to-edge",
    kerf: readLength(given.kerf, at("kerf"), reading, { allowZero: true, longest: WIDEST_KERF }) ?? 0,
    longestCut: readLength(given["longest-cut"], at("longest-cut"), reading),
    narrowestHold:
      readLength(given["narrowest-hold"], at("narrowest-hold"), reading, { allowZero: true }) ?? hold,
    smallestOffcut: readPlainSize(given["smallest-offcut"], at("smallest-offcut"), reading) ?? offcut,
  };
}
