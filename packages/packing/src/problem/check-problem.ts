import type { ProblemFaultCode, ProblemFinding } from "./problem-error.js";

/** Lengths stay below 2^24 so that an area is exact in a double; 2^24 ticks are 10.4 m. */
export const LARGEST_LENGTH = 16_777_216;

/** Counts stay below 2^31. */
export const LARGEST_COUNT = 2_147_483_647;

type Report = (
  code: ProblemFaultCode,
  path: string,
  found: unknown,
  expected: string,
  message: string,
) => void;
type Fields = Readonly<Record<string, unknown>>;

/**
 * Says everything that is wrong with a problem; an empty list means that {@link pack} will take it. Takes any value, so
 * that data from a file can be checked as it is.
 *
 * @example
 * const findings = checkProblem({ kinds: [], sheets: [{ id: "cream", width: 0, height: 12 }], mode: "shelf" });
 * findings.map(({ code, path }) => [code, path]) // => [["not-one-of", "aim"], ["not-a-length", "sheets[0].width"]]
 */
export function checkProblem(problem: unknown): readonly ProblemFinding[] {
  const findings: ProblemFinding[] = [];
  const report: Report = (code, path, found, expected, message) => {
    findings.push({ code, path, found, expected, message });
  };
  const fields = asFields(problem, "", report);
  if (fields === undefined) return findings;
  oneOf(fields.mode, "mode", ["shelf", "guillotine", "stopped"], report);
  if (fields.mode === "stopped") {
    report(
      "not-yet",
      "mode",
      "stopped",
      "shelf or guillotine",
      "Stopped cuts cannot be planned yet; use guillotine.",
    );
  }
  oneOf(fields.aim, "aim", ["all", "fill"], report);
  optionalLength(fields.kerf, "kerf", 0, report);
  if (fields.stages != null) count(fields.stages, "stages", 1, report);
  if (fields.smallestOffcut !== undefined) {
    const size = asFields(fields.smallestOffcut, "smallestOffcut", report);
    if (size) checkSize(size, "smallestOffcut", 0, report);
  }
  const sheetIds = checkSheets(fields, report);
  checkKinds(fields, sheetIds, report);
  return findings;
}

function checkSheets(problem: Fields, report: Report): ReadonlySet<string> {
  const ids = new Set<string>();
  const sheets = asList(problem.sheets, "sheets", report);
  sheets.forEach((entry, i) => {
    const path = `sheets[${i}]`;
    const sheet = asFields(entry, path, report);
    if (sheet === undefined) return;
    takeId(sheet.id, `${path}.id`, ids, report);
    const whole = checkSize(sheet, path, 1, report);
    if (sheet.stock != null) count(sheet.stock, `${path}.stock`, 0, report);
    if (sheet.cost !== undefined) wholeNumber(sheet.cost, `${path}.cost`, report);
    const longest = sheet.longestCut ?? null;
    if (longest !== null) length(longest, `${path}.longestCut`, 1, report);
    const trim = sheet.trim === undefined ? {} : asFields(sheet.trim, `${path}.trim`, report);
    if (trim === undefined) return;
    let sound = true;
    for (const side of ["left", "right", "top", "bottom"]) {
      sound = optionalLength(trim[side], `${path}.trim.${side}`, 0, report) && sound;
    }
    if (whole && sound) checkTrim(sheet, trim, longest, path, report);
    const unlimited = (sheet.stock ?? null) === null;
    if (problem.aim === "fill" && unlimited) {
      report(
        "unlimited",
        `${path}.stock`,
        null,
        "a whole number from 0",
        `${path}.stock: the aim 'fill' needs to know how many sheets there are.`,
      );
    }
  });
  return ids;
}

