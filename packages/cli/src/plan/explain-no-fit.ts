import {
  formatLength,
  formatSize,
  type Size,
  TICKS_PER_INCH,
  TICKS_PER_MM,
  type Unit,
} from "@sheetwright/measure";
import type { Kind, Problem, Sheet } from "@sheetwright/packing";

/** A piece that no sheet is large enough for. */
export interface NoFit extends Size {
  readonly kind: string;
  readonly mayTurn: boolean;
  /** By how much it is too large the way that comes nearest, 0 where that side fits; in ticks. */
  readonly over: Size;
  /** True where the nearest way is the turned one. */
  readonly turned: boolean;
  /** What would help, as sentences. */
  readonly help: readonly string[];
}

/** Finds the pieces that are larger than the sheet inside its trim, in every way they may lie. */
export function explainNoFit(problem: Problem, unit: Unit): readonly NoFit[] {
  const [sheet] = problem.sheets;
  if (sheet === undefined) return [];
  return problem.kinds.map((kind) => noFit(kind, sheet, unit)).filter((one) => one !== null);
}

/** Says which piece fits no sheet, by how much, and what would help, as sentences. */
export function writeNoFit(one: NoFit, problem: Problem, unit: Unit): string {
  const [sheet] = problem.sheets;
  if (sheet === undefined) throw new RangeError("The problem has no sheet.");
  const length = (ticks: number): string => formatLength(ticks, { unit });
  const too = [
    ...(one.over.width > 0 ? [`${length(one.over.width)} too wide`] : []),
    ...(one.over.height > 0 ? [`${length(one.over.height)} too high`] : []),
  ].join(" and ");
  const way = one.turned ? " at best when turned," : "";
  const { width, height } = usablePart(sheet);
  const trimmed = sheet.trim === undefined ? "" : " inside its trim";
  const sheetSize = `the sheet${trimmed} (${formatSize(width, height, { unit })})`;
  const piece = `"${one.kind}" (${formatSize(one.width, one.height, { unit })})`;
  return `${piece} is larger than ${sheetSize}:${way} it is ${too}. ${one.help.join(" ")}`;
}

function noFit(kind: Kind, sheet: Sheet, unit: Unit): NoFit | null {
  const [form] = kind.forms;
  if (form === undefined) return null;
  const usable = usablePart(sheet);
  const mayTurn = form.turns === "both";
  const turnedForm = { width: form.height, height: form.width };
  const upright = overhang(form, usable);
  const quarter = overhang(turnedForm, usable);
  if (fits(upright) || (mayTurn && fits(quarter))) return null;
  const turned = mayTurn && quarter.width + quarter.height < upright.width + upright.height;
  const help: string[] = [];
  if (!mayTurn && fits(quarter)) {
    help.push("It would fit turned: if its pattern and grain allow that, say yes in its turn column.");
  }
  if (
    sheet.trim !== undefined &&
    (fits(overhang(form, sheet)) || (mayTurn && fits(overhang(turnedForm, sheet))))
  ) {
    help.push("It would fit without the trim.");
  }
  const { width, height } = form;
  const least = { width: Math.max(width, usable.width), height: Math.max(height, usable.height) };
  if (unit === "in" && looksLikeMillimetres(form, usable)) {
    help.push("If its size is in millimetres, give --unit mm or write mm behind each length.");
  } else if (help.length === 0) {
    const larger = turned
      ? { width: Math.max(height, usable.width), height: Math.max(width, usable.height) }
      : least;
    const trims = { width: sheet.width - usable.width, height: sheet.height - usable.height };
    const size = formatSize(larger.width + trims.width, larger.height + trims.height, { unit });
    help.push(`A sheet of ${size} would do, or make the piece smaller.`);
  }
  return { kind: kind.id, width, height, mayTurn, over: turned ? quarter : upright, turned, help };
}

/** The sheet inside its trim. */
export function usablePart(sheet: Sheet): Size {
  const { left = 0, right = 0, top = 0, bottom = 0 } = sheet.trim ?? {};
  return { width: sheet.width - left - right, height: sheet.height - top - bottom };
}

function overhang(form: Size, room: Size): Size {
  return { width: Math.max(0, form.width - room.width), height: Math.max(0, form.height - room.height) };
}

function fits(over: Size): boolean {
  return over.width === 0 && over.height === 0;
}

/** Read as inches it does not fit, read as millimetres it does, and it was no small slip. */
function looksLikeMillimetres(form: Size, room: Size): boolean {
  const scale = TICKS_PER_INCH / TICKS_PER_MM;
  const long = Math.max(form.width, form.height);
  const short = Math.min(form.width, form.height);
  return (
    long > 3 * Math.max(room.width, room.height) &&
    long <= scale * Math.max(room.width, room.height) &&
    short <= scale * Math.min(room.width, room.height)
  );
}
