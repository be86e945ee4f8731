import { inches, millimetres, type Size, type Ticks, type Unit } from "@sheetwright/measure";
import type { DieMachine } from "../project.js";
import type { Written } from "./check-structure.js";
import { nearestWord } from "./nearest-word.js";
import { readLength, readPlainSize } from "./read-measures.js";
import type { Reading } from "./reading.js";
import { quote } from "./say-value.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";
import { WORDINGS } from "./wording.js";

/** Plates of the usual machines: common practice, no source. */
const PLATFORMS: Readonly<Record<"small" | "large", Size>> = {
  small: { width: inches(6), height: inches(9) },
  large: { width: inches(8.5), height: inches(12) },
};

/** What a die blank has more on each side: common practice, no source. */
const MARGIN: Readonly<Record<Unit, Ticks>> = { in: inches(1 / 4), mm: millimetres(6) };

/** Narrower paper tears and curls: common practice, no source. */
const BRIDGE: Readonly<Record<Unit, Ticks>> = { in: inches(1 / 16), mm: millimetres(1.5) };

/** No die has a wider margin. */
export const WIDEST_MARGIN: Ticks = inches(6);

/**
 * What presses dies where nothing is said: a small machine.
 *
 * @example
 * usualDieMachine("mm").margin // => 6 * 1600
 * usualDieMachine("in").platform // => { width: 6 * 40640, height: 9 * 40640 }
 */
export function usualDieMachine(unit: Unit): DieMachine {
  return { platform: PLATFORMS.small, margin: MARGIN[unit], narrowestBridge: BRIDGE[unit] };
}

/** Reads what presses dies. */
export function readDieMachine(written: Written<ProjectFile["die-machine"]>, reading: Reading): DieMachine {
  const usual = usualDieMachine(reading.unit);
  if (written === undefined) return usual;
  const at = (key: string) => pathTo("die-machine", key);
  const { platform } = written;
  const named = platform === "small" || platform === "large" ? PLATFORMS[platform] : null;
  const size = named ?? readPlatform(platform, at("platform"), reading);
  const range = { allowZero: true, longest: WIDEST_MARGIN };
  return {
    platform: size ?? usual.platform,
    margin: readLength(written.margin, at("margin"), reading, range) ?? usual.margin,
    narrowestBridge:
      readLength(written["narrowest-bridge"], at("narrowest-bridge"), reading, range) ??
      usual.narrowestBridge,
    ...(written.strips === undefined ? {} : { strips: written.strips }),
  };
}

/** Reads the size of plates; a word without digits was meant as one of the usual ones. */
function readPlatform(platform: string | undefined, path: string, reading: Reading): Size | null {
  if (platform === undefined || /\d/.test(platform)) return readPlainSize(platform, path, reading);
  const { code, expected, words } = WORDINGS.platform;
  const suggestion = nearestWord(platform, words);
  const meant = suggestion === null ? "" : ` Did you mean ${suggestion}?`;
  const message = `Found ${quote(platform)}, expected ${expected}.${meant}`;
  reading.faults.report({ code, path, found: platform, expected, message, suggestion });
  return null;
}