function checkTrim(sheet: Fields, trim: Fields, longest: unknown, path: string, report: Report): void {
  const side = (name: string): number => (trim[name] as number | undefined) ?? 0;
  const width = sheet.width as number;
  const height = sheet.height as number;
  const usableWidth = width - side("left") - side("right");
  const usableHeight = height - side("top") - side("bottom");
  if (usableWidth < 1 || usableHeight < 1) {
    report(
      "nothing-usable",
      `${path}.trim`,
      { width: usableWidth, height: usableHeight },
      "a usable part of at least 1 x 1",
      `${path}.trim takes the whole sheet: ${width} x ${height} leaves ${usableWidth} x ${usableHeight}. Trim less.`,
    );
  }
  if (typeof longest !== "number") return;
  const uprightCut = side("left") + side("right") > 0 ? height : 0;
  const levelCut = side("top") + side("bottom") > 0 ? usableWidth : 0;
  const needed = Math.max(uprightCut, levelCut);
  if (needed > longest) {
    report(
      "trim-not-cuttable",
      `${path}.trim`,
      needed,
      `at most ${longest}`,
      `${path}.trim needs a cut of ${needed}, and the longest cut is ${longest}. Leave that side untrimmed.`,
    );
  }
}

function checkKinds(problem: Fields, sheetIds: ReadonlySet<string>, report: Report): void {
  const ids = new Set<string>();
  asList(problem.kinds, "kinds", report).forEach((entry, i) => {
    const path = `kinds[${i}]`;
    const kind = asFields(entry, path, report);
    if (kind === undefined) return;
    takeId(kind.id, `${path}.id`, ids, report);
    if (kind.quantity === null) {
      if (problem.aim === "all") {
        report(
          "unlimited",
          `${path}.quantity`,
          null,
          "a whole number from 0",
          `${path}.quantity: the aim 'all' needs to know how many copies are wanted.`,
        );
      }
    } else count(kind.quantity, `${path}.quantity`, 0, report);
    if (kind.least !== undefined && count(kind.least, `${path}.least`, 0, report)) {
      const quantity = kind.quantity;
      if (typeof quantity === "number" && (kind.least as number) > quantity) {
        report(
          "least-over-quantity",
          `${path}.least`,
          kind.least,
          `at most ${quantity}`,
          `${path}.least asks for ${String(kind.least)} copies where at most ${quantity} may be cut.`,
        );
      }
    }
    if (kind.value !== undefined) wholeNumber(kind.value, `${path}.value`, report);
    if (kind.together !== undefined) text(kind.together, `${path}.together`, report);
    if (kind.set !== undefined) {
      const set = asFields(kind.set, `${path}.set`, report);
      if (set) {
        text(set.of, `${path}.set.of`, report);
        count(set.each, `${path}.set.each`, 1, report);
      }
    }
    const forms = asList(kind.forms, `${path}.forms`, report);
    if (Array.isArray(kind.forms) && forms.length === 0) {
      report(
        "no-form",
        `${path}.forms`,
        [],
        "at least one form",
        `${path}.forms is empty: give the kind a size.`,
      );
    }
    forms.forEach((form, j) => {
      checkForm(form, `${path}.forms[${j}]`, sheetIds, report);
    });
  });
}

function checkForm(entry: unknown, path: string, sheetIds: ReadonlySet<string>, report: Report): void {
  const form = asFields(entry, path, report);
  if (form === undefined) return;
  const whole = checkSize(form, path, 1, report);
  if (form.turns !== undefined) oneOf(form.turns, `${path}.turns`, TURNS, report);
  if (form.sheets !== undefined) {
    const seen = new Set<unknown>();
    asList(form.sheets, `${path}.sheets`, report).forEach((use, k) => {
      const at = `${path}.sheets[${k}]`;
      const fields = asFields(use, at, report);
      if (fields === undefined) return;
      const id = fields.sheet;
      if (text(id, `${at}.sheet`, report) && !sheetIds.has(id as string)) {
        const known = [...sheetIds].map((name) => `'${name}'`).join(", ");
        report(
          "unknown-sheet",
          `${at}.sheet`,
          id,
          known,
          `${at}.sheet: no sheet has the id '${String(id)}'.`,
        );
      }
      if (seen.has(id)) {
        report(
          "duplicate-sheet",
          `${at}.sheet`,
          id,
          "each sheet once",
          `${at}.sheet: '${String(id)}' stands twice.`,
        );
      }
      seen.add(id);
      if (fields.turns !== undefined) oneOf(fields.turns, `${at}.turns`, TURNS, report);
    });
  }
  if (form.hidden === undefined) return;
  const hidden = asFields(form.hidden, `${path}.hidden`, report);
  if (hidden === undefined) return;
  text(hidden.tool, `${path}.hidden.tool`, report);
  const inner = checkSize(hidden, `${path}.hidden`, 1, report);
  const x = length(hidden.x, `${path}.hidden.x`, 0, report);
  const y = length(hidden.y, `${path}.hidden.y`, 0, report);
  if (!(whole && inner && x && y)) return;
  const value = (name: string): number => hidden[name] as number;
  const right = value("x") + value("width");
  const bottom = value("y") + value("height");
  if (right > (form.width as number) || bottom > (form.height as number)) {
    report(
      "hidden-outside",
      `${path}.hidden`,
      hidden,
      "inside the form",
      `${path}.hidden reaches outside its form.`,
    );
  }
}

