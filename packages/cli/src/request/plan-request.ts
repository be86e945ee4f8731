import { formatLength, formatSize, type Size, type Ticks, type Unit } from "@sheetwright/measure";
import type { Mode, Trim } from "@sheetwright/packing";
import { type Fault, quote } from "../fault.js";
import { freeWords } from "./free-words.js";
import { type OptionReader, optionReader } from "./option-reader.js";
import type { WrittenOptions } from "./plan-options.js";
import { isProjectName } from "./project-plan-request.js";
import { readSharedOptions, type SharedOptions } from "./shared-options.js";
import { readSheetSize, readSize, type SheetSize } from "./sheet-size.js";

/** What `sheetwright plan --pieces` is asked, read and checked. Lengths are ticks. */
export interface PlanRequest extends SharedOptions {
  /** Path of the piece list, as given. */
  readonly pieces: string;
  /** Path of the folder, as given. */
  readonly out: string;
  readonly unit: Unit;
  readonly sheet: SheetSize;
  /** Sheets on hand; `null`: as many as needed. */
  readonly count: number | null;
  readonly mode: Exclude<Mode, "stopped">;
  readonly trim: Trim;
  readonly kerf: Ticks;
  readonly longestCut: Ticks | null;
  /** The narrowest part the tool can hold. */
  readonly hold: Ticks;
  /** The smallest leftover worth keeping. */
  readonly keep: Size;
}

const SIDES = ["left", "right", "top", "bottom"] as const;
const LARGEST_COUNT = 100_000;

/**
 * Where nothing else is said, what a part must measure to be held firmly while it is cut, and a leftover to be kept. Both
 * are common practice, no published source; a part under 1 in is where fingers come near the blade.
 */
export const PLAN_DEFAULTS: Readonly<Record<Unit, { readonly hold: string; readonly keep: string }>> = {
  in: { hold: "1 in", keep: "2 x 2 in" },
  mm: { hold: "25 mm", keep: "50 x 50 mm" },
};

/** A request as far as it could be read, so that what it names can be looked at even where something else is wrong. */
export interface ReadRequest {
  /** `null` where there are faults. */
  readonly request: PlanRequest | null;
  readonly faults: readonly Fault[];
  readonly pieces: string | null;
  readonly out: string | null;
  readonly unit: Unit | null;
  readonly force: boolean;
}

/**
 * Reads the options of a plan and collects every fault.
 *
 * @param rest what stands on the command line beside known options.
 */
export function readPlanRequest(written: WrittenOptions, rest: readonly string[]): ReadRequest {
  const projects = freeWords(rest).words.filter(isProjectName);
  const reader = optionReader(
    written,
    rest.filter((word) => !projects.includes(word)),
  );
  const { oneOf, wholeNumber } = reader;
  const pieces = readPieces(reader, projects);
  const sheetText = reader.required("sheet");
  const out = reader.required("out");
  const unit = oneOf<Unit>("unit", ["in", "mm"], "in");
  const bareUnit = unit ?? "in";
  const length = (key: "trim" | "kerf" | "longestCut" | "hold", fallback: string, allowZero = true): Ticks =>
    reader.length(key, fallback, { unit: bareUnit, allowZero }) ?? 0;
  const size = <T extends Size>(
    key: "sheet" | "keep",
    read: T | { readonly code: string; readonly message: string },
  ) => {
    if (!("message" in read)) return read;
    reader.report(key, read.code, read.message);
    return null;
  };
  const defaults = PLAN_DEFAULTS[bareUnit];
  const asked = {
    sheet: sheetText === null ? null : size("sheet", readSheetSize(sheetText, bareUnit)),
    mode: oneOf<PlanRequest["mode"]>("mode", ["shelf", "guillotine"], "guillotine"),
    keep: size("keep", readSize(reader.value("keep") ?? defaults.keep, bareUnit)),
  };
  if (written.stock !== undefined)
    reader.report("stock", "other-form", "this option is for a project. For a list of pieces give --count.");
  if (written.after !== undefined)
    reader.report("after", "other-form", "this option is for a project. In a list leave out what is cut.");
  const shared = readSharedOptions(written, reader);
  const count = wholeNumber("count", 1, LARGEST_COUNT) ?? null;
  const kerf = length("kerf", "0");
  const longestCut = written.longestCut === undefined ? null : length("longestCut", "", false);
  const hold = length("hold", defaults.hold);
  const trim = readTrim(length("trim", "0"), reader);
  if (asked.sheet !== null) checkTrim(asked.sheet, trim, longestCut, bareUnit, reader);

  const faults = reader.faults();
  const { sheet, mode, keep } = asked;
  const read = { faults, pieces, out, unit, force: shared.force };
  if (faults.length > 0 || pieces === null || out === null || unit === null)
    return { ...read, request: null };
  if (sheet === null || mode === null || keep === null) return { ...read, request: null };
  const request: PlanRequest = {
    pieces,
    out,
    unit,
    sheet,
    count,
    mode,
    trim,
    kerf,
    longestCut,
    hold,
    keep: { width: keep.width, height: keep.height },
    ...shared,
  };
  return { ...read, request };
}

/** Gives the path of the piece list, and no project file's. */
function readPieces(reader: OptionReader, projects: readonly string[]): string | null {
  for (const project of projects) {
    const message = `${quote(project)} and --pieces are both given, expected a project file or a list of pieces. Leave one out.`;
    reader.report("pieces", "two-forms", message);
  }
  const pieces = reader.required("pieces");
  if (pieces === null || !isProjectName(pieces)) return pieces;
  const message =
    `${quote(pieces)} is a project file by its name, expected a list of pieces. ` +
    `Give it without --pieces: sheetwright plan ${pieces} --out plan.`;
  reader.report("pieces", "not-a-list", message);
  return null;
}

function readTrim(width: Ticks, { value, report }: OptionReader): Trim {
  const text = value("trimSides");
  const words =
    text
      ?.toLowerCase()
      .split(/[\s,+]+/)
      .filter((word) => word !== "") ?? SIDES;
  const unknown = words.find((word) => !SIDES.some((side) => side === word));
  if (words.length === 0 || unknown !== undefined) {
    const found = quote(unknown ?? text ?? "");
    const message = `found ${found}, expected one or more of ${SIDES.join(", ")}, such as left,top.`;
    report("trimSides", "not-a-side", message);
    return {};
  }
  const sides = width === 0 ? [] : SIDES.filter((side) => words.includes(side));
  return Object.fromEntries(sides.map((side) => [side, width]));
}

/** The trim must leave something, and its own cuts must be possible. */
function checkTrim(
  sheet: SheetSize,
  trim: Trim,
  longestCut: Ticks | null,
  unit: Unit,
  { report }: OptionReader,
): void {
  const { left = 0, right = 0, top = 0, bottom = 0 } = trim;
  const usable = sheet.width - left - right;
  const size = formatSize(sheet.width, sheet.height, { unit });
  if (usable < 1 || sheet.height - top - bottom < 1) {
    report("trim", "nothing-left", `trimming takes the whole sheet of ${size}. Give a smaller trim.`);
    return;
  }
  const longest = Math.max(left + right > 0 ? sheet.height : 0, top + bottom > 0 ? usable : 0);
  if (longestCut === null || longest <= longestCut) return;
  const needed = formatLength(longest, { unit });
  const limit = formatLength(longestCut, { unit });
  const message =
    `squaring off the sheet of ${size} takes a cut of ${needed}, and --longest-cut allows ${limit}. ` +
    "Leave the trim out, take it from other sides with --trim-sides, or use a smaller sheet.";
  report("trim", "trim-not-cuttable", message);
}
