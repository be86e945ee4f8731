/** Reads a problem of any origin into the facts that a plan is judged by. */

import type { Aim, Mode, Rectangle, Size, Turns } from "../model.js";
import { type Report, shown } from "./finding.js";
import { readFields, readList, readText, readWhole, readWord } from "./read-value.js";

/** What is squared off the sides of a sheet; 0 where nothing is. */
interface TrimFacts {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A sheet with its defaults filled in. */
export interface SheetFacts extends Size {
  readonly id: string;
  /** The sheet inside its trims, in the coordinates of the whole sheet. */
  readonly usable: Rectangle;
  readonly trim: TrimFacts;
  /** `null`: as many as needed. */
  readonly stock: bigint | null;
  readonly cost: bigint;
  /** `null`: no limit. */
  readonly longestCut: number | null;
}

/** The part of a form that no one will see. */
interface HiddenFacts extends Rectangle {
  readonly tool: string;
}

/** A form with its turns by sheet. */
export interface FormFacts extends Size {
  /** Turns allowed on the sheet with this id; `null` where the form may not be cut from it. */
  readonly turnsOn: (sheet: string) => Turns | null;
  readonly hidden: HiddenFacts | null;
}

/** A kind with its defaults filled in. */
export interface KindFacts {
  readonly id: string;
  /** `null`: no limit. */
  readonly quantity: bigint | null;
  /** Copies that must be there: the quantity with the aim `all`, else the least. */
  readonly required: bigint;
  readonly forms: readonly FormFacts[];
  readonly value: bigint;
  readonly together: string | null;
}

/** A well-formed problem. Kinds and sheets stand by their ids, in the problem's order. */
export interface ProblemFacts {
  readonly kinds: ReadonlyMap<string, KindFacts>;
  readonly sheets: ReadonlyMap<string, SheetFacts>;
  readonly mode: Mode;
  readonly aim: Aim;
  readonly kerf: number;
  /** `null`: no limit. */
  readonly stages: number | null;
  /** `null`: any leftover is an offcut. */
  readonly smallestOffcut: Size | null;
}

const turnWords = ["upright", "turned", "both"] as const;

/** Reads a problem; reports whatever is malformed as `bad-problem` and then gives `undefined`. */
export function readProblem(problem: unknown, report: Report): ProblemFacts | undefined {
  let isSound = true;
  const refuse: Report = (_code, path, message, found, expected) => {
    isSound = false;
    report("bad-problem", path, message, found, expected);
  };
  const fields = readFields<"kinds" | "sheets" | "mode" | "aim" | "kerf" | "stages" | "smallestOffcut">(
    refuse,
    problem,
    "problem",
  );
  if (fields === undefined) return undefined;

  const mode = readWord(refuse, fields.mode, "problem.mode", ["shelf", "guillotine", "stopped"]);
  const aim = readWord(refuse, fields.aim, "problem.aim", ["all", "fill"]);
  const kerf = fields.kerf === undefined ? 0 : readWhole(refuse, fields.kerf, "problem.kerf", 0);
  const stages = readLimit(refuse, fields.stages, "problem.stages", 1);
  const smallestOffcut =
    fields.smallestOffcut === undefined
      ? null
      : readSize(refuse, fields.smallestOffcut, "problem.smallestOffcut", 0);
  const sheets = readById(refuse, fields.sheets, "problem.sheets", readSheet);
  const kinds = readById(refuse, fields.kinds, "problem.kinds", (refuse, value, path) =>
    readKind(refuse, value, path, aim ?? "all"),
  );
  if (!isSound || mode === undefined || aim === undefined || kerf === undefined) return undefined;
  return { kinds, sheets, mode, aim, kerf, stages: stages ?? null, smallestOffcut: smallestOffcut ?? null };
}

/** Reads a list of things with ids that differ. */
function readById<Thing extends { readonly id: string }>(
  refuse: Report,
  value: unknown,
  path: string,
  read: (refuse: Report, value: unknown, path: string) => Thing | undefined,
): ReadonlyMap<string, Thing> {
  const things = new Map<string, Thing>();
  for (const [index, item] of (readList(refuse, value, path) ?? []).entries()) {
    const thing = read(refuse, item, `${path}[${index}]`);
    if (thing === undefined) continue;
    if (things.has(thing.id)) {
      const message = `${path}[${index}].id is ${shown(thing.id)}, like an earlier one. Give each an id of its own.`;
      refuse("out-of-range", `${path}[${index}].id`, message, thing.id);
    }
    things.set(thing.id, thing);
  }
  return things;
}

function readSheet(refuse: Report, value: unknown, path: string): SheetFacts | undefined {
  const fields = readFields<"id" | "width" | "height" | "stock" | "cost" | "trim" | "longestCut">(
    refuse,
    value,
    path,
  );
  if (fields === undefined) return undefined;
  const id = readText(refuse, fields.id, `${path}.id`);
  const size = readSize(refuse, fields, path, 1);
  const trim = readTrim(refuse, fields.trim, `${path}.trim`);
  const stock = readLimit(refuse, fields.stock, `${path}.stock`, 0);
  const cost = fields.cost === undefined ? null : readWhole(refuse, fields.cost, `${path}.cost`, 0);
  const longestCut = readLimit(refuse, fields.longestCut, `${path}.longestCut`, 1);
  if (id === undefined || size === undefined || trim === undefined) return undefined;
  const usable = {
    x: trim.left,
    y: trim.top,
    width: size.width - trim.left - trim.right,
    height: size.height - trim.top - trim.bottom,
  };
  if (usable.width < 1 || usable.height < 1) {
    const message = `The trim of ${path} leaves nothing of a sheet of ${size.width} x ${size.height}. Trim less.`;
    refuse("out-of-range", `${path}.trim`, message);
  }
  return {
    id,
    ...size,
    usable,
    trim,
    stock: typeof stock === "number" ? BigInt(stock) : null,
    cost: typeof cost === "number" ? BigInt(cost) : BigInt(size.width) * BigInt(size.height),
    longestCut: longestCut ?? null,
  };
}

function readTrim(refuse: Report, value: unknown, path: string): TrimFacts | undefined {
  if (value === undefined) return { left: 0, right: 0, top: 0, bottom: 0 };
  const fields = readFields<"left" | "right" | "top" | "bottom">(refuse, value, path);
  if (fields === undefined) return undefined;
  const side = (name: "left" | "right" | "top" | "bottom") =>
    fields[name] === undefined ? 0 : (readWhole(refuse, fields[name], `${path}.${name}`, 0) ?? 0);
  return { left: side("left"), right: side("right"), top: side("top"), bottom: side("bottom") };
}

function readKind(refuse: Report, value: unknown, path: string, aim: Aim): KindFacts | undefined {
  const fields = readFields<"id" | "quantity" | "least" | "forms" | "value" | "together" | "set">(
    refuse,
    value,
    path,
  );
  if (fields === undefined) return undefined;
  const id = readText(refuse, fields.id, `${path}.id`);
  const quantity =
    aim === "fill" && fields.quantity === null
      ? null
      : readWhole(refuse, fields.quantity, `${path}.quantity`, 0);
  const least = fields.least === undefined ? 0 : readWhole(refuse, fields.least, `${path}.least`, 0);
  const worth = fields.value === undefined ? null : readWhole(refuse, fields.value, `${path}.value`, 0);
  const together =
    fields.together === undefined ? null : readText(refuse, fields.together, `${path}.together`);
  if (fields.set !== undefined) {
    const set = readFields<"of" | "each">(refuse, fields.set, `${path}.set`);
    if (set !== undefined) {
      readText(refuse, set.of, `${path}.set.of`);
      readWhole(refuse, set.each, `${path}.set.each`, 1);
    }
  }
  const list = readList(refuse, fields.forms, `${path}.forms`);
  if (list?.length === 0) {
    refuse("out-of-range", `${path}.forms`, `${path}.forms is empty. Give the size that is to be cut.`);
  }
  const forms = (list ?? []).map((form, index) => readForm(refuse, form, `${path}.forms[${index}]`));
  if (aim === "fill" && typeof quantity === "number" && least !== undefined && least > quantity) {
    const message = `${path}.least is ${least}, more than the quantity, ${quantity}. Ask for less or allow more.`;
    refuse("out-of-range", `${path}.least`, message, least, quantity);
  }
  const first = forms[0];
  if (id === undefined || quantity === undefined || least === undefined || first === undefined)
    return undefined;
  return {
    id,
    quantity: quantity === null ? null : BigInt(quantity),
    required: BigInt(aim === "all" ? (quantity ?? 0) : least),
    forms: forms.filter((form) => form !== undefined),
    value: typeof worth === "number" ? BigInt(worth) : BigInt(first.width) * BigInt(first.height),
    together: together ?? null,
  };
}

function readForm(refuse: Report, value: unknown, path: string): FormFacts | undefined {
  const fields = readFields<"width" | "height" | "turns" | "sheets" | "hidden">(refuse, value, path);
  if (fields === undefined) return undefined;
  const size = readSize(refuse, fields, path, 1);
  const turns =
    fields.turns === undefined
      ? "both"
      : (readWord(refuse, fields.turns, `${path}.turns`, turnWords) ?? "both");
  const turnsOn = readSheetTurns(refuse, fields.sheets, `${path}.sheets`, turns);
  const hidden = fields.hidden === undefined ? null : readHidden(refuse, fields.hidden, `${path}.hidden`);
  if (size === undefined || hidden === undefined) return undefined;
  if (
    hidden !== null &&
    !(hidden.width <= size.width - hidden.x && hidden.height <= size.height - hidden.y)
  ) {
    const message = `${path}.hidden reaches out of the form of ${size.width} x ${size.height}. Make it smaller.`;
    refuse("out-of-range", `${path}.hidden`, message);
  }
  return { ...size, turnsOn, hidden };
}

/** A form may list sheets that this problem does not have: it is then cut from the others. */
function readSheetTurns(
  refuse: Report,
  value: unknown,
  path: string,
  otherwise: Turns,
): (sheet: string) => Turns | null {
  if (value === undefined) return () => otherwise;
  const turnsBySheet = new Map<string, Turns>();
  for (const [index, item] of (readList(refuse, value, path) ?? []).entries()) {
    const here = `${path}[${index}]`;
    const fields = readFields<"sheet" | "turns">(refuse, item, here);
    if (fields === undefined) continue;
    const sheet = readText(refuse, fields.sheet, `${here}.sheet`);
    const turns =
      fields.turns === undefined ? otherwise : readWord(refuse, fields.turns, `${here}.turns`, turnWords);
    if (sheet === undefined || turns === undefined) continue;
    if (turnsBySheet.has(sheet)) {
      const message = `${here}.sheet is ${shown(sheet)}, like an earlier one. Name each sheet once.`;
      refuse("out-of-range", `${here}.sheet`, message, sheet);
    }
    turnsBySheet.set(sheet, turns);
  }
  return (sheet) => turnsBySheet.get(sheet) ?? null;
}

function readHidden(refuse: Report, value: unknown, path: string): HiddenFacts | undefined {
  const fields = readFields<"x" | "y" | "width" | "height" | "tool">(refuse, value, path);
  if (fields === undefined) return undefined;
  const x = readWhole(refuse, fields.x, `${path}.x`, 0);
  const y = readWhole(refuse, fields.y, `${path}.y`, 0);
  const size = readSize(refuse, fields, path, 1);
  const tool = readText(refuse, fields.tool, `${path}.tool`);
  if (x === undefined || y === undefined || size === undefined || tool === undefined) return undefined;
  return { x, y, ...size, tool };
}

function readSize(refuse: Report, value: unknown, path: string, least: number): Size | undefined {
  const fields = readFields<"width" | "height">(refuse, value, path);
  if (fields === undefined) return undefined;
  const width = readWhole(refuse, fields.width, `${path}.width`, least);
  const height = readWhole(refuse, fields.height, `${path}.height`, least);
  return width === undefined || height === undefined ? undefined : { width, height };
}

/** Reads a number that may be absent or `null` for no limit. */
function readLimit(refuse: Report, value: unknown, path: string, least: number): number | null | undefined {
  return value === undefined || value === null ? null : readWhole(refuse, value, path, least);
}