const TURNS = ["upright", "turned", "both"] as const;

function asFields(value: unknown, path: string, report: Report): Fields | undefined {
  if (typeof value === "object" && value !== null && !Array.isArray(value)) return value as Fields;
  report("not-an-object", path, value, "an object", `${path || "The problem"} must be an object.`);
  return undefined;
}

function asList(value: unknown, path: string, report: Report): readonly unknown[] {
  if (Array.isArray(value)) return value as readonly unknown[];
  report("not-a-list", path, value, "a list", `${path} must be a list.`);
  return [];
}

function text(value: unknown, path: string, report: Report): boolean {
  if (typeof value === "string" && value !== "") return true;
  report("not-text", path, value, "text that is not empty", `${path} must be text that is not empty.`);
  return false;
}

function takeId(value: unknown, path: string, taken: Set<string>, report: Report): void {
  if (!text(value, path, report)) return;
  const id = value as string;
  if (taken.has(id))
    report("duplicate-id", path, id, "an id of its own", `${path}: the id '${id}' stands twice.`);
  taken.add(id);
}

function checkSize(fields: Fields, path: string, least: number, report: Report): boolean {
  const width = length(fields.width, `${path}.width`, least, report);
  const height = length(fields.height, `${path}.height`, least, report);
  return width && height;
}

function optionalLength(value: unknown, path: string, least: number, report: Report): boolean {
  return value === undefined || length(value, path, least, report);
}

function length(value: unknown, path: string, least: number, report: Report): boolean {
  if (Number.isInteger(value) && (value as number) >= least && (value as number) < LARGEST_LENGTH)
    return true;
  const expected = `a whole number from ${least} to ${LARGEST_LENGTH - 1}`;
  report("not-a-length", path, value, expected, `${path} must be ${expected}, and is ${show(value)}.`);
  return false;
}

function count(value: unknown, path: string, least: number, report: Report): boolean {
  if (Number.isInteger(value) && (value as number) >= least && (value as number) <= LARGEST_COUNT)
    return true;
  const expected = `a whole number from ${least}`;
  report("not-a-count", path, value, expected, `${path} must be ${expected}, and is ${show(value)}.`);
  return false;
}

function wholeNumber(value: unknown, path: string, report: Report): void {
  if (Number.isSafeInteger(value) && (value as number) >= 0) return;
  const expected = "a whole number from 0 to 2^53 - 1";
  report("not-a-count", path, value, expected, `${path} must be ${expected}, and is ${show(value)}.`);
}

function oneOf(value: unknown, path: string, allowed: readonly string[], report: Report): void {
  if (typeof value === "string" && allowed.includes(value)) return;
  const expected = allowed.join(", ");
  report("not-one-of", path, value, expected, `${path} must be one of ${expected}, and is ${show(value)}.`);
}

function show(value: unknown): string {
  if (typeof value === "string") return `'${value}'`;
  return typeof value === "object" && value !== null ? "an object" : String(value);
}
